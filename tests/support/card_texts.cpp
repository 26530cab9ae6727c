// SPDX-License-Identifier: MIT
#include "support/card_texts.hpp"

#include "support/printed.hpp"

#include <variant>

namespace holdwater::support {
namespace {

using card::Text;

struct TextWalk {
    std::vector<std::string>& out;

    void add(const Text& text) const { out.push_back(as_read(text)); }
    void add_all(const std::vector<Text>& texts) const {
        for (const Text& text : texts) {
            add(text);
        }
    }
    void add_row(const Text& first, const std::vector<Text>& cells) const {
        Text line = first;
        for (const Text& cell : cells) {
            line += (line.empty() ? "" : " | ") + cell;
        }
        add(line);
    }

    void operator()(const card::Heading& b) const { add(b.text); }
    void operator()(const card::KeyNumber& b) const {
        add(b.label);
        // As it is seen: the other system stands first in the aside.
        const Text number = b.unit.empty() ? b.value : b.value + " " + b.unit;
        add(number + (b.aside.empty() ? "" : " (" + b.aside + ")"));
        if (const auto more = b.aside.find(", "); more != Text::npos) {
            add(number + " (" + b.aside.substr(0, more) + ")");
        }
    }
    void operator()(const card::KeyRow& b) const {
        for (const card::KeyNumber& number : b.numbers) {
            (*this)(number);
        }
    }
    void operator()(const card::Steps& b) const {
        for (const card::Step& step : b.steps) {
            add(step.when + " " + step.text);
        }
    }
    void operator()(const card::Table& b) const {
        add(b.title);
        for (const card::Column& column : b.columns) {
            add(column.head);
        }
        for (const auto& row : b.rows) {
            add_row("", row);
        }
    }
    void operator()(const card::Ladder& b) const {
        add(b.left_head);
        add_all(b.right_heads);
        for (const card::Ladder::Rung& rung : b.rungs) {
            add_row(rung.reading, rung.amounts);
        }
        add(b.floor_reading + " " + b.floor_action);
    }
    void operator()(const card::Thermometer& b) const {
        for (const card::Thermometer::Section& section : b.sections) {
            add(section.bar);
            add_row(section.left_head, section.heads);
            for (const card::Thermometer::Row& row : section.rows) {
                add_row(row.reading, row.cells);
            }
        }
    }
    void operator()(const card::Staircase& b) const {
        add(b.title);
        (*this)(b.table);
        add(b.too_thick);
        add(b.longer);
    }
    void operator()(const card::Bands& b) const {
        add(b.head);
        for (const card::Bands::Bar& bar : b.bars) {
            add(bar.label + " " + bar.span);
        }
        add(b.scale_head);
        add(b.below_head);
        for (const auto* const marks : {&b.marks, &b.scale, &b.below}) {
            for (const card::Bands::Mark& mark : *marks) {
                add(mark.label);
            }
        }
    }
    void operator()(const card::Ruler& b) const {
        add(b.title);
        add(b.zero_label);
        for (const card::Ruler::Tick& tick : b.ticks) {
            add(tick.label);
        }
        add(b.too_thick_label);
    }
    void operator()(const card::Curve& b) const {
        add(b.title);
        add(b.floor_label + " " + b.x_title + " " + b.y_title);
    }
    void operator()(const card::DayBar& b) const {
        for (const card::DayBar::Span& span : b.spans) {
            add(span.label);
        }
        for (const card::DayBar::Mark& mark : b.marks) {
            add(mark.label + " " + mark.above);
        }
    }
    void operator()(const card::Caution& b) const { add(b.text); }
    void operator()(const card::Note& b) const { add(b.text); }
    void operator()(const card::WriteIn& b) const {
        add_all(b.heads);
        add_all(b.first_column);
    }
    void operator()(const card::Drawings& b) const {
        for (const card::Drawings::Shown& shown : b.shown) {
            add(shown.label);
            add(shown.alt);
        }
    }
    void operator()(const card::Turn&) const {}
};

}  // namespace

std::vector<std::string> texts_of(const card::Card& card) {
    std::vector<std::string> texts;
    const TextWalk walk{texts};
    for (const card::Block& block : card.blocks) {
        std::visit(walk, block);
    }
    for (const card::Caution& caution : card.cautions) {
        walk(caution);
    }
    walk.add(card.name);
    walk.add(card.question);
    return texts;
}

std::vector<std::string> texts_of(const card::Deck& deck) {
    std::vector<std::string> texts;
    for (const card::Card& card : deck.cards) {
        const auto more = texts_of(card);
        texts.insert(texts.end(), more.begin(), more.end());
    }
    return texts;
}

std::string joined(const std::vector<std::string>& texts) {
    std::string all;
    for (const std::string& text : texts) {
        all += text + "\n";
    }
    return all;
}

}  // namespace holdwater::support
