// SPDX-License-Identifier: MIT
// What must be true of a finished face before anyone prints it.
#include "layout/check/geometry.hpp"
#include "layout/check/legibility.hpp"
#include "layout/layout.hpp"
#include "layout/style.hpp"

#include <fmt/format.h>

#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace holdwater::layout {

namespace {

constexpr double least_contrast = 7.0;  // as for small print
constexpr Points least_rule_pt = 0.4_pt;
constexpr Millimetres rounding = 1e-6_mm;
constexpr Points rounding_pt = 1e-6_pt;
constexpr double rounding_arcmin = 1e-6;

class FaceCheck {
  public:
    FaceCheck(const Page& page, const Format& format, const Measure& measure, problem::Problems& problems)
        : page_(page), format_(format), measure_(measure), problems_(problems) {}
    /// A plain sheet: the printer's margins count instead of cuts, and no caution is asked for.
    FaceCheck(const Page& page, const Format& format, const Measure& measure, problem::Problems& problems,
              const Rect& printable)
        : page_(page), format_(format), measure_(measure), problems_(problems), printable_(printable) {}

    /// True if a caution stands on it.
    bool run();

  private:
    void check_text(std::size_t index, const PlacedText& text);
    void check_place(const Item& item);
    void check_rule(Points width_pt);
    void check_overlaps();
    void check_strokes(std::size_t index, const PlacedText& text);
    double ground(std::size_t index, const PlacedText& text, std::size_t& from) const;
    void report(problem::Code code, const std::string& message) {
        if (seen_.insert(std::string(code.text()) + message).second) {
            problems_.push_back(problem::error(code, page_.name + ": " + message));
        }
    }

    const Page& page_;
    const Format& format_;
    const Measure& measure_;
    problem::Problems& problems_;
    std::optional<Rect> printable_;
    std::set<std::string> seen_;
};

/// The tone under a text, and in `from` the item that gives it: what lies below that is hidden.
double FaceCheck::ground(std::size_t index, const PlacedText& text, std::size_t& from) const {
    using Tone = std::optional<double>;
    const Rect ink = extent(text);
    const Overloaded tone_below{
        [&](const PlacedBox& box) { return box.filled && extent(box).holds(ink) ? Tone(box.fill_grey) : Tone(); },
        [&](const PlacedPath& path) {
            const bool under = path.filled && inside(path, 0.5 * (ink.x1 + ink.x2), 0.5 * (ink.y1 + ink.y2));
            return under ? Tone(path.fill_grey) : Tone();
        },
        [](const PlacedText&) { return Tone(); }, [](const PlacedLine&) { return Tone(); },
        [](const PlacedDrawing&) { return Tone(); }};
    for (std::size_t i = index; i-- > 0;) {
        if (const Tone tone = std::visit(tone_below, page_.items[i])) {
            from = i + 1;
            return *tone;
        }
    }
    from = 0;
    return 1.0;
}

void FaceCheck::check_text(std::size_t index, const PlacedText& text) {
    const double angle = capital_arcmin(text.size_pt, format_.distance);
    if (angle < least_arcmin(text) - rounding_arcmin) {
        report("type-too-small",
               fmt::format("\"{}\" in {:g} pt has capitals of {:.1f}' at {:g} mm, {:g}' is the least", text.text,
                           text.size_pt.value(), angle, format_.distance.value(), least_arcmin(text)));
    }
    if (!measure_.covers(text.text, text.face)) {
        report("glyph-missing", fmt::format("\"{}\" holds a character that the typeface has not", text.text));
    }
    std::size_t from = 0;
    const double tone = ground(index, text, from);
    if (contrast(text.grey, tone) < least_contrast) {
        report("contrast-too-low", fmt::format("\"{}\" has a contrast of {:.1f} with its ground, {:g} is the least",
                                               text.text, contrast(text.grey, tone), least_contrast));
    }
    check_strokes(index, text);
}

void FaceCheck::check_strokes(std::size_t index, const PlacedText& text) {
    std::size_t from = 0;
    ground(index, text, from);
    const Rect ink = extent(text);
    const auto hit = [&](Millimetres x1, Millimetres y1, Millimetres x2, Millimetres y2, Points width_pt) {
        if (enters(ink.grown(0.5 * em(width_pt) - rounding), x1, y1, x2, y2)) {
            report("text-crossed", fmt::format("\"{}\" is crossed by a line", text.text));
        }
    };
    for (std::size_t i = from; i < page_.items.size(); ++i) {
        std::visit(Overloaded{[&](const PlacedLine& rule) { hit(rule.x1, rule.y1, rule.x2, rule.y2, rule.width_pt); },
                              [&](const PlacedBox& box) {
                                  const Rect edge{box.x, box.y, box.x + box.width, box.y + box.height};
                                  if (box.filled && edge.overlaps(ink) && !edge.holds(ink)) {
                                      report("text-crossed",
                                             fmt::format("\"{}\" runs over the edge of a box", text.text));
                                  }
                                  if (box.filled && i > index && edge.overlaps(ink)) {
                                      report("text-crossed", fmt::format("\"{}\" lies under a box", text.text));
                                  }
                                  if (box.stroke_pt > 0.0_pt) {
                                      hit(edge.x1, edge.y1, edge.x2, edge.y1, box.stroke_pt);
                                      hit(edge.x1, edge.y2, edge.x2, edge.y2, box.stroke_pt);
                                      hit(edge.x1, edge.y1, edge.x1, edge.y2, box.stroke_pt);
                                      hit(edge.x2, edge.y1, edge.x2, edge.y2, box.stroke_pt);
                                  }
                              },
                              [&](const PlacedPath& path) {
                                  for (std::size_t k = 1; k < path.points.size(); ++k) {
                                      hit(path.points[k - 1].x, path.points[k - 1].y, path.points[k].x,
                                          path.points[k].y, path.stroke_pt);
                                  }
                              },
                              [&](const PlacedDrawing& drawing) {
                                  if (extent(drawing).grown(-rounding).overlaps(ink)) {
                                      report("text-crossed", fmt::format("\"{}\" lies on a drawing", text.text));
                                  }
                              },
                              [](const PlacedText&) {}},  // texts on each other: check_overlaps
                   page_.items[i]);
    }
}

void FaceCheck::check_place(const Item& item) {
    const Rect ink = extent(item);
    const Rect card{0.0_mm, 0.0_mm, page_.width, page_.height};
    const auto role = std::visit([](const auto& one) { return one.role; }, item);
    const PlacedText* text = as_text(item);
    const std::string what = text != nullptr ? "\"" + text->text + "\"" : "a drawn line or box";
    if (printable_) {
        if (!printable_->grown(em(least_rule_pt)).holds(ink)) {  // half a cut line may lie on the margin
            report("overflow", fmt::format("{} runs out of the printer's margins", what));
        }
        return;
    }
    const bool at_cut = text == nullptr && (role == Role::ruler_tick || role == Role::cut_mark);
    constexpr Millimetres mark_overhang = 1.0_mm;  // a cut mark may reach over the cut by this
    if (!card.grown(at_cut ? mark_overhang : rounding).holds(ink)) {
        report("overflow", fmt::format("{} runs over the edge of the card", what));
    } else if (!at_cut && !card.grown(rounding - format_.margin).holds(ink)) {
        report("quiet-zone", fmt::format("{} comes nearer to the cut than {:g} mm", what, format_.margin.value()));
    }
}

void FaceCheck::check_rule(Points width_pt) {
    if (width_pt > 0.0_pt && width_pt < least_rule_pt - rounding_pt) {
        report("rule-too-thin",
               fmt::format("a rule of {:g} pt is thinner than {:g} pt", width_pt.value(), least_rule_pt.value()));
    }
}

void FaceCheck::check_overlaps() {
    std::vector<const PlacedText*> texts;
    for (const auto& item : page_.items) {
        if (const PlacedText* text = as_text(item)) {
            texts.push_back(text);
        }
    }
    for (std::size_t i = 0; i < texts.size(); ++i) {
        for (std::size_t k = i + 1; k < texts.size(); ++k) {
            if (extent(*texts[i]).grown(-1e-4_mm).overlaps(extent(*texts[k]).grown(-1e-4_mm))) {
                report("overlap", fmt::format("\"{}\" and \"{}\" lie on each other", texts[i]->text, texts[k]->text));
            }
        }
    }
}

bool FaceCheck::run() {
    bool cautioned = false;
    for (std::size_t i = 0; i < page_.items.size(); ++i) {
        const Item& item = page_.items[i];
        check_place(item);
        std::visit(Overloaded{[&](const PlacedText& text) {
                                  check_text(i, text);
                                  cautioned = cautioned || text.role == Role::caution;
                              },
                              [&](const PlacedLine& rule) {
                                  check_rule(rule.width_pt);
                                  if (contrast(rule.grey, 1.0) < least_contrast) {
                                      report("contrast-too-low", "a line is too pale");
                                  }
                              },
                              [&](const PlacedBox& box) { check_rule(box.stroke_pt); },
                              [&](const PlacedPath& path) { check_rule(path.stroke_pt); },
                              [&](const PlacedDrawing& drawing) {
                                  for (const auto& shape : drawing.shapes) {
                                      check_rule(shape.stroke_pt);
                                  }
                              }},
                   item);
    }
    check_overlaps();
    return cautioned;
}

}  // namespace

problem::Problems check_faces(const std::vector<CardFaces>& cards, const Format& format, const Measure& measure) {
    problem::Problems problems;
    for (const auto& card : cards) {
        bool cautioned = card.harmless;
        for (const auto& page : card.faces) {
            cautioned = FaceCheck(page, format, measure, problems).run() || cautioned;
        }
        if (!cautioned) {
            problems.push_back(problem::error("caution-missing",
                                              fmt::format("{}: no caution stands on this card",
                                                          card.faces.empty() ? card.key : card.faces.front().name)));
        }
    }
    return problems;
}

problem::Problems check_sheets(const std::vector<Page>& pages, const Format& type, const Sheet& sheet,
                               const Measure& measure) {
    const Rect printable{sheet.margin_sides, sheet.margin_top, sheet.width - sheet.margin_sides,
                         sheet.height - sheet.margin_bottom};
    problem::Problems problems;
    for (const auto& page : pages) {
        FaceCheck(page, type, measure, problems, printable).run();
    }
    return problems;
}

}  // namespace holdwater::layout
