// SPDX-License-Identifier: MIT
// What libharu's own interface cannot do, done on its objects; the only place that knows them.
#pragma once

#include <hpdf.h>

#include <string>
#include <vector>

namespace holdwater::draw {

/// A map from codes to characters that viewers accept, so that text can be searched and copied. libharu's own is
/// malformed. `used` are the characters drawn in this font.
bool add_to_unicode(HPDF_Doc document, HPDF_Font font, const std::u32string& used);

/// What is kept when the page is trimmed: all of it.
bool add_trim_box(HPDF_Doc document, HPDF_Page page, double width_pt, double height_pt);

/// The language of the text, such as "en".
bool add_language(HPDF_Doc document, const std::string& language);

/// A name for every page from the first on, shown instead of its number.
bool add_page_labels(HPDF_Doc document, const std::vector<std::string>& labels);

/// Writes operators into a page's content, for which there is no function (dashes that are no whole points).
bool write_raw(HPDF_Page page, const std::string& operators);

}  // namespace holdwater::draw
