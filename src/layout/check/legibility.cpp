// SPDX-License-Identifier: MIT
#include "layout/check/legibility.hpp"

#include "layout/style.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace holdwater::layout {

namespace {

// Limits of legibility: capital height 16' at least, 20' where a misreading hurts.
constexpr double body_arcmin = 16.0;
constexpr double figure_arcmin = 20.0;

/// Relative luminance of a grey from 0 to 1 (WCAG 2, sRGB decoding), equal in all channels and so under any lamp.
double luminance(double grey) {
    return grey <= 0.04045 ? grey / 12.92 : std::pow((grey + 0.055) / 1.055, 2.4);
}

bool has_digit(const std::string& text) {
    return std::any_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

}  // namespace

double capital_arcmin(Points size_pt, Millimetres distance_mm) {
    return 2.0 * std::atan(cap_height(size_pt) / (2.0 * distance_mm)) * 180.0 / std::numbers::pi * 60.0;
}

double contrast(double one, double other) {
    const double a = luminance(one) + 0.05;
    const double b = luminance(other) + 0.05;
    return std::max(a, b) / std::min(a, b);
}

double least_arcmin(const PlacedText& text) {
    switch (text.role) {
        case Role::caution:
            return figure_arcmin;
        case Role::key_number:  // its quieter unit is a run without figures
        case Role::table:
        case Role::ruler_tick:
            return has_digit(text.text) ? figure_arcmin : body_arcmin;
        case Role::heading:
        case Role::paragraph:
            return body_arcmin;
        case Role::artifact:  // the line at the foot: who and when, nothing to act on
        case Role::cut_mark:
            return 0.0;
    }
    return figure_arcmin;
}

}  // namespace holdwater::layout
