// SPDX-License-Identifier: MIT
#include "plan/advice/mend.hpp"
#include "plan/advice/solver_parts.hpp"
#include "plan/search/parallel.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace holdwater::plan {
namespace {

using trip::Trip;
using Kind = Lever::Kind;

// How long is looked, in trips that are tried: no figures of any science.
constexpr std::size_t pairs_tried = 10;
constexpr std::size_t at_once = 4;
constexpr double small = 30.0;  // min at the fire: what asks for less is not worth a further search

std::size_t count_of(const Steps& steps) {
    return static_cast<std::size_t>(std::count_if(steps.begin(), steps.end(), [](int step) { return step > 0; }));
}

}  // namespace

Solver::Solver(const Trip& trip, std::vector<Lever> levers, Feasible& feasible)
    : trip_(&trip), levers_(std::move(levers)), feasible_(&feasible) {}

Trip Solver::changed_by(const Steps& steps) const {
    Trip changed = *trip_;
    for (std::size_t i = 0; i < levers_.size(); ++i) {
        if (steps[i] > 0) {
            levers_[i].pull(changed, steps[i]);
        }
    }
    return changed;
}

double Solver::cost(const Steps& steps) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < levers_.size(); ++i) {
        sum += levers_[i].cost(steps[i]);
    }
    return sum;
}

/// Where a lever is tried first: at its end, and where more can be worse, on the way there as well.
std::vector<int> Solver::places_of(std::size_t lever) const {
    std::vector<int> places{levers_[lever].steps};
    if (!levers_[lever].rises) {
        for (const int place : {levers_[lever].steps * 2 / 3, levers_[lever].steps / 3, 1}) {
            if (place > 0 && place < places.back()) {
                places.push_back(place);
            }
        }
    }
    return places;
}

std::vector<std::size_t> Solver::dearest_first(const Steps& steps) const {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (steps[i] > 0) {
            order.push_back(i);
        }
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return levers_[a].cost(steps[a]) > levers_[b].cost(steps[b]);
    });
    return order;
}

void Solver::reduce(Steps& steps) {
    for (const std::size_t lever : dearest_first(steps)) {
        pull_back(steps, lever, [this](const Steps& s) { return quickly(s); });
    }
}

/// The cheapest single change with which the base holds for less than so much.
std::optional<Steps> Solver::with_one_more(const Steps& base, double than) {
    const Against first = against(base);
    struct Try {
        std::size_t lever = 0;
        int place = 0;
    };
    std::vector<Try> tries;
    for (std::size_t i = 0; i < levers_.size(); ++i) {
        if (base[i] > 0 ? base[i] < levers_[i].steps : helps(levers_[i].kind, first)) {
            for (const int place : places_of(i)) {
                tries.push_back({i, place});
            }
        }
    }
    std::stable_sort(tries.begin(), tries.end(), [this](const Try& a, const Try& b) {
        return levers_[a.lever].cost(1) < levers_[b.lever].cost(1);
    });
    std::optional<Steps> best;
    for (std::size_t from = 0; from < tries.size(); from += at_once) {
        const std::size_t count = std::min(at_once, tries.size() - from);
        std::vector<Steps> tried(count, base);
        std::vector<char> hold(count, 0);
        for_each_index(
            count,
            [&](std::size_t k) {
                const auto [lever, place] = tries[from + k];
                tried[k][lever] =
                    std::min(place, affordable(lever, than - cost(base) + levers_[lever].cost(base[lever])));
                hold[k] = tried[k][lever] > base[lever] && quickly(tried[k]) ? 1 : 0;
            },
            1);
        for (std::size_t k = 0; k < count; ++k) {
            const std::size_t lever = tries[from + k].lever;
            Steps least = tried[k];
            least[lever] =
                std::min(least[lever], affordable(lever, than - cost(base) + levers_[lever].cost(base[lever])));
            if (hold[k] == 0 || least[lever] <= base[lever] || !quickly(least)) {
                continue;  // not at all, or only for more than another asks
            }
            pull_back(least, lever, [this](const Steps& s) { return quickly(s); });
            than = cost(least);
            best = std::move(least);
        }
    }
    return best;
}

/// The most steps of a lever that cost less than so much; 0 where not even one does.
int Solver::affordable(std::size_t lever, double left) const {
    int step = levers_[lever].steps;
    while (step > 0 && levers_[lever].cost(step) >= left) {
        --step;
    }
    return step;
}

/// Two small changes may ask for less than a single large one: nothing where none do.
std::optional<Steps> Solver::with_two_more(const Steps& base, double than) {
    struct Pair {
        std::size_t a = 0;
        std::size_t b = 0;
        double least = 0.0;
    };
    const Against first = against(base);
    const double own = cost(base);
    // What stands against it once a lever is pulled must be what the other helps with.
    std::vector<Against> then(levers_.size());
    for (std::size_t i = 0; i < levers_.size(); ++i) {
        Steps steps = base;
        steps[i] = levers_[i].steps;
        then[i] = base[i] == 0 && helps(levers_[i].kind, first) ? against(steps) : first;
    }
    std::vector<Pair> pairs;
    for (std::size_t a = 0; a < levers_.size(); ++a) {
        for (std::size_t b = a + 1; b < levers_.size(); ++b) {
            const bool use = helps(levers_[a].kind, then[b]) && helps(levers_[b].kind, then[a]);
            if (base[a] == 0 && base[b] == 0 && use) {
                pairs.push_back({a, b, own + levers_[a].cost(1) + levers_[b].cost(1)});
            }
        }
    }
    std::erase_if(pairs, [than](const Pair& pair) { return pair.least >= than; });
    std::stable_sort(pairs.begin(), pairs.end(), [](const Pair& x, const Pair& y) { return x.least < y.least; });
    pairs.resize(std::min(pairs.size(), pairs_tried));
    std::vector<Steps> tried(pairs.size(), base);
    std::vector<char> hold(pairs.size(), 0);
    for_each_index(
        pairs.size(),
        [&](std::size_t k) {
            const Pair& pair = pairs[k];
            tried[k][pair.a] = std::max(1, affordable(pair.a, than - own - levers_[pair.b].cost(1)));
            tried[k][pair.b] = std::max(1, affordable(pair.b, than - own - levers_[pair.a].cost(1)));
            hold[k] = quickly(tried[k]) ? 1 : 0;
        },
        1);
    std::optional<Steps> best;
    for (std::size_t k = 0; k < pairs.size(); ++k) {
        if (hold[k] == 0 || pairs[k].least >= than) {
            continue;
        }
        reduce(tried[k]);
        if (cost(tried[k]) < than) {
            than = cost(tried[k]);
            best = tried[k];
        }
    }
    return best;
}

/// Of many changes that are enough together, a set of which none can be left out: the dear ones go first. Another, in
/// which the small ones go first, may be of fewer.
std::optional<Steps> Solver::few_of(const Steps& all) {
    const auto left_out = [&](Steps steps, const std::vector<std::size_t>& order) {
        for (const std::size_t lever : order) {
            Steps tried = steps;
            tried[lever] = 0;
            if (quickly(tried)) {
                steps = tried;
            }
        }
        return steps;
    };
    constexpr std::size_t few = 3;
    const std::vector<std::size_t> dear = dearest_first(all);
    Steps best = left_out(all, dear);
    if (count_of(best) > few) {
        const Steps other = left_out(all, {dear.rbegin(), dear.rend()});
        best = count_of(other) < count_of(best) ? other : best;
    }
    reduce(best);
    return best;
}

std::optional<Steps> Solver::found() {
    const std::vector<Steps> bases = allowed_ways();
    std::optional<Steps> best;
    double least = std::numeric_limits<double>::infinity();
    const auto take = [&](std::optional<Steps> way) {
        if (way && cost(*way) < least) {
            least = cost(*way);
            best = std::move(way);
        }
    };
    for (const Steps& base : bases) {
        if (cost(base) < least && quickly(base)) {
            take(base);
        }
    }
    for (const Steps& base : bases) {
        if (cost(base) < least) {
            take(with_one_more(base, least));
        }
    }
    for (const Steps& base : bases) {
        if (cost(base) + small < least) {
            take(with_two_more(base, least));
        }
    }
    if (best) {
        reduce(*best);  // what the input needed may be needed no more once something else was changed
        return best;
    }
    if (const Steps all = furthest(); quickly(all)) {
        return few_of(all);
    }
    return std::nullopt;
}

}  // namespace holdwater::plan
