// SPDX-License-Identifier: MIT
// Degrees as a card prints them.
#pragma once

#include "units/print.hpp"

namespace holdwater::units {

/// A temperature at a whole degree of the system that is printed first.
inline Temperature whole_degrees(Temperature t, System system, Toward toward) {
    return first_of(system) == System::us ? fahrenheit(round_to(t.fahrenheit(), 1.0, toward))
                                          : celsius(round_to(t.celsius(), 1.0, toward));
}

}  // namespace holdwater::units
