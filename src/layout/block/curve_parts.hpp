// SPDX-License-Identifier: MIT
// The parts of a curve: its scale, what stands in its plot, and the key that names them. For block_curve.cpp.
#pragma once

#include "card/content.hpp"
#include "layout/block/fragment.hpp"
#include "layout/style.hpp"

#include <vector>

namespace holdwater::layout {

using CurvePoints = std::vector<card::Curve::Point>;

/// From values to places on the card [mm].
class CurveScale {
  public:
    /// Holds everything that is drawn, with some air above and below.
    explicit CurveScale(const card::Curve& block);

    void set_plot(Millimetres left, Millimetres top, Millimetres right, Millimetres bottom);
    Millimetres x(double value) const { return left + (value - x_low_) / x_span_ * (right - left); }
    Millimetres y(double value) const { return bottom - (value - y_low_) / y_span_ * (bottom - top); }

    Millimetres left;
    Millimetres top;
    Millimetres right;
    Millimetres bottom;

  private:
    double x_low_ = 0.0;
    double x_span_ = 1.0;
    double y_low_ = 0.0;
    double y_span_ = 1.0;
};

/// Gaps, band, lines, floor and readings, in this order.
void place_curve(std::vector<Item>& items, const card::Curve& block, const CurveScale& scale,
                 const BlockContext& setting);

/// True if a line, the band, a reading or a gap comes into the box.
bool curve_takes(const card::Curve& block, const CurveScale& scale, Millimetres x1, Millimetres y1, Millimetres x2,
                 Millimetres y2);

/// The key: a sample of each thing that is drawn, and its name; in one line if `width` has room, else in several.
struct CurveKey {
    Fragment fragment;
    Millimetres width;
};
CurveKey curve_key(const card::Curve& block, const BlockContext& setting, Millimetres width);

// Shared by plot and key.
inline constexpr double curve_band_grey = 0.85;
inline const std::vector<Millimetres> curve_second_dash = {1.0_mm, 1.0_mm};
inline const std::vector<Millimetres> curve_floor_dash = {2.6_mm, 1.3_mm};
/// An open circle, white inside so that a line behind it ends at its edge.
PlacedPath curve_mark(Millimetres x, Millimetres y, Millimetres radius);
/// Diagonals that end at the edge of their box, and its two upright edges.
void place_hatch(std::vector<Item>& items, Millimetres x1, Millimetres y1, Millimetres x2, Millimetres y2,
                 Millimetres step);

}  // namespace holdwater::layout
