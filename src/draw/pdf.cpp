// SPDX-License-Identifier: MIT
// Pages as a PDF, by libharu. Its error handler only notes the code: throwing through C code is not ours to do.
#include "draw/font.hpp"
#include "draw/pdf_bytes.hpp"
#include "draw/pdf_extras.hpp"
#include "draw/pdf_painter.hpp"
#include "typeface.hpp"

#include <fmt/format.h>
#include <hpdf.h>

#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>

namespace holdwater::draw {

namespace {

struct Fault {
    unsigned long code = 0;
    unsigned long detail = 0;
};

extern "C" void note_fault(HPDF_STATUS code, HPDF_STATUS detail, void* where) {
    auto* fault = static_cast<Fault*>(where);
    if (fault->code == 0) {
        *fault = {code, detail};
    }
}

struct DocumentCloser {
    void operator()(HPDF_Doc document) const { HPDF_Free(document); }
};
using Document = std::unique_ptr<_HPDF_Doc_Rec, DocumentCloser>;

problem::Problem failed(const Fault& fault) {
    return problem::error("pdf-failed",
                          fmt::format("the PDF cannot be made: libharu {:#06x}, detail {}", fault.code, fault.detail));
}

/// Whether every place and size on it is a number that a file can hold.
bool sound(const layout::Page& page) {
    const auto finite = [](auto... values) { return (std::isfinite(values.value()) && ...); };
    const layout::Overloaded item_is_sound{
        [&](const layout::PlacedText& text) { return finite(text.x, text.baseline, text.size_pt); },
        [&](const layout::PlacedLine& rule) { return finite(rule.x1, rule.y1, rule.x2, rule.y2, rule.width_pt); },
        [&](const layout::PlacedBox& box) { return finite(box.x, box.y, box.width, box.height, box.stroke_pt); },
        [&](const layout::PlacedPath& path) {
            return finite(path.stroke_pt) && std::all_of(path.points.begin(), path.points.end(),
                                                         [&](const auto& point) { return finite(point.x, point.y); });
        },
        [&](const layout::PlacedDrawing& drawing) {
            const auto part_is_sound = [&](const auto& part) {
                return std::all_of(part.points.begin(), part.points.end(),
                                   [&](const auto& point) { return finite(point.x, point.y); });
            };
            return std::all_of(drawing.shapes.begin(), drawing.shapes.end(), [&](const auto& shape) {
                return finite(shape.stroke_pt) && std::all_of(shape.parts.begin(), shape.parts.end(), part_is_sound);
            });
        }};
    return std::all_of(page.items.begin(), page.items.end(),
                       [&](const layout::Item& item) { return std::visit(item_is_sound, item); });
}

/// libharu draws a box for a missing glyph and says nothing; so it is asked before.
problem::Problems missing_glyphs(const std::vector<layout::Page>& pages, const layout::Measure& measure) {
    problem::Problems problems;
    for (const auto& page : pages) {
        for (const auto& item : page.items) {
            const layout::PlacedText* text = layout::as_text(item);
            if (text != nullptr && !measure.covers(text->text, text->face)) {
                problems.push_back(problem::error(
                    "glyph-missing",
                    fmt::format("{}: \"{}\" holds a character that the typeface has not", page.name, text->text)));
            }
        }
    }
    return problems;
}

bool read_out(HPDF_Doc document, std::string& bytes) {
    if (HPDF_SaveToStream(document) != HPDF_OK) {
        return false;
    }
    const HPDF_UINT32 size = HPDF_GetStreamSize(document);
    bytes.resize(size);
    HPDF_ResetStream(document);
    HPDF_UINT32 got = size;
    const HPDF_STATUS status = HPDF_ReadFromStream(document, reinterpret_cast<HPDF_BYTE*>(bytes.data()), &got);
    return (status == HPDF_OK || status == HPDF_STREAM_EOF) && got == size;
}

/// Gives the file what keeps it readable in time to come (PDF/A-1b) and to those who do not see it (tags). The
/// descriptors of the fonts come into being with the first writing, so this is done round it.
class Archive {
  public:
    Archive(HPDF_Doc document, const PdfInfo& info) : doc_(document), info_(info) {}

    bool before_writing(const std::vector<HPDF_Page>& pages, const TagTree& reading, const PdfFonts& fonts) {
        const char* producer = HPDF_GetInfoAttr(doc_, HPDF_INFO_PRODUCER);
        const auto xmp = xmp_packet(info_.title, info_.language, info_.creator, producer == nullptr ? "" : producer);
        bool fine = xmp && add_language(doc_, info_.language) && add_page_labels(doc_, info_.page_labels) &&
                    add_reading(doc_, pages, reading) && add_archive_parts(doc_, *xmp, srgb_profile()) &&
                    add_font_map(doc_, fonts.regular, fonts.used_regular) &&
                    add_font_map(doc_, fonts.bold, fonts.used_bold);
        for (const auto& element : reading.elements) {
            fine = fine && (element.title.empty() || add_outline_entry(doc_, pages[element.page], element.title));
        }
        return fine;
    }

    bool after_writing(const std::string& bytes, const PdfFonts& fonts) {
        return add_font_facts(doc_, fonts.regular, glyph_set(fonts.used_regular), typeface::stem_regular) &&
               add_font_facts(doc_, fonts.bold, glyph_set(fonts.used_bold), typeface::stem_bold) &&
               add_id(doc_, content_id(bytes));
    }

  private:
    HPDF_Doc doc_;
    const PdfInfo& info_;
};

/// The file; without `reading` as plain as libharu makes it. Its fonts have the `spare` glyphs too, which no page
/// shows.
problem::Result<std::string> write(const std::vector<layout::Page>& pages, const FontFiles& files, const PdfInfo& info,
                                   const TagTree* reading, std::u32string_view spare, Fault& fault) {
    const Document document(HPDF_New(note_fault, &fault));
    if (!document) {
        return failed(fault);
    }
    HPDF_Doc doc = document.get();
    HPDF_SetCompressionMode(doc, HPDF_COMP_ALL);
    HPDF_UseUTFEncodings(doc);
    HPDF_SetCurrentEncoder(doc, "UTF-8");
    HPDF_SetInfoAttr(doc, HPDF_INFO_TITLE, info.title.c_str());
    HPDF_SetInfoAttr(doc, HPDF_INFO_CREATOR, info.creator.c_str());
    HPDF_SetViewerPreference(doc, HPDF_PRINT_SCALING_NONE);

    PdfFonts fonts;
    for (const auto& [file, font] : {std::pair{&files.regular, &fonts.regular}, std::pair{&files.bold, &fonts.bold}}) {
        const char* name = HPDF_LoadTTFontFromFile(doc, file->c_str(), HPDF_TRUE);
        *font = name == nullptr ? nullptr : HPDF_GetFont(doc, name, "UTF-8");
        if (*font == nullptr) {
            return failed(fault);
        }
    }
    for (const char32_t glyph : spare) {  // libharu embeds what it was asked for the width of
        HPDF_Font_GetUnicodeWidth(fonts.regular, static_cast<HPDF_UNICODE>(glyph));
        HPDF_Font_GetUnicodeWidth(fonts.bold, static_cast<HPDF_UNICODE>(glyph));
    }
    fonts.used_regular += spare;
    fonts.used_bold += spare;

    bool fine = true;
    std::vector<HPDF_Page> made;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        HPDF_Page page = HPDF_AddPage(doc);
        if (page == nullptr) {
            return failed(fault);
        }
        made.push_back(page);
        HPDF_Page_SetWidth(page, pdf_pt(pages[i].width));
        HPDF_Page_SetHeight(page, pdf_pt(pages[i].height));
        fine = fine && paint(page, pages[i], reading, i, fonts);
        fine = fine && (reading == nullptr ||
                        add_page_boxes(doc, page, units::in_points(pages[i].width), units::in_points(pages[i].height)));
    }
    Archive archive(doc, info);
    fine = fine && (reading == nullptr || archive.before_writing(made, *reading, fonts));
    std::string bytes;
    fine = fine && read_out(doc, bytes);
    if (reading != nullptr) {
        fine = fine && archive.after_writing(bytes, fonts) && read_out(doc, bytes);
    }
    if (!fine || fault.code != 0) {
        return failed(fault);
    }
    return bytes;
}

/// The same, come what may of libharu's streams: they are blocks of 4096 bytes, and at the end of a last one that is
/// just full it finds no place (HPDF_MemStream_SeekFunc). One set of glyphs in a thousand makes a font so long; a glyph
/// more makes it longer.
problem::Result<std::string> write(const std::vector<layout::Page>& pages, const FontFiles& files, const PdfInfo& info,
                                   const TagTree* reading) {
    constexpr std::u32string_view spare = U"@&QJ%#";
    for (std::size_t more = 0;; ++more) {
        Fault fault;
        auto file = write(pages, files, info, reading, spare.substr(0, more), fault);
        if (file.ok() || fault.code != HPDF_INVALID_OBJECT || more == spare.size()) {
            return file;
        }
    }
}

/// The pages but for texts of nothing but spaces, which leave no ink; the reading order sees the gap itself.
std::vector<layout::Page> without_blanks(std::vector<layout::Page> pages) {
    for (layout::Page& page : pages) {
        std::erase_if(page.items, [](const layout::Item& item) {
            const layout::PlacedText* text = layout::as_text(item);
            return text != nullptr && text->text.find_first_not_of(" \u00A0") == std::string::npos;
        });
    }
    return pages;
}

}  // namespace

problem::Result<std::string> to_pdf(const std::vector<layout::Page>& pages, const FontFiles& files,
                                    const PdfInfo& info) {
    auto measure = open_measure(files);
    if (!measure.ok()) {
        return measure.problems();
    }
    if (auto missing = missing_glyphs(pages, **measure); !missing.empty()) {
        return missing;
    }
    if (pages.empty() || !std::all_of(pages.begin(), pages.end(), sound)) {
        return problem::error("pdf-failed",
                              "the PDF cannot be made: a page is missing or holds a place that is no number");
    }
    const std::vector<layout::Page> inked = without_blanks(pages);
    if (knows_objects()) {
        const TagTree reading = reading_of(inked);
        auto kept = write(inked, files, info, &reading);
        if (kept.ok()) {
            return kept;
        }
    }
    auto plain = write(inked, files, info, nullptr);
    if (!plain.ok()) {
        return plain;
    }
    return {std::move(plain).value(),
            {problem::warning("plain-pdf", "the PDF is a plain one: without tags for those who hear it, and no PDF/A",
                              "it prints the same; what the title or the language holds may be the reason")}};
}

}  // namespace holdwater::draw
