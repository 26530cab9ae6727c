// SPDX-License-Identifier: MIT
#include "card/shared/decimal_mark.hpp"

namespace holdwater::card {
namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Visits every text of a block that is shown.
struct Setter {
    const std::string& mark;

    void set(Text& text) const { set_decimal_mark(text, mark); }
    void set(std::vector<Text>& texts) const {
        for (Text& text : texts) {
            set(text);
        }
    }
    void set(std::vector<Curve::Label>& labels) const {
        for (Curve::Label& label : labels) {
            set(label.text);
        }
    }

    void operator()(Heading& b) const { set(b.text); }
    void operator()(KeyNumber& b) const {
        set(b.label);
        set(b.value);
        set(b.unit);
        set(b.aside);
    }
    void operator()(KeyRow& b) const {
        for (KeyNumber& number : b.numbers) {
            (*this)(number);
        }
    }
    void operator()(Steps& b) const {
        for (Step& step : b.steps) {
            set(step.when);
            set(step.text);
        }
    }
    void operator()(Table& b) const {
        set(b.title);
        for (Column& column : b.columns) {
            set(column.head);
        }
        for (std::vector<Text>& row : b.rows) {
            set(row);
        }
    }
    void operator()(Ladder& b) const {
        set(b.left_head);
        set(b.right_heads);
        for (Ladder::Rung& rung : b.rungs) {
            set(rung.reading);
            set(rung.amounts);
        }
        set(b.floor_reading);
        set(b.floor_action);
    }
    void operator()(Ruler& b) const {
        set(b.title);
        set(b.zero_label);
        for (Ruler::Tick& tick : b.ticks) {
            set(tick.label);
        }
        set(b.too_thick_label);
    }
    void operator()(Curve& b) const {
        for (Text* text : {&b.title, &b.floor_label, &b.x_title, &b.y_title, &b.likely_label, &b.band_label,
                           &b.second_label, &b.marks_label, &b.gaps_label}) {
            set(*text);
        }
        set(b.x_labels);
        set(b.y_labels);
    }
    void operator()(DayBar& b) const {
        for (DayBar::Span& span : b.spans) {
            set(span.label);
        }
        for (DayBar::Mark& one : b.marks) {
            set(one.label);
            set(one.above);
        }
    }
    void operator()(Caution& b) const { set(b.text); }
    void operator()(Note& b) const { set(b.text); }
    void operator()(WriteIn& b) const {
        set(b.heads);
        set(b.first_column);
    }
    void operator()(Turn&) const {}
};

}  // namespace

void set_decimal_mark(Text& text, const std::string& mark) {
    if (mark == ".") {
        return;
    }
    for (std::size_t i = 1; i + 1 < text.size(); ++i) {
        if (text[i] == '.' && is_digit(text[i - 1]) && is_digit(text[i + 1])) {
            text.replace(i, 1, mark);
        }
    }
}

void set_decimal_mark(Block& block, const std::string& mark) {
    std::visit(Setter{mark}, block);
}

void set_decimal_mark(Strip& strip, const std::string& mark) {
    set_decimal_mark(strip.title, mark);
    for (Strip::Mark& one : strip.marks) {
        set_decimal_mark(one.label, mark);
    }
}

void set_decimal_mark(Deck& deck, const std::string& mark) {
    for (Card& card : deck.cards) {
        set_decimal_mark(card.name, mark);
        set_decimal_mark(card.question, mark);
        for (Block& block : card.blocks) {
            set_decimal_mark(block, mark);
        }
        for (Caution& caution : card.cautions) {
            set_decimal_mark(caution.text, mark);
        }
    }
}

}  // namespace holdwater::card
