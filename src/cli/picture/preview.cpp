// SPDX-License-Identifier: MIT
#include "cli/picture/preview.hpp"

#include "cli/files/data.hpp"
#include "facts/facts.hpp"

#include <fmt/format.h>

#include <utility>

namespace holdwater::cli {

draw::Dim dim_light(units::Millimetres distance) {
    const facts::Facts& facts = facts::facts();
    return {facts.value("sight.acuity-day") / facts.value("sight.dim-acuity"), distance,
            facts.value("sight.dim-contrast")};
}

problem::Result<std::vector<Finished>> previews(const std::vector<layout::CardFaces>& faces, const draw::Light& light,
                                                const DeckFiles& deck) {
    constexpr double face_dpi = 220.0;
    constexpr double sheet_dpi = 100.0;
    constexpr int columns = 4;
    constexpr units::Millimetres sheet{400.0};
    std::vector<Finished> files;
    for (const layout::CardFaces& card : faces) {
        for (const layout::Page& face : card.faces) {
            if (face.items.empty()) {
                continue;
            }
            auto png = draw::to_png(face, font_files(), face_dpi, light);
            if (!png) {
                return png.problems();
            }
            files.push_back({deck.path(fmt::format("card-{}.png", files.size() + 1)), std::move(png).value()});
        }
    }
    auto all = draw::to_png(layout::contact_sheet(faces, columns, sheet), font_files(), sheet_dpi, light);
    if (!all) {
        return all.problems();
    }
    files.push_back({deck.path("card-sheet.png"), std::move(all).value()});
    return files;
}

}  // namespace holdwater::cli
