// SPDX-License-Identifier: MIT
#include "card/figures.hpp"

#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::card {

using units::System;
using units::Toward;

namespace {

/// A temperature to a whole degree of the system that is printed first.
units::Temperature whole(units::Temperature t, System system, Toward toward) {
    return system == System::us ? units::fahrenheit(units::round_to(t.fahrenheit(), 1.0, toward))
                                : units::celsius(units::round_to(t.celsius(), 1.0, toward));
}

}  // namespace

std::string degrees(units::Temperature t, System system, Toward toward) {
    return units::print(whole(t, system, toward), system, {1.0, Toward::up});
}

std::string hold_time(units::Duration hold) {
    const bool minutes = hold >= units::minutes(2) || std::abs(std::remainder(hold.si(), 60.0)) < 1e-9;
    return minutes ? units::print(hold, Toward::up) : fmt::format("{:.0f}\u00A0s", std::ceil(hold.si()));
}

std::string small_mass(units::Mass mass, System system, Toward toward) {
    constexpr double kilograms_per_ounce = 0.45359237 / 16.0;  // exact by definition
    const std::string metric =
        fmt::format("{}\u00A0g", units::number(units::round_to(mass.si() * 1e3, 5.0, toward), 0));
    const std::string us =
        fmt::format("{}\u00A0oz", units::number(units::round_to(mass.si() / kilograms_per_ounce, 0.5, toward), 1));
    return system == System::metric ? metric : system == System::us ? us : fmt::format("{} ({})", metric, us);
}

bool worth_a_pour(units::Volume litres) {
    return units::in_litres(litres) >= 0.25;
}

bool Hand::any_finish() const {
    return std::any_of(plan.foods.begin(), plan.foods.end(),
                       [](const plan::FoodPlan& food) { return food.standard.finish.has_value(); });
}

std::string Hand::full() const {
    units::Temperature core = facts::facts().temperature("reheat");
    units::Duration hold{0};
    for (const plan::FoodPlan& food : plan.foods) {
        if (food.standard.finish && food.standard.finish->core > core) {
            core = food.standard.finish->core;
            hold = food.standard.finish->hold;
        }
    }
    return at_least(core) + for_hold(hold);
}

std::string Hand::for_hold(units::Duration hold) const {
    return hold.si() > 0 ? words.text("plan.finish-hold", {{"hold", hold_time(hold)}}) : "";
}

std::string Hand::latest_pour() const {
    return units::print(units::minutes(facts::facts().spread("top-up.late").high), Toward::down);
}

std::string Hand::at_least(units::Temperature t) const {
    return degrees(t, system(), Toward::up);
}
std::string Hand::at_most(units::Temperature t) const {
    return units::print(whole(t, system(), Toward::down), system(), {1.0, Toward::down});
}
std::string Hand::about(units::Temperature t) const {
    return degrees(t, system(), Toward::nearest);
}

std::string Hand::thickness(units::Length l) const {
    const std::string inches = units::print(l, System::us, {1.0, Toward::down});
    if (system() == System::us) {
        return inches;
    }
    const std::string metric = units::print(l, System::metric);
    return system() == System::metric ? metric : metric + " (" + inches + ")";
}

std::string Hand::litres(units::Volume v, Toward toward) const {
    return units::print(v, system(), {0.5, toward});
}

std::string Hand::litres_short(units::Volume v, Toward toward) const {
    return units::print(v, system() == System::both ? System::metric : system(), {0.5, toward});
}

std::string Hand::short_degrees(units::Temperature t) const {
    return degrees(t, system() == System::both ? System::metric : system(), Toward::nearest);
}

std::string Hand::may_leave(units::Duration d) const {
    return units::print(units::Duration{units::round_to(d.si(), 900.0, Toward::down)});
}

std::string Hand::must_hold(units::Duration d) const {
    return units::print(units::Duration{units::round_to(d.si(), 300.0, Toward::up)});
}

std::string Hand::clock_only(units::LocalTime t) const {
    return system() == System::us ? t.clock_12() : t.clock_24();
}

std::string Hand::clock(units::LocalTime t) const {
    const auto day = [](units::LocalTime m) { return (m.seconds() - m.second_of_day()) / 86400; };
    if (day(plan.trip->from) == day(plan.trip->serve)) {
        return clock_only(t);
    }
    return fmt::format("{}\u00A0{}", words.text(fmt::format("deck.day-{}", t.weekday())), clock_only(t));
}

KeyNumber Hand::key(const std::string& label, units::Temperature t, Toward toward, const std::string& aside) const {
    const bool us = system() == System::us;
    const double value = us ? t.fahrenheit() : t.celsius();
    KeyNumber number{label, units::number(units::round_to(value, 1.0, toward), 0), us ? "°F" : "°C", aside};
    if (system() == System::both) {
        const std::string both_text = degrees(t, System::both, toward);
        const auto open = both_text.find('(');
        number.aside = both_text.substr(open + 1, both_text.size() - open - 2) + (aside.empty() ? "" : ", " + aside);
    }
    return number;
}

}  // namespace holdwater::card
