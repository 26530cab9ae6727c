// SPDX-License-Identifier: MIT
// The figures of the Top-up card.
#include "card/figures/parts.hpp"

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

void add_ladder(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const std::string balance = of.source("heat-balance");
    int nth = 0;
    for (const plan::LadderRung& rung : of.plan().ladder) {
        ++nth;
        of.degrees("reads", rung.reading, safe.at_least(rung.reading), {"chosen", "up-degree", balance}, nth);
        // Pots are measured in the first of two systems: two more figures a rung would not fit.
        of.brief().litres("pour", rung.pour, safe.litres(rung.pour, Toward::up), {"share-95", "up-half-litre", balance},
                          nth);
        of.length("below-rim", rung.below_rim, safe.water_line(rung.below_rim), {"share-95", "up-mm", balance}, nth);
    }
}

}  // namespace

void add_top_up_figures(FigureList& list) {
    const FigureMaker of(list, "topup");
    const FigureMaker act = of.acted_on();
    const SafeSide& safe = of.safe();
    const plan::Plan& plan = of.plan();
    const std::string balance = of.source("heat-balance");
    const How cooling{"share-95", "down-15-min", of.source("cooling-law")};
    act.degrees("mark", plan.levels.mark, safe.at_least(plan.levels.mark),
                {"chosen-fewest", "none-whole-degrees", of.source("heat-engine")});
    int nth = 0;
    for (const plan::TopUp& top_up : plan.top_ups) {
        ++nth;
        act.at("top-up", top_up.at, {"share-95-jointly", "down-15-min-night", of.source("heat-engine")}, nth);
        act.litres("top-up", top_up.boiling, safe.one_boil(top_up.boiling),
                   {of.reads() ? "likely-ladder" : "fixed", "up-half-litre", balance}, nth);
        if (top_up.below_rim) {
            of.length("by-clock-below-rim", *top_up.below_rim, safe.water_line(*top_up.below_rim),
                      {"share-95", "up-mm", balance}, nth);
        }
    }
    act.span("interval-calm", plan.interval_calm, safe.may_leave(plan.interval_calm), cooling);
    act.span("interval-rough", plan.interval_rough, safe.may_leave(plan.interval_rough), cooling);
    add_read_floor(of);
    add_action_line(of);
    add_ladder(of);
    const units::Volume batch = plan.trip->fire.pot * (plan.trip->fire.usable * plan.trip->fire.pots);
    of.litres("pots-give", batch, safe.measured(batch, Toward::down),
              {"as-given", "down-tenth", of.source("trip-file")});
    of.span("round", plan.round, units::print(plan.round, Toward::up), {"as-given", "none", of.source("trip-file")});
    add_late(of);
}

}  // namespace holdwater::card
