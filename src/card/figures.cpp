// SPDX-License-Identifier: MIT
#include "card/figures.hpp"

#include <fmt/format.h>

#include <cmath>

#include "units/print.hpp"

namespace holdwater::card {

using units::System;
using units::Toward;

std::string Hand::at_least(units::Temperature t) const { return units::print(t, system(), {1.0, Toward::up}); }
std::string Hand::at_most(units::Temperature t) const { return units::print(t, system(), {1.0, Toward::down}); }
std::string Hand::about(units::Temperature t) const { return units::print(t, system(), {1.0, Toward::nearest}); }

std::string Hand::litres(units::Volume v, Toward toward) const { return units::print(v, system(), {0.5, toward}); }

std::string Hand::litres_short(units::Volume v, Toward toward) const {
    return units::print(v, system() == System::both ? System::metric : system(), {0.5, toward});
}

std::string Hand::short_degrees(units::Temperature t) const {
    return units::print(t, system() == System::both ? System::metric : system(), {1.0, Toward::nearest});
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
        const std::string both_text = units::print(t, System::both, {1.0, toward});
        const auto open = both_text.find('(');
        number.aside = both_text.substr(open + 1, both_text.size() - open - 2) + (aside.empty() ? "" : ", " + aside);
    }
    return number;
}

}  // namespace holdwater::card
