// SPDX-License-Identifier: MIT
#include "layout/block/blocks.hpp"

#include <type_traits>

namespace holdwater::layout {

TextStyle body_style(const BlockContext& setting) {
    TextStyle style;
    style.size_pt = setting.format.body_pt;
    return style;
}

TextStyle figure_style(const BlockContext& setting) {
    TextStyle style;
    style.size_pt = setting.format.figure_pt;
    style.face = Weight::bold;
    style.unit_pt = quiet_unit * setting.format.figure_pt;
    style.role = Role::table;
    return style;
}

Fragment build(const card::Block& block, const BlockContext& setting) {
    return std::visit(
        [&setting](const auto& one) -> Fragment {
            using Kind = std::decay_t<decltype(one)>;
            if constexpr (std::is_same_v<Kind, card::Heading>) {
                return heading(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::KeyNumber>) {
                return key_number(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::KeyRow>) {
                return key_row(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::Steps>) {
                return steps(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::Table>) {
                return table(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::Ladder>) {
                return ladder(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::Curve>) {
                return curve(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::DayBar>) {
                return day_bar(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::Caution>) {
                return cautions({one}, setting);
            } else if constexpr (std::is_same_v<Kind, card::Note>) {
                return note(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::WriteIn>) {
                return write_in(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::Thermometer>) {
                return thermometer(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::Staircase>) {
                return staircase(one, setting);
            } else if constexpr (std::is_same_v<Kind, card::Bands>) {
                return bands(one, setting);
            } else {
                static_assert(std::is_same_v<Kind, card::Ruler> || std::is_same_v<Kind, card::Turn>);
                return {};
            }
        },
        block);
}

const char* block_name(const card::Block& block) {
    static constexpr const char* names[] = {"heading", "key number",  "key row",         "steps",   "table", "ladder",
                                            "ruler",   "curve",       "day bar",         "caution", "note",  "write-in",
                                            "turn",    "thermometer", "thickness steps", "bands"};
    static_assert(std::size(names) == std::variant_size_v<card::Block>);
    return names[block.index()];
}

}  // namespace holdwater::layout
