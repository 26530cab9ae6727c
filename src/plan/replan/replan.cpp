// SPDX-License-Identifier: MIT
#include "plan/replan/replan.hpp"

#include "facts/facts.hpp"
#include "heat/level.hpp"
#include "plan/choose/start.hpp"
#include "plan/result/attempt.hpp"
#include "plan/search/parallel.hpp"
#include "plan/search/schedule.hpp"
#include "safety/refusals.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace holdwater::plan {
namespace {

using problem::Problem;
using units::Duration;

// How finely is looked, no figures of any science.
constexpr Draw scenarios_from_here{1024, 1};
constexpr std::size_t nearest_cores = 8;  // one in so many is kept, the nearest to what was measured
constexpr Duration meal_step = units::minutes(30);
constexpr Duration meal_latest = units::hours(6);
constexpr units::TemperatureDifference any_doneness = units::kelvins(20);

/// The plan that the cook has in hand.
problem::Result<Plan> in_hand(const trip::Trip& trip, const Found& found) {
    Effort effort;
    effort.advise = effort.ways = effort.what_ifs = effort.for_cards = false;
    effort.schedule_only = true;
    auto plan = make_plan(trip, effort);
    if (!plan || !found.food_in) {
        return plan;
    }
    // All its times move with the fire.
    const Duration late = found.food_in->since(plan->fill.food_in);
    const units::LocalTime lit = plan->fill.light_fire.after(late);
    return plan_as_given(std::make_shared<const trip::Trip>(lit_at(*plan->trip, lit)), effort);
}

std::optional<Problem> cannot_begin(const Plan& plan, const Found& found) {
    if (!plan.trip->boxes.front().thermometer) {
        return problem::error(
            "replan-no-thermometer", "a box without a thermometer has no reading to go on from",
            "pour by the clock of the cards; the card for when something goes wrong says what a late pour means");
    }
    if (found.now < plan.fill.food_in) {
        return problem::error(
            "replan-before-food",
            fmt::format("at {} the food is not in yet, it goes in at {}", found.now.iso(), plan.fill.food_in.iso()),
            "food that went in sooner: --food-in; a fire that is lit later: light_fire in the trip file");
    }
    if (found.now >= plan.trip->serve) {
        return problem::error("replan-after-meal",
                              fmt::format("{} is not before the meal, {}", found.now.iso(), plan.trip->serve.iso()),
                              "a meal that slips: write it as serve into the trip file");
    }
    if (found.reading < plan.levels.read_floor) {
        return problem::error(
            "replan-below-floor",
            fmt::format("the bath reads under {}, its floor: whether the food may be kept depends on how long it was "
                        "so",
                        safety::in_both(plan.levels.read_floor)),
            "top up at once, then card Reading, or `holdwater review` with the readings that were written");
    }
    return std::nullopt;
}

/// What of a plan is behind at a moment, and what was seen then.
Schedule behind(const Plan& plan, const Setup& setup, const Found& found) {
    Schedule done;
    done.recipe = {plan.fill.cold, plan.fill.reading, static_cast<int>(plan.fill.pours.size()), plan.levels.mark, {}};
    for (const TopUp& top_up : plan.top_ups) {
        if (top_up.at <= found.now) {
            done.top_ups.push_back({top_up.at.since(plan.trip->from), top_up.wakes, {top_up.boiling}});
        }
    }
    done.seen = SeenBath{found.now.since(plan.trip->from), found.reading, std::nullopt};
    if (found.below_rim) {
        const auto& inside = setup.box->inside;
        const units::Volume stands = heat::level_volume(inside, inside[2] - *found.below_rim);
        done.seen->water = std::max(units::litres(1), stands - setup.food_volume);
    }
    return done;
}

/// The scenarios whose core is nearest to what was measured; nothing where even those are further off than the
/// thermometer and the piece explain.
std::optional<Ensemble> with_core(const Ensemble& all, const Schedule& done, units::Temperature core) {
    std::vector<double> off(all.size());
    for_each_index(all.size(), [&](std::size_t i) {
        const Simulation run = replay(all, done, i, true);
        off[i] = std::abs((run.core_history(0).at(done.seen->at) - core).si());
    });
    std::vector<std::size_t> order(all.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return off[a] < off[b]; });
    order.resize(all.size() / nearest_cores);
    const double explained = 2.0 * all.setup().box->thermometer->si() + facts::facts().spread("start").high;
    if (off[order.back()] > explained) {
        return std::nullopt;
    }
    return all.only(order);
}

bool only_late(const problem::Problems& problems) {
    return std::all_of(problems.begin(), problems.end(), [](const Problem& one) {
        return one.code == "not-ready-in-time" || one.code == "growth-not-undone";
    });
}

/// The rest of a plan with the meal so much later.
class Rest {
  public:
    Rest(const Plan& plan, const Found& found, Duration later) : trip_(std::make_shared<trip::Trip>(*plan.trip)) {
        trip_->serve = trip_->serve.after(later);
        for (trip::Food& food : trip_->foods) {
            food.tolerance += any_doneness;
            food.out = food.out ? std::optional(food.out->after(later)) : std::nullopt;
        }
        auto setup = set_up(*trip_);
        if (!setup) {
            fault_ = setup.problems();
            return;
        }
        setup_ = std::move(setup).value();
        done_ = behind(plan, *setup_, found);
        ensemble_.emplace(*setup_, scenarios_from_here);
        if (found.core) {
            ensemble_ = with_core(*ensemble_, done_, *found.core);
        }
        if (!ensemble_) {
            fault_ = {problem::error("replan-core", "no history that this plan allows has such a core by then",
                                     "check the probe; then `holdwater review` with the readings that were written")};
        }
    }

    /// The lightest way on; where the food is late by that, the next pots are poured as soon as they boil, to the
    /// lowest mark with which it is not.
    problem::Result<Plan> best() const {
        auto lightest = on({});
        if (lightest || !only_late(lightest.problems())) {
            return lightest;
        }
        const double highest = highest_mark(*setup_, units::celsius(facts::facts().value("fill.highest"))).celsius();
        for (double mark = std::ceil(setup_->levels.action_line.celsius()) + 2.0; mark <= highest; mark += 2.0) {
            if (auto sooner = on({.lowest_mark = units::celsius(mark), .soon = true})) {
                return sooner;  // no hotter than it must be
            }
        }
        return lightest;
    }

  private:
    problem::Result<Plan> on(const Wanted& wanted) const {
        if (!fault_.empty()) {
            return fault_;
        }
        const auto schedule = carry_on(*ensemble_, done_, wanted);
        if (!schedule) {
            return problem::error("bath-falls-too-fast", "from here the bath cannot be held until the meal", "");
        }
        Attempt made = judged(*ensemble_, trip_, {*schedule, simulate(*ensemble_, *schedule)});
        Effort effort;
        effort.what_ifs = effort.for_cards = effort.diagnose = false;
        return completed(*ensemble_, std::move(made), effort);
    }

    std::shared_ptr<trip::Trip> trip_;
    std::optional<Setup> setup_;
    Schedule done_;
    std::optional<Ensemble> ensemble_;
    problem::Problems fault_;
};

bool too_cold(const problem::Problems& problems) {
    return std::any_of(problems.begin(), problems.end(), [](const Problem& one) {
        return one.code == "bath-falls-too-fast" || one.code == "core-too-hot";
    });
}

/// Why it cannot be held from here: what could be poured comes too late.
Problem falls_first(const Plan& plan) {
    return problem::error(
        "replan-too-cold",
        fmt::format("in more than 5 of 100 scenarios the bath is under its floor, {}, before the next pots boil, {} "
                    "from lighting the fire, or before those after them",
                    safety::in_both(plan.levels.read_floor), units::print(plan.round)),
        "top up as soon as water boils, write every reading down, and go by card Reading; food that may be finished "
        "over the fire is safe that way");
}

}  // namespace

problem::Result<Replanned> replan(const trip::Trip& trip, const Found& found) {
    const auto plan = in_hand(trip, found);
    if (!plan) {
        return plan.problems();
    }
    if (auto fault = cannot_begin(*plan, found)) {
        return *std::move(fault);
    }
    auto rest = Rest(*plan, found, Duration{0}).best();
    Duration later{0};
    while (!rest && only_late(rest.problems()) && later < meal_latest) {
        later += meal_step;
        rest = Rest(*plan, found, later).best();
    }
    if (!rest) {
        return too_cold(rest.problems()) ? problem::Problems{falls_first(*plan)} : rest.problems();
    }
    return Replanned{std::move(rest).value(), found, later};
}

}  // namespace holdwater::plan
