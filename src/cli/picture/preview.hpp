// SPDX-License-Identifier: MIT
// Pictures of a deck's faces, by day or as they would be seen in other light.
#pragma once

#include "draw/draw.hpp"
#include "layout/layout.hpp"
#include "problem/problem.hpp"

#include <string>
#include <vector>

namespace holdwater::cli {

/// A file that is ready to be written.
struct Finished {
    std::string path;
    std::string bytes;
};

/// A dark camp: what eyes make out there at this distance, from the figures of facts/night_view.toml.
draw::Dim dim_light(double distance_mm);

/// STEM-card-1.png and so on, one a face, and STEM-card-sheet.png with all of them.
problem::Result<std::vector<Finished>> previews(const std::vector<layout::CardFaces>& faces, const draw::Light& light,
                                                const std::string& stem);

}  // namespace holdwater::cli
