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

    void set_plot(double left, double top, double right, double bottom);
    double x(double value) const { return left + (value - x_low_) / x_span_ * (right - left); }
    double y(double value) const { return bottom - (value - y_low_) / y_span_ * (bottom - top); }

    double left = 0.0;
    double top = 0.0;
    double right = 0.0;
    double bottom = 0.0;

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
bool curve_takes(const card::Curve& block, const CurveScale& scale, double x1, double y1, double x2, double y2);

/// The key: a sample of each thing that is drawn, and its name; in one line if `width` has room, else in several.
struct CurveKey {
    Fragment fragment;
    double width = 0.0;
};
CurveKey curve_key(const card::Curve& block, const BlockContext& setting, double width);

// Shared by plot and key.
inline constexpr double curve_band_grey = 0.85;
inline const std::vector<double> curve_second_dash = {1.0, 1.0};
inline const std::vector<double> curve_floor_dash = {2.6, 1.3};
/// An open circle, white inside so that a line behind it ends at its edge.
PlacedPath curve_mark(double x, double y, double radius);
/// Diagonals that end at the edge of their box, and its two upright edges.
void place_hatch(std::vector<Item>& items, double x1, double y1, double x2, double y2, double step);

}  // namespace holdwater::layout
