// SPDX-License-Identifier: MIT
// What libharu's own interface cannot do, done on its objects; the only place that knows them. Each returns whether it
// was done.
#pragma once

#include "draw/tag_tree.hpp"

#include <hpdf.h>

#include <string>
#include <vector>

namespace holdwater::draw {

/// Whether the library at hand is the one whose objects are known here.
bool knows_objects();

/// Writes operators into a page's content, for which there is no function (tags, dashes that are no whole points).
bool write_raw(HPDF_Page page, const std::string& operators);

/// What is kept when the page is trimmed, and what may be inked: all of it.
bool add_page_boxes(HPDF_Doc document, HPDF_Page page, units::Points width, units::Points height);

/// The language of the text, such as "en"; the title, not the file's name, above the window.
bool add_language(HPDF_Doc document, const std::string& language);

/// A name for every page from the first on, shown instead of its number.
bool add_page_labels(HPDF_Doc document, const std::vector<std::string>& labels);

/// An entry of the outline that leads to a page.
bool add_outline_entry(HPDF_Doc document, HPDF_Page page, const std::string& title);

/// The tree of elements, and on each page the way from its marks back to them.
bool add_reading(HPDF_Doc document, const std::vector<HPDF_Page>& pages, const TagTree& reading);

/// PDF 1.4, which PDF/A-1 is made of; its description as `xmp` and the colour space that greys are meant in.
bool add_archive_parts(HPDF_Doc document, const std::string& xmp, const std::string& profile);

/// A map from codes to characters that viewers accept, the name of the order of its codes, and widths and glyphs of the
/// used characters only: libharu lists those of the whole typeface.
bool add_font_map(HPDF_Doc document, HPDF_Font font, const std::u32string& used);

/// What a font's descriptor lacks; it exists only once the document has been written.
bool add_font_facts(HPDF_Doc document, HPDF_Font font, const std::string& glyph_set, int stem);

/// The trailer's /ID.
bool add_id(HPDF_Doc document, std::string id);

}  // namespace holdwater::draw
