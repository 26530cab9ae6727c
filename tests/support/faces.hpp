// SPDX-License-Identifier: MIT
// Looking into finished pages.
#pragma once

#include "layout/layout.hpp"
#include "support/files.hpp"
#include "support/problems.hpp"

#include <string>
#include <vector>

namespace holdwater::support {

/// One of the formats that the program ships.
inline layout::Format format(const std::string& name) {
    const std::string path = "layouts/formats/" + name + ".toml";
    return layout::read_format(source_text(path), path).value();
}

inline layout::Sheet sheet(const std::string& name) {
    const std::string path = "layouts/sheets/" + name + ".toml";
    return layout::read_sheet(source_text(path), path).value();
}

/// English, as in the program.
inline const layout::Phrases phrases;

inline std::vector<layout::PlacedText> texts(const layout::Page& page) {
    std::vector<layout::PlacedText> found;
    for (const auto& item : page.items) {
        if (const auto* text = std::get_if<layout::PlacedText>(&item)) {
            found.push_back(*text);
        }
    }
    return found;
}

/// All texts of a page one after the other, spaces, stars and no-break spaces left out.
inline std::string squeezed(const std::string& text) {
    std::string made;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text.compare(i, 2, "\u00A0") == 0) {
            ++i;
        } else if (text[i] != ' ' && text[i] != '*') {
            made += text[i];
        }
    }
    return made;
}

inline std::string all_text(const layout::Page& page) {
    std::string made;
    for (const auto& text : texts(page)) {
        made += squeezed(text.text);
    }
    return made;
}

}  // namespace holdwater::support
