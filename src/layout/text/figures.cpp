// SPDX-License-Identifier: MIT
#include "layout/text/figures.hpp"

#include "layout/text/emphasis.hpp"

#include <algorithm>
#include <string_view>

namespace holdwater::layout {

namespace {

/// Bytes of a leading sign or bound: "+", "<", "≤", "−" and the like.
std::size_t sign_length(std::string_view text) {
    using namespace std::string_view_literals;
    for (const auto sign : {"+"sv, "-"sv, "<"sv, ">"sv, "−"sv, "±"sv, "≤"sv, "≥"sv, "≈"sv}) {
        if (text.substr(0, sign.size()) == sign) {
            return sign.size();
        }
    }
    return 0;
}

}  // namespace

Figure figure_of(const card::Text& cell, const TextStyle& style, const Measure& measure) {
    Figure made;
    const std::string text = join_units(cell);
    std::size_t end = sign_length(text);
    const std::size_t first = end;
    while (end < text.size() && is_digit(text[end])) {
        ++end;
    }
    if (end == first || text.find('*') != std::string::npos) {
        made.words = one_line(text, style, measure);
        return made;
    }
    std::size_t decimals_end = end;
    if (end + 1 < text.size() && (text[end] == '.' || text[end] == ',') && is_digit(text[end + 1])) {
        ++decimals_end;
        while (decimals_end < text.size() && is_digit(text[decimals_end])) {
            ++decimals_end;
        }
    }
    made.whole = one_line(text.substr(0, end), style, measure);
    if (decimals_end > end) {
        made.decimals = one_line(text.substr(end, decimals_end - end), style, measure);
    }
    if (decimals_end < text.size()) {
        // Measured together with the number, so that what follows it is known to be a unit.
        const std::string rest = text.substr(decimals_end);
        TextLine both = one_line("0" + rest, style, measure);
        if (!both.runs.empty()) {
            auto& head = both.runs.front();
            head.text.erase(0, 1);
            const Millimetres without = measure.width(head.text, head.face, head.size_pt);
            both.width += without - head.width;
            head.width = without;
        }
        made.rest = both;
    }
    return made;
}

void FigureColumn::take(const Figure& figure) {
    whole = std::max(whole, figure.whole.width);
    decimals = std::max(decimals, figure.decimals.width);
    rest = std::max(rest, figure.rest.width);
    words = std::max(words, figure.words.width);
}

Millimetres FigureColumn::width() const {
    return std::max(numbers(), words);
}

void place_figure(std::vector<Item>& items, const Figure& figure, const FigureColumn& column, Millimetres left,
                  Millimetres width, card::Align align, Millimetres baseline, const TextStyle& style) {
    const Millimetres spare = width - column.width();
    const Millimetres x = left + (align == card::Align::right    ? spare
                                  : align == card::Align::centre ? 0.5 * spare
                                                                 : 0.0_mm);
    if (!figure.words.runs.empty()) {
        const Millimetres room = column.width() - figure.words.width;
        place(items, figure.words,
              x + (align == card::Align::right    ? room
                   : align == card::Align::centre ? 0.5 * room
                                                  : 0.0_mm),
              baseline, style);
        return;
    }
    const Millimetres inner = column.width() - column.numbers();
    Millimetres at = x + (align == card::Align::left ? 0.0_mm : align == card::Align::centre ? 0.5 * inner : inner);
    place(items, figure.whole, at + column.whole - figure.whole.width, baseline, style);
    at += column.whole;
    place(items, figure.decimals, at, baseline, style);
    // Without decimals anywhere near, the unit follows its number; else units stand in line.
    place(items, figure.rest, at + column.decimals, baseline, style);
}

}  // namespace holdwater::layout
