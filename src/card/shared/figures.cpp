// SPDX-License-Identifier: MIT
#include "card/shared/figures.hpp"

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
    return units::first_of(system) == System::us ? units::fahrenheit(units::round_to(t.fahrenheit(), 1.0, toward))
                                                 : units::celsius(units::round_to(t.celsius(), 1.0, toward));
}

}  // namespace

std::string degrees(units::Temperature t, System system, Toward toward) {
    // A °C is wide: rounded up from a °F that is only meant nearly, it would lie a whole degree off.
    const bool nearly = system == System::us_first && toward == Toward::nearest;
    return units::print(whole(t, system, toward), system, {1.0, nearly ? Toward::nearest : Toward::up});
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
    const bool us_first = units::first_of(system) == System::us;
    const std::string& first = us_first ? us : metric;
    return units::two(system) ? fmt::format("{} ({})", first, us_first ? metric : us) : first;
}

bool worth_a_pour(units::Volume litres) {
    return units::in_litres(litres) >= 0.25;
}

bool is_swap(const plan::TopUp& top_up) { return top_up.boiling - top_up.out < units::litres(1); }

bool CardWriter::any_finish() const {
    return std::any_of(plan.foods.begin(), plan.foods.end(),
                       [](const plan::FoodPlan& food) { return food.standard.finish.has_value(); });
}

std::string CardWriter::full() const {
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

std::string CardWriter::for_hold(units::Duration hold) const {
    return hold.si() > 0 ? words.text("plan.finish-hold", {{"hold", hold_time(hold)}}) : "";
}

std::string CardWriter::latest_pour() const {
    return units::print(units::minutes(facts::facts().spread("top-up.late").high), Toward::down);
}

std::string CardWriter::children_away() const {
    return words.text(units::first_of(system()) == units::System::us ? "deck.away-us" : "deck.away");
}

std::string CardWriter::at_least(units::Temperature t) const {
    return degrees(t, system(), Toward::up);
}
std::string CardWriter::at_most(units::Temperature t) const {
    return units::print(whole(t, system(), Toward::down), system(), {1.0, Toward::down});
}
std::string CardWriter::about(units::Temperature t) const {
    return degrees(t, system(), Toward::nearest);
}

std::string CardWriter::thickness(units::Length l) const {
    const std::string inches = units::print(l, System::us, {1.0, Toward::down});
    const std::string metric = units::print(l, System::metric);
    const bool us_first = units::first_of(system()) == System::us;
    const std::string& first = us_first ? inches : metric;
    return units::two(system()) ? fmt::format("{} ({})", first, us_first ? metric : inches) : first;
}

std::string CardWriter::litres(units::Volume v, Toward toward) const {
    return units::print(v, system(), {0.5, toward});
}

std::string CardWriter::litres_short(units::Volume v, Toward toward) const {
    return units::print(v, units::first_of(system()), {0.5, toward});
}

units::Duration CardWriter::alone() const {
    const units::Duration longest = plan.night.longest;
    return reads() || !plan.top_ups.empty() ? longest : std::min(longest, plan.waits_until.since(plan.fill.food_in));
}

std::string CardWriter::one_boil(units::Volume v) const {
    if (!reads()) {
        return litres_short(v);
    }
    const trip::Fire& fire = plan.trip->fire;
    const units::Volume batch = fire.pot * (fire.usable * fire.pots);
    const bool close = v > batch - units::litres(0.5);  // so that rounding could pass what the pots give
    return close ? measured(v, Toward::up) : litres_short(v, Toward::up);
}

std::string CardWriter::measured(units::Volume v, Toward toward) const {
    return units::print(v, units::first_of(system()), {0.1, toward});
}

std::string CardWriter::short_degrees(units::Temperature t, Toward toward) const {
    return units::print(t, units::first_of(system()), {1.0, toward});
}

std::string CardWriter::may_leave(units::Duration d) const {
    return units::print(units::Duration{units::round_to(d.si(), 900.0, Toward::down)});
}

std::string CardWriter::must_hold(units::Duration d) const {
    return units::print(units::Duration{units::round_to(d.si(), 300.0, Toward::up)});
}

std::string CardWriter::clock_only(units::LocalTime t) const {
    return words.twelve_hours(units::first_of(system()) == System::us) ? t.clock_12() : t.clock_24();
}

std::string CardWriter::clock(units::LocalTime t) const {
    const auto day = [](units::LocalTime m) { return (m.seconds() - m.second_of_day()) / 86400; };
    if (day(plan.trip->from) == day(plan.trip->serve)) {
        return clock_only(t);
    }
    return fmt::format("{}\u00A0{}", words.text(fmt::format("deck.day-{}", t.weekday())), clock_only(t));
}

KeyNumber CardWriter::key(const std::string& label, units::Temperature t, Toward toward, const std::string& aside) const {
    return key(label, degrees(t, system(), toward), aside);
}

KeyNumber CardWriter::key(const std::string& label, const std::string& printed, const std::string& aside) const {
    constexpr std::size_t space = 2;  // bytes of a no-break space
    const auto unit = printed.find("\u00A0");
    const auto open = printed.find(" (");
    KeyNumber number{label, printed.substr(0, unit), "", aside};
    if (unit != std::string::npos) {
        const std::size_t from = unit + space;
        number.unit = printed.substr(from, open == std::string::npos ? std::string::npos : open - from);
    }
    if (open != std::string::npos) {
        number.aside = printed.substr(open + 2, printed.size() - open - 3) + (aside.empty() ? "" : ", " + aside);
    }
    return number;
}

}  // namespace holdwater::card
