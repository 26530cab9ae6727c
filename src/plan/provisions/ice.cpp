// SPDX-License-Identifier: MIT
#include "plan/provisions/ice.hpp"

#include "answer/hold/piece.hpp"
#include "facts/facts.hpp"
#include "heat/box.hpp"
#include "heat/water.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/setup.hpp"
#include "units/print.hpp"

#include <algorithm>

namespace holdwater::plan {
namespace {

/// Heat [J] that the ice must take up. Through the wall as into a box at 0 C throughout, which is as much as it can be;
/// out of food and liner down to raw.cold. Food that starts colder than that gets no credit for it.
double heat_to_take(const IceQuestion& q) {
    const units::Temperature cold = facts::facts().temperature("raw.cold");
    if (q.air <= cold && (q.waits_air <= cold || q.waits.si() <= 0.0) && q.food_start <= cold) {
        return 0.0;
    }
    const double through_wall = q.loss.si() * (std::max(q.air.celsius(), 0.0) * q.takes.si() +
                                               std::max(q.waits_air.celsius(), 0.0) * q.waits.si());
    const double from_food = q.food.si() * std::max((q.food_start - cold).si(), 0.0);
    const double from_liner = q.liner.si() * std::max((q.air - cold).si(), 0.0);
    return through_wall + from_food + from_liner;
}

units::HeatCapacity capacity_of(const Setup& setup) {
    units::HeatCapacity sum;
    for (const FoodSetup& food : setup.foods) {
        const auto properties = answer::properties_of(food.piece, heat::Bound::likely);
        sum += units::HeatCapacity{food.piece.mass.si() * properties.specific_heat.si()};
    }
    return sum;
}

units::Temperature warmest_start(const Setup& setup) {
    units::Temperature warmest = setup.foods.front().piece.start;
    for (const FoodSetup& food : setup.foods) {
        warmest = std::max(warmest, food.piece.start);
    }
    return warmest;
}

/// From the first fire on, for so long.
units::Temperature warmest_air(const Setup& setup, units::Duration until) {
    units::Temperature warmest = setup.outside.at(units::Duration{0});
    for (units::Duration t{0}; t <= until; t += units::minutes(30)) {
        warmest = std::max(warmest, setup.outside.at(t));
    }
    return warmest;
}

}  // namespace

units::Mass ice_drained(const IceQuestion& question) {
    return units::Mass{heat_to_take(question) / facts::facts().value("ice.fusion")};
}

units::Mass ice_undrained(const IceQuestion& question) {
    const double warming = heat::water_specific_heat().si() * facts::facts().temperature("raw.cold").celsius();
    return units::Mass{heat_to_take(question) / (facts::facts().value("ice.fusion") + warming)};
}

std::optional<Ice> ice_of(const Setup& setup, const Plan& plan) {
    if (!setup.trip->journey) {
        return std::nullopt;
    }
    const facts::Facts& facts = facts::facts();
    const trip::Journey& journey = *setup.trip->journey;
    const double wind = heat::wind_factor(heat::wind_position(facts::Wind::breezy));
    IceQuestion question{setup.loss.likely * wind, journey.air, journey.takes,      capacity_of(setup),
                         warmest_start(setup),     setup.liner, units::Duration{0}, journey.air};
    for (const FoodPlan& food : plan.foods) {
        question.waits = std::max(question.waits, food.in.since(setup.trip->from));
    }
    question.waits_air = warmest_air(setup, question.waits);
    Ice ice;
    ice.drained.likely = ice_drained(question);
    question.loss = setup.loss.low * wind;
    ice.drained.low = ice_drained(question);
    question.loss = setup.loss.high * wind;
    question.air = journey.air + units::kelvins(facts.spread("outside").high);
    question.waits_air = question.waits_air + units::kelvins(facts.spread("outside").high);
    question.food_start = question.food_start + units::kelvins(facts.spread("start").high);
    ice.drained.high = ice_drained(question);
    ice.undrained = ice_undrained(question);
    ice.card = units::Mass{units::round_to(ice.drained.high.si(), facts.value("journey.step"), units::Toward::up)};
    ice.takes_up = units::Volume{ice.card.si() / facts.value("journey.ice-bulk")};
    ice.takes = question.takes + question.waits;
    ice.room = heat::volume_of(setup.box->inside);
    ice.food = setup.food_volume;
    ice.fits = ice.takes_up + ice.food <= ice.room;
    return ice;
}

}  // namespace holdwater::plan
