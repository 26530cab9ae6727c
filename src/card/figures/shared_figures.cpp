// SPDX-License-Identifier: MIT
// The figures that stand on several cards.
#include "card/figures/fill_rounds.hpp"
#include "card/figures/kitchen_measures.hpp"
#include "card/figures/pan_fire.hpp"
#include "card/figures/parts.hpp"
#include "card/figures/places.hpp"
#include "facts/facts.hpp"
#include "plan/result/ready_condition.hpp"
#include "units/print.hpp"

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

void add_hold_time(const FigureMaker& of, std::string_view key, units::Duration hold, const std::string& rule,
                   int nth) {
    if (hold.si() > 0.0) {
        of.span(key, hold, hold_time(hold), {"rule", "none", rule}, nth);
    }
}

void add_finish(const FigureMaker& of, const plan::FoodPlan& food, int nth) {
    if (food.standard.finish) {
        const std::string& rule = food.standard.rule_source;
        of.degrees("finish", food.standard.finish->core, of.safe().limit(food.standard.finish->core),
                   {"rule", "up-degree", rule}, nth);
        add_hold_time(of, "finish-hold", food.standard.finish->hold, rule, nth);
    }
}

const std::string& rule_of(const FigureMaker& of) {
    return of.plan().foods.front().standard.rule_source;
}

}  // namespace

void add_acts(const FigureMaker& of) {
    int nth = 0;
    for (const plan::Event& event : of.plan().events) {
        of.at("act", event.at, {"share-95-jointly", "minute", of.source("heat-engine")}, ++nth);
    }
}

void add_rounds(const FigureMaker& of) {
    const std::string balance = of.source("heat-balance");
    const FillSums sums = fill_sums(of.safe());
    int nth = 0;
    for (const plan::Pour& pour : of.plan().fill.pours) {
        const bool trims = of.reads() && pour.trims();
        of.brief().litres("pour", trims ? pour.most : pour.boiling, sums.rounds[static_cast<std::size_t>(nth)],
                          {trims ? "share-95" : "chosen", "up-tenth-litre", balance}, nth + 1);
        ++nth;
    }
}

void add_food(const FigureMaker& of, const plan::FoodPlan& food, int nth) {
    const SafeSide& safe = of.safe();
    const How given{"as-given", "none", of.source("trip-file")};
    of.count("pieces", food.food->pieces, given, nth);
    of.length("thickness", food.food->thickness, safe.thickness(food.food->thickness), given, nth);
    of.degrees("target", food.food->target, safe.limit(food.food->target), given, nth);
    if (food.standard.kept_hot) {
        of.degrees("goes-in", food.food->start, safe.at_least(food.food->start), given, nth);
        of.degrees("hot-floor", food.standard.hold_floor, safe.limit(food.standard.hold_floor),
                   {"rule", "up-degree", food.standard.rule_source}, nth);
    }
    if (const auto& sear = food.standard.sear) {
        of.degrees("steak-surface", sear->surface, safe.limit(sear->surface), {"rule", "up-degree", sear->source}, nth);
    }
    if (food.standard.below_consumer_advice) {
        const std::string& rule = food.standard.rule_source;
        of.degrees("advice", food.standard.consumer_core, safe.limit(food.standard.consumer_core),
                   {"rule", "up-degree", rule}, nth);
        add_hold_time(of, "advice-hold", food.standard.consumer_hold, rule, nth);
    }
    add_finish(of, food, nth);
    if (food.finishing) {
        const How slow{"cautious-ends", "none", of.source("figures", "finish.*")};
        of.span("finish-takes", food.finishing->one.simmering, fire_time(food.finishing->one.simmering), slow, nth);
        if (food.finishing->one.pan) {
            of.span("finish-pan", *food.finishing->one.pan, fire_time(*food.finishing->one.pan), slow, nth);
        }
        of.brief().litres("finish-water", food.finishing->water, of.safe().litres(food.finishing->water, Toward::up),
                          {"chosen", "up-half-litre", of.source("heat-balance")}, nth);
        of.count("finish-lots", food.finishing->lots, {"chosen", "none", slow.source}, nth);
    }
}

void add_reheat(const FigureMaker& of) {
    const units::Temperature reheat = facts::facts().temperature("reheat");
    of.degrees("reheat", reheat, of.safe().limit(reheat), {"rule", "up-degree", of.source("figure", "reheat")});
}

void add_full(const FigureMaker& of) {
    add_reheat(of);
    int nth = 0;
    for (const plan::FoodPlan& food : of.plan().foods) {
        add_finish(of, food, ++nth);
    }
}

void add_read_floor(const FigureMaker& of) {
    of.degrees("read-floor-level", of.plan().levels.read_floor, of.safe().at_least(of.plan().levels.read_floor),
               {"rule-thermometer", "up-degree", rule_of(of)});
}

void add_action_line(const FigureMaker& of) {
    of.degrees("action-line-level", of.plan().levels.action_line, of.safe().at_least(of.plan().levels.action_line),
               {"rule", "up-degree", rule_of(of)});
}

void add_top_up_mark(const FigureMaker& of) {
    of.degrees("top-up-mark", of.plan().levels.mark, of.safe().at_least(of.plan().levels.mark),
               {"chosen-fewest", "none-whole-degrees", of.source("heat-engine")});
}

void add_ready(const FigureMaker& of, const plan::FoodPlan& food) {
    if (!of.reads() || food.standard.finish) {
        return;
    }
    const Which which = food_place(of.plan(), food);
    of.brief().degrees("ready-if", food.ready_if, of.safe().at_least(food.ready_if),
                       {"share-5", "up-degree", of.source("heat-engine")}, which);
    // Only where a colder bath makes it later: the plan's own time can be more cautious than that of the table.
    const plan::OwnHold& own = food.own_hold;
    if (own.time && own.bath < food.ready_if && food.in.after(*own.time) > food.ready()) {
        const std::string& kill = food.standard.kill->key;
        of.brief().degrees("late-bath", own.bath, of.safe().at_least(own.bath), {"chosen", "up-degree", kill}, which);
        of.at("ready-late", food.in.after(to_five_minutes(*own.time)), {"hold-95", "up-5-min", kill}, which);
    }
}

void add_intervals(const FigureMaker& of) {
    const How cooling{"share-95", "down-15-min", of.source("cooling-law")};
    of.span("interval-calm", of.plan().interval_calm, of.safe().may_leave(of.plan().interval_calm), cooling);
    of.span("interval-rough", of.plan().interval_rough, of.safe().may_leave(of.plan().interval_rough), cooling);
}

void add_ladder(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const std::string balance = of.source("heat-balance");
    int nth = 0;
    for (const plan::LadderRung& rung : of.plan().ladder) {
        ++nth;
        of.degrees("reads", rung.reading, safe.at_least(rung.reading), {"chosen", "up-degree", balance}, nth);
        // Pots are measured in the first of two systems: two more figures a rung would not fit.
        of.brief().litres("pour", rung.pour, safe.one_boil(rung.pour), {"share-95", "up-half-litre", balance}, nth);
        of.brief().length("below-rim", rung.below_rim, safe.water_line(rung.below_rim), {"share-95", "up-mm", balance},
                          nth);
    }
    const How cooling{"share-95", "down-5-min", of.source("cooling-law")};
    if (const auto settled = settled_reads(of.plan())) {
        of.degrees("as-planned", *settled, safe.at_least(*settled), {"share-5", "up-degree", of.source("heat-engine")});
        of.at("settled-at", plan::settled_at(of.plan()), {"as-given", "minute", of.source("heat-engine")});
    }
    of.span("again-at-mark", of.plan().again_at_mark, safe.read_again(of.plan().again_at_mark), cooling);
    of.span("again", of.plan().again_over_line, safe.read_again(of.plan().again_over_line), cooling);
}

void add_warming(const FigureMaker& of) {
    const units::Volume warming = of.plan().fill.warming;
    if (warming.si() > 0.0) {
        of.brief().litres("warming", warming, of.safe().measured(warming, Toward::up),
                          {"chosen", "up-tenth-litre", of.source("heat-balance")});
    }
}

void add_late(const FigureMaker& of) {
    of.span("late", units::minutes(facts::facts().spread("top-up.late").high), of.safe().latest_pour(),
            {"rule", "none", of.source("figure", "top-up.late")});
}

void add_what_ifs(const FigureMaker& of) {
    int nth = 0;
    for (const plan::WhatIfAnswer& answer : of.plan().what_ifs) {
        of.span("what-if", answer.longest, of.safe().may_leave(answer.longest),
                {"share-95", "down-15-min", of.source("cooling-law")}, ++nth);
    }
}

void add_meals(const FigureMaker& of) {
    const plan::Plan& plan = of.plan();
    const std::string sears = of.source("figures", "sear.*");
    int nth = 0;
    const auto add = [&](const plan::Sear& sear, units::LocalTime meal) {
        ++nth;
        of.at("meal", meal, {"as-given", "minute", of.source("trip-file")}, nth);
        of.at("first-piece-out", first_piece_out(plan, sear, meal), {"slow-sear", "minute", sears}, nth);
        of.number("sear-side", sear.side.si(), units::figure(sear.side.si(), 1.0, Toward::nearest),
                  {"rule", "none", sears}, nth);
        of.count("pans", sear.pans, {"chosen", "none", sears}, nth);
        if (const auto fire = pan_fire(plan, sear, meal)) {
            of.at("pan-fire", fire->at, {"slow-sear", "minute", sears}, nth);
        }
    };
    for (const plan::Meal& meal : plan.around.earlier) {
        add(meal.sear, meal.serve);
    }
    add(plan.around.sear, plan.trip->serve);
}

void add_fire_clock(const FigureMaker& act) {
    const plan::Plan& plan = act.plan();
    if (!plan.around.sear.foods.empty()) {
        act.at("first-piece-out", first_piece_out(plan, plan.around.sear, plan.trip->serve),
               {"slow-sear", "minute", act.source("figures", "sear.*")});
    }
    for (const plan::FoodPlan& food : plan.foods) {
        if (food.finishing) {
            const How slow{"cautious-ends", "minute", act.source("figures", "finish.*")};
            act.at("finish-out", food.leaves(), slow, food_place(plan, food));
            act.span("finish-takes", food.finishing->one.simmering, fire_time(food.finishing->one.simmering), slow,
                     food_place(plan, food));
        }
    }
}

void add_side_dishes(const FigureMaker& of, const FigureMaker& act) {
    const How given{"as-given", "none", of.source("trip-file")};
    const plan::Sides& sides = of.plan().around.sides;
    int nth = 0;
    for (std::size_t i = 0; i < sides.list.size(); ++i) {
        act.at("side", sides.list[i].begin, given, side_place(sides, i));
        of.span("side-takes", sides.list[i].takes, units::print(sides.list[i].takes, Toward::up), given, ++nth);
    }
    nth = 0;
    for (const plan::PotClash& clash : sides.clashes) {
        const How jointly{"share-95-jointly", "minute", of.source("heat-engine")};
        of.at("clash-from", clash.from, jointly, ++nth);
        of.at("clash-until", clash.until, jointly, nth);
    }
}

void add_waits_until(const FigureMaker& of) {
    const plan::Plan& plan = of.plan();
    if (const auto asked = late_asked(plan)) {
        of.at("late-asked", *asked, {"as-given", "minute", of.source("figure", "late.asked")});
    }
    if (of.reads()) {
        // The meal waits after one more top-up, its fire lit in time.
        const units::Duration keeps{units::round_to(plan.interval_rough.si(), 900.0, Toward::down)};
        of.at("late-until", plan.trip->serve.after(keeps), {"share-95", "down-15-min", of.source("cooling-law")});
    }
    of.at("waits-until", of.plan().waits_until, {"share-95", "down-15-min", of.source("cooling-law")});
    of.brief().degrees("waits-if", of.plan().waits_if, of.safe().at_least(of.plan().waits_if),
                       {"share-5", "up-degree", of.source("heat-engine")});
}

}  // namespace holdwater::card
