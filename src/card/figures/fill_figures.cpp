// SPDX-License-Identifier: MIT
// The figures of the Fill card.
#include "card/figures/fill_rounds.hpp"
#include "card/figures/parts.hpp"

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

void add_fill_figures(FigureList& list) {
    const FigureMaker of(list, "fill");
    const FigureMaker act = of.acted_on();
    const SafeSide& safe = of.safe();
    const plan::Plan& plan = of.plan();
    const plan::Fill& fill = plan.fill;
    const std::string engine = of.source("heat-engine");
    const std::string balance = of.source("heat-balance");
    act.degrees("fill", fill.reading, safe.about(fill.reading), {"chosen-hottest", "none-whole-degrees", engine});
    act.litres("cold", fill.cold, safe.litres(fill.cold), {"chosen", "half-litre", balance});
    const FillSums sums = fill_sums(safe);
    const How boiled{of.reads() ? "share-95" : "likely-trimmed", sums.rounding, balance};
    act.litres("boiled", of.reads() ? fill.boiled_most : fill.boiled, sums.all, boiled);
    of.brief().litres("boil-short", of.reads() ? fill.boiled_most : fill.boiled, sums.all, boiled);
    add_acts(of);
    add_rounds(of);
    add_warming(of);
    if (fill.below_rim) {
        of.length("below-rim", *fill.below_rim, safe.water_line(*fill.below_rim), {"share-95", "up-mm", balance});
    }
    const units::Mass heavy = weight_of_fill(plan);
    of.number("heavy", heavy.si(), units::amount(heavy, safe.system(), {1.0}), {"likely-fill", "none", balance});
}

}  // namespace holdwater::card
