// SPDX-License-Identifier: MIT
#include "plan/provisions/ice.hpp"

#include "answer/gauge/box_loss.hpp"
#include "answer/hold/piece.hpp"
#include "facts/facts.hpp"
#include "heat/box.hpp"
#include "heat/water.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/setup.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <variant>
#include <vector>

namespace holdwater::plan {
namespace {

/// Heat [J] that the ice must take up. Through the wall as into a box at 0 C throughout, which is as much as it can be;
/// out of food and liner down to raw.cold. Food that starts colder than that gets no credit for it.
double heat_to_take(const IceQuestion& q) {
    const units::Temperature cold = facts::facts().temperature("raw.cold");
    if (q.air <= cold && (q.waits_air <= cold || q.waits.si() <= 0.0) && q.food_start <= cold) {
        return 0.0;
    }
    const double through_wall = q.loss.si() * std::max(q.air.celsius(), 0.0) * q.takes.si() +
                                q.waits_loss.si() * std::max(q.waits_air.celsius(), 0.0) * q.waits.si();
    const double from_food = q.food.si() * std::max((q.food_start - cold).si(), 0.0);
    const double from_liner = q.liner.si() * std::max((q.air - cold).si(), 0.0);
    return through_wall + from_food + from_liner;
}

units::HeatCapacity capacity_of(const Setup& setup) {
    units::HeatCapacity sum;
    for (const FoodSetup& food : setup.foods) {
        if (food.standard.kept_hot) {
            continue;  // it comes from the fire
        }
        const auto properties = answer::properties_of(food.piece, heat::Bound::likely);
        sum += units::HeatCapacity{food.piece.mass.si() * properties.specific_heat.si()};
    }
    return sum;
}

units::Temperature warmest_start(const Setup& setup) {
    std::optional<units::Temperature> warmest;
    for (const FoodSetup& food : setup.foods) {
        if (!food.standard.kept_hot) {
            warmest = std::max(warmest.value_or(food.piece.start), food.piece.start);
        }
    }
    return warmest.value_or(facts::facts().temperature("raw.cold"));
}

/// When the way is over: fire and box are there, but the fire may be lit later.
units::LocalTime waits_from(const Setup& setup) {
    return setup.trip->first.value_or(setup.trip->from);
}

/// Until the last of the food goes in.
units::Duration longest_wait(const Setup& setup, const Plan& plan) {
    units::Duration waits{0};
    for (const FoodPlan& food : plan.foods) {
        waits = std::max(waits, food.in.since(waits_from(setup)));
    }
    return waits;
}

/// The air from then on, for so long, each half hour.
std::vector<units::Temperature> air_while_waiting(const Setup& setup, units::Duration until) {
    std::vector<units::Temperature> air;
    for (units::Duration t{0}; t <= until; t += units::minutes(30)) {
        air.push_back(setup.trip->weather.air_at(waits_from(setup).after(t)));
    }
    return air;
}

units::Temperature warmest_air(const Setup& setup, units::Duration until) {
    const auto air = air_while_waiting(setup, until);
    return *std::max_element(air.begin(), air.end());
}

}  // namespace

units::Mass ice_drained(const IceQuestion& question) {
    return units::Mass{heat_to_take(question) / facts::facts().value("ice.fusion")};
}

units::Mass ice_undrained(const IceQuestion& question) {
    const double warming = heat::water_specific_heat().si() * facts::facts().temperature("raw.cold").celsius();
    return units::Mass{heat_to_take(question) / (facts::facts().value("ice.fusion") + warming)};
}

namespace {

using Losses = Between<units::HeatLoss>;

/// A poor box or bag, where the trip names none.
Losses planning_loss() {
    const facts::Figure& figure = facts::facts().figure("journey.box-loss");
    return {units::HeatLoss{figure.low}, units::HeatLoss{figure.value}, units::HeatLoss{figure.high}};
}

Losses losses_of(const heat::BoxLoss& loss) {
    return {loss.low, loss.likely, loss.high};
}

/// Which box the raw food is in on the way, and which while it waits: each box of a trip becomes a bath, so that what
/// travelled in one waits in another.
void choose_box(const Setup& setup, Ice& ice, Losses& waiting, units::HeatCapacity& liner) {
    const trip::Journey& journey = *setup.trip->journey;
    ice.loss = waiting = planning_loss();
    liner = setup.liner;  // of a box that nobody measured: as of this one
    if (const auto* given = std::get_if<units::HeatLoss>(&journey.box)) {
        const facts::Spread& spread = facts::facts().spread("box-loss");
        ice.box = IceBox::given;
        ice.loss = waiting = Losses{*given * spread.low, *given, *given * spread.high};
    } else if (const auto* named = std::get_if<trip::Box>(&journey.box)) {
        const units::HeatCapacity own = heat::liner_of(named->inside);
        const auto loss = answer::loss_of(*named, own);
        if (!loss) {
            return;  // its test tells nothing: a poor one then
        }
        ice.box = IceBox::named;
        ice.name = named->name;
        ice.loss = losses_of(*loss);
        ice.room = heat::volume_of(named->inside);
        liner = own;
        ice.waits_elsewhere = true;  // every box of a trip is filled with hot water
    }
}

}  // namespace

std::optional<Ice> ice_of(const Setup& setup, const Plan& plan) {
    if (!setup.trip->journey) {
        return std::nullopt;
    }
    const facts::Facts& facts = facts::facts();
    const trip::Journey& journey = *setup.trip->journey;
    const double wind = heat::wind_factor(heat::wind_position(facts::Wind::breezy));
    Ice ice;
    Losses waiting;
    IceQuestion question;
    choose_box(setup, ice, waiting, question.liner);
    question.air = journey.air;
    question.takes = journey.takes;
    question.food = capacity_of(setup);
    question.food_start = warmest_start(setup);
    question.waits = longest_wait(setup, plan);
    question.waits_air = warmest_air(setup, question.waits);
    const auto in_box = [&](units::HeatLoss way, units::HeatLoss wait) {
        question.loss = way * wind;
        question.waits_loss = wait * wind;
    };
    in_box(ice.loss.likely, waiting.likely);
    ice.drained.likely = ice_drained(question);
    in_box(ice.loss.low, waiting.low);
    ice.drained.low = ice_drained(question);
    in_box(ice.loss.high, waiting.high);
    question.air = journey.air + units::kelvins(facts.spread("outside").high);
    question.waits_air = question.waits_air + units::kelvins(facts.spread("outside").high);
    question.food_start = question.food_start + units::kelvins(facts.spread("start").high);
    ice.drained.high = ice_drained(question);
    ice.undrained = ice_undrained(question);
    ice.card = units::Mass{units::round_to(ice.drained.high.si(), facts.value("journey.step"), units::Toward::up)};
    ice.takes_up = units::Volume{ice.card.si() / facts.value("journey.ice-bulk")};
    ice.takes = question.takes + question.waits;
    ice.food = setup.food_volume;
    ice.fits = !ice.room || ice.takes_up + ice.food <= *ice.room;
    return ice;
}

std::optional<units::Temperature> frost_of(const Setup& setup, const Plan& plan) {
    const units::Duration waits = longest_wait(setup, plan);
    const auto air = air_while_waiting(setup, waits);
    units::Temperature coldest = *std::min_element(air.begin(), air.end());
    if (setup.trip->journey) {
        coldest = std::min(coldest, setup.trip->journey->air);
    }
    coldest = coldest + units::kelvins(facts::facts().spread("outside").low);
    return coldest < facts::facts().temperature("raw.freezes") ? std::optional(coldest) : std::nullopt;
}

}  // namespace holdwater::plan
