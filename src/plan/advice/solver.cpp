// SPDX-License-Identifier: MIT
#include "plan/advice/mend.hpp"
#include "plan/search/parallel.hpp"

#include <algorithm>
#include <deque>
#include <functional>
#include <limits>
#include <set>
#include <utility>

namespace holdwater::plan {
namespace {

using trip::Trip;
using Kind = Lever::Kind;

// How long is looked, in trips that are tried: no figures of any science.
constexpr std::size_t most_bases = 4;
constexpr std::size_t pairs_tried = 16;
constexpr std::size_t at_once = 4;
constexpr double small = 30.0;  // min at the fire: what asks for less is not worth a further search
constexpr int steps_further = 4;
constexpr int steps_back = 6;

/// Whether a change can do anything about what stands against a trip.
bool helps(Kind kind, Against against) {
    switch (against) {
        case Against::nothing:
            return false;
        case Against::input:
            return true;  // tried without any scenario
        case Against::bath:
            return kind != Kind::later && kind != Kind::earlier && kind != Kind::split && kind != Kind::free;
        case Against::slow:
            return kind == Kind::tolerance || kind == Kind::target || kind == Kind::split || kind == Kind::free ||
                   kind == Kind::more_water || kind == Kind::over_fire || kind == Kind::second_box;
        case Against::late:
            return kind != Kind::wind && kind != Kind::wax && kind != Kind::less_water;
    }
    return true;
}

std::size_t count_of(const Steps& steps) {
    return static_cast<std::size_t>(std::count_if(steps.begin(), steps.end(), [](int step) { return step > 0; }));
}

/// The fewest steps of a lever with which `holds` is true, the others being as they are; true for the steps given.
void pull_back(Steps& steps, std::size_t lever, const std::function<bool(const Steps&)>& holds) {
    const auto holds_with = [&](int step) {
        Steps tried = steps;
        tried[lever] = step;
        return holds(tried);
    };
    int good = steps[lever];
    int bad = 0;
    if (good > 0 && holds_with(0)) {
        good = 0;
    }
    while (good - bad > 1) {
        const int middle = (good + bad) / 2;
        (holds_with(middle) ? good : bad) = middle;
    }
    steps[lever] = good;
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

/// The least changes, up to three together, with which the trip may be planned at all; none where it may as it is.
/// Nothing is simulated for it.
std::vector<Steps> Solver::allowed_ways() const {
    const auto allowed = [this](const Steps& s) { return is_allowed(s); };
    if (allowed(none())) {
        return {none()};
    }
    std::vector<Steps> ways;
    const auto covers = [](const Steps& some, const Steps& all) {
        for (std::size_t i = 0; i < some.size(); ++i) {
            if (some[i] > 0 && all[i] == 0) {
                return false;
            }
        }
        return true;
    };
    const std::function<void(const Steps&, std::size_t, int)> add = [&](const Steps& so_far, std::size_t from,
                                                                        int more) {
        for (std::size_t i = from; i < levers_.size(); ++i) {
            for (const int place : places_of(i)) {
                Steps tried = so_far;
                tried[i] = place;
                if (std::any_of(ways.begin(), ways.end(), [&](const Steps& way) { return covers(way, tried); })) {
                    continue;
                }
                if (more > 1) {
                    add(tried, i + 1, more - 1);
                } else if (allowed(tried)) {
                    for (const std::size_t lever : dearest_first(tried)) {
                        pull_back(tried, lever, allowed);
                    }
                    ways.push_back(std::move(tried));
                }
            }
        }
    };
    constexpr int most_together = 3;
    for (int together = 1; together <= most_together; ++together) {
        add(none(), 0, together);
    }
    std::stable_sort(ways.begin(), ways.end(), [this](const Steps& a, const Steps& b) { return cost(a) < cost(b); });
    ways.resize(std::min(ways.size(), most_bases));
    return ways;
}

/// The base as it is, where it holds; else with each change that alone makes it hold.
std::vector<Steps> Solver::with_one_more(const Steps& base) {
    const Against first = against(base);
    if (first == Against::nothing) {
        return {base};
    }
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
    std::vector<Steps> ways;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t from = 0; from < tries.size(); from += at_once) {
        if (cost(base) + levers_[tries[from].lever].cost(1) >= least) {
            break;  // and all that follow
        }
        const std::size_t count = std::min(at_once, tries.size() - from);
        std::vector<Steps> tried(count, base);
        std::vector<char> hold(count, 0);
        for_each_index(
            count,
            [&](std::size_t k) {
                tried[k][tries[from + k].lever] = tries[from + k].place;
                hold[k] = quickly(tried[k]) ? 1 : 0;
            },
            1);
        for (std::size_t k = 0; k < count; ++k) {
            if (hold[k] != 0) {
                pull_back(tried[k], tries[from + k].lever, [this](const Steps& s) { return quickly(s); });
                least = std::min(least, cost(tried[k]));
                ways.push_back(tried[k]);
            }
        }
    }
    return ways;
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
            const auto affordable = [&](std::size_t lever, double left) {
                int step = levers_[lever].steps;
                while (step > 1 && levers_[lever].cost(step) >= left) {
                    --step;
                }
                return step;
            };
            const Pair& pair = pairs[k];
            tried[k][pair.a] = affordable(pair.a, than - own - levers_[pair.b].cost(1));
            tried[k][pair.b] = affordable(pair.b, than - own - levers_[pair.a].cost(1));
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

/// The same with another place of a lever of which more can be worse, where that may help.
std::vector<Steps> Solver::next_to(const Steps& steps, Against against) const {
    std::vector<Steps> ways;
    const auto add = [&](std::size_t lever, int place) {
        Steps way = steps;
        way[lever] = place;
        ways.push_back(std::move(way));
    };
    for (std::size_t i = 0; i < levers_.size(); ++i) {
        const Kind kind = levers_[i].kind;
        if ((!levers_[i].rises || (kind == Kind::left_out && steps[i] == 0)) && helps(kind, against)) {
            for (const int place : places_of(i)) {
                add(i, place);
            }
        }
        const bool may_be_in_the_way = kind == Kind::split || kind == Kind::target || kind == Kind::over_fire ||
                                       kind == Kind::later || kind == Kind::earlier;
        if (may_be_in_the_way && steps[i] > 0) {
            add(i, 0);
        }
    }
    return ways;
}

Steps Solver::furthest() {
    constexpr std::size_t most_tried = 40;
    Steps start = none();
    for (std::size_t i = 0; i < levers_.size(); ++i) {
        start[i] = levers_[i].rises && levers_[i].kind != Kind::left_out ? levers_[i].steps : 0;
    }
    std::set<Steps> seen{start};
    std::deque<Steps> to_try{start};
    Steps best = start;
    Against best_against = against(start);
    for (std::size_t tried = 0; tried < most_tried && !to_try.empty() && best_against != Against::nothing;) {
        const Steps steps = std::move(to_try.front());
        to_try.pop_front();
        const Against now = against(steps);
        tried += now == Against::input ? 0 : 1;  // that takes no time
        if (now == Against::nothing || now > best_against) {
            best = steps;
            best_against = now;
        }
        for (Steps& next : next_to(steps, now)) {
            if (seen.insert(next).second) {
                // What is allowed is looked at before what is not.
                is_allowed(next) ? to_try.push_front(std::move(next)) : to_try.push_back(std::move(next));
            }
        }
        constexpr std::size_t most_seen = 4000;
        if (seen.size() > most_seen) {
            break;
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

std::vector<Steps> Solver::found() {
    const auto by_cost = [this](const Steps& a, const Steps& b) { return cost(a) < cost(b); };
    const std::vector<Steps> bases = allowed_ways();
    std::vector<Steps> ways;
    for (const Steps& base : bases) {
        if (!ways.empty() && cost(base) >= cost(ways.front())) {
            break;
        }
        std::vector<Steps> more = with_one_more(base);
        ways.insert(ways.end(), more.begin(), more.end());
        std::stable_sort(ways.begin(), ways.end(), by_cost);
    }
    for (const Steps& base : bases) {
        const double than = ways.empty() ? std::numeric_limits<double>::infinity() : cost(ways.front());
        if (cost(base) + small < than && !quickly(base)) {
            if (auto pair = with_two_more(base, than)) {
                ways.insert(ways.begin(), std::move(*pair));
            }
        }
    }
    for (Steps& way : ways) {
        // What the input needed may be needed no more once something else was changed.
        if (count_of(way) > 1) {
            reduce(way);
        }
        if (&way == &ways.front()) {
            break;
        }
    }
    if (!ways.empty()) {
        return ways;
    }
    if (const Steps all = furthest(); quickly(all)) {
        return {few_of(all).value()};
    }
    return {};
}

/// What the few scenarios took for enough, pulled a little further until it is in many.
bool Solver::pull_further(Steps& steps) {
    for (int i = 0; i <= steps_further; ++i) {
        if (fully(steps)) {
            return true;
        }
        std::optional<std::size_t> cheapest;
        for (std::size_t lever = 0; lever < steps.size(); ++lever) {
            const bool can = steps[lever] > 0 && steps[lever] < levers_[lever].steps && levers_[lever].rises;
            if (can && (!cheapest || levers_[lever].a_step < levers_[*cheapest].a_step)) {
                cheapest = lever;
            }
        }
        if (!cheapest) {
            return false;
        }
        ++steps[*cheapest];
    }
    return false;
}

void Solver::settle_back(Steps& steps) {
    for (const std::size_t lever : dearest_first(steps)) {
        Steps without = steps;
        without[lever] = 0;
        if (levers_[lever].steps > 1 && !levers_[lever].rises && fully(without)) {
            steps = without;
            continue;
        }
        for (int i = 0; i < steps_back && steps[lever] > 0; ++i) {
            Steps less = steps;
            --less[lever];
            if (!fully(less)) {
                break;
            }
            steps = less;
        }
    }
}

std::optional<Mend> Solver::settled(Steps steps) {
    if (!pull_further(steps)) {
        return std::nullopt;
    }
    settle_back(steps);
    Mend mend{changed_by(steps), {}, {}, cost(steps), levers_, steps};
    for (std::size_t i = 0; i < levers_.size(); ++i) {
        if (steps[i] > 0) {
            mend.changes.push_back(levers_[i].words(*trip_, mend.changed));
            mend.kinds.push_back(levers_[i].kind);
        }
    }
    return mend;
}

}  // namespace holdwater::plan
