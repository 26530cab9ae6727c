// SPDX-License-Identifier: MIT
// What libharu writes of fonts, put right and made small.
#include "draw/pdf_bytes.hpp"
#include "draw/pdf_extras.hpp"
#include "draw/pdf_objects.hpp"

#include <set>

namespace holdwater::draw {

namespace {

using namespace objects;

/// The widths of the used codes, a run of neighbours after its first code: 65 [ 700 690 ] 97 [ 600 ].
HPDF_Array widths_of(HPDF_Doc document, HPDF_Font font, const std::u32string& used) {
    HPDF_Array all = HPDF_Array_New(document->mmgr);
    HPDF_Array run = nullptr;
    char32_t next = 0;
    for (const char32_t code : std::set<char32_t>(used.begin(), used.end())) {
        if (run == nullptr || code != next) {
            run = HPDF_Array_New(document->mmgr);
            if (all == nullptr || !done(HPDF_Array_AddNumber(all, static_cast<HPDF_INT32>(code))) || !add(all, run)) {
                return nullptr;
            }
        }
        if (!done(HPDF_Array_AddNumber(run, HPDF_Font_GetUnicodeWidth(font, static_cast<HPDF_UNICODE>(code))))) {
            return nullptr;
        }
        next = code + 1;
    }
    return all;
}

/// Two bytes a code, up to the last that is used: its glyph in the typeface.
std::string glyph_map(HPDF_Font font, const std::u32string& used) {
    HPDF_FontDef definition = static_cast<HPDF_FontAttr>(font->attr)->fontdef;
    std::string map;
    for (const char32_t code : std::set<char32_t>(used.begin(), used.end())) {
        const HPDF_UINT16 glyph = HPDF_TTFontDef_GetGlyphid(definition, static_cast<HPDF_UINT16>(code));
        map.resize(2 * static_cast<std::size_t>(code), '\0');
        map += static_cast<char>(glyph >> 8U);
        map += static_cast<char>(glyph & 0xFFU);
    }
    return map;
}

}  // namespace

bool add_font_map(HPDF_Doc document, HPDF_Font font, const std::u32string& used) {
    HPDF_Font descendant = static_cast<HPDF_FontAttr>(font->attr)->descendant_font;
    auto* system = descendant == nullptr
                       ? nullptr
                       : static_cast<HPDF_Dict>(HPDF_Dict_GetItem(descendant, "CIDSystemInfo", HPDF_OCLASS_DICT));
    return system != nullptr && refill(document, font, "ToUnicode", unicode_map(used)) &&
           add(system, "Ordering", HPDF_String_New(document->mmgr, "Identity", nullptr)) &&
           add(descendant, "W", widths_of(document, font, used)) &&
           refill(document, descendant, "CIDToGIDMap", glyph_map(font, used));
}

bool add_font_facts(HPDF_Doc document, HPDF_Font font, const std::string& glyph_set, int stem) {
    const auto* definition = static_cast<HPDF_FontAttr>(font->attr)->fontdef;
    HPDF_Dict descriptor = definition->descriptor;
    return descriptor != nullptr && done(HPDF_Dict_AddNumber(descriptor, "CapHeight", definition->cap_height)) &&
           done(HPDF_Dict_AddNumber(descriptor, "StemV", stem)) &&
           add(descriptor, "CIDSet", stream(document, glyph_set, true));
}

}  // namespace holdwater::draw
