// SPDX-License-Identifier: MIT
#include "draw/font.hpp"

#include FT_TRUETYPE_TABLES_H

#include <algorithm>
#include <iterator>
#include <string_view>

namespace holdwater::draw {

namespace {

problem::Problem unreadable(const std::string& file) {
    return problem::error("font-unreadable", "the typeface " + file + " cannot be read",
                          "build the target holdwater_fonts, or install the program with its fonts");
}

/// The tables that a PDF needs are there to their ends: FreeType passes over those that a cut-off file lacks.
bool has_all_tables(FT_Face face) {
    constexpr FT_ULong needed[] = {
        FT_MAKE_TAG('O', 'S', '/', '2'), FT_MAKE_TAG('c', 'm', 'a', 'p'), FT_MAKE_TAG('g', 'l', 'y', 'f'),
        FT_MAKE_TAG('h', 'e', 'a', 'd'), FT_MAKE_TAG('h', 'h', 'e', 'a'), FT_MAKE_TAG('h', 'm', 't', 'x'),
        FT_MAKE_TAG('l', 'o', 'c', 'a'), FT_MAKE_TAG('m', 'a', 'x', 'p'), FT_MAKE_TAG('n', 'a', 'm', 'e')};
    return std::all_of(std::begin(needed), std::end(needed), [face](FT_ULong tag) {
        FT_ULong length = 0;
        return FT_Load_Sfnt_Table(face, tag, 0, nullptr, &length) == 0 && length > 0;
    });
}

bool open_one(FT_Library library, const std::string& file, std::unique_ptr<FT_FaceRec_, FaceCloser>& into) {
    FT_Face face = nullptr;
    if (FT_New_Face(library, file.c_str(), 0, &face) != 0) {
        return false;
    }
    into.reset(face);
    return FT_Select_Charmap(face, FT_ENCODING_UNICODE) == 0 && face->units_per_EM > 0 && has_all_tables(face);
}

}  // namespace

problem::Result<std::shared_ptr<OpenFonts>> open_fonts(const FontFiles& files) {
    auto fonts = std::make_shared<OpenFonts>();
    FT_Library library = nullptr;
    if (FT_Init_FreeType(&library) != 0) {
        return unreadable(files.regular);
    }
    fonts->library.reset(library);
    if (!open_one(library, files.regular, fonts->regular)) {
        return unreadable(files.regular);
    }
    if (!open_one(library, files.bold, fonts->bold)) {
        return unreadable(files.bold);
    }
    return fonts;
}

std::u32string code_points(std::string_view utf8) {
    std::u32string made;
    for (std::size_t i = 0; i < utf8.size();) {
        const auto first = static_cast<unsigned char>(utf8[i]);
        const std::size_t length = first < 0x80                    ? 1
                                   : first >= 0xC2 && first < 0xE0 ? 2
                                   : first >= 0xE0 && first < 0xF0 ? 3
                                   : first >= 0xF0 && first < 0xF5 ? 4
                                                                   : 0;
        if (length == 0 || i + length > utf8.size()) {
            made += no_code_point;
            ++i;
            continue;
        }
        static constexpr unsigned char masks[] = {0, 0x7F, 0x1F, 0x0F, 0x07};
        char32_t point = first & masks[length];
        bool whole = true;
        for (std::size_t k = 1; k < length; ++k) {
            const auto next = static_cast<unsigned char>(utf8[i + k]);
            whole = whole && (next & 0xC0U) == 0x80U;
            point = (point << 6U) | (next & 0x3FU);
        }
        static constexpr char32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
        whole = whole && point >= least[length] && point <= 0x10FFFF && (point < 0xD800 || point > 0xDFFF);
        made += whole ? point : no_code_point;
        i += whole ? length : 1;
    }
    return made;
}

}  // namespace holdwater::draw
