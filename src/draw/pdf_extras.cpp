// SPDX-License-Identifier: MIT
#include "draw/pdf_extras.hpp"

#include <fmt/format.h>
#include <hpdf_doc.h>
#include <hpdf_objects.h>
#include <hpdf_pages.h>

#include <set>

namespace holdwater::draw {

bool add_to_unicode(HPDF_Doc document, HPDF_Font font, const std::u32string& used) {
    constexpr std::size_t lines_in_a_block = 100;  // as the file format allows
    const std::set<char32_t> sorted(used.begin(), used.end());
    const std::vector<char32_t> codes(sorted.begin(), sorted.end());
    std::string map =
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
        "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
        "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    for (std::size_t from = 0; from < codes.size(); from += lines_in_a_block) {
        const std::size_t to = std::min(codes.size(), from + lines_in_a_block);
        map += fmt::format("{} beginbfchar\n", to - from);
        for (std::size_t i = from; i < to; ++i) {
            map += fmt::format("<{0:04X}> <{0:04X}>\n", static_cast<std::uint32_t>(codes[i]));
        }
        map += "endbfchar\n";
    }
    map += "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";

    HPDF_Dict stream = HPDF_DictStream_New(document->mmgr, document->xref);
    if (stream == nullptr) {
        return false;
    }
    stream->filter = HPDF_STREAM_FILTER_FLATE_DECODE;
    return HPDF_Stream_Write(stream->stream, reinterpret_cast<const HPDF_BYTE*>(map.data()),
                             static_cast<HPDF_UINT>(map.size())) == HPDF_OK &&
           HPDF_Dict_Add(font, "ToUnicode", stream) == HPDF_OK;
}

bool add_trim_box(HPDF_Doc document, HPDF_Page page, double width_pt, double height_pt) {
    HPDF_Box box;
    box.left = 0.0F;
    box.bottom = 0.0F;
    box.right = static_cast<HPDF_REAL>(width_pt);
    box.top = static_cast<HPDF_REAL>(height_pt);
    HPDF_Array array = HPDF_Box_Array_New(document->mmgr, box);
    return array != nullptr && HPDF_Dict_Add(page, "TrimBox", array) == HPDF_OK;
}

bool add_language(HPDF_Doc document, const std::string& language) {
    HPDF_String text = HPDF_String_New(document->mmgr, language.c_str(), nullptr);
    return text != nullptr && HPDF_Dict_Add(document->catalog, "Lang", text) == HPDF_OK;
}

bool add_page_labels(HPDF_Doc document, const std::vector<std::string>& labels) {
    if (labels.empty()) {
        return true;
    }
    HPDF_Array ranges = HPDF_Array_New(document->mmgr);
    HPDF_Dict tree = HPDF_Dict_New(document->mmgr);
    bool fine = ranges != nullptr && tree != nullptr && HPDF_Dict_Add(tree, "Nums", ranges) == HPDF_OK &&
                HPDF_Dict_Add(document->catalog, "PageLabels", tree) == HPDF_OK;
    for (std::size_t i = 0; fine && i < labels.size(); ++i) {
        HPDF_Dict label = HPDF_Dict_New(document->mmgr);
        HPDF_String text = HPDF_String_New(document->mmgr, labels[i].c_str(), document->cur_encoder);
        fine = label != nullptr && text != nullptr && HPDF_Dict_Add(label, "P", text) == HPDF_OK &&
               HPDF_Array_AddNumber(ranges, static_cast<HPDF_INT32>(i)) == HPDF_OK &&
               HPDF_Array_Add(ranges, label) == HPDF_OK;
    }
    return fine;
}

bool write_raw(HPDF_Page page, const std::string& operators) {
    auto* attributes = static_cast<HPDF_PageAttr>(page->attr);
    return HPDF_Stream_WriteStr(attributes->stream, operators.c_str()) == HPDF_OK;
}

}  // namespace holdwater::draw
