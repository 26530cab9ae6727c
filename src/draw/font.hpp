// SPDX-License-Identifier: MIT
// The two font files, opened with FreeType.
#pragma once

#include <ft2build.h>

#include <memory>
#include <string>
#include FT_FREETYPE_H

#include "draw/draw.hpp"

namespace holdwater::draw {

struct FaceCloser {
    void operator()(FT_Face face) const { FT_Done_Face(face); }
};
struct LibraryCloser {
    void operator()(FT_Library library) const { FT_Done_FreeType(library); }
};

/// Order of the members is order of life: faces close before their library.
struct OpenFonts {
    std::unique_ptr<FT_LibraryRec_, LibraryCloser> library;
    std::unique_ptr<FT_FaceRec_, FaceCloser> regular;
    std::unique_ptr<FT_FaceRec_, FaceCloser> bold;

    FT_Face face(layout::Weight which) const { return which == layout::Weight::bold ? bold.get() : regular.get(); }
};

/// Error: font-unreadable.
problem::Result<std::shared_ptr<OpenFonts>> open_fonts(const FontFiles& files);

/// What stands for bytes that are no UTF-8; no text that is covered holds it, though a face may draw it.
inline constexpr char32_t no_code_point = 0xFFFD;

/// The code points of UTF-8 text; no_code_point for bytes that are none.
std::u32string code_points(std::string_view utf8);

}  // namespace holdwater::draw
