// SPDX-License-Identifier: MIT
// Writes quantities for people: metric, US or both, with the decimals asked for. No locale is asked.
#pragma once

#include "units/amount.hpp"
#include "units/quantity.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace holdwater::units {

/// The words of trip files and options: "metric", "us", "both", "us-first".
const std::vector<std::string_view>& system_names();
std::string_view name_of(System system);
/// Of one of system_names(); `both` for any other word.
System system_named(std::string_view name);

enum class Toward { nearest, up, down };

/// A value rounded to a multiple of `step`; a value within 1e-9 of a multiple counts as that multiple.
double round_to(double value, double step, Toward toward);

/// A number with so many decimals, "-0" written as "0".
std::string number(double value, int decimals);

struct Rounding {
    double step = 1.0;  // in the printed metric unit; °F and inches have their own
    Toward toward = Toward::nearest;
};

/// A value rounded to a multiple of `step`, with as many decimals as that needs.
Figure figure(double value, double step, Toward toward, std::string_view unit = {});

/// A quantity rounded, in the unit or units of a system. Both figures are rounded to the same side. Of two temperatures
/// the second follows from the printed first, and steps on if that would be the unsafe side.
Amount amount(Temperature t, System system, Rounding rounding = {});
Amount amount(TemperatureDifference d, System system, Rounding rounding = {});
Amount amount(Length l, System system, Rounding rounding = {});     // mm (in to 1/8)
Amount amount(Volume v, System system, Rounding rounding = {0.5});  // L (qt)
Amount amount(Mass m, System system, Rounding rounding = {0.1});    // kg (lb)

/// The same written with a decimal point: for System::both metric first and US after it in brackets, "63 °C (145 °F)";
/// for System::us_first "145 °F (63 °C)".
std::string print(Temperature t, System system, Rounding rounding = {});
std::string print(TemperatureDifference d, System system, Rounding rounding = {});
std::string print(Length l, System system, Rounding rounding = {});
std::string print(Volume v, System system, Rounding rounding = {0.5});
std::string print(Mass m, System system, Rounding rounding = {0.1});

/// "45 min", "2 h", "2 h 15", "26 h"; rounded to whole minutes first.
std::string print(Duration d, Toward toward = Toward::nearest);
/// The same without spaces, for narrow columns: "45min", "2h15".
std::string print_tight(Duration d, Toward toward = Toward::nearest);

}  // namespace holdwater::units
