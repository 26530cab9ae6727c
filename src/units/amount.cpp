// SPDX-License-Identifier: MIT
#include "units/amount.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdwater::units {
namespace {

/// A whole number of eighths of an inch, the fraction reduced.
std::string eighths(double value) {
    const double whole = std::floor(std::abs(value));
    const double part = (std::abs(value) - whole) * 8.0;  // 0 to 7, and no number for what is infinite
    constexpr std::array<std::string_view, 8> fractions{"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"};
    if (!(part >= 1.0)) {
        return fmt::format("{:.0f}", value);
    }
    const std::string_view fraction = fractions[static_cast<std::size_t>(part)];
    const std::string_view sign = value < 0.0 ? "-" : "";
    return whole == 0.0 ? fmt::format("{}{}", sign, fraction) : fmt::format("{}{:.0f}\u00A0{}", sign, whole, fraction);
}

std::string digits_of(const Figure& figure) {
    switch (figure.form) {
        case Figure::Form::eighths:
            return eighths(figure.value);
        case Figure::Form::significant:
            return fmt::format("{:.{}g}", figure.value, figure.digits);
        case Figure::Form::decimal:
            break;
    }
    return fmt::format("{:.{}f}", figure.value, figure.digits);
}

Figure without_unit(Figure figure) {
    figure.unit = {};
    return figure;
}

}  // namespace

Amount Amount::without_units() const {
    return {without_unit(value), second ? std::optional(without_unit(*second)) : std::nullopt};
}

Amount in_order(System system, const Figure& metric, const Figure& us) {
    switch (system) {
        case System::metric:
            return metric;
        case System::us:
            return us;
        case System::both:
            return {metric, us};
        case System::us_first:
            return {us, metric};
    }
    return metric;
}

Figure decimal(double value, int decimals) {
    return {value, decimals, {}, Figure::Form::decimal};
}

Figure significant(double value, int digits, std::string_view unit) {
    return {value, digits, unit, Figure::Form::significant};
}

std::string written(const Figure& figure, Numerals numerals) {
    std::string text = digits_of(figure);
    if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos) {
        text.erase(0, 1);
    }
    std::replace(text.begin(), text.end(), '.', numerals.decimal_mark);
    return figure.unit.empty() ? text : fmt::format("{}\u00A0{}", text, figure.unit);
}

std::string written(const Amount& amount, Numerals numerals) {
    const std::string first = written(amount.value, numerals);
    return amount.second ? fmt::format("{} ({})", first, written(*amount.second, numerals)) : first;
}

std::string written(LocalTime time, Numerals numerals) {
    return numerals.twelve_hours ? time.clock_12() : time.clock_24();
}

}  // namespace holdwater::units
