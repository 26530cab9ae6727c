// SPDX-License-Identifier: MIT
#include "draw/tag_tree.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace holdwater::draw {

namespace {

using layout::Spot;
using layout::Tag;

Spot spot_of(const layout::Item& item) {
    return std::visit([](const auto& one) { return one.spot; }, item);
}

/// Builds the elements of one page behind those of the pages before it.
class PageTree {
  public:
    PageTree(const layout::Page& page, std::size_t number, std::vector<Element>& elements)
        : page_(page), number_(number), elements_(elements) {}

    PageReading read();

  private:
    using Cells = std::map<std::pair<int, int>, int>;  // row and cell -> element

    int add(std::string type, int parent) {
        elements_.push_back({std::move(type), parent, number_, {}, "", ""});
        return static_cast<int>(elements_.size()) - 1;
    }
    void add_group(int group);
    bool breaks_off(const layout::PlacedText& text, const layout::PlacedText& next) const;

    const layout::Page& page_;
    std::size_t number_;
    std::vector<Element>& elements_;
    int part_ = -1;
    std::map<int, Cells> leaves_;  // by group; filled from the items, then with elements
};

void PageTree::add_group(int index) {
    const layout::Group& group = page_.groups[static_cast<std::size_t>(index)];
    Cells& cells = leaves_[index];
    if (cells.empty()) {
        return;  // nothing of it can be read
    }
    switch (group.tag) {
        case Tag::title:
            part_ = add("Sect", -1);
            elements_.back().title = group.alt;
            for (auto& [spot, element] : cells) {
                element = add(spot.first <= 0 ? "H1" : "H2", part_);
            }
            return;
        case Tag::heading:
        case Tag::paragraph:
            for (auto& [spot, element] : cells) {
                element = add(group.tag == Tag::heading ? "H3" : "P", part_);
            }
            return;
        case Tag::figure: {
            const int figure = add("Figure", part_);
            elements_.back().alt = group.alt;
            for (auto& [spot, element] : cells) {
                element = figure;
            }
            return;
        }
        case Tag::list: {
            const int list = add("L", part_);
            std::map<int, int> entries;
            for (auto& [spot, element] : cells) {
                const auto [entry, fresh] = entries.try_emplace(spot.first, -1);
                entry->second = fresh ? add("LI", list) : entry->second;
                element = add(spot.second <= 0 ? "Lbl" : "LBody", entry->second);
            }
            return;
        }
        case Tag::table: {
            const int table = add("Table", part_);
            int rows = 0;
            int columns = 1;
            for (auto& [spot, element] : cells) {
                if (spot.first < 0) {
                    element = add("Caption", table);
                }
                rows = std::max(rows, spot.first + 1);
                columns = std::max(columns, spot.second + 1);
            }
            // Empty cells too: without them a figure would be read under another column's head.
            for (int r = 0; r < rows; ++r) {
                const int row = add("TR", table);
                for (int c = 0; c < columns; ++c) {
                    const int cell = add(group.headed && r == 0 ? "TH" : "TD", row);
                    if (const auto found = cells.find({r, c}); found != cells.end()) {
                        found->second = cell;
                    }
                }
            }
            return;
        }
    }
}

/// A reader of the file sees no gap between two stretches of text unless a space says so.
bool PageTree::breaks_off(const layout::PlacedText& text, const layout::PlacedText& next) const {
    constexpr units::Millimetres touching{0.05};
    if (text.text.empty() || text.text.back() == ' ' || next.text.starts_with(' ')) {
        return false;
    }
    const bool same_line =
        text.upward ? abs(text.x - next.x) < touching : abs(text.baseline - next.baseline) < touching;
    const units::Millimetres end = text.upward ? text.baseline - text.width : text.x + text.width;
    const bool hyphen = text.text.back() == '-' && text.text.size() > 1 && text.text[text.text.size() - 2] != ' ';
    return same_line ? abs(end - (text.upward ? next.baseline : next.x)) > touching : !hyphen;
}

PageReading PageTree::read() {
    const auto grouped = [this](const Spot& spot) {
        return spot.group >= 0 && static_cast<std::size_t>(spot.group) < page_.groups.size();
    };
    for (const auto& item : page_.items) {
        if (const Spot spot = spot_of(item); grouped(spot)) {
            leaves_[spot.group][{spot.row, spot.cell}] = -1;
        }
    }
    for (std::size_t group = 0; group < page_.groups.size(); ++group) {
        add_group(static_cast<int>(group));
    }
    PageReading made;
    int before = -1;
    std::map<int, std::size_t> last_text;  // by element
    for (std::size_t i = 0; i < page_.items.size(); ++i) {
        const Spot spot = spot_of(page_.items[i]);
        const int element = grouped(spot) ? leaves_[spot.group][{spot.row, spot.cell}] : -1;
        made.element_of.push_back(element);
        made.space_after.push_back(false);
        if (element >= 0 && element != before) {
            elements_[static_cast<std::size_t>(element)].marks.push_back(static_cast<int>(made.element_of_mark.size()));
            made.element_of_mark.push_back(element);
        }
        before = element;
        if (const layout::PlacedText* text = layout::as_text(page_.items[i]); text != nullptr && element >= 0) {
            if (const auto last = last_text.find(element); last != last_text.end()) {
                made.space_after[last->second] = breaks_off(*layout::as_text(page_.items[last->second]), *text);
            }
            last_text[element] = i;
        }
    }
    return made;
}

}  // namespace

TagTree reading_of(const std::vector<layout::Page>& pages) {
    TagTree made;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        made.pages.push_back(PageTree(pages[i], i, made.elements).read());
    }
    return made;
}

}  // namespace holdwater::draw
