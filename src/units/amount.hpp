// SPDX-License-Identifier: MIT
// Rounded figures with their units, and how a language writes them. A figure stays a number until it is written, so
// that figures alone get the decimal mark of a language, and never a name that a user gave.
#pragma once

#include "units/local_time.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace holdwater::units {

/// How a language writes figures and clock times.
struct Numerals {
    char decimal_mark = '.';    // or ','
    bool twelve_hours = false;  // "4:00 pm"
};

/// A value that is rounded already, in one unit.
struct Figure {
    enum class Form {
        decimal,      // `digits` decimals
        significant,  // `digits` significant digits at most, no noughts at the end
        eighths,      // of an inch: "3 3/8", as people read a tape
    };
    double value = 0.0;
    int digits = 0;
    std::string_view unit;  // "°C", of static storage; empty for a bare number
    Form form = Form::decimal;
};

/// A figure and, where two systems are printed, the same in the second: "63 °C (145 °F)".
struct Amount {
    Figure value;
    std::optional<Figure> second;

    Amount() = default;
    Amount(const Figure& only) : value(only) {}
    Amount(const Figure& first, const std::optional<Figure>& other) : value(first), second(other) {}

    /// For where the unit stands elsewhere: "63 (145)".
    Amount without_units() const;
};

/// `both` prints metric first, `us_first` the same two the other way round.
enum class System { metric, us, both, us_first };

/// The system that is printed first: metric or us. Where there is room for one figure it stands alone.
constexpr System first_of(System system) {
    return system == System::us || system == System::us_first ? System::us : System::metric;
}
constexpr bool two(System system) {
    return system == System::both || system == System::us_first;
}
/// The system beside the first, where two are printed.
constexpr System second_of(System system) {
    return first_of(system) == System::us ? System::metric : System::us;
}

/// The figures of one quantity in the order of a system.
Amount in_order(System system, const Figure& metric, const Figure& us);

/// A bare number with so many decimals.
Figure decimal(double value, int decimals);
/// A number with so many significant digits at most.
Figure significant(double value, int digits = 6, std::string_view unit = {});

/// "63 °C", "3 1/4 in", "2,5"; "-0" is written as "0".
std::string written(const Figure& figure, Numerals numerals = {});
/// "63 °C (145 °F)".
std::string written(const Amount& amount, Numerals numerals = {});
/// "16:00" or "4:00 pm".
std::string written(LocalTime time, Numerals numerals = {});

}  // namespace holdwater::units
