// SPDX-License-Identifier: MIT
// The number that is seen first, and rows of smaller ones.
#include "layout/block/blocks.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

namespace holdwater::layout {

namespace {

constexpr double unit_share = 0.48;    // of the number's size
constexpr double second_share = 0.56;  // the same quantity in the other system
constexpr double row_least = 1.6;      // numbers in a row: at least this many times the table figures

/// "160 °F, settled" -> "160 °F" and "settled": a short leading quantity is shown large beside the number.
std::pair<std::string, std::string> leading_quantity(const card::Text& aside) {
    constexpr std::size_t longest = 12;  // bytes; "160 °F" has 8 with its no-break space
    if (aside.empty() || aside[0] < '0' || aside[0] > '9') {
        return {"", aside};
    }
    const auto end = aside.find(", ");
    const std::string head = aside.substr(0, end);
    if (head.size() > longest || head.find('*') != std::string::npos) {
        return {"", aside};
    }
    return {head, end == std::string::npos ? "" : aside.substr(end + 2)};
}

struct Number {
    TextLine value;
    TextLine unit;
    Millimetres gap;
    Millimetres width() const { return value.width + (unit.runs.empty() ? 0.0_mm : gap + unit.width); }
};

TextStyle value_style(Points size_pt) {
    TextStyle style;
    style.size_pt = size_pt;
    style.face = Weight::bold;
    style.unit_pt = unit_share * size_pt;
    style.role = Role::key_number;
    return style;
}

TextStyle unit_style(Points size_pt, const BlockContext& setting) {
    TextStyle style;
    style.size_pt = std::max(unit_share * size_pt, setting.format.body_pt);
    return style;
}

Number number_of(const card::KeyNumber& block, Points size_pt, const BlockContext& setting) {
    Number made;
    made.value = one_line(block.value, value_style(size_pt), setting.measure);
    made.unit = one_line(block.unit, unit_style(size_pt, setting), setting.measure);
    made.gap = 0.13 * em(size_pt);
    return made;
}

/// How far "5:25 pm" or "8,4" hangs below the line [mm].
Millimetres hang_of(const std::string& value, Points size_pt) {
    return value.find_first_of("gjpqy,") == std::string::npos ? 0.0_mm : descent(size_pt);
}

void place_number(Fragment& onto, const Number& number, Millimetres x, Millimetres baseline, Points size_pt,
                  const BlockContext& setting) {
    place(onto.items, number.value, x, baseline, value_style(size_pt));
    place(onto.items, number.unit, x + number.value.width + number.gap, baseline, unit_style(size_pt, setting));
}

}  // namespace

Fragment key_number(const card::KeyNumber& block, const BlockContext& setting) {
    const Millimetres width = setting.width;
    // Most of the growth comes first: the number is what the air of the face is for.
    const double share = std::min(1.0, 1.6 * setting.ease);
    Points size = setting.format.key_pt + (setting.format.key_max_pt - setting.format.key_pt) * share;
    const auto [second, rest] = leading_quantity(block.aside);
    const TextStyle label_style = [&] {
        TextStyle style = body_style(setting);
        style.size_pt = setting.format.figure_pt;
        return style;
    }();

    Number number = number_of(block, size, setting);
    while (number.width() > width && size > setting.format.key_pt) {
        size = std::max(setting.format.key_pt, size - 1.0_pt);
        number = number_of(block, size, setting);
    }

    Fragment made;
    Millimetres top;
    if (!block.label.empty()) {
        const Fragment label = paragraph(block.label, label_style, width, setting.measure);
        put(made, label, 0.0_mm, 0.0_mm);
        top = label.height + setting.between(setting.scaled(0.8_mm), setting.scaled(2.0_mm));
    }
    const Millimetres cap = cap_height(size);
    const Millimetres baseline = top + cap;
    place_number(made, number, 0.0_mm, baseline, size, setting);
    made.too_wide = std::max(made.too_wide, number.width() - width);
    made.height = baseline + std::max(setting.scaled(0.8_mm), hang_of(block.value, size));

    const Millimetres air = setting.scaled(5.0_mm);
    Millimetres x = number.width() + air;
    if (!second.empty()) {
        TextStyle style = value_style(std::max(second_share * size, setting.format.figure_pt));
        style.unit_pt = std::max(unit_share * style.size_pt, setting.format.body_pt);
        const TextLine text = one_line(second, style, setting.measure);
        if (x + text.width <= width) {
            place(made.items, text, x, baseline, style);
            x += text.width + air;
        } else {
            made.height += setting.scaled(1.2_mm) + cap_height(style.size_pt);
            place(made.items, text, 0.0_mm, made.height, style);
            made.height += setting.scaled(0.8_mm);
            x = width;
        }
    }
    if (rest.empty()) {
        return made;
    }
    // What is left stands beside the number where it fits within its height, else below.
    const TextStyle aside = body_style(setting);
    constexpr Millimetres narrowest = 24.0_mm;  // mm; two short words
    if (width - x >= setting.scaled(narrowest)) {
        const Fragment text = paragraph(rest, aside, width - x, setting.measure);
        if (text.too_wide == 0.0_mm && text.height - descent(aside.size_pt) <= cap + setting.scaled(1.0_mm)) {
            put(made, text, x, baseline + descent(aside.size_pt) - text.height);
            made.height = std::max(made.height, baseline + descent(aside.size_pt));
            return made;
        }
    }
    const Fragment text = paragraph(rest, aside, width, setting.measure);
    made.height += setting.scaled(0.8_mm);
    put(made, text, 0.0_mm, made.height);
    made.height += text.height;
    return made;
}

Fragment key_row(const card::KeyRow& block, const BlockContext& setting) {
    Fragment made;
    if (block.numbers.empty()) {
        return made;
    }
    const Millimetres gap = setting.scaled(3.2_mm);
    const auto count = static_cast<double>(block.numbers.size());
    const Millimetres cell = (setting.width - gap * (count - 1.0)) / count;
    const Points least = std::min(row_least * setting.format.figure_pt, setting.format.key_pt);
    Points size = setting.between(0.8 * setting.format.key_pt, setting.format.key_pt);
    const auto fits = [&](Points pt) {
        return std::all_of(block.numbers.begin(), block.numbers.end(),
                           [&](const auto& one) { return number_of(one, pt, setting).width() <= cell; });
    };
    while (size > least && !fits(size)) {
        size = std::max(least, size - 0.5_pt);
    }

    const TextStyle small = body_style(setting);
    std::vector<Fragment> labels;
    Millimetres label_height;
    for (const auto& one : block.numbers) {
        labels.push_back(paragraph(one.label, small, cell, setting.measure));
        label_height = std::max(label_height, labels.back().height);
    }
    const Millimetres baseline = label_height + setting.scaled(1.0_mm) + cap_height(size);
    Millimetres hang;
    for (const auto& one : block.numbers) {
        hang = std::max(hang, hang_of(one.value, size));
    }
    Millimetres bottom = baseline + std::max(setting.scaled(0.6_mm), hang);
    for (std::size_t i = 0; i < block.numbers.size(); ++i) {
        const Millimetres x = static_cast<double>(i) * (cell + gap);
        const Number number = number_of(block.numbers[i], size, setting);
        const std::size_t first = made.items.size();
        put(made, labels[i], x, label_height - labels[i].height);
        place_number(made, number, x, baseline, size, setting);
        made.too_wide = std::max(made.too_wide, number.width() - cell);
        if (!block.numbers[i].aside.empty()) {
            const Fragment aside = paragraph(block.numbers[i].aside, small, cell, setting.measure);
            const Millimetres y = baseline + std::max(setting.scaled(1.4_mm), hang);
            put(made, aside, x, y);
            bottom = std::max(bottom, y + aside.height);
        }
        set_row(made.items, first, i);
    }
    for (std::size_t i = 1; i < block.numbers.size(); ++i) {
        const Millimetres x = static_cast<double>(i) * (cell + gap) - 0.5 * gap;
        made.items.emplace_back(line(x, 0.0_mm, x, bottom, hair_pt));
    }
    made.height = bottom;
    return made;
}

}  // namespace holdwater::layout
