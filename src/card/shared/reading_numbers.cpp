// SPDX-License-Identifier: MIT
// What the cards say of readings and hold times: Hold, Night, Top-up, Limits.
#include "card/shared/number_details.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/shared/water_line.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

namespace holdwater::card {
namespace {

using units::Toward;
using How = Details::How;

How by_rule(const Details& of) {
    return {"rule-thermometer", "up-degree", of.writer().plan.foods.front().standard.rule_source};
}

/// A whole food finished over the fire, the temperature that every card asks after a fall.
void add_full(const Details& of) {
    of.degrees("reheat", facts::facts().temperature("reheat"), of.writer().limit(facts::facts().temperature("reheat")),
               {"rule", "up-degree", of.list().source("figure", "reheat")});
    int nth = 0;
    for (const plan::FoodPlan& food : of.writer().plan.foods) {
        ++nth;
        if (food.standard.finish) {
            const How how{"rule", "up-degree", food.standard.rule_source};
            of.degrees("finish", food.standard.finish->core, of.writer().limit(food.standard.finish->core), how, nth);
            if (food.standard.finish->hold.si() > 0.0) {
                of.span("finish-hold", food.standard.finish->hold, hold_time(food.standard.finish->hold), how, nth);
            }
        }
    }
}

void add_levels(const Details& of) {
    const plan::Plan& plan = of.writer().plan;
    of.degrees("read-floor-level", plan.read_floor, of.writer().at_least(plan.read_floor), by_rule(of));
    of.degrees("action-line-level", plan.action_line, of.writer().at_least(plan.action_line),
               {"rule", "up-degree", plan.foods.front().standard.rule_source});
    of.degrees("top-up-mark", plan.top_up_mark, of.writer().at_least(plan.top_up_mark),
               {"chosen-fewest", "none-whole-degrees", of.list().source("heat-engine")});
}

void add_hold_readings(NumberList& list) {
    const Details of(list, "hold");
    const CardWriter& writer = list.writer();
    add_full(of);
    add_levels(of);
    int cell = 0;
    int bath = 0;
    int row = 0;
    int nth = 0;
    for (const plan::FoodPlan& food : writer.plan.foods) {
        ++nth;
        const How how{"hold-95", "up-5-min", food.standard.kill->key};
        const plan::OwnHold& own = food.own_hold;
        of.length("own", food.food->thickness, writer.thickness(food.food->thickness),
                  {"as-given", "down-mm-eighths", list.source("trip-file")}, nth);
        if (own.time) {
            of.span("own-hold", *own.time, writer.must_hold(*own.time), how, nth);
        }
        of.degrees("own-bath", own.bath, writer.at_least(own.bath), {"chosen", "up-degree", food.standard.kill->key},
                   nth);
        for (const units::Temperature column : food.hold.baths) {
            ++bath;
            for (const units::System one : {units::System::metric, units::System::us}) {
                of.degrees(one == units::System::us ? "bath-us" : "bath", column,
                           units::amount(column, one, {1.0, Toward::up}),
                           {"chosen", "up-degree", food.standard.kill->key}, bath);
            }
        }
        for (std::size_t i = 0; i < food.hold.thicknesses.size(); ++i) {
            // In the table each system has a column of its own, without its unit.
            ++row;
            for (const units::System one : {units::System::metric, units::System::us}) {
                const units::Toward toward = one == units::System::us ? Toward::down : Toward::nearest;
                of.length(one == units::System::us ? "row-in" : "row", food.hold.thicknesses[i],
                          units::amount(food.hold.thicknesses[i], one, {1.0, toward}).without_units(),
                          {"chosen", "down-mm-eighths", food.standard.kill->key}, row);
            }
            for (const std::optional<units::Duration>& time : food.hold.cells[i]) {
                ++cell;
                if (time) {
                    of.span("cell", *time, writer.must_hold_tight(*time), how, cell);
                }
            }
        }
        if (food.hold.dip) {
            of.count("dip", *food.hold.dip, {"hold-95", "none", list.source("heat-engine")}, nth);
        }
        for (const plan::HoldRuler::Tick& tick : own.ruler.ticks) {
            of.span("ruler", tick.hold, writer.must_hold(tick.hold), how, ++cell);
        }
    }
}

void add_top_up_readings(NumberList& list) {
    const Details of(list, "topup");
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    const How balance{"likely-ladder", "up-half-litre", list.source("heat-balance")};
    add_levels(of);
    int nth = 0;
    for (const plan::LadderRung& rung : plan.ladder) {
        ++nth;
        of.degrees("reads", rung.reading, writer.at_least(rung.reading), {"chosen", "up-degree", balance.source}, nth);
        of.litres("pour", rung.pour, units::amount(rung.pour, units::first_of(writer.system()), {0.5, Toward::up}),
                  balance, nth);
        of.length("below-rim", rung.below_rim, water_line(writer, rung.below_rim),
                  {"share-95", "up-mm", balance.source}, nth);
    }
    nth = 0;
    for (const plan::TopUp& top_up : plan.top_ups) {
        ++nth;
        of.at("by-clock", top_up.at, {"share-95-jointly", "down-15-min-night", list.source("heat-engine")}, nth);
        of.litres("by-clock", top_up.boiling, writer.one_boil(top_up.boiling), balance, nth);
        of.litres("by-clock-short", top_up.boiling, writer.litres_short(top_up.boiling), balance, nth);
        if (top_up.below_rim) {
            of.length("by-clock-below-rim", *top_up.below_rim, water_line(writer, *top_up.below_rim),
                      {"share-95", "up-mm", balance.source}, nth);
        }
    }
    const units::Volume batch = plan.trip->fire.pot * (plan.trip->fire.usable * plan.trip->fire.pots);
    of.litres("pots-give", batch, writer.measured(batch, Toward::down),
              {"as-given", "down-tenth", list.source("trip-file")});
    of.span("round", plan.round, units::print(plan.round, Toward::up), {"as-given", "none", list.source("trip-file")});
    of.span("late", units::minutes(facts::facts().spread("top-up.late").high), writer.latest_pour(),
            {"rule", "none", list.source("figure", "top-up.late")});
}

void add_night_readings(NumberList& list) {
    const Details of(list, "night");
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    const How cooling{"share-95", "down-15-min", list.source("cooling-law")};
    add_full(of);
    add_levels(of);
    of.degrees("mark", plan.night.reading, writer.at_least(plan.night.reading),
               {"chosen", "none-whole-degrees", list.source("heat-engine")});
    of.span("rough", plan.interval_rough, writer.may_leave(plan.interval_rough), cooling);
    of.at("from", plan.night.from, {"share-95", "minute", list.source("heat-engine")});
    of.degrees("air", plan.night.air, writer.at_most(plan.night.air),
               {"as-given", "down-degree", list.source("trip-file")});
    int nth = 0;
    for (const plan::Unattended& row : plan.night.unattended) {
        of.degrees("reads", row.reading, writer.at_least(row.reading), {"chosen", "up-degree", cooling.source}, ++nth);
        of.span("leave", row.longest, writer.may_leave(row.longest), cooling, nth);
    }
    nth = 0;
    for (const plan::MorningRow& row : plan.night.morning) {
        of.degrees("morning", row.reading, writer.at_least(row.reading), {"chosen", "up-degree", cooling.source},
                   ++nth);
    }
    nth = 0;
    for (const plan::TopUp& top_up : plan.top_ups) {
        ++nth;
        const How jointly{"share-95-jointly", "minute", list.source("heat-engine")};
        of.at("wake", top_up.light_fire, jointly, nth);
        of.at("pour", top_up.at, jointly, nth);
        of.litres("pour", top_up.boiling, writer.litres_short(top_up.boiling),
                  {"fixed", "half-litre", list.source("heat-balance")}, nth);
    }
    if (plan.night.wake) {
        of.at("first-wake", plan.night.wake->after(-plan.round),
              {"share-95-jointly", "minute", list.source("heat-engine")});
    }
    nth = 0;
    for (const plan::WhatIfAnswer& answer : plan.what_ifs) {
        of.span("what-if", answer.longest, writer.may_leave(answer.longest), cooling, ++nth);
    }
    of.span("late", units::minutes(facts::facts().spread("top-up.late").high), writer.latest_pour(),
            {"rule", "none", list.source("figure", "top-up.late")});
}

void add_limits_readings(NumberList& list) {
    const Details of(list, "limits");
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    const facts::Facts& facts = facts::facts();
    add_full(of);
    add_levels(of);
    const How rule{"rule", "none", std::string(facts::to_name(plan.trip->rules))};
    int nth = 0;
    for (const safety::FallRow& row : safety::rows(safety::fall_rules(plan.trip->rules, plan.trip->at_risk))) {
        of.span("row-from", row.from, units::print(row.from), rule, ++nth);
        if (row.to) {
            of.span("row-to", *row.to, units::print(*row.to), rule, nth);
        }
    }
    of.span("come-up", facts.duration("come-up.refuse"), units::print(facts.duration("come-up.refuse")),
            {"rule", "none", list.source("figure", "come-up.refuse")});
    of.degrees("come-up-to", facts.temperature("come-up.to"), writer.limit(facts.temperature("come-up.to")),
               {"rule", "up-degree", list.source("figure", "come-up.to")});
    of.at("waits-until", plan.waits_until, {"share-95", "down-15-min", list.source("cooling-law")});
    add_waits_if(of);
    const How late{"rule", "none", list.source("figure", "top-up.late")};
    of.span("late", units::minutes(facts.spread("top-up.late").high), writer.latest_pour(), late);
    if (plan.late_pour) {
        of.span("boil-until", plan.late_pour->until, units::print(plan.late_pour->until, Toward::down), late);
        of.span("boil", plan.late_pour->boil, writer.must_hold(plan.late_pour->boil),
                {"cautious-ends", "up-5-min", list.source("heat-engine")});
    }
    nth = 0;
    for (const plan::WhatIfAnswer& answer : plan.what_ifs) {
        of.span("what-if", answer.longest, writer.may_leave(answer.longest),
                {"share-95", "down-15-min", list.source("cooling-law")}, ++nth);
    }
}

}  // namespace

void add_reading_details(NumberList& list) {
    add_hold_readings(list);
    add_top_up_readings(list);
    add_night_readings(list);
    add_limits_readings(list);
}

}  // namespace holdwater::card
