// SPDX-License-Identifier: MIT
// The figures of the Plan card and the times of the Log card.
#include "card/figures/fill_rounds.hpp"
#include "card/figures/parts.hpp"
#include "card/figures/places.hpp"
#include "plan/result/reading_rows.hpp"
#include "plan/result/ready_condition.hpp"

#include <algorithm>

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

void add_pours(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const plan::Fill& fill = of.plan().fill;
    const std::string balance = of.source("heat-balance");
    const units::Volume boil = fill.boiled_most + fill.warming;
    const FillSums sums = fill_sums(safe);
    of.brief().litres("boil", boil, sums.with_warming, {"share-95", sums.rounding, balance});
    of.brief().litres("cold", fill.cold, safe.litres(fill.cold), {"chosen", "half-litre", balance});
    add_warming(of);
    of.brief().litres("boil-fill", fill.boiled_most, sums.all, {"share-95", sums.rounding, balance});
    of.degrees("fill", fill.reading, safe.about(fill.reading),
               {"chosen-hottest", "none-whole-degrees", of.source("heat-engine")});
    of.at("settled-at", plan::settled_at(of.plan()), {"as-given", "minute", of.source("heat-engine")});
    const units::Temperature settled = plan::should_read(of.plan(), plan::settled_at(of.plan()), fill.after_food.low);
    of.brief().degrees("settled-low", settled, safe.at_most(settled),
                       {"share-5", "down-degree", of.source("heat-engine"), fill.after_food.error.si()});
    if (const auto least = settled_least(of.plan())) {
        of.brief().degrees("settled-least", *least, safe.at_least(*least),
                           {"share-5", "up-degree", of.source("cooling-law")});
    }
    of.brief().degrees("settled-high", fill.after_food.high, safe.at_least(fill.after_food.high),
                       {"share-95", "up-degree", of.source("heat-engine")});
    add_rounds(of);
    int nth = 0;
    for (const plan::Pour& pour : fill.pours) {
        of.count("pots", pour.pots, {"chosen", "none", balance}, ++nth);
    }
}

void add_top_ups(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const std::string balance = of.source("heat-balance");
    int nth = 0;
    for (const plan::TopUp& top_up : of.plan().top_ups) {
        ++nth;
        if (of.reads()) {
            const units::Temperature reads = plan::should_read(of.plan(), top_up.at, top_up.reading.low);
            of.brief().degrees("top-up-reads", reads, safe.at_most(reads),
                               {"share-5", "down-degree", of.source("heat-engine")}, nth);
        }
        // What is put on for it: the litres of the row that Reading has for what it should read then.
        // What more that row asks for takes a second boil.
        const units::Volume boil = of.reads() ? plan::to_put_on(of.plan(), top_up.reading.low) : top_up.boiling;
        of.litres("top-up-boil", boil, safe.one_boil(boil),
                  {of.reads() ? "share-95" : "fixed", "up-half-litre", balance}, nth);
        of.at("top-up-fire", top_up.light_fire, {"share-95-jointly", "minute", of.source("heat-engine")}, nth);
        of.acted_on().litres("top-up", top_up.boiling, safe.one_boil(top_up.boiling),
                             {of.reads() ? "likely-ladder" : "fixed", "up-half-litre", balance}, nth);
        if (top_up.below_rim) {
            of.length("below-rim", *top_up.below_rim, safe.water_line(*top_up.below_rim),
                      {"share-95", "up-mm", of.source("heat-balance")}, nth);
        }
    }
}

void add_hot_water(const FigureMaker& of) {
    int nth = 0;
    for (const plan::HotWaterStart& water : of.plan().around.hot_water.list) {
        ++nth;
        const How given{"as-given", "up-half-litre", of.source("trip-file")};
        of.brief().litres("hot-water", water.volume, of.safe().litres(water.volume, Toward::up), given, nth);
        of.at("hot-water-at", water.at, {"as-given", "minute", of.source("trip-file")}, nth);
    }
}

void add_sittings(const FigureMaker& of) {
    int nth = 0;
    for (const units::Duration before : of.plan().trip->earlier_sittings) {
        of.at("sitting", of.plan().trip->serve.after(-before), {"as-given", "minute", of.source("trip-file")}, ++nth);
    }
}

}  // namespace

void add_plan_food(FigureList& list, const plan::FoodPlan& food) {
    const FigureMaker of = FigureMaker(list, "plan").acted_on();
    const SafeSide& safe = of.safe();
    const Which name = food_place(of.plan(), food);
    of.degrees("core-peak", food.core_peak.high, safe.at_least(food.core_peak.high),
               {"share-95", "up-degree", of.source("heat-engine"), food.core_peak.error.si()}, name);
    of.number(
        "kill-margin", food.kill.low, kill_margin(food),
        {"share-95", "down-tenth", food.standard.kill->key + " [" + food.standard.kill->source + "]", food.kill.error},
        name);
    of.at("ready", food.ready(), {"share-95", "minute", food.standard.kill->key}, name);
    add_ready(of, food);
}

void add_plan_figures(FigureList& list) {
    const FigureMaker of(list, "plan");
    of.acted_on().at("latest-fire", of.plan().fill.latest_fire, {"share-95", "down-15-min", of.source("hold-times")});
    add_acts(of);
    int nth = 0;
    for (const plan::FoodPlan& food : of.plan().foods) {
        add_food(of, food, ++nth);
    }
    add_pours(of);
    add_top_ups(of);
    add_hot_water(of);
    add_sittings(of);
    add_late(of);
    add_meals(of);
    of.degrees("read-floor", of.plan().levels.read_floor, of.safe().at_least(of.plan().levels.read_floor),
               {"rule-thermometer", "up-degree", of.plan().foods.front().standard.rule_source});
    add_waits_until(of);
    add_top_up_mark(of);
    add_read_floor(of);
    add_intervals(of);
    add_side_dishes(of, of.acted_on());
    add_fire_clock(of.acted_on());
}

void add_log_figures(FigureList& list) {
    const FigureMaker of(list, "log");
    add_acts(of);
    int nth = 0;
    for (const plan::FoodPlan& food : of.plan().foods) {
        of.brief().degrees("ready-if", food.ready_if, of.safe().at_least(food.ready_if),
                           {"share-5", "up-degree", of.source("heat-engine")}, ++nth);
    }
}

}  // namespace holdwater::card
