// SPDX-License-Identifier: MIT
#include "units/print.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <limits>

namespace holdwater::units {
namespace {

constexpr std::string_view no_break_space = "\u00A0";

/// As many decimals as a step of this size needs: 0.5 -> 1, 0.25 -> 2, 5 -> 0.
int decimals_for(double step) {
    int decimals = 0;
    while (decimals < 6 && std::abs(step - std::round(step)) > 1e-9) {
        step *= 10.0;
        ++decimals;
    }
    return decimals;
}

std::string rounded(double value, double step, Toward toward) {
    return number(round_to(value, step, toward), decimals_for(step));
}

std::string joined(System system, const std::string& metric, const std::string& us) {
    switch (system) {
        case System::metric:
            return metric;
        case System::us:
            return us;
        case System::both:
            return fmt::format("{} ({})", metric, us);
        case System::us_first:
            return fmt::format("{} ({})", us, metric);
    }
    return metric;
}

std::string with_unit(const std::string& value, std::string_view unit) {
    return fmt::format("{}{}{}", value, no_break_space, unit);
}

/// A degree further where a figure that follows from another one fell on the unsafe side of the true value.
double stepped_on(double value, double truth, double step, Toward toward) {
    if (toward == Toward::up && value < truth - 1e-9) {
        return value + step;
    }
    return toward == Toward::down && value > truth + 1e-9 ? value - step : value;
}

/// Inches to an eighth: 3 3/8 in. Eighths are written as people read a tape, with the fraction reduced.
std::string inches(double value, Toward toward) {
    const double rounded_inches = round_to(value, 0.125, toward);
    const double whole = std::floor(std::abs(rounded_inches));
    const double part = (std::abs(rounded_inches) - whole) * 8.0;  // 0 to 7, and no number for what is infinite
    constexpr std::array<std::string_view, 8> fractions{"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"};
    if (!(part >= 1.0)) {
        return number(rounded_inches, 0);
    }
    const std::string_view fraction = fractions[static_cast<std::size_t>(part)];
    const std::string_view sign = rounded_inches < 0.0 ? "-" : "";
    return whole == 0.0 ? fmt::format("{}{}", sign, fraction)
                        : fmt::format("{}{:.0f}{}{}", sign, whole, no_break_space, fraction);
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
    std::string text = fmt::format("{:.{}f}", value, decimals);
    if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos) {
        text.erase(0, 1);
    }
    return text;
}

std::string print(Temperature t, System system, Rounding r) {
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
    return joined(system, with_unit(number(metric, decimals_for(r.step)), "°C"), with_unit(number(us, 0), "°F"));
}

std::string print(TemperatureDifference d, System system, Rounding r) {
    return joined(system, with_unit(rounded(d.si(), r.step, r.toward), "K"),
                  with_unit(rounded(d.si() * 1.8, 1.0, r.toward), "°F"));
}

std::string print(Length l, System system, Rounding r) {
    return joined(system, with_unit(rounded(in_millimetres(l), r.step, r.toward), "mm"),
                  with_unit(inches(in_inches(l), r.toward), "in"));
}

std::string print(Volume v, System system, Rounding r) {
    constexpr double litres_per_quart = 0.946352946;  // 231 cubic inches / 4, exact by definition
    return joined(system, with_unit(rounded(in_litres(v), r.step, r.toward), "L"),
                  with_unit(rounded(in_litres(v) / litres_per_quart, r.step, r.toward), "qt"));
}

std::string print(Mass m, System system, Rounding r) {
    constexpr double kilograms_per_pound = 0.45359237;  // exact by definition
    return joined(system, with_unit(rounded(m.si(), r.step, r.toward), "kg"),
                  with_unit(rounded(m.si() / kilograms_per_pound, r.step, r.toward), "lb"));
}

std::string print(Duration d, Toward toward) {
    const double rounded_minutes = round_to(in_minutes(d), 1.0, toward);
    const double total = std::abs(rounded_minutes);
    const std::string_view sign = rounded_minutes < 0.0 ? "-" : "";
    if (total < 60.0) {
        return with_unit(fmt::format("{}{:.0f}", sign, total), "min");
    }
    const double rest = std::isfinite(total) ? std::fmod(total, 60.0) : 0.0;
    const double whole = (total - rest) / 60.0;
    if (rest == 0.0) {
        return with_unit(fmt::format("{}{:.0f}", sign, whole), "h");
    }
    return fmt::format("{}{:.0f}{}h{}{:02.0f}", sign, whole, no_break_space, no_break_space, rest);
}

}  // namespace holdwater::units
