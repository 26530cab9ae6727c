// SPDX-License-Identifier: MIT
#include "layout/sheet/strip_cuts.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::layout {

namespace {

constexpr Millimetres glue_tab = 15.0_mm;  // of a lower piece, beyond the joint [mm]
constexpr Millimetres head_room = 6.0_mm;  // above the last mark of the whole strip

/// The place near `wanted` that is farthest from every labelled mark.
Millimetres joint_near(const card::Strip& strip, Millimetres wanted, Millimetres low, Millimetres high) {
    constexpr Millimetres reach = 20.0_mm;
    constexpr Millimetres step = 1.0_mm;
    Millimetres best = std::clamp(round(wanted), low, high);
    Millimetres best_gap = -1.0_mm;
    for (Millimetres at = std::max(low, round(wanted) - reach); at <= std::min(high, wanted + reach); at += step) {
        Millimetres gap = reach;
        for (const auto& mark : strip.marks) {
            if (!mark.label.empty()) {
                gap = std::min(
                    gap, abs(Millimetres{mark.at_mm} - at) * (mark.strong ? 0.25 : 1.0));  // these have words beside
            }
        }
        if (gap > best_gap + 1e-9_mm) {
            best_gap = gap;
            best = at;
        }
    }
    return best;
}

}  // namespace

std::vector<Stretch> stretches(const card::Strip& strip, Millimetres room) {
    const Millimetres length{strip.length_mm};
    if (length + head_room <= room) {
        return {{0.0_mm, length, head_room, true, true}};
    }
    const Millimetres most = floor(room - glue_tab);  // joints lie on whole millimetres
    const Millimetres whole = length + head_room;
    constexpr Millimetres choice = 20.0_mm;  // a joint may move by so much at least, off the marks
    const int count = static_cast<int>(std::ceil((whole - room) / (most - choice))) + 1;
    std::vector<Stretch> made;
    Millimetres from;
    for (int i = 1; i <= count; ++i) {
        const bool last = i == count;
        // What the later pieces cannot take must be on this one.
        const Millimetres rest = room - head_room + most * (count - i - 1);
        const Millimetres to = last ? length
                                    : joint_near(strip, from + (length - from) / (count - i + 1),
                                                 std::max(from + 1.0_mm, ceil(length - rest)), floor(from + most));
        made.push_back({from, to, last ? head_room : glue_tab, i == 1, last});
        from = to;
    }
    return made;
}

}  // namespace holdwater::layout
