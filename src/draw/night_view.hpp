// SPDX-License-Identifier: MIT
// How a picture would be seen in other light: simulations to judge cards by, no measurements.
#pragma once

#include <cstdint>
#include <vector>

namespace holdwater::draw {

/// 0 to 255 each, sRGB.
struct Colour {
    int red = 0;
    int green = 0;
    int blue = 0;
};

/// Under a red lamp only the red channel counts, and what is seen is red.
Colour under_red_lamp(Colour colour);

/// Contrast of two colours under a red lamp [ratio, 1 to 21]: (R1 + 0.05) / (R2 + 0.05), R the larger and the smaller
/// linear red channel (the formula of WCAG 2 with the red channel alone).
double contrast_under_red_lamp(Colour one, Colour other);

/// Pixels row by row.
struct Pixels {
    int width = 0;
    int height = 0;
    std::vector<Colour> colours;
};

void put_under_red_lamp(Pixels& pixels);

/// Blurs with a bell of this width at half its height [pixels] and takes contrast back to a share of what it was, all
/// in linear light and against white paper.
void put_in_dim_light(Pixels& pixels, double blur_px, double contrast_share);

}  // namespace holdwater::draw
