// SPDX-License-Identifier: MIT
#include "card/figures/rounding.hpp"

#include "facts/published.hpp"
#include "plan/result/reading_rows.hpp"
#include "units/whole_degrees.hpp"

#include <fmt/format.h>

#include <cmath>

namespace holdwater::card {

using units::Amount;
using units::System;
using units::Toward;

units::Duration to_five_minutes(units::Duration d) {
    return units::Duration{units::round_to(d.si(), 300.0, Toward::up)};
}

Amount degrees(units::Temperature t, System system, Toward toward) {
    // A °C is wide: rounded up from a °F that is only meant nearly, it would lie a whole degree off.
    const bool nearly = system == System::us_first && toward == Toward::nearest;
    return units::amount(units::whole_degrees(t, system, toward), system, {1.0, nearly ? Toward::nearest : Toward::up});
}

std::string hold_time(units::Duration hold) {
    const bool minutes = hold >= units::minutes(2) || std::abs(std::remainder(hold.si(), 60.0)) < 1e-9;
    return minutes ? units::print(hold, Toward::up) : fmt::format("{:.0f}\u00A0s", std::ceil(hold.si()));
}

Amount small_mass(units::Mass mass, System system, Toward toward) {
    constexpr double kilograms_per_ounce = 0.45359237 / 16.0;  // exact by definition
    return units::in_order(system, {units::round_to(mass.si() * 1e3, 5.0, toward), 0, "g"},
                           {units::round_to(mass.si() / kilograms_per_ounce, 0.5, toward), 1, "oz"});
}

namespace {
constexpr double half_a_unit = 0.5;  // of a litre or a quart
}

units::Volume step_of_litres(System system) {
    const double of_a_litre = units::amount(units::litres(1), units::first_of(system), {1e-9}).value.value;
    return units::litres(half_a_unit / of_a_litre);
}

Amount half_litres(units::Volume v, System system, Toward toward) {
    return units::amount(v, system, {half_a_unit, toward});
}

Amount tenth_litres(units::Volume v, System system, Toward toward) {
    return units::amount(v, system, {0.1, toward});
}

units::Figure kill_margin(const plan::FoodPlan& food) {
    return units::figure(food.kill.low, 0.1, Toward::down);
}

std::string SafeSide::latest_pour() const {
    return units::print(units::minutes(facts::facts().spread("top-up.late").high), Toward::down);
}

Amount SafeSide::at_least(units::Temperature t) const {
    return degrees(t, system(), Toward::up);
}
Amount SafeSide::limit(units::Temperature t, Toward otherwise) const {
    return facts::published(t, system(), otherwise);
}
Amount SafeSide::limit_short(units::Temperature t, Toward otherwise) const {
    return facts::published(t, units::first_of(system()), otherwise);
}
Amount SafeSide::at_most(units::Temperature t) const {
    return units::amount(units::whole_degrees(t, system(), Toward::down), system(), {1.0, Toward::down});
}
Amount SafeSide::about(units::Temperature t) const {
    return degrees(t, system(), Toward::nearest);
}

Amount SafeSide::thickness(units::Length l) const {
    return units::in_order(system(), units::amount(l, System::metric).value,
                           units::amount(l, System::us, {1.0, Toward::down}).value);
}

Amount SafeSide::litres(units::Volume v, Toward toward) const {
    return half_litres(v, system(), toward);
}

Amount SafeSide::litres_short(units::Volume v, Toward toward) const {
    return half_litres(v, units::first_of(system()), toward);
}

Amount SafeSide::water_line(units::Length below_rim) const {
    return units::amount(below_rim, units::first_of(system()), {1.0, Toward::up});
}

Amount SafeSide::one_boil(units::Volume v) const {
    if (!reads()) {
        return litres_short(v);
    }
    const bool close =
        v > plan::pots_give(plan) - step_of_litres(system());  // so that rounding could pass what the pots give
    return close ? measured(v, Toward::up) : litres_short(v, Toward::up);
}

Amount SafeSide::measured(units::Volume v, Toward toward) const {
    return tenth_litres(v, units::first_of(system()), toward);
}

Amount SafeSide::short_degrees(units::Temperature t, Toward toward) const {
    return units::amount(t, units::first_of(system()), {1.0, toward});
}

std::string SafeSide::may_leave(units::Duration d) const {
    return units::print(units::Duration{units::round_to(d.si(), 900.0, Toward::down)});
}

std::string SafeSide::read_again(units::Duration d) const {
    return units::print(units::Duration{units::round_to(d.si(), 300.0, Toward::down)});
}

std::string SafeSide::must_hold(units::Duration d) const {
    return units::print(to_five_minutes(d));
}

std::string SafeSide::must_hold_tight(units::Duration d) const {
    return units::print_tight(to_five_minutes(d));
}

std::string SafeSide::clock_only(units::LocalTime t) const {
    return units::written(t, words.numerals(system()));
}

std::string SafeSide::clock(units::LocalTime t) const {
    const auto day = [](units::LocalTime m) { return (m.seconds() - m.second_of_day()) / 86400; };
    if (day(plan.trip->from) == day(plan.trip->serve)) {
        return clock_only(t);
    }
    return fmt::format("{}\u00A0{}", words.text(fmt::format("deck.day-{}", t.weekday())), clock_only(t));
}

}  // namespace holdwater::card
