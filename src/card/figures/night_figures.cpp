// SPDX-License-Identifier: MIT
// The figures of the Night card.
#include "card/figures/parts.hpp"

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

void add_rows(const FigureMaker& of, const How& cooling) {
    const SafeSide& safe = of.safe();
    const How chosen{"chosen", "up-degree", cooling.source};
    int nth = 0;
    for (const plan::Unattended& row : of.plan().night.unattended) {
        of.degrees("reads", row.reading, safe.at_least(row.reading), chosen, ++nth);
        of.span("leave", row.longest, safe.may_leave(row.longest), cooling, nth);
    }
}

void add_pours_by_clock(const FigureMaker& of, const How& jointly) {
    int nth = 0;
    for (const plan::TopUp& top_up : of.plan().top_ups) {
        ++nth;
        of.at("wake", top_up.light_fire, jointly, nth);
        of.at("pour", top_up.at, jointly, nth);
        of.brief().litres("pour", top_up.boiling, of.safe().litres(top_up.boiling),
                          {"fixed", "half-litre", of.source("heat-balance")}, nth);
    }
    if (const auto& wake = of.plan().night.wake) {
        of.at("first-wake", wake->after(-of.plan().round), jointly);
    }
}

}  // namespace

void add_night_figures(FigureList& list) {
    const FigureMaker of(list, "night");
    const SafeSide& safe = of.safe();
    const plan::Plan& plan = of.plan();
    const std::string engine = of.source("heat-engine");
    const How cooling{"share-95", "down-15-min", of.source("cooling-law")};
    of.acted_on().span("longest-alone", plan.night.longest, safe.may_leave(plan.night.longest), cooling);
    add_top_up_mark(of);
    of.degrees("mark", plan.night.reading, safe.at_least(plan.night.reading), {"chosen", "none-whole-degrees", engine});
    of.span("rough", plan.interval_rough, safe.may_leave(plan.interval_rough), cooling);
    of.at("from", plan.night.from, {"share-95", "minute", engine});
    add_rows(of, cooling);
    add_pours_by_clock(of, {"share-95-jointly", "minute", engine});
    add_late(of);
}

}  // namespace holdwater::card
