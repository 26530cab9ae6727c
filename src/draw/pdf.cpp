// SPDX-License-Identifier: MIT
// Pages as a PDF, by libharu. Its error handler only notes the code: throwing through C code is not ours to do.
#include "draw/font.hpp"
#include "draw/pdf_extras.hpp"

#include <fmt/format.h>
#include <hpdf.h>

#include <algorithm>
#include <cstdint>
#include <string>

namespace holdwater::draw {

namespace {

constexpr double mm_per_pt = 25.4 / 72.0;

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

HPDF_REAL pt(double mm) {
    return static_cast<HPDF_REAL>(mm / mm_per_pt);
}

struct PdfFonts {
    HPDF_Font regular = nullptr;
    HPDF_Font bold = nullptr;
    std::u32string used_regular;
    std::u32string used_bold;
};

/// Draws items on one page: y from the top in the list, from the foot in the file.
class Painter {
  public:
    Painter(HPDF_Page page, double height_mm, PdfFonts& fonts) : page_(page), height_(height_mm), fonts_(fonts) {}

    void operator()(const layout::PlacedText& text) {
        const bool bold = text.face == layout::Face::bold;
        (bold ? fonts_.used_bold : fonts_.used_regular) += code_points(text.text);
        HPDF_Page_SetGrayFill(page_, static_cast<HPDF_REAL>(text.grey));
        HPDF_Page_BeginText(page_);
        HPDF_Page_SetFontAndSize(page_, bold ? fonts_.bold : fonts_.regular, static_cast<HPDF_REAL>(text.size_pt));
        if (text.upward) {
            HPDF_Page_SetTextMatrix(page_, 0.0F, 1.0F, -1.0F, 0.0F, pt(text.x), y(text.baseline));
            HPDF_Page_ShowText(page_, text.text.c_str());
        } else {
            HPDF_Page_TextOut(page_, pt(text.x), y(text.baseline), text.text.c_str());
        }
        HPDF_Page_EndText(page_);
    }

    void operator()(const layout::PlacedLine& rule) {
        set_stroke(rule.width_pt, rule.grey, rule.dash_mm);
        HPDF_Page_MoveTo(page_, pt(rule.x1), y(rule.y1));
        HPDF_Page_LineTo(page_, pt(rule.x2), y(rule.y2));
        HPDF_Page_Stroke(page_);
        end_dash(rule.dash_mm);
    }

    void operator()(const layout::PlacedBox& box) {
        if (!box.filled && box.stroke_pt <= 0.0) {
            return;
        }
        prepare(box.filled, box.fill_grey, box.stroke_pt, {});
        HPDF_Page_Rectangle(page_, pt(box.x), y(box.y + box.height), pt(box.width), pt(box.height));
        finish(box.filled, box.stroke_pt);
    }

    void operator()(const layout::PlacedPath& path) {
        if (path.points.size() < 2 || (!path.filled && path.stroke_pt <= 0.0)) {
            return;
        }
        prepare(path.filled, path.fill_grey, path.stroke_pt, path.dash_mm);
        HPDF_Page_MoveTo(page_, pt(path.points[0].x), y(path.points[0].y));
        for (std::size_t i = 1; i < path.points.size(); ++i) {
            HPDF_Page_LineTo(page_, pt(path.points[i].x), y(path.points[i].y));
        }
        if (path.closed) {
            HPDF_Page_ClosePath(page_);
        }
        finish(path.filled, path.stroke_pt);
        end_dash(path.dash_mm);
    }

    bool raw_failed() const { return raw_failed_; }

  private:
    HPDF_REAL y(double from_top) const { return pt(height_ - from_top); }

    void raw(const std::string& operators) { raw_failed_ = !write_raw(page_, operators) || raw_failed_; }

    void set_stroke(double width_pt, double grey, const std::vector<double>& dash_mm) {
        HPDF_Page_SetLineWidth(page_, static_cast<HPDF_REAL>(width_pt));
        HPDF_Page_SetGrayStroke(page_, static_cast<HPDF_REAL>(grey));
        if (!dash_mm.empty()) {
            std::string operators = "[";
            for (const double part : dash_mm) {
                operators += fmt::format("{:.4f} ", part / mm_per_pt);
            }
            raw(operators + "] 0 d\r\n");
        }
    }
    void end_dash(const std::vector<double>& dash_mm) {
        if (!dash_mm.empty()) {
            raw("[] 0 d\r\n");
        }
    }
    void prepare(bool filled, double fill_grey, double stroke_pt, const std::vector<double>& dash_mm) {
        if (filled) {
            HPDF_Page_SetGrayFill(page_, static_cast<HPDF_REAL>(fill_grey));
        }
        if (stroke_pt > 0.0) {
            set_stroke(stroke_pt, 0.0, dash_mm);
        }
    }
    void finish(bool filled, double stroke_pt) {
        if (filled && stroke_pt > 0.0) {
            HPDF_Page_FillStroke(page_);
        } else if (filled) {
            HPDF_Page_Fill(page_);
        } else {
            HPDF_Page_Stroke(page_);
        }
    }

    HPDF_Page page_;
    double height_;
    PdfFonts& fonts_;
    bool raw_failed_ = false;
};

problem::Problem failed(const Fault& fault) {
    return problem::error("pdf-failed",
                          fmt::format("the PDF cannot be made: libharu {:#06x}, detail {}", fault.code, fault.detail));
}

bool sound(const layout::Page& page) {
    bool fine = true;
    const auto take = [&fine](auto... values) { fine = fine && (std::isfinite(values) && ...); };
    for (const auto& item : page.items) {
        if (const auto* text = std::get_if<layout::PlacedText>(&item)) {
            take(text->x, text->baseline, text->size_pt);
        } else if (const auto* rule = std::get_if<layout::PlacedLine>(&item)) {
            take(rule->x1, rule->y1, rule->x2, rule->y2);
        } else if (const auto* box = std::get_if<layout::PlacedBox>(&item)) {
            take(box->x, box->y, box->width, box->height);
        } else if (const auto* path = std::get_if<layout::PlacedPath>(&item)) {
            for (const auto& point : path->points) {
                take(point.x, point.y);
            }
        }
    }
    return fine;
}

/// libharu draws a box for a missing glyph and says nothing; so it is asked before.
problem::Problems missing_glyphs(const std::vector<layout::Page>& pages, const layout::Measure& measure) {
    problem::Problems problems;
    for (const auto& page : pages) {
        for (const auto& item : page.items) {
            const auto* text = std::get_if<layout::PlacedText>(&item);
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

    Fault fault;
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

    bool fine = true;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        HPDF_Page page = HPDF_AddPage(doc);
        if (page == nullptr) {
            return failed(fault);
        }
        HPDF_Page_SetWidth(page, pt(pages[i].width));
        HPDF_Page_SetHeight(page, pt(pages[i].height));
        fine = fine && add_trim_box(doc, page, pages[i].width / mm_per_pt, pages[i].height / mm_per_pt);
        Painter painter(page, pages[i].height, fonts);
        for (const auto& item : pages[i].items) {
            std::visit(painter, item);
        }
        fine = fine && !painter.raw_failed();
    }
    fine = fine && add_language(doc, info.language) && add_page_labels(doc, info.page_labels) &&
           add_to_unicode(doc, fonts.regular, fonts.used_regular) && add_to_unicode(doc, fonts.bold, fonts.used_bold);

    std::string bytes;
    const bool saved = read_out(doc, bytes);
    if (!saved || !fine || fault.code != 0) {
        return failed(fault);
    }
    return bytes;
}

}  // namespace holdwater::draw
