// SPDX-License-Identifier: MIT
// How large and how black a text is to the eye, and how large it must be.
#pragma once

#include "layout/page.hpp"

namespace holdwater::layout {

/// Visual angle of a capital [arc minutes]: 2 atan(h / 2 D), h = 0.75 em, D the reading distance, both in mm.
double capital_arcmin(Points size_pt, Millimetres distance_mm);

/// The least angle for a text of this role; 0: any will do.
double least_arcmin(const PlacedText& text);

/// Contrast of two greys from 0 to 1 (WCAG 2, sRGB decoding), equal in all channels and so under any lamp.
double contrast(double one, double other);

}  // namespace holdwater::layout
