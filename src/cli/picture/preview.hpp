// SPDX-License-Identifier: MIT
// Pictures of a deck's faces, by day or as they would be seen in other light.
#pragma once

#include "cli/files/deck_files.hpp"
#include "draw/draw.hpp"
#include "layout/layout.hpp"
#include "problem/problem.hpp"

#include <string>
#include <vector>

namespace holdwater::cli {

/// A dark camp: what eyes make out there at this distance, from the figures of facts/night_view.toml.
draw::Dim dim_light(units::Millimetres distance);

/// The deck's card-1.png and so on, one a face, and card-sheet.png with all of them.
problem::Result<std::vector<Finished>> previews(const std::vector<layout::CardFaces>& faces, const draw::Light& light,
                                                const DeckFiles& deck);

}  // namespace holdwater::cli
