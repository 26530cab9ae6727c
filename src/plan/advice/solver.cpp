// SPDX-License-Identifier: MIT
#include "plan/advice/mend.hpp"
#include "plan/advice/solver_parts.hpp"
#include "plan/search/parallel.hpp"
#include "plan/search/work.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace holdwater::plan {
namespace {

using trip::Trip;
using Kind = Lever::Kind;

// How long is looked, in trips that are tried: no figures of any science.
constexpr double small = 30.0;          // min at the fire: what asks for less is not worth a further search
constexpr std::size_t few_changes = 3;  // changes that somebody will make
constexpr double trifle = 15.0;         // min at the fire: what asks for no more is tried together with anything else

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
    for (std::size_t from = 0; from < tries.size() && !work_is_enough(); from += tries_at_once) {
        const std::size_t count = std::min(tries_at_once, tries.size() - from);
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

/// Of many changes that are enough together, a set of which none can be left out: the dear ones go first. Where that
/// leaves many, the small ones go first, or one of them is kept to the last: of these the set of the fewest.
Steps Solver::few_of(const Steps& all) {
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
    const std::vector<std::size_t> dear = dearest_first(all);
    std::vector<std::vector<std::size_t>> orders{dear, {dear.rbegin(), dear.rend()}};
    for (const std::size_t kept : dear) {
        if (levers_[kept].steps > 1) {  // what can be done only by one step does little
            std::vector<std::size_t> order = dear;
            std::erase(order, kept);
            order.push_back(kept);
            orders.push_back(std::move(order));
        }
    }
    std::optional<Steps> best;
    for (const std::vector<std::size_t>& order : orders) {
        if (best && (count_of(*best) <= few_changes || work_is_enough())) {
            break;
        }
        Steps other = left_out(all, order);
        if (!best || count_of(other) < count_of(*best)) {
            best = std::move(other);
        }
    }
    reduce(*best);
    return *best;
}

/// The same with every trifle done that there is: pieces kept apart, a box warmed first. What of it is not needed is
/// left out in the end.
Steps Solver::with_trifles(Steps steps) const {
    for (std::size_t i = 0; i < levers_.size(); ++i) {
        const bool is_trifle = levers_[i].rises && levers_[i].steps == 1 && levers_[i].cost(1) <= trifle;
        if (is_trifle && levers_[i].kind != Kind::left_out && levers_[i].kind != Kind::dropped) {
            steps[i] = 1;
        }
    }
    return steps;
}

std::optional<Steps> Solver::found(std::optional<double> less_than) {
    std::vector<Steps> bases = allowed_ways();
    for (std::size_t i = 0, own = bases.size(); i < own; ++i) {
        if (Steps more = with_trifles(bases[i]); more != bases[i] && is_allowed(more)) {
            bases.push_back(std::move(more));
        }
    }
    std::optional<Steps> best;
    std::optional<Steps> many;  // the best of too many changes
    // The trifles of a base go again in the end.
    double least = less_than ? *less_than + cost(with_trifles(none())) : std::numeric_limits<double>::infinity();
    const auto take = [&](std::optional<Steps> way) {
        if (!way) {
            return;
        }
        reduce(*way);  // what the input needed may be needed no more once something else was changed
        if (count_of(*way) > few_changes) {
            if (!many || cost(*way) < cost(*many)) {
                many = std::move(way);
            }
        } else if (cost(*way) < least) {
            least = cost(*way);
            best = std::move(way);
        }
    };
    for (const Steps& base : bases) {
        if (cost(base) < least && !work_is_enough() && quickly(base)) {
            take(base);
        }
    }
    for (const Steps& base : bases) {
        if (cost(base) < least) {
            take(with_one_more(base, least));
        }
    }
    // Of a base and the same with its trifles, the one that has more chance; the other where that asks for too many.
    const auto has_all_trifles = [this](const Steps& base) {
        return with_trifles(base) == base || !is_allowed(with_trifles(base));
    };
    for (const bool all_trifles : {true, false}) {
        for (const Steps& base : bases) {
            if (cost(base) + small < least && has_all_trifles(base) == all_trifles &&
                (all_trifles || (many && !best))) {
                take(with_two_more(base, least));
            }
        }
    }
    if (less_than) {
        return best && cost(*best) < *less_than ? best : std::nullopt;
    }
    if (best) {
        return best;
    }
    if (const Steps all = furthest(); quickly(all)) {
        Steps other = few_of(all);
        if (!many || count_of(other) < count_of(*many)) {
            many = std::move(other);
        }
    }
    return many;
}

}  // namespace holdwater::plan
