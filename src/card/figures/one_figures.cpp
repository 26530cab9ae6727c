// SPDX-License-Identifier: MIT
// The figures of the one card: the whole trip in short.
#include "card/figures/fill_rounds.hpp"
#include "card/figures/parts.hpp"
#include "card/figures/places.hpp"

namespace holdwater::card {

using units::Toward;

namespace {

void add_water(const FigureMaker& of) {
    const plan::Fill& fill = of.plan().fill;
    const SafeSide& safe = of.safe();
    const std::string balance = of.source("heat-balance");
    of.degrees("fill", fill.reading, safe.about(fill.reading),
               {"chosen-hottest", "none-whole-degrees", of.source("heat-engine")});
    of.litres("cold", fill.cold, safe.litres(fill.cold), {"chosen", "half-litre", balance});
    const FillSums sums = fill_sums(safe);
    of.litres("boiled", of.reads() ? fill.boiled_most : fill.boiled, sums.all,
              {of.reads() ? "share-95" : "likely-trimmed", sums.rounding, balance});
}

void add_one_pours(const FigureMaker& of) {
    int nth = 0;
    for (const plan::TopUp& top_up : of.plan().top_ups) {
        of.litres("top-up", top_up.boiling, of.safe().one_boil(top_up.boiling),
                  {of.reads() ? "likely-ladder" : "fixed", "up-half-litre", of.source("heat-balance")}, ++nth);
        of.at("top-up-fire", top_up.light_fire, {"share-95-jointly", "minute", of.source("heat-engine")}, nth);
    }
}

}  // namespace

void add_one_figures(FigureList& list) {
    const FigureMaker of(list, "one");
    const plan::Plan& plan = of.plan();
    of.at("latest-fire", plan.fill.latest_fire, {"share-95", "down-15-min", of.source("hold-times")});
    add_acts(of);
    add_water(of);
    add_one_pours(of);
    add_warming(of);
    if (of.reads()) {
        of.degrees("mark", plan.levels.mark, of.safe().at_least(plan.levels.mark),
                   {"chosen-fewest", "none-whole-degrees", of.source("heat-engine")});
        add_intervals(of);
        add_ladder(of);
    }
    add_reheat(of);
    add_read_floor(of);
    add_action_line(of);
    add_top_up_mark(of);
    add_late(of);
    add_waits_until(of);
    if (const auto away = away_below(plan)) {
        of.brief().degrees("away", *away, of.safe().at_least(*away), {"chosen", "up-degree", of.source("cooling-law")});
    }
    const units::Mass heavy = weight_of_fill(plan);
    of.number("heavy", heavy.si(), units::amount(heavy, of.safe().system(), {1.0}),
              {"likely-fill", "none", of.source("heat-balance")});
    int nth = 0;
    for (const plan::FoodPlan& food : plan.foods) {
        ++nth;
        add_food(of, food, nth);
        add_ready(of, food);
    }
}

}  // namespace holdwater::card
