// SPDX-License-Identifier: MIT
// What the cards say of acts: fire, pours, food, top-ups, meals.
#include "card/shared/number_details.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/shared/water_line.hpp"
#include "card/trip/kitchen.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

namespace holdwater::card {
namespace {

using units::Toward;
using How = Details::How;

void add_hold_time(const Details& of, std::string_view key, units::Duration hold, const std::string& rule, int nth) {
    if (hold.si() > 0.0) {
        of.span(key, hold, hold_time(hold), {"rule", "none", rule}, nth);
    }
}

/// What every act has its time by; cards that list only some of them list these.
void add_acts(const Details& of) {
    int nth = 0;
    for (const plan::Event& event : of.writer().plan.events) {
        of.at("act", event.at, {"share-95-jointly", "minute", of.list().source("heat-engine")}, ++nth);
    }
}

void add_food(const Details& of, const plan::FoodPlan& food, int nth) {
    const CardWriter& writer = of.writer();
    const How given{"as-given", "none", of.list().source("trip-file")};
    const std::string& rule = food.standard.rule_source;
    of.count("pieces", food.food->pieces, given, nth);
    of.length("thickness", food.food->thickness, writer.thickness(food.food->thickness), given, nth);
    of.degrees("target", food.food->target, writer.at_least(food.food->target), given, nth);
    if (food.standard.below_consumer_advice) {
        of.degrees("advice", food.standard.consumer_core, writer.limit(food.standard.consumer_core),
                   {"rule", "up-degree", rule}, nth);
        add_hold_time(of, "advice-hold", food.standard.consumer_hold, rule, nth);
    }
    if (food.standard.finish) {
        of.degrees("finish", food.standard.finish->core, writer.limit(food.standard.finish->core),
                   {"rule", "up-degree", rule}, nth);
        add_hold_time(of, "finish-hold", food.standard.finish->hold, rule, nth);
    }
    if (food.finishing) {
        const How slow{"cautious-ends", "none", of.list().source("figures", "finish.*")};
        of.span("finish-takes", food.finishing->one.simmering, fire_time(food.finishing->one.simmering), slow, nth);
        if (food.finishing->one.pan) {
            of.span("finish-pan", *food.finishing->one.pan, fire_time(*food.finishing->one.pan), slow, nth);
        }
        of.count("finish-lots", food.finishing->lots, {"chosen", "none", slow.source}, nth);
    }
}

void add_top_ups(const Details& of) {
    const CardWriter& writer = of.writer();
    const std::string balance = of.list().source("heat-balance");
    int nth = 0;
    for (const plan::TopUp& top_up : writer.plan.top_ups) {
        ++nth;
        of.at("top-up-fire", top_up.light_fire, {"share-95-jointly", "minute", of.list().source("heat-engine")}, nth);
        of.litres("top-up", top_up.boiling, writer.one_boil(top_up.boiling),
                  {writer.reads() ? "likely-ladder" : "fixed", "up-half-litre", balance}, nth);
        of.litres("top-up-short", top_up.boiling, writer.litres_short(top_up.boiling),
                  {writer.reads() ? "likely-ladder" : "fixed", "half-litre", balance}, nth);
        if (top_up.below_rim) {
            of.length("below-rim", *top_up.below_rim, water_line(writer, *top_up.below_rim),
                      {"share-95", "up-mm", of.list().source("heat-balance")}, nth);
        }
    }
    of.span("late", units::minutes(facts::facts().spread("top-up.late").high), writer.latest_pour(),
            {"rule", "none", of.list().source("figure", "top-up.late")});
}

void add_meals(const Details& of) {
    const plan::Plan& plan = of.writer().plan;
    const std::string sears = of.list().source("figures", "sear.*");
    int nth = 0;
    const auto add = [&](const plan::Sear& sear, units::LocalTime meal) {
        ++nth;
        of.at("meal", meal, {"as-given", "minute", of.list().source("trip-file")}, nth);
        if (!sear.foods.empty()) {
            of.at("first-piece-out", first_piece_out(plan, sear, meal), {"slow-sear", "minute", sears}, nth);
            of.number("sear-side", sear.side.si(),
                      of.writer().written(units::figure(sear.side.si(), 1.0, Toward::nearest)), {"rule", "none", sears},
                      nth);
            of.count("pans", sear.pans, {"chosen", "none", sears}, nth);
        }
    };
    for (const plan::Meal& meal : plan.around.earlier) {
        add(meal.sear, meal.serve);
    }
    add(plan.around.sear, plan.trip->serve);
}

void add_floor(const Details& of) {
    const plan::Plan& plan = of.writer().plan;
    of.degrees("read-floor", plan.read_floor, of.writer().at_least(plan.read_floor),
               {"rule-thermometer", "up-degree", plan.foods.front().standard.rule_source});
}

void add_plan_acts(NumberList& list) {
    const Details of(list, "plan");
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    const plan::Fill& fill = plan.fill;
    const std::string balance = list.source("heat-balance");
    add_acts(of);
    int nth = 0;
    for (const plan::FoodPlan& food : plan.foods) {
        add_food(of, food, ++nth);
    }
    of.litres("boil", fill.boiled_most + fill.warming, writer.litres_short(fill.boiled_most + fill.warming, Toward::up),
              {"share-95", "up-half-litre", balance});
    of.litres("cold", fill.cold, writer.litres_short(fill.cold), {"chosen", "half-litre", balance});
    if (fill.warming.si() > 0.0) {
        of.litres("warming", fill.warming, writer.litres_short(fill.warming, Toward::down),
                  {"chosen", "half-litre", balance});
    }
    of.degrees("fill", fill.reading, writer.about(fill.reading),
               {"chosen-hottest", "none-whole-degrees", list.source("heat-engine")});
    nth = 0;
    for (const plan::Pour& pour : fill.pours) {
        const bool trims = writer.reads() && pour.trims();
        of.litres("pour", trims ? pour.most : pour.boiling,
                  trims ? writer.one_boil(pour.most) : writer.measured(pour.boiling),
                  {trims ? "share-95" : "chosen", trims ? "up-half-litre" : "up-tenth-litre", balance}, ++nth);
        of.count("pots", pour.pots, {"chosen", "none", balance}, nth);
    }
    add_top_ups(of);
    add_meals(of);
    add_floor(of);
    of.at("waits-until", plan.waits_until, {"share-95", "down-15-min", list.source("cooling-law")});
    add_waits_if(of);
}

void add_log_acts(NumberList& list) {
    const Details of(list, "log");
    add_acts(of);
    add_floor(of);
    int nth = 0;
    for (const plan::FoodPlan& food : of.writer().plan.foods) {
        of.degrees("ready-if", food.ready_if, of.writer().short_degrees(food.ready_if, Toward::up),
                   {"share-5", "up-degree", list.source("heat-engine")}, ++nth);
    }
    of.span("late", units::minutes(facts::facts().spread("top-up.late").high), of.writer().latest_pour(),
            {"rule", "none", list.source("figure", "top-up.late")});
}

void add_kitchen_acts(NumberList& list) {
    const Details of(list, "kitchen");
    const plan::Plan& plan = list.writer().plan;
    const How given{"as-given", "none", list.source("trip-file")};
    of.count("people", plan.trip->people, given);
    add_acts(of);
    add_meals(of);
    int nth = 0;
    for (const plan::FoodPlan& food : plan.foods) {
        add_food(of, food, ++nth);
    }
    nth = 0;
    for (const plan::SideStart& side : plan.around.sides.list) {
        of.span("side-takes", side.takes, units::print(side.takes, Toward::up), given, ++nth);
    }
    nth = 0;
    for (const plan::PotClash& clash : plan.around.sides.clashes) {
        of.at("clash-from", clash.from, {"share-95-jointly", "minute", list.source("heat-engine")}, ++nth);
        of.at("clash-until", clash.until, {"share-95-jointly", "minute", list.source("heat-engine")}, nth);
    }
}

}  // namespace

void add_act_details(NumberList& list) {
    add_plan_acts(list);
    add_log_acts(list);
    add_kitchen_acts(list);
}

}  // namespace holdwater::card
