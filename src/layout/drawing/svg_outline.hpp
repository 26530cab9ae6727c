// SPDX-License-Identifier: MIT
// The two small languages inside SVG's attributes, read by svgpp: path data and lists of transforms.
#pragma once

#include "layout/page.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdwater::layout {

/// x' = a x + c y + e, y' = b x + d y + f.
struct Transform {
    double a = 1.0, b = 0.0, c = 0.0, d = 1.0, e = 0.0, f = 0.0;

    /// This one after `first`.
    Transform after(const Transform& first) const;
    /// By how much it grows lengths, where it grows all alike and shears none; a mirror image is as good.
    std::optional<double> growth() const;
};

/// Path data as straight lines and curves, in mm after the transform. Nothing where it is no path data.
std::optional<std::vector<PlacedDrawing::Part>> outline_of(const std::string& path_data, const Transform& transform);

/// Nothing where it is no list of transforms.
std::optional<Transform> transform_of(const std::string& list);

}  // namespace holdwater::layout
