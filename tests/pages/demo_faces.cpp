// SPDX-License-Identifier: MIT
#include "pages/demo_faces.hpp"

#include "card/trip/deck.hpp"
#include "draw/draw.hpp"
#include "plan/advice/remedy.hpp"
#include "plan/result/boxes.hpp"
#include "support/faces.hpp"
#include "support/trips.hpp"
#include "support/typeface.hpp"
#include "words/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace holdwater::support {

namespace {

using layout::Tag;

/// To 0.1 mm, without a minus before nothing.
std::string mm(layout::Millimetres length) {
    const double rounded = std::round(10.0 * length.value()) / 10.0;
    return fmt::format("{:.1f}", rounded == 0.0 ? 0.0 : rounded);
}

std::string tone(double grey) {
    return grey == 0.0 ? "" : fmt::format(" grey {:g}", grey);
}

std::string stroke(layout::Points width, const std::vector<layout::Millimetres>& dash) {
    return fmt::format(" {:g}{}", std::round(100.0 * width.value()) / 100.0, dash.empty() ? "" : " dashed");
}

std::string ink(bool filled, double fill_grey, layout::Points width, const std::vector<layout::Millimetres>& dash) {
    return (filled ? " filled" + tone(fill_grey) : "") +
           (width > layout::Points{} ? " line" + stroke(width, dash) : "");
}

/// "table3 r1 c2": the group's tag and number, row and cell.
std::string spot_of(const layout::Page& page, const layout::Spot& spot) {
    static constexpr const char* names[] = {"title", "heading", "text", "list", "table", "figure"};
    if (spot.group < 0) {
        return " -";
    }
    const auto& group = page.groups.at(static_cast<std::size_t>(spot.group));
    return fmt::format(" {}{}", names[static_cast<int>(group.tag)], spot.group) +
           (spot.row >= 0 ? fmt::format(" r{}", spot.row) : "") +
           (spot.cell >= 0 ? fmt::format(" c{}", spot.cell) : "");
}

struct Line {
    const layout::Page& page;

    std::string operator()(const layout::PlacedText& t) const {
        return fmt::format("text {} {} {:g}{}{}{}{} | {}", mm(t.x), mm(t.baseline),
                           std::round(100.0 * t.size_pt.value()) / 100.0, t.face == layout::Weight::bold ? " bold" : "",
                           t.upward ? " upward" : "", tone(t.grey), spot_of(page, t.spot), t.text);
    }
    std::string operator()(const layout::PlacedLine& l) const {
        return fmt::format("line {} {} {} {}", mm(l.x1), mm(l.y1), mm(l.x2), mm(l.y2)) + stroke(l.width_pt, l.dash_mm) +
               tone(l.grey);
    }
    std::string operator()(const layout::PlacedBox& b) const {
        return fmt::format("box {} {} {} {}", mm(b.x), mm(b.y), mm(b.width), mm(b.height)) +
               ink(b.filled, b.fill_grey, b.stroke_pt, {});
    }
    /// First and last point and the room that it takes: enough to see that it moved.
    std::string operator()(const layout::PlacedPath& p) const {
        if (p.points.empty()) {
            return "path of nothing";
        }
        const auto [left, right] =
            std::minmax_element(p.points.begin(), p.points.end(), [](auto a, auto b) { return a.x < b.x; });
        const auto [top, bottom] =
            std::minmax_element(p.points.begin(), p.points.end(), [](auto a, auto b) { return a.y < b.y; });
        return fmt::format("path of {} {} {} to {} {} in {} {} {} {}", p.points.size(), mm(p.points.front().x),
                           mm(p.points.front().y), mm(p.points.back().x), mm(p.points.back().y), mm(left->x),
                           mm(top->y), mm(right->x), mm(bottom->y)) +
               (p.closed ? " closed" : "") + ink(p.filled, p.fill_grey, p.stroke_pt, p.dash_mm);
    }
    /// The room that it takes and of how many shapes it is: what it shows stands in its file.
    std::string operator()(const layout::PlacedDrawing& d) const {
        return fmt::format("drawing of {} in {} {} {} {}", d.shapes.size(), mm(d.x), mm(d.y), mm(d.width),
                           mm(d.height)) +
               spot_of(page, d.spot);
    }
};

}  // namespace

const std::vector<std::string>& demo_names() {
    static const std::vector<std::string> names = {"trail-crew", "hut-night", "paddling-day", "class-day"};
    return names;
}

const std::vector<layout::Page>& demo_faces(const std::string& name) {
    static std::map<std::string, std::vector<layout::Page>> kept;
    std::vector<layout::Page>& faces = kept[name];
    if (!faces.empty()) {
        return faces;
    }
    // Advice is not on the cards.
    plan::Effort effort;
    effort.advise = false;
    effort.ways = false;
    const trip::Trip trip = demo_trip(name);
    const auto words = words::Words::read(source_text("layouts/words/en.toml"), "en.toml");
    for (const trip::Trip& part : plan::one_trip_a_box(trip)) {
        const auto plan = plan::make_plan(part, effort);
        if (!plan || !words) {
            throw std::runtime_error(name + " has no deck");
        }
        const auto cards = layout::lay_out(card::trip_deck(*plan, *words, "TEST-TEST"), format("hand"), real_measure());
        for (const layout::CardFaces& card : cards.value()) {
            faces.insert(faces.end(), card.faces.begin(), card.faces.end());
        }
    }
    return faces;
}

std::string items_of(const layout::Page& page) {
    std::string lines;
    for (const auto& group : page.groups) {
        const char* what = group.tag == Tag::figure ? "figure in words | " : "in the outline | ";
        lines += group.alt.empty() ? "" : what + group.alt + "\n";
    }
    for (const auto& item : page.items) {
        lines += std::visit(Line{page}, item) + "\n";
    }
    return lines;
}

std::map<std::string, std::string> page_lists() {
    std::map<std::string, std::string> lists;
    for (const std::string& name : demo_names()) {
        for (const layout::Page& page : demo_faces(name)) {
            lists[name + "/" + page.name + ".txt"] = items_of(page);
        }
    }
    return lists;
}

}  // namespace holdwater::support
