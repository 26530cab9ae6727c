// SPDX-License-Identifier: MIT
// Draws a page's items with libharu, each within its tag if the file is to have tags.
#pragma once

#include "draw/tag_tree.hpp"

#include <hpdf.h>

#include <string>

namespace holdwater::draw {

struct PdfFonts {
    HPDF_Font regular = nullptr;
    HPDF_Font bold = nullptr;
    std::u32string used_regular;
    std::u32string used_bold;
};

HPDF_REAL pdf_pt(units::Millimetres length);

/// Without `reading` no tags, and dashes in whole points: nothing that libharu's own interface cannot do. False if
/// something could not be written.
bool paint(HPDF_Page page, const layout::Page& what, const TagTree* reading, std::size_t number, PdfFonts& fonts);

}  // namespace holdwater::draw
