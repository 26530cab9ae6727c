// SPDX-License-Identifier: MIT
// Where the solver begins and where it ends: the least with which a trip may be planned at all, and the most that can
// be changed about it.
#include "plan/advice/solver_parts.hpp"
#include "plan/search/work.hpp"

#include <algorithm>
#include <deque>
#include <set>
#include <utility>

namespace holdwater::plan {
namespace {

using Kind = Lever::Kind;

constexpr std::size_t most_bases = 4;  // how long is looked: no figure of any science

}  // namespace

bool helps(Kind kind, Against against) {
    switch (against) {
        case Against::nothing:
            return false;
        case Against::input:  // tried without any scenario
        case Against::torn:
            return true;
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
    for (std::size_t tried = 0;
         tried < most_tried && !to_try.empty() && best_against != Against::nothing && !work_is_enough();) {
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

}  // namespace holdwater::plan
