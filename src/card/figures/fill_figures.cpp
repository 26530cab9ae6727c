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
    const How trimmed{"likely-trimmed", "half-litre", balance};
    act.degrees("fill", fill.reading, safe.about(fill.reading), {"chosen-hottest", "none-whole-degrees", engine});
    act.litres("cold", fill.cold, safe.litres(fill.cold), {"chosen", "half-litre", balance});
    act.litres("boiled", fill.boiled_most, safe.litres(fill.boiled_most, Toward::up),
               {"share-95", "up-half-litre", balance});
    of.brief().litres("boil-short", fill.boiled, safe.litres(fill.boiled), trimmed);
    of.count("whole-pots", full_pots(plan), {"chosen", "none", balance});
    of.litres("pot", pot_gives(plan), safe.measured(pot_gives(plan), Toward::down),
              {"as-given", "down-tenth", of.source("trip-file")});
    of.litres("trim", to_trim(plan),
              of.reads() ? safe.litres_short(to_trim(plan), Toward::up) : safe.measured(to_trim(plan)),
              {"share-95", "up-half-litre", balance});
    if (fill.below_rim) {
        of.length("below-rim", *fill.below_rim, safe.water_line(*fill.below_rim), {"share-95", "up-mm", balance});
    }
    const units::Mass heavy = weight_of_fill(plan);
    of.number("heavy", heavy.si(), units::amount(heavy, safe.system(), {1.0}), {"likely-fill", "none", balance});
}

}  // namespace holdwater::card
