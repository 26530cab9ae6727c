// SPDX-License-Identifier: MIT
// Byte strings that a PDF for keeping carries: maps of characters, its description, a colour space. No libharu here.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace holdwater::draw {

/// A map from codes, which are code points, to characters: what makes a text searchable. `used` are those drawn.
std::string unicode_map(const std::u32string& used);

/// One bit a code: which glyphs the subset holds. Glyph 0 always is one of them.
std::string glyph_set(const std::u32string& used);

/// The description in XML, as PDF/A-1b wants it, equal to the file's own. None if a text is no XML (control characters,
/// broken UTF-8).
std::optional<std::string> xmp_packet(std::string_view title, std::string_view language, std::string_view creator,
                                      std::string_view producer);

/// The colour space sRGB as an ICC profile of version 2.1: what greys mean.
std::string srgb_profile();

/// 16 bytes from a file's content, for its trailer.
std::string content_id(std::string_view bytes);

}  // namespace holdwater::draw
