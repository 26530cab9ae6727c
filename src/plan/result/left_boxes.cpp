// SPDX-License-Identifier: MIT
#include "plan/result/left_boxes.hpp"

#include "facts/facts.hpp"
#include "plan/search/parallel.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::Temperature;

constexpr std::size_t scenarios_for_times = 512;  // scenarios: the same quantile of 8,192 lies within some minutes

/// Nobody asks for longer; whatever keeps longer is said to keep this long.
constexpr Duration longest = units::hours(24);

/// The coldest air of the hours in which the meal may wait.
Surroundings after_serving_in(const Setup& setup) {
    const Duration end = setup.trip->serve.since(setup.trip->from);
    Surroundings around = coldest_of(setup);
    around.air = setup.outside.at(end);
    for (Duration t = end; t <= end + facts::facts().duration("wait.longest"); t += units::minutes(30)) {
        around.air = std::min(around.air, setup.outside.at(t));
    }
    return around;
}

using Group = std::vector<std::size_t>;  // scenarios that stand side by side, in a row

/// Their boxes at a moment of the schedule, not before their food is in.
std::vector<Simulation> boxes_at(const Ensemble& ensemble, const Schedule& schedule, const Group& group,
                                 Duration moment) {
    std::vector<std::optional<Simulation>> last(group.size());
    replay_all(ensemble, schedule, group, false, [&](std::size_t i, const Simulation& run) {
        std::optional<Simulation>& own = last[i - group.front()];
        if (!own || run.bath().now() <= moment) {
            own = run;
        }
    });
    std::vector<Simulation> boxes;
    for (std::optional<Simulation>& one : last) {
        boxes.push_back(*std::move(one));
    }
    std::vector<Simulation::Leg> legs;
    for (Simulation& box : boxes) {
        legs.push_back({&box, moment});
    }
    Simulation::go_on(legs);
    return boxes;
}

/// All of them left in the same surroundings, for so long as anybody asks.
std::vector<Alone> all_left(std::vector<Simulation> boxes, const Surroundings& around, bool through = false) {
    const std::vector<Duration> times(boxes.size(), longest);
    return left_alone(std::move(boxes), around, times, through);
}

/// What is read last before the box is left: the top-up mark; where nobody is to top up from `watch` on, the most that
/// the box shows then.
Temperature last_reading(const Ensemble& ensemble, const Schedule& schedule, std::size_t count, Duration watch) {
    const bool poured = std::any_of(schedule.top_ups.begin(), schedule.top_ups.end(),
                                    [&](const ScheduledTopUp& top_up) { return top_up.at >= watch; });
    if (poured) {
        return schedule.recipe.top_up_mark;
    }
    std::vector<Temperature> shown(count);
    each_side_by_side(count, [&](const Group& group) {
        const std::vector<Simulation> boxes = boxes_at(ensemble, schedule, group, watch);
        for (std::size_t at = 0; at < group.size(); ++at) {
            shown[group[at]] = boxes[at].shown();
        }
    });
    const double most = quantile_high(std::move(shown), 1.0 - allowed_failures()).celsius();
    return std::min(schedule.recipe.top_up_mark, units::celsius(units::round_to(most, 1.0, units::Toward::nearest)));
}

/// Lives through the schedule, and leaves the boxes wherever they can be read.
class Lives {
  public:
    Lives(const Ensemble& ensemble, const Schedule& schedule, const Group& group, Duration watch)
        : setup_(&ensemble.setup()),
          settled_(boxes_at(ensemble, schedule, group, watch)),
          poured_(group.size()),
          boxes_(group.size()) {
        for (std::size_t at = 0; at < group.size(); ++at) {
            boxes_[at].lowest = boxes_[at].highest = settled_[at].shown();
        }
        ends_ = replay_all(ensemble, schedule, group, false, [&](std::size_t i, const Simulation& run) {
            const std::size_t at = i - group.front();
            poured_[at].push_back(run);
            boxes_[at].when.push_back(run.bath().now());
            if (poured_[at].size() > 1 && run.bath().now() >= watch) {
                see(at, run.readings().back());
                see(at, run.shown());
            }
        });
        for (std::size_t at = 0; at < group.size(); ++at) {
            see(at, ends_[at].shown());
        }
    }

    /// `reading`: what is read last before they are left.
    std::vector<LeftBox> left(Temperature reading) && {
        const Surroundings cold = coldest_of(*setup_);
        const Surroundings calm{warmest_of(*setup_), heat::wind_position(facts::Wind::still)};
        const Surroundings rough{cold.air, heat::wind_position(facts::Wind::windy)};
        leave_poured(cold, calm, rough);
        each(all_left(settled_, cold), [](LeftBox& box, Alone alone) { box.settled = std::move(alone); });
        for (Simulation& box : settled_) {
            box.set_reading(std::max(box.shown(), reading));
        }
        each(all_left(settled_, cold, true), [](LeftBox& box, Alone alone) { box.marked = std::move(alone); });
        const auto never_topped = [](const LeftBox& box) { return box.calm.empty(); };
        if (std::any_of(boxes_.begin(), boxes_.end(), never_topped)) {
            const std::vector<Alone> in_calm = all_left(settled_, calm);
            const std::vector<Alone> in_rough = all_left(settled_, rough);
            for (std::size_t at = 0; at < boxes_.size(); ++at) {
                if (never_topped(boxes_[at])) {
                    boxes_[at].calm.push_back(in_calm[at]);
                    boxes_[at].rough.push_back(in_rough[at]);
                }
            }
        }
        each(all_left(ends_, after_serving_in(*setup_)),
             [](LeftBox& box, Alone alone) { box.served = std::move(alone); });
        return std::move(boxes_);
    }

  private:
    void see(std::size_t at, Temperature read) {
        boxes_[at].lowest = std::min(boxes_[at].lowest, read);
        boxes_[at].highest = std::max(boxes_[at].highest, read);
    }

    /// After the fill and each top-up; a top-up also in other weather.
    void leave_poured(const Surroundings& cold, const Surroundings& calm, const Surroundings& rough) {
        for (std::size_t k = 0;; ++k) {
            std::vector<Simulation> some;
            std::vector<std::size_t> whose;
            for (std::size_t at = 0; at < poured_.size(); ++at) {
                if (k < poured_[at].size()) {
                    some.push_back(poured_[at][k]);
                    whose.push_back(at);
                }
            }
            if (some.empty()) {
                return;
            }
            const auto add = [&](const Surroundings& around, std::vector<Alone> LeftBox::*ways) {
                std::vector<Alone> all = all_left(some, around);
                for (std::size_t i = 0; i < whose.size(); ++i) {
                    (boxes_[whose[i]].*ways).push_back(std::move(all[i]));
                }
            };
            add(cold, &LeftBox::poured);
            if (k > 0) {
                add(calm, &LeftBox::calm);
                add(rough, &LeftBox::rough);
            }
        }
    }

    template <class Keep>
    void each(std::vector<Alone> all, const Keep& keep) {
        for (std::size_t at = 0; at < boxes_.size(); ++at) {
            keep(boxes_[at], std::move(all[at]));
        }
    }

    const Setup* setup_;
    std::vector<Simulation> settled_;
    std::vector<std::vector<Simulation>> poured_;
    std::vector<Simulation> ends_;
    std::vector<LeftBox> boxes_;
};

/// The shortest that it keeps after this reading, over all ways in which it comes to be read from a moment on.
Duration keeps_after(const LeftBox& box, Temperature reading, Duration watch) {
    std::vector<const Alone*> ways{&box.settled};
    for (std::size_t k = 0; k < box.poured.size(); ++k) {
        if (box.when[k] >= watch) {
            ways.push_back(&box.poured[k]);
        }
    }
    if (ways.size() == 1) {
        ways.push_back(&box.marked);  // nobody is to top up any more, but may
    }
    std::optional<Duration> shortest;
    const Alone* warmest = ways.front();
    for (const Alone* way : ways) {
        if (const auto keeps = way->keeps_after(reading)) {
            shortest = shortest ? std::min(*shortest, *keeps) : *keeps;
        }
        if (way->bath.points.front().value > warmest->bath.points.front().value) {
            warmest = way;
        }
    }
    // What never reads so much keeps no longer than from the most that it reads.
    return shortest.value_or(warmest->keeps());
}

Duration shortest_of(const std::vector<Alone>& ways) {
    Duration shortest = longest;
    for (const Alone& way : ways) {
        shortest = std::min(shortest, way.keeps());
    }
    return shortest;
}

}  // namespace

LeftBoxes::LeftBoxes(const Ensemble& ensemble, const Schedule& schedule)
    : allowed_(ensemble.allowed()), boxes_(std::min(ensemble.size(), scenarios_for_times)) {
    Simulation likely(ensemble.setup(), likely_scenario(), {}, false);
    likely.fill(schedule.recipe);
    watch_from_ = plan::watch_from(ensemble.setup(), likely.food_in());
    last_reading_ = plan::last_reading(ensemble, schedule, boxes_.size(), watch_from_);
    each_side_by_side(boxes_.size(), [&](const Group& group) {
        std::vector<LeftBox> left = Lives(ensemble, schedule, group, watch_from_).left(last_reading_);
        std::move(left.begin(), left.end(), boxes_.begin() + static_cast<std::ptrdiff_t>(group.front()));
    });
}

template <class Keeps>
Duration LeftBoxes::all_but_few(const Keeps& keeps) const {
    std::vector<Duration> kept;
    kept.reserve(boxes_.size());
    for (const LeftBox& box : boxes_) {
        kept.push_back(keeps(box));
    }
    return quantile_low(std::move(kept), allowed_);
}

std::vector<Duration> LeftBoxes::after_readings(const std::vector<Temperature>& readings) const {
    std::vector<std::vector<Duration>> kept(readings.size());
    for (std::size_t r = 0; r < readings.size(); ++r) {
        for (const LeftBox& box : boxes_) {
            kept[r].push_back(keeps_after(box, readings[r], watch_from_));
        }
    }
    return all_but_few_together(kept);
}

std::vector<Duration> LeftBoxes::after_readings_at_any_time(const std::vector<Temperature>& readings) const {
    std::vector<std::vector<Duration>> kept(readings.size());
    for (std::size_t r = 0; r < readings.size(); ++r) {
        for (const LeftBox& box : boxes_) {
            Duration shortest = keeps_after(box, readings[r], Duration{0});
            for (const Alone& way : box.rough) {
                shortest = std::min(shortest, way.keeps_after(readings[r]).value_or(shortest));
            }
            kept[r].push_back(shortest);
        }
    }
    return all_but_few_together(kept);
}

std::vector<Duration> LeftBoxes::all_but_few_together(const std::vector<std::vector<Duration>>& kept) const {
    const auto may_fail = static_cast<std::size_t>(allowed_ * static_cast<double>(boxes_.size()));
    std::vector<Duration> times;
    for (double part = 1.0;; part -= 0.1) {
        times.clear();
        for (const std::vector<Duration>& of_row : kept) {
            times.push_back(quantile_low(of_row, allowed_ * std::max(part, 0.0)));
        }
        std::size_t failing = 0;
        for (std::size_t b = 0; b < boxes_.size(); ++b) {
            bool fails = false;
            for (std::size_t r = 0; r < kept.size(); ++r) {
                fails = fails || kept[r][b] < times[r];
            }
            failing += fails ? 1 : 0;
        }
        if (failing <= may_fail || part <= 0.0) {
            return times;
        }
    }
}

Duration LeftBoxes::after_any_pour() const {
    return all_but_few([](const LeftBox& box) { return shortest_of(box.poured); });
}

Duration LeftBoxes::after_serving() const {
    return all_but_few([](const LeftBox& box) { return box.served.keeps(); });
}

Temperature LeftBoxes::reading_at_serving() const {
    std::vector<Temperature> shown;
    shown.reserve(boxes_.size());
    for (const LeftBox& box : boxes_) {
        shown.push_back(box.served.bath.points.front().value + box.served.error);
    }
    return quantile_low(std::move(shown), allowed_);
}

Duration LeftBoxes::after_top_up(std::vector<Alone> LeftBox::*air) const {
    return all_but_few([air](const LeftBox& box) { return shortest_of(box.*air); });
}

}  // namespace holdwater::plan
