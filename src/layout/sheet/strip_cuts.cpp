// SPDX-License-Identifier: MIT
#include "layout/sheet/strip_cuts.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::layout {

namespace {

constexpr double glue_tab = 15.0;  // of a lower piece, beyond the joint [mm]
constexpr double head_room = 6.0;  // above the last mark of the whole strip

/// The place near `wanted` that is farthest from every labelled mark.
double joint_near(const card::Strip& strip, double wanted, double low, double high) {
    constexpr double reach = 20.0;
    constexpr double step = 1.0;
    double best = std::clamp(std::round(wanted), low, high);
    double best_gap = -1.0;
    for (double at = std::max(low, std::round(wanted) - reach); at <= std::min(high, wanted + reach); at += step) {
        double gap = reach;
        for (const auto& mark : strip.marks) {
            if (!mark.label.empty()) {
                gap = std::min(gap, std::abs(mark.at_mm - at) * (mark.strong ? 0.25 : 1.0));  // these have words beside
            }
        }
        if (gap > best_gap + 1e-9) {
            best_gap = gap;
            best = at;
        }
    }
    return best;
}

}  // namespace

std::vector<Stretch> stretches(const card::Strip& strip, double room) {
    if (strip.length_mm + head_room <= room) {
        return {{0.0, strip.length_mm, head_room, true, true}};
    }
    const double most = std::floor(room - glue_tab);  // joints lie on whole millimetres
    const double whole = strip.length_mm + head_room;
    constexpr double choice = 20.0;  // a joint may move by so much at least, off the marks
    const int count = static_cast<int>(std::ceil((whole - room) / (most - choice))) + 1;
    std::vector<Stretch> made;
    double from = 0.0;
    for (int i = 1; i <= count; ++i) {
        const bool last = i == count;
        // What the later pieces cannot take must be on this one.
        const double rest = room - head_room + most * (count - i - 1);
        const double to =
            last ? strip.length_mm
                 : joint_near(strip, from + (strip.length_mm - from) / (count - i + 1),
                              std::max(from + 1.0, std::ceil(strip.length_mm - rest)), std::floor(from + most));
        made.push_back({from, to, last ? head_room : glue_tab, i == 1, last});
        from = to;
    }
    return made;
}

}  // namespace holdwater::layout
