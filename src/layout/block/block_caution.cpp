// SPDX-License-Identifier: MIT
// Cautions: a solid bar with the word in white for what can injure gravely, a frame for lesser harm.
#include "layout/block/blocks.hpp"
#include "layout/block/marks.hpp"
#include "layout/reading.hpp"

#include <algorithm>

namespace holdwater::layout {

namespace {

TextStyle caution_text(const BlockContext& setting) {
    TextStyle style;
    style.size_pt = setting.format.figure_pt;
    style.role = Role::caution;
    return style;
}

/// Bar with sign and word, all texts below it in one frame.
Fragment warnings(const std::vector<const card::Caution*>& all, const BlockContext& setting) {
    const TextStyle text = caution_text(setting);
    TextStyle word = text;
    word.face = Weight::bold;
    word.grey = 1.0;
    const Millimetres bar = 1.45 * em(word.size_pt);
    const Millimetres pad = setting.scaled(2.0_mm);
    Fragment made;
    made.items.emplace_back(filled_box(0.0_mm, 0.0_mm, setting.width, bar));
    const Millimetres sign = 0.74 * bar;
    place_warning_sign(made.items, pad, 0.5 * (bar - sign) - 0.02 * bar, sign, 1.0);
    place(made.items, one_line(setting.phrases.warning, word, setting.measure),
          pad + warning_width(sign) + setting.scaled(1.8_mm), 0.5 * (bar + cap_height(word.size_pt)), word);
    set_row(made.items, 0, 1);  // the word is read with the first warning
    Millimetres y = bar + setting.scaled(1.3_mm);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (i > 0) {
            y += setting.scaled(0.7_mm);
            made.items.emplace_back(line(pad, y, setting.width - pad, y, hair_pt));
            y += setting.scaled(1.0_mm);
        }
        const Fragment one = paragraph(all[i]->text, text, setting.width - 2.0 * pad, setting.measure);
        const std::size_t first = made.items.size();
        put(made, one, pad, y);
        set_row(made.items, first, i + 1);
        y += one.height;
    }
    y += setting.scaled(0.9_mm);
    made.items.emplace_back(frame(0.0_mm, 0.0_mm, setting.width, y, heavy_pt));
    made.height = y;
    return made;
}

/// The same for a small card: sign and word as a black tag in the first line.
Fragment compact_warnings(const std::vector<const card::Caution*>& all, const BlockContext& setting) {
    const TextStyle text = caution_text(setting);
    TextStyle word = text;
    word.face = Weight::bold;
    word.grey = 1.0;
    const Millimetres pad = setting.scaled(1.8_mm);
    const Millimetres air = setting.scaled(1.3_mm);
    const Millimetres tag = air + lines_height(1, text.size_pt) + 0.1_mm;
    const Millimetres sign = 0.72 * tag;
    const TextLine name = one_line(setting.phrases.warning, word, setting.measure);
    const Millimetres tag_width = 2.0 * pad + warning_width(sign) + setting.scaled(1.4_mm) + name.width;

    Fragment made;
    made.items.emplace_back(filled_box(0.0_mm, 0.0_mm, tag_width, tag));
    place_warning_sign(made.items, pad, 0.5 * (tag - sign) - 0.02 * tag, sign, 1.0);
    place(made.items, name, pad + warning_width(sign) + setting.scaled(1.4_mm), air + ascent(text.size_pt), word);
    set_row(made.items, 0, 1);  // the word is read with the first warning
    Millimetres y = air;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (i > 0) {
            y += setting.scaled(0.5_mm);
            made.items.emplace_back(line(pad, y, setting.width - pad, y, hair_pt));
            y += setting.scaled(0.8_mm);
        }
        const Fragment one =
            paragraph(all[i]->text, text, setting.width - 2.0 * pad, setting.measure, i == 0 ? tag_width : 0.0_mm);
        const std::size_t first = made.items.size();
        put(made, one, pad, y);
        set_row(made.items, first, i + 1);
        y += one.height;
    }
    y += setting.scaled(0.8_mm);
    made.items.emplace_back(frame(0.0_mm, 0.0_mm, setting.width, y, heavy_pt));
    made.height = y;
    return made;
}

Fragment framed(const card::Caution& one, const BlockContext& setting) {
    const TextStyle style = caution_text(setting);
    const Millimetres pad = setting.scaled(2.0_mm);
    const Millimetres sign = 1.05 * em(style.size_pt);
    const Millimetres indent = warning_width(sign) + setting.scaled(1.6_mm);
    Fragment made;
    const Fragment text = paragraph("*" + setting.phrases.caution + "* " + one.text, style,
                                    setting.width - 2.0 * pad - indent, setting.measure);
    const Millimetres air = setting.scaled(1.4_mm);
    put(made, text, pad + indent, air);
    place_warning_sign(made.items, pad, air + 0.5 * (ascent(style.size_pt) - sign), sign, 0.0);
    made.height = air + text.height + setting.scaled(0.9_mm);
    made.items.emplace_back(frame(0.0_mm, 0.0_mm, setting.width, made.height, heavy_pt));
    return made;
}

}  // namespace

Fragment cautions(const std::vector<card::Caution>& blocks, const BlockContext& setting) {
    const Millimetres gap = setting.scaled(1.6_mm);
    Fragment made;
    std::size_t row = blocks.size() + 1;  // after those of the warnings
    const auto add = [&](const Fragment& part, bool own_rows = false) {
        made.height += made.height > 0.0_mm ? gap : 0.0_mm;
        const std::size_t first = made.items.size();
        put(made, part, 0.0_mm, made.height);
        if (!own_rows) {
            set_row(made.items, first, row++);
        }
        made.height += part.height;
    };
    std::vector<const card::Caution*> grave;
    for (const auto& one : blocks) {
        if (one.word == card::SignalWord::warning) {
            grave.push_back(&one);
        }
    }
    if (!grave.empty()) {
        add(setting.format.compact ? compact_warnings(grave, setting) : warnings(grave, setting), true);
    }
    for (const auto& one : blocks) {
        if (one.word == card::SignalWord::caution) {
            add(framed(one, setting));
        } else if (one.word == card::SignalWord::none) {
            TextStyle style = caution_text(setting);
            style.face = Weight::bold;
            style.quiet_units = false;
            add(paragraph(one.text, style, setting.width, setting.measure));
        }
    }
    return made;
}

}  // namespace holdwater::layout
