// SPDX-License-Identifier: MIT
#include "layout/reading.hpp"

#include "layout/text/emphasis.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::layout {

namespace {

template <class Change>
void change_spots(std::vector<Item>& items, std::size_t first, Change change) {
    for (std::size_t i = first; i < items.size(); ++i) {
        std::visit([&change](auto& one) { change(one.spot); }, items[i]);
    }
}

/// A text as it is spoken: no stars, plain spaces.
std::string spoken(const card::Text& text) {
    std::string made = unmarked(text);
    for (std::size_t at = made.find(no_break); at != std::string::npos; at = made.find(no_break, at)) {
        made.replace(at, no_break.size(), " ");
    }
    return made;
}

void add(std::string& made, const std::string& part, const char* between) {
    if (!part.empty()) {
        made += (made.empty() ? "" : between) + part;
    }
}

double down(double value) {
    return std::floor(value);
}
double up(double value) {
    return std::ceil(value);
}

/// The line's value between its points, rounded; none outside them.
std::string value_at(const std::vector<card::Curve::Point>& line, double x, double (*rounded)(double)) {
    for (std::size_t i = 1; i < line.size(); ++i) {
        const auto& a = line[i - 1];
        const auto& b = line[i];
        if (a.x <= x && x <= b.x) {
            const double share = b.x > a.x ? (x - a.x) / (b.x - a.x) : 0.0;
            return fmt::format("{:.0f}", rounded(a.y + share * (b.y - a.y)));
        }
    }
    return "";
}

}  // namespace

void set_row(std::vector<Item>& items, std::size_t first, std::size_t row) {
    change_spots(items, first, [row](Spot& spot) { spot.row = static_cast<int>(row); });
}

void set_cell(std::vector<Item>& items, std::size_t first, std::size_t cell) {
    change_spots(items, first, [cell](Spot& spot) { spot.cell = static_cast<int>(cell); });
}

int add_group(Page& page, const Group& group) {
    page.groups.push_back(group);
    return static_cast<int>(page.groups.size()) - 1;
}

void put_in_group(Page& page, int group, const std::vector<Item>& items, Millimetres dx, Millimetres dy) {
    const std::size_t first = page.items.size();
    const bool whole = page.groups[static_cast<std::size_t>(group)].tag == Tag::figure;
    put(page.items, items, dx, dy);
    for (std::size_t i = first; i < page.items.size(); ++i) {
        const bool member = whole || as_text(page.items[i]) != nullptr;
        std::visit([&](auto& one) { one.spot.group = member ? group : -1; }, page.items[i]);
    }
}

void put_group(Page& page, const Fragment& part, Millimetres dx, Millimetres dy) {
    put_in_group(page, add_group(page, part.group), part.items, dx, dy);
}

void put_page(Page& onto, const Page& part, Millimetres dx, Millimetres dy, double factor) {
    const int before = static_cast<int>(onto.groups.size());
    onto.groups.insert(onto.groups.end(), part.groups.begin(), part.groups.end());
    onto.items.reserve(onto.items.size() + part.items.size());
    for (const auto& item : part.items) {
        Item placed = moved(factor == 1.0 ? item : scaled(item, factor), dx, dy);
        std::visit([before](auto& one) { one.spot.group += one.spot.group < 0 ? 0 : before; }, placed);
        onto.items.push_back(std::move(placed));
    }
}

std::string described(const card::Ruler& ruler, Millimetres end) {
    std::string made = spoken(ruler.title);
    std::string ticks;
    for (const auto& tick : ruler.ticks) {
        if (!tick.label.empty() && Millimetres{tick.at_mm} <= end) {
            add(ticks, fmt::format("{:g} mm: {}", tick.at_mm, spoken(tick.label)), "; ");
        }
    }
    add(made, ticks, ". ");
    if (end >= Millimetres{ruler.too_thick_mm}) {
        add(made, fmt::format("{:g} mm: {}", ruler.too_thick_mm, spoken(ruler.too_thick_label)), "; ");
    }
    return made;
}

std::string described(const card::Curve& curve) {
    std::string made = spoken(curve.title);
    add(made, spoken(curve.x_title), ". ");
    add(made, spoken(curve.y_title), " / ");
    std::string values;
    for (const auto& label : curve.x_labels) {
        // A bath is never said to be warmer than it is drawn; only the upper edge of the band goes up.
        const std::string likely = value_at(curve.likely, label.at, down);
        const std::string low = value_at(curve.low, label.at, down);
        const std::string high = value_at(curve.high, label.at, up);
        if (!likely.empty()) {
            const bool band = !low.empty() && !high.empty() && low != high;
            std::string said = spoken(label.text);
            said.append(": ").append(likely);
            if (band) {
                said.append(" (").append(low).append("–").append(high).append(")");
            }
            add(values, said, "; ");
        }
    }
    add(made, values, ". ");
    add(made, spoken(curve.floor_label), ". ");
    return made;
}

std::string described(const card::Drawings& drawings) {
    std::string made;
    for (const auto& shown : drawings.shown) {
        for (const card::Text& text : {shown.label, shown.alt}) {
            add(made, spoken(text), made.ends_with('.') ? " " : ". ");
        }
    }
    return made;
}

std::string described(const card::DayBar& bar) {
    std::string made;
    for (const auto& span : bar.spans) {
        add(made, spoken(span.label), ", ");
    }
    std::vector<card::DayBar::Mark> marks = bar.marks;
    std::stable_sort(marks.begin(), marks.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    std::string times;
    for (const auto& mark : marks) {
        add(times, spoken(mark.label) + (mark.above.empty() ? "" : " " + spoken(mark.above)), "; ");
    }
    add(made, times, ". ");
    return made;
}

std::string described(const card::Staircase& stairs) {
    std::string made = spoken(stairs.title);
    std::string heads;
    for (const card::Column& column : stairs.table.columns) {
        add(heads, spoken(column.head), ", ");
    }
    add(made, heads, ". ");
    for (const auto& row : stairs.table.rows) {
        std::string cells;
        for (const card::Text& cell : row) {
            add(cells, spoken(cell), ", ");
        }
        add(made, cells, "; ");
    }
    add(made, spoken(stairs.too_thick), "; ");
    return made;
}

std::string described(const card::Bands& bands) {
    std::string made;
    for (const auto& bar : bands.bars) {
        add(made, spoken(bar.label) + ": " + spoken(bar.span), "; ");
    }
    std::string marks;
    for (const auto& mark : bands.marks) {
        add(marks, spoken(mark.label), "; ");
    }
    add(made, marks, ". ");
    std::string below;
    for (const auto& mark : bands.below) {
        add(below, fmt::format("{:.0f} °C: {}", mark.at, spoken(mark.label)), "; ");
    }
    if (!below.empty()) {
        add(made, spoken(bands.below_head) + ": " + below, ". ");
    }
    return made;
}

}  // namespace holdwater::layout
