// SPDX-License-Identifier: MIT
#include "draw/pdf_painter.hpp"

#include "draw/font.hpp"
#include "draw/pdf_extras.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

namespace holdwater::draw {

namespace {

using layout::Millimetres;
using layout::Points;

/// Draws items on one page: y from the top in the list, from the foot in the file.
class PdfPainter {
  public:
    PdfPainter(HPDF_Page page, Millimetres height, bool raw_allowed, PdfFonts& fonts)
        : page_(page), height_(height), raw_allowed_(raw_allowed), fonts_(fonts) {}

    /// A space after the next text, for those who read the file without seeing it.
    void set_space(bool wanted) { space_ = wanted; }

    void operator()(const layout::PlacedText& text) {
        const bool bold = text.face == layout::Weight::bold;
        const std::string words = text.text + (space_ ? " " : "");
        (bold ? fonts_.used_bold : fonts_.used_regular) += code_points(words);
        set_fill(text.grey);
        HPDF_Page_BeginText(page_);
        const auto size = static_cast<HPDF_REAL>(text.size_pt.value());
        if (const std::pair font{bold ? fonts_.bold : fonts_.regular, size}; font_ != font) {
            HPDF_Page_SetFontAndSize(page_, font.first, font.second);
            font_ = font;
        }
        if (text.upward) {
            HPDF_Page_SetTextMatrix(page_, 0.0F, 1.0F, -1.0F, 0.0F, pt(text.x), y(text.baseline));
            HPDF_Page_ShowText(page_, words.c_str());
        } else {
            place(text.x, text.baseline);
            HPDF_Page_ShowText(page_, words.c_str());
        }
        HPDF_Page_EndText(page_);
    }

    void operator()(const layout::PlacedLine& rule) {
        set_stroke(rule.width_pt, rule.grey, rule.dash_mm);
        draw({{rule.x1, rule.y1}, {rule.x2, rule.y2}}, false);
        finish(false, rule.width_pt);
        end_dash(rule.dash_mm);
    }

    void operator()(const layout::PlacedBox& box) {
        if (!box.filled && box.stroke_pt <= Points{}) {
            return;
        }
        prepare(box.filled, box.fill_grey, box.stroke_pt, {});
        if (raw_allowed_) {
            raw(fmt::format("{} {} {} {} re\n", digits(box.x), digits(height_ - (box.y + box.height)),
                            digits(box.width), digits(box.height)));
        } else {
            HPDF_Page_Rectangle(page_, pt(box.x), y(box.y + box.height), pt(box.width), pt(box.height));
        }
        finish(box.filled, box.stroke_pt);
    }

    void operator()(const layout::PlacedPath& path) {
        if (path.points.size() < 2 || (!path.filled && path.stroke_pt <= Points{})) {
            return;
        }
        prepare(path.filled, path.fill_grey, path.stroke_pt, path.dash_mm);
        draw(path.points, path.closed);
        finish(path.filled, path.stroke_pt);
        end_dash(path.dash_mm);
    }

    void operator()(const layout::PlacedDrawing& drawing) {
        set_round(true);
        for (const auto& shape : drawing.shapes) {
            if (shape.parts.empty() || (!shape.filled && shape.stroke_pt <= Points{})) {
                continue;
            }
            prepare(shape.filled, shape.fill_grey, shape.stroke_pt, {});
            for (const auto& part : shape.parts) {
                trace(part);
            }
            finish(shape.filled, shape.stroke_pt);
        }
        set_round(false);
    }

    void raw(const std::string& operators) { raw_failed_ = !write_raw(page_, operators) || raw_failed_; }
    bool raw_failed() const { return raw_failed_; }

  private:
    /// To 0.01 pt, 4 micrometres: finer figures would only make the file larger.
    static HPDF_REAL pt(Millimetres length) {
        constexpr double parts = 100.0;
        return static_cast<HPDF_REAL>(std::round(units::in_points(length).value() * parts) / parts);
    }
    HPDF_REAL y(Millimetres from_top) const { return pt(height_ - from_top); }
    /// The same as text. The library's own way from 746.22 gives 746.21997: ends of digits that make the file larger.
    static std::string digits(Millimetres length) {
        std::string made = fmt::format("{:.2f}", units::in_points(length).value());
        made.erase(made.find_last_not_of('0') + 1);
        return made.back() == '.' ? made.substr(0, made.size() - 1) : made;
    }

    /// Where the next text begins.
    void place(Millimetres x, Millimetres baseline) {
        if (raw_allowed_) {
            raw(fmt::format("{} {} Td\n", digits(x), digits(height_ - baseline)));
        } else {
            HPDF_Page_MoveTextPos(page_, pt(x), y(baseline));
        }
    }

    /// A path through these points, to be finished.
    void draw(const std::vector<layout::PlacedPath::Point>& points, bool closed) {
        if (raw_allowed_) {
            std::string operators;
            for (const layout::PlacedPath::Point& point : points) {
                operators += fmt::format("{} {} {}\n", digits(point.x), digits(height_ - point.y),
                                         operators.empty() ? "m" : "l");
            }
            raw(operators + (closed ? "h\n" : ""));
            return;
        }
        HPDF_Page_MoveTo(page_, pt(points[0].x), y(points[0].y));
        for (std::size_t i = 1; i < points.size(); ++i) {
            HPDF_Page_LineTo(page_, pt(points[i].x), y(points[i].y));
        }
        if (closed) {
            HPDF_Page_ClosePath(page_);
        }
    }

    void trace(const layout::PlacedDrawing::Part& part) {
        using Kind = layout::PlacedDrawing::Part::Kind;
        const auto& [first, second, third] = part.points;
        const auto at = [this](const layout::PlacedDrawing::Point& point) {
            return digits(point.x) + " " + digits(height_ - point.y);
        };
        switch (part.kind) {
            case Kind::move:
                raw_allowed_ ? raw(at(first) + " m\n") : void(HPDF_Page_MoveTo(page_, pt(first.x), y(first.y)));
                break;
            case Kind::line:
                raw_allowed_ ? raw(at(first) + " l\n") : void(HPDF_Page_LineTo(page_, pt(first.x), y(first.y)));
                break;
            case Kind::curve:
                raw_allowed_ ? raw(at(first) + " " + at(second) + " " + at(third) + " c\n")
                             : void(HPDF_Page_CurveTo(page_, pt(first.x), y(first.y), pt(second.x), y(second.y),
                                                      pt(third.x), y(third.y)));
                break;
            case Kind::close:
                raw_allowed_ ? raw("h\n") : void(HPDF_Page_ClosePath(page_));
                break;
        }
    }

    /// Ends and corners of the lines that follow.
    void set_round(bool round) {
        HPDF_Page_SetLineCap(page_, round ? HPDF_ROUND_END : HPDF_BUTT_END);
        HPDF_Page_SetLineJoin(page_, round ? HPDF_ROUND_JOIN : HPDF_MITER_JOIN);
    }

    void set_fill(double grey) {
        if (fill_ != grey) {
            HPDF_Page_SetGrayFill(page_, static_cast<HPDF_REAL>(grey));
            fill_ = grey;
        }
    }
    void set_stroke(Points width_pt, double grey, const std::vector<Millimetres>& dash_mm) {
        if (line_ != std::pair{width_pt, grey}) {
            HPDF_Page_SetLineWidth(page_, static_cast<HPDF_REAL>(width_pt.value()));
            HPDF_Page_SetGrayStroke(page_, static_cast<HPDF_REAL>(grey));
            line_ = {width_pt, grey};
        }
        if (!dash_mm.empty() && !raw_allowed_) {
            std::vector<HPDF_UINT16> whole;
            for (const Millimetres part : dash_mm) {
                whole.push_back(static_cast<HPDF_UINT16>(std::max(1.0, std::round(units::in_points(part).value()))));
            }
            HPDF_Page_SetDash(page_, whole.data(), static_cast<HPDF_UINT>(whole.size()), 0);
        } else if (!dash_mm.empty()) {
            std::string operators = "[";
            for (const Millimetres part : dash_mm) {
                operators += fmt::format("{:.4f} ", units::in_points(part).value());
            }
            raw(operators + "] 0 d\n");
        }
    }
    void end_dash(const std::vector<Millimetres>& dash_mm) {
        if (!dash_mm.empty() && !raw_allowed_) {
            HPDF_Page_SetDash(page_, nullptr, 0, 0);
        } else if (!dash_mm.empty()) {
            raw("[] 0 d\n");
        }
    }
    void prepare(bool filled, double fill_grey, Points stroke_pt, const std::vector<Millimetres>& dash_mm) {
        if (filled) {
            set_fill(fill_grey);
        }
        if (stroke_pt > Points{}) {
            set_stroke(stroke_pt, 0.0, dash_mm);
        }
    }
    void finish(bool filled, Points stroke_pt) {
        const bool stroked = stroke_pt > Points{};
        if (raw_allowed_) {
            raw(filled && stroked ? "B\n" : filled ? "f\n" : "S\n");
        } else if (filled && stroked) {
            HPDF_Page_FillStroke(page_);
        } else if (filled) {
            HPDF_Page_Fill(page_);
        } else {
            HPDF_Page_Stroke(page_);
        }
    }

    HPDF_Page page_;
    Millimetres height_;
    bool raw_allowed_;
    bool space_ = false;
    PdfFonts& fonts_;
    bool raw_failed_ = false;
    // What was set last holds until something else is set.
    std::pair<HPDF_Font, HPDF_REAL> font_{nullptr, 0.0F};
    std::optional<std::pair<Points, double>> line_;  // weight and tone
    std::optional<double> fill_;
};

}  // namespace

HPDF_REAL pdf_pt(units::Millimetres length) {
    return static_cast<HPDF_REAL>(units::in_points(length).value());
}

bool paint(HPDF_Page page, const layout::Page& what, const TagTree* reading, std::size_t number, PdfFonts& fonts) {
    PdfPainter painter(page, what.height, reading != nullptr, fonts);
    const PageReading* tags = reading == nullptr ? nullptr : &reading->pages[number];
    int mark = 0;
    for (std::size_t i = 0; i < what.items.size(); ++i) {
        if (tags != nullptr) {
            const int element = tags->element_of[i];
            if (i == 0 || element != tags->element_of[i - 1]) {
                painter.raw(i == 0 ? "" : "EMC\n");
                painter.raw(element < 0
                                ? "/Artifact BMC\n"
                                : fmt::format("/{} <</MCID {}>> BDC\n",
                                              reading->elements[static_cast<std::size_t>(element)].type, mark++));
            }
            painter.set_space(tags->space_after[i]);
        }
        std::visit(painter, what.items[i]);
    }
    if (tags != nullptr && !what.items.empty()) {
        painter.raw("EMC\n");
    }
    return !painter.raw_failed();
}

}  // namespace holdwater::draw
