// SPDX-License-Identifier: MIT
#include "plan/result/late_pour.hpp"

#include "facts/facts.hpp"
#include "plan/result/night.hpp"
#include "plan/result/summary.hpp"
#include "safety/clocks.hpp"
#include "safety/growth.hpp"

#include <algorithm>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

/// The slow core in boiling water, from a start.
std::optional<History> boiled(const Setup& setup, const FoodSetup& food, Temperature start, Temperature full) {
    // A pot that cools a little as the food goes in, and a lid off: as much as boiling water cools on its way.
    const Temperature water = setup.levels.boiling - units::kelvins(facts::facts().spread("boil.cooling").high);
    const answer::HoldQuestion question{food.piece.body,
                                        answer::properties_of(food.piece, heat::Bound::slow),
                                        answer::film_of(food.piece, heat::Bound::slow),
                                        water,
                                        start,
                                        full};
    const auto core = answer::core_in_constant_bath(question);
    return core ? std::optional(*core) : std::nullopt;
}

/// What is asked of a core over the fire, the hottest and longest of the trip.
Temperature full_core(const Setup& setup, Duration& hold) {
    const facts::GeneralRules& rules = facts::facts().rules_of(setup.trip->rules);
    Temperature full = facts::facts().temperature(rules.finish_full);
    for (const FoodSetup& food : setup.foods) {
        if (food.standard.finish) {
            full = std::max(full, food.standard.finish->core);
            hold = std::max(hold, food.standard.finish->hold);
        }
    }
    return full;
}

/// The fall so far and on, until the cores are back above the floor in boiling water.
std::optional<safety::Fall> fall_of(const Setup& setup, const History& bath, Temperature full) {
    safety::Fall fall;
    fall.below_floor = bath.points.back().at;
    fall.below_50 = bath.time_below(facts::facts().temperature("fall.deep"), Duration{0}, fall.below_floor);
    Duration back{0};
    const std::vector<const facts::GrowthModel*> models = growth_models(setup);
    for (std::size_t i = 0; i < setup.foods.size(); ++i) {
        const safety::FastestAbove fastest(*models[i]);
        double exponent = 0.0;
        for (std::size_t k = 1; k < bath.points.size(); ++k) {
            exponent += fastest(bath.points[k].value) * units::in_hours(bath.points[k].at - bath.points[k - 1].at);
        }
        double rising = 0.0;
        for (const Temperature start : {bath.points.back().value, setup.foods[i].piece.start}) {
            const auto core = boiled(setup, setup.foods[i], start, full);
            const auto warm = core ? core->first_at_or_above(setup.levels.floor) : std::nullopt;
            if (!warm) {
                return std::nullopt;
            }
            back = std::max(back, *warm);
            rising = std::max(rising, safety::growth_without_lag(*models[i], *core));
        }
        fall.growth = std::max(fall.growth, safety::lagged_growth(exponent + rising, models[i]->q0_cautious));
    }
    fall.below_floor += back;
    return fall;
}

}  // namespace

std::optional<LatePour> late_pour(const Ensemble& ensemble, const Schedule& schedule) {
    const Setup& setup = ensemble.setup();
    Duration hold{0};
    const Temperature full = full_core(setup, hold);
    LatePour late;
    for (const FoodSetup& food : setup.foods) {
        const auto core = boiled(setup, food, food.piece.start, full);
        const auto done = core ? core->first_at_or_above(full) : std::nullopt;
        if (!done) {
            return std::nullopt;
        }
        late.boil = std::max(late.boil, *done + hold);
    }
    const safety::FallRules rules = fall_rules(setup);
    const Duration allowed = units::minutes(facts::facts().spread("top-up.late").high);
    const History coldest = coldest_fall(ensemble, schedule, setup.levels.floor, rules.longest);
    History bath;
    for (const History::Point& next : coldest.points) {
        bath.add(next.at, next.value);
        const auto fall = fall_of(setup, bath, full);
        if (!fall || safety::decide(*fall, rules).action == safety::FallAction::throw_away) {
            break;
        }
        late.until = allowed + next.at;
    }
    late.until = Duration{units::round_to(late.until.si(), 900.0, units::Toward::down)};
    return late.until > allowed ? std::optional(late) : std::nullopt;
}

LateStep late_step(const Plan& plan, Duration late) {
    if (late <= units::minutes(facts::facts().spread("top-up.late").high)) {
        return LateStep::none;
    }
    return plan.late_pour && late <= plan.late_pour->until ? LateStep::boil_and_eat : LateStep::throw_away;
}

LateStep late_step(const Plan& plan, const WhatIfAnswer& answer) {
    if (!answer.what->fire_out || plan.top_ups.empty()) {
        return LateStep::none;
    }
    return late_step(plan, *answer.what->fire_out + plan.round);
}

}  // namespace holdwater::plan
