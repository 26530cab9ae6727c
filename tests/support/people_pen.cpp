// SPDX-License-Identifier: MIT
#include "support/people_pen.hpp"

#include <fmt/format.h>

#include <cmath>

namespace holdwater::support {
namespace {

constexpr double mm_in_inch = 25.4;
constexpr double kg_in_pound = 0.45359237;
constexpr double kg_in_ounce = kg_in_pound / 16;
constexpr double litres_in_quart = 0.946352946;
constexpr double metres_in_foot = 0.3048;

double to_step(double value, double step) {
    return std::round(value / step) * step;
}

Written with_unit(double shown, const char* unit, double scale) {
    return {fmt::format("\"{:.6g} {}\"", shown, unit), shown * scale};
}

double fahrenheit(double c) {
    return c * 1.8 + 32.0;
}

double celsius(double f) {
    return (f - 32.0) / 1.8;
}

Written degrees(double c, bool us, double step) {
    if (!us) {
        return with_unit(to_step(c, step), "C", 1.0);
    }
    const double f = to_step(fahrenheit(c), step);
    return {fmt::format("\"{:.6g} F\"", f), celsius(f)};
}

}  // namespace

Written Pen::length(double mm) const {
    if (!us_) {
        constexpr double fine_to = 40.0;
        return with_unit(mm <= fine_to ? std::round(mm) : to_step(mm, 5.0), "mm", 1.0);
    }
    constexpr int parts = 4;
    const int quarters = static_cast<int>(std::round(mm / mm_in_inch * parts));
    const int whole = quarters / parts;
    const int rest = quarters % parts;
    const std::string part = rest == 0 ? "" : rest == 2 ? "1/2" : fmt::format("{}/4", rest);
    const std::string blank = whole != 0 && rest != 0 ? " " : "";
    const std::string front = whole != 0 || rest == 0 ? fmt::format("{}", whole) : "";
    return {fmt::format("\"{}{}{} in\"", front, blank, part), quarters * mm_in_inch / parts};
}

Written Pen::mass(double kg) const {
    if (us_) {
        return kg < 2 * kg_in_pound ? with_unit(std::round(kg / kg_in_ounce), "oz", kg_in_ounce)
                                    : with_unit(to_step(kg / kg_in_pound, 0.25), "lb", kg_in_pound);
    }
    return kg < 1.0 ? with_unit(to_step(kg * 1000, 10), "g", 0.001) : with_unit(to_step(kg, 0.05), "kg", 1.0);
}

Written Pen::litres(double l) const {
    return us_ ? with_unit(std::floor(l / litres_in_quart), "qt", litres_in_quart)
               : with_unit(std::floor(l * 2) / 2, "L", 1.0);
}

Written Pen::sup(double l) const {
    return with_unit(to_step(l, 0.05), "L", 1.0);
}

Written Pen::temperature(double c) const {
    return degrees(c, us_, 1.0);
}

Written Pen::reading(double c) const {
    return degrees(c, us_, us_ ? 1.0 : 0.5);
}

Written Pen::difference(double k) const {
    return with_unit(to_step(k, 0.5), "K", 1.0);
}

Written Pen::minutes(double min) const {
    return with_unit(std::round(min), "min", 1.0);
}

Written Pen::metres(double m) const {
    return us_ ? with_unit(to_step(m / metres_in_foot, 100), "ft", metres_in_foot)
               : with_unit(to_step(m, 50), "m", 1.0);
}

}  // namespace holdwater::support
