// SPDX-License-Identifier: MIT
// The demo deck whose trip takes ten times as long to plan as the others, printed once for all that look at it.
#pragma once

#include "cli/program.hpp"

namespace holdwater::support {

struct PrintedCards {
    std::filesystem::path folder;
    Said said;
};

/// The trail crew's cards in the format hand on A4, with pictures.
inline const PrintedCards& trail_crew_cards() {
    static const PrintedCards printed = [] {
        const auto folder = fresh_folder("trail-crew-cards");
        return PrintedCards{
            folder, holdwater_says("cards " + demo_path("trail-crew") + " --format hand --sheet a4 --preview --out '" +
                                       folder.string() + "'",
                                   folder)};
    }();
    return printed;
}

}  // namespace holdwater::support
