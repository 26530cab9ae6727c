// SPDX-License-Identifier: MIT
// Writes quantities for people: metric, US or both, with the decimals asked for. No locale is asked.
#pragma once

#include <string>

#include "units/quantity.hpp"

namespace holdwater::units {

enum class System { metric, us, both };
enum class Toward { nearest, up, down };

/// A value rounded to a multiple of `step`; a value within 1e-9 of a multiple counts as that multiple.
double round_to(double value, double step, Toward toward);

/// A number with so many decimals, "-0" written as "0".
std::string number(double value, int decimals);

struct Rounding {
    double step = 1.0;  // in the printed metric unit
    Toward toward = Toward::nearest;
};

/// Each prints, for System::both, metric first and US after it in brackets: "63 °C (145 °F)". The US figure is rounded
/// to the same side. With both, °F follows from the printed °C, and steps on if that would be the unsafe side.
std::string print(Temperature t, System system, Rounding rounding = {});
std::string print(TemperatureDifference d, System system, Rounding rounding = {});
std::string print(Length l, System system, Rounding rounding = {});   // mm (in to 1/8)
std::string print(Volume v, System system, Rounding rounding = {0.5});  // L (qt)
std::string print(Mass m, System system, Rounding rounding = {0.1});  // kg (lb)

/// "45 min", "2 h", "2 h 15", "26 h"; rounded to whole minutes first.
std::string print(Duration d, Toward toward = Toward::nearest);

}  // namespace holdwater::units
