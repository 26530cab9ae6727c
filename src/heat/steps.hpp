// SPDX-License-Identifier: MIT
// The lengths of the steps in which a bath runs on. Inside heat/ only.
#pragma once

#include <cstddef>

namespace holdwater::heat {

/// Step lengths double from the shortest to the longest [s]; only they have ready-made decay factors.
inline constexpr std::size_t step_lengths = 7;
inline constexpr double longest_step = 300.0;
constexpr double step_length(std::size_t rung) {
    double length = longest_step;
    for (std::size_t i = rung; i + 1 < step_lengths; ++i) {
        length /= 2.0;
    }
    return length;
}

}  // namespace holdwater::heat
