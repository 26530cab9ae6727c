// SPDX-License-Identifier: MIT
// The one set of measures that all blocks share: type metrics, rules, gaps. Everything in mm unless it says pt.
#pragma once

#include "layout/layout.hpp"
#include "typeface.hpp"

namespace holdwater::layout {

// Rules in pt; none is below 0.4, where printers begin to lose them.
inline constexpr double hair_pt = 0.4;
inline constexpr double rule_pt = 0.8;
inline constexpr double heavy_pt = 1.6;

/// Units stand beside their number in a smaller, regular face.
inline constexpr double quiet_unit = 0.82;

inline double em(double size_pt) {
    return size_pt * mm_per_pt;
}
inline double ascent(double size_pt) {
    return typeface::ascent_em * em(size_pt);
}
inline double descent(double size_pt) {
    return typeface::descent_em * em(size_pt);
}
inline double cap_height(double size_pt) {
    return typeface::cap_em * em(size_pt);
}
inline double leading(double size_pt) {
    return typeface::leading_em * em(size_pt);
}

/// Height of so many lines of text, from the top of the capitals to below the descenders.
inline double lines_height(std::size_t lines, double size_pt) {
    return lines == 0 ? 0.0 : ascent(size_pt) + static_cast<double>(lines - 1) * leading(size_pt) + descent(size_pt);
}

/// Where a block stands: what it may use and how much air its face has to give.
struct BlockContext {
    const Format& format;
    const Measure& measure;
    const Phrases& phrases;
    double width = 0.0;  // of the column
    double ease = 0.0;   // 0 tight .. 1 roomy
    bool ruled = false;  // a rule stands just above already

    /// A distance that grows from tight to roomy.
    double between(double tight, double roomy) const { return tight + (roomy - tight) * ease; }
    /// A distance given for a 10 pt body, for this format's body.
    double scaled(double mm) const { return mm * format.body_pt / 10.0; }
};

}  // namespace holdwater::layout
