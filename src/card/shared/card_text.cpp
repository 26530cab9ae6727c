// SPDX-License-Identifier: MIT
#include "card/shared/card_text.hpp"

namespace holdwater::card {
namespace {

struct Teller {
    Text& all;

    void add(const Text& text) const { all += text + "\n"; }
    void operator()(const Heading& b) const { add(b.text); }
    void operator()(const KeyNumber& b) const {
        add(b.label);
        add(b.value + (b.unit.empty() ? "" : "\u00A0" + b.unit) + (b.aside.empty() ? "" : " (" + b.aside + ")"));
        add(b.aside);
    }
    void operator()(const KeyRow& b) const {
        for (const KeyNumber& number : b.numbers) {
            (*this)(number);
        }
    }
    void operator()(const Steps& b) const {
        for (const Step& step : b.steps) {
            add(step.when + " " + step.text);
        }
    }
    void operator()(const Table& b) const {
        add(b.title);
        for (const Column& column : b.columns) {
            add(column.head);
        }
        for (const auto& row : b.rows) {
            for (const Text& cell : row) {
                add(cell);
            }
        }
    }
    void operator()(const Ladder& b) const {
        add(b.left_head);
        for (const Ladder::Rung& rung : b.rungs) {
            add(rung.reading);
            for (const Text& amount : rung.amounts) {
                add(amount);
            }
        }
        add(b.floor_reading + " " + b.floor_action);
    }
    void operator()(const Ruler& b) const {
        add(b.title);
        for (const Ruler::Tick& tick : b.ticks) {
            add(tick.label);
        }
        add(b.too_thick_label);
    }
    void operator()(const Curve& b) const {
        add(b.title);
        add(b.floor_label);
    }
    void operator()(const DayBar& b) const {
        for (const DayBar::Mark& mark : b.marks) {
            add(mark.label + " " + mark.above);
        }
    }
    void operator()(const Caution& b) const { add(b.text); }
    void operator()(const Note& b) const { add(b.text); }
    void operator()(const WriteIn& b) const {
        for (const Text& first : b.first_column) {
            add(first);
        }
    }
    void operator()(const Turn&) const {}
};

}  // namespace

Text text_of(const Card& card) {
    Text all;
    for (const Block& block : card.blocks) {
        std::visit(Teller{all}, block);
    }
    for (const Caution& caution : card.cautions) {
        all += caution.text + "\n";
    }
    return all;
}

}  // namespace holdwater::card
