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
    const units::Volume boil = of.reads() ? fill.boiled_most : fill.boiled;
    of.litres("boiled", boil, of.reads() ? safe.litres(boil, Toward::up) : safe.litres(boil),
              {of.reads() ? "share-95" : "likely-trimmed", "up-half-litre", balance});
}

void add_one_pours(const FigureMaker& of) {
    int nth = 0;
    for (const plan::TopUp& top_up : of.plan().top_ups) {
        of.litres("top-up", top_up.boiling, of.safe().one_boil(top_up.boiling),
                  {of.reads() ? "likely-ladder" : "fixed", "up-half-litre", of.source("heat-balance")}, ++nth);
    }
    nth = 0;
    for (const plan::LadderRung& rung : of.plan().ladder) {
        ++nth;
        const std::string balance = of.source("heat-balance");
        of.degrees("reads", rung.reading, of.safe().at_least(rung.reading), {"chosen", "up-degree", balance}, nth);
        of.brief().litres("pour", rung.pour, of.safe().litres(rung.pour, Toward::up),
                          {"share-95", "up-half-litre", balance}, nth);
        of.brief().length("below-rim", rung.below_rim, of.safe().water_line(rung.below_rim),
                          {"share-95", "up-mm", balance}, nth);
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
        of.degrees("core-peak", food.core_peak.high, of.safe().at_least(food.core_peak.high),
                   {"share-95", "up-degree", of.source("heat-engine"), food.core_peak.error.si()},
                   food_place(plan, food));
        if (of.reads() && !food.standard.finish) {
            of.brief().degrees("ready-if", food.ready_if, of.safe().at_least(food.ready_if),
                               {"share-5", "up-degree", of.source("heat-engine")}, food_place(plan, food));
        }
    }
}

}  // namespace holdwater::card
