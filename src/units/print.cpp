// SPDX-License-Identifier: MIT
#include "units/print.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <limits>

namespace holdwater::units {
namespace {

/// As many decimals as a step of this size needs: 0.5 -> 1, 0.25 -> 2, 5 -> 0.
int decimals_for(double step) {
    int decimals = 0;
    while (decimals < 6 && std::abs(step - std::round(step)) > 1e-9) {
        step *= 10.0;
        ++decimals;
    }
    return decimals;
}

/// A degree further where a figure that follows from another one fell on the unsafe side of the true value.
double stepped_on(double value, double truth, double step, Toward toward) {
    if (toward == Toward::up && value < truth - 1e-9) {
        return value + step;
    }
    return toward == Toward::down && value > truth + 1e-9 ? value - step : value;
}

/// Inches to an eighth.
Figure inches(double value, Toward toward) {
    return {round_to(value, 0.125, toward), 0, "in", Figure::Form::eighths};
}

/// Hours and minutes with something between figure and unit.
std::string hours_and_minutes(Duration d, Toward toward, std::string_view space) {
    const double rounded_minutes = round_to(in_minutes(d), 1.0, toward);
    const double total = std::abs(rounded_minutes);
    const std::string_view sign = rounded_minutes < 0.0 ? "-" : "";
    if (total < 60.0) {
        return fmt::format("{}{:.0f}{}min", sign, total, space);
    }
    const double rest = std::isfinite(total) ? std::fmod(total, 60.0) : 0.0;
    const double whole = (total - rest) / 60.0;
    if (rest == 0.0) {
        return fmt::format("{}{:.0f}{}h", sign, whole, space);
    }
    return fmt::format("{}{:.0f}{}h{}{:02.0f}", sign, whole, space, space, rest);
}

}  // namespace

const std::vector<std::string_view>& system_names() {
    static const std::vector<std::string_view> names = {"metric", "us", "both", "us-first"};
    return names;
}

std::string_view name_of(System system) {
    return system_names()[static_cast<std::size_t>(system)];
}

System system_named(std::string_view name) {
    constexpr std::array<System, 4> systems{System::metric, System::us, System::both, System::us_first};
    for (const System system : systems) {
        if (name_of(system) == name) {
            return system;
        }
    }
    return System::both;
}

double round_to(double value, double step, Toward toward) {
    const double multiples = value / step;
    const double whole = std::round(multiples);
    constexpr double all_whole = 1.0 / std::numeric_limits<double>::epsilon();  // from here on no double has decimals
    if (!(std::abs(multiples) < all_whole)) {
        return value;
    }
    if (std::abs(multiples - whole) < 1e-9 || toward == Toward::nearest) {
        return whole * step;
    }
    return (toward == Toward::up ? std::ceil(multiples) : std::floor(multiples)) * step;
}

std::string number(double value, int decimals) {
    return written(decimal(value, decimals));
}

Figure figure(double value, double step, Toward toward, std::string_view unit) {
    return {round_to(value, step, toward), decimals_for(step), unit, Figure::Form::decimal};
}

Amount amount(Temperature t, System system, Rounding r) {
    double metric = round_to(t.celsius(), r.step, r.toward);
    double us = round_to(t.fahrenheit(), 1.0, r.toward);
    if (system == System::both) {
        // From the printed Celsius, so that the same 55 °C is the same °F on every card; a degree further if that fell
        // on the unsafe side of the true value.
        us = round_to(celsius(metric).fahrenheit(), 1.0, Toward::nearest);
        us = stepped_on(us, t.fahrenheit(), 1.0, r.toward);
    } else if (system == System::us_first) {
        metric = round_to(fahrenheit(us).celsius(), r.step, Toward::nearest);
        metric = stepped_on(metric, t.celsius(), r.step, r.toward);
    }
    return in_order(system, {metric, decimals_for(r.step), "°C"}, {us, 0, "°F"});
}

Amount amount(TemperatureDifference d, System system, Rounding r) {
    return in_order(system, figure(d.si(), r.step, r.toward, "K"), figure(d.si() * 1.8, 1.0, r.toward, "°F"));
}

Amount amount(Length l, System system, Rounding r) {
    return in_order(system, figure(in_millimetres(l), r.step, r.toward, "mm"), inches(in_inches(l), r.toward));
}

Amount amount(Volume v, System system, Rounding r) {
    constexpr double litres_per_quart = 0.946352946;  // 231 cubic inches / 4, exact by definition
    return in_order(system, figure(in_litres(v), r.step, r.toward, "L"),
                    figure(in_litres(v) / litres_per_quart, r.step, r.toward, "qt"));
}

Amount amount(Mass m, System system, Rounding r) {
    constexpr double kilograms_per_pound = 0.45359237;  // exact by definition
    return in_order(system, figure(m.si(), r.step, r.toward, "kg"),
                    figure(m.si() / kilograms_per_pound, r.step, r.toward, "lb"));
}

std::string print(Temperature t, System system, Rounding r) {
    return written(amount(t, system, r));
}
std::string print(TemperatureDifference d, System system, Rounding r) {
    return written(amount(d, system, r));
}
std::string print(Length l, System system, Rounding r) {
    return written(amount(l, system, r));
}
std::string print(Volume v, System system, Rounding r) {
    return written(amount(v, system, r));
}
std::string print(Mass m, System system, Rounding r) {
    return written(amount(m, system, r));
}

std::string print(Duration d, Toward toward) {
    return hours_and_minutes(d, toward, "\u00A0");
}

std::string print_tight(Duration d, Toward toward) {
    return hours_and_minutes(d, toward, "");
}

}  // namespace holdwater::units
