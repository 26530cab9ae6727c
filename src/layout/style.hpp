// SPDX-License-Identifier: MIT
// The one set of measures that all blocks share: type metrics, rules, gaps.
#pragma once

#include "layout/layout.hpp"
#include "typeface.hpp"

namespace holdwater::layout {

// Rules in pt; none is below 0.4, where printers begin to lose them.
inline constexpr Points hair_pt = 0.4_pt;
inline constexpr Points rule_pt = 0.8_pt;
inline constexpr Points heavy_pt = 1.6_pt;

/// Units stand beside their number in a smaller, regular face.
inline constexpr double quiet_unit = 0.82;

inline Millimetres em(Points size_pt) {
    return units::in_millimetres(size_pt);
}
inline Millimetres ascent(Points size_pt) {
    return typeface::ascent_em * em(size_pt);
}
inline Millimetres descent(Points size_pt) {
    return typeface::descent_em * em(size_pt);
}
inline Millimetres cap_height(Points size_pt) {
    return typeface::cap_em * em(size_pt);
}
inline Millimetres leading(Points size_pt) {
    return typeface::leading_em * em(size_pt);
}

/// Height of so many lines of text, from the top of the capitals to below the descenders.
inline Millimetres lines_height(std::size_t lines, Points size_pt) {
    return lines == 0 ? Millimetres{}
                      : ascent(size_pt) + static_cast<double>(lines - 1) * leading(size_pt) + descent(size_pt);
}

/// Where a block stands: what it may use and how much air its face has to give.
struct BlockContext {
    const Format& format;
    const Measure& measure;
    const Phrases& phrases;
    Millimetres width;   // of the column
    double ease = 0.0;   // 0 tight .. 1 roomy
    bool ruled = false;  // a rule stands just above already

    /// A distance, a size or a factor that grows from tight to roomy.
    template <class Size>
    Size between(Size tight, Size roomy) const {
        return tight + (roomy - tight) * ease;
    }
    /// A distance given for a 10 pt body, for this format's body.
    Millimetres scaled(Millimetres given) const { return given * format.body_pt.value() / 10.0; }
};

}  // namespace holdwater::layout
