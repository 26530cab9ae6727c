// SPDX-License-Identifier: MIT
// What the cards say of water, bags and cold: Fill, Without a thermometer, Kitchen.
#include "card/shared/dip.hpp"
#include "card/shared/fill_rounds.hpp"
#include "card/shared/number_details.hpp"
#include "card/shared/provision_figures.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/shared/water_line.hpp"
#include "card/trip/kitchen.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

namespace holdwater::card {
namespace {

using units::Toward;
using How = Details::How;

void add_fill_measures(NumberList& list) {
    const Details of(list, "fill");
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    const plan::Fill& fill = plan.fill;
    const How balance{"likely-trimmed", "half-litre", list.source("heat-balance")};
    of.litres("boil-short", fill.boiled, writer.litres_short(fill.boiled), balance);
    of.count("whole-pots", full_pots(plan), {"chosen", "none", balance.source});
    of.litres("pot", pot_gives(plan), writer.measured(pot_gives(plan), Toward::down),
              {"as-given", "down-tenth", list.source("trip-file")});
    of.count("together", plan.trip->fire.pots, {"as-given", "none", list.source("trip-file")});
    of.litres("trim", to_trim(plan),
              writer.reads() ? writer.litres_short(to_trim(plan), Toward::up) : writer.measured(to_trim(plan)),
              {"share-95", "up-half-litre", balance.source});
    if (fill.below_rim) {
        of.length("below-rim", *fill.below_rim, water_line(writer, *fill.below_rim),
                  {"share-95", "up-mm", list.source("heat-balance")});
    }
    if (writer.reads()) {
        of.degrees("settled-high", fill.after_food.high, writer.short_degrees(fill.after_food.high, Toward::up),
                   {"share-95", "up-degree", list.source("heat-engine")});
    }
    const units::Mass heavy = weight_of_fill(plan);
    of.number("heavy", heavy.si(), writer.written(units::amount(heavy, writer.system(), {1.0})),
              {"likely-fill", "none", balance.source});
}

void add_touch_measures(NumberList& list) {
    const Details of(list, "touch");
    const CardWriter& writer = list.writer();
    const plan::Fill& fill = writer.plan.fill;
    const How balance{"likely-fill", "half-litre", list.source("heat-balance")};
    of.litres("boil", fill.boiled, writer.litres_short(fill.boiled, writer.reads() ? Toward::up : Toward::nearest),
              balance);
    of.litres("cold", fill.cold, writer.litres_short(fill.cold), balance);
    const std::string skin = list.source("skin", "hand.*, touch.*");
    int nth = 0;
    for (const Dip& dip : dips()) {
        ++nth;
        for (const bool fahrenheit : {false, true}) {
            of.number(fahrenheit ? "span-f" : "span-c", fahrenheit ? dip.band.p95.fahrenheit() : dip.band.p95.celsius(),
                      span_of(dip.band, fahrenheit), {"baths-95", "up-degree", skin}, nth);
        }
        if (dip.burn) {
            of.number("burn", dip.burn->si(), hold_time(*dip.burn), {"rule", "none", list.source("figures", "burn.*")},
                      nth);
        }
    }
    of.count("cold-hand", cold_hand_later(), {"baths-95", "none", skin});
}

void add_kitchen_measures(NumberList& list) {
    const Details of(list, "kitchen");
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    const facts::Facts& facts = facts::facts();
    int pieces = 0;
    for (const plan::FoodPlan& food : plan.foods) {
        pieces += food.food->pieces;
    }
    const How given{"as-given", "none", list.source("trip-file")};
    of.count("bags", pieces, given);
    of.count("bags-doubled", 2 * pieces, given);
    of.number("missing", plan.around.portions.missing.si(),
              writer.written(units::amount(plan.around.portions.missing, writer.system(), {0.1, Toward::up})),
              {"most-lost", "up-tenth", list.source("figures", "portion.*")});
    const plan::Leftovers& leftovers = plan.around.leftovers;
    const auto limit = [&](std::string_view key, std::string_view fact) {
        of.degrees(key, facts.temperature(fact), writer.limit(facts.temperature(fact), Toward::down),
                   {"rule", "down-degree", list.source("figure", fact)});
    };
    limit("raw-cold", "raw.cold");
    limit("left-middle", "cooling.middle");
    limit("left-cold", "cooling.to");
    const How cooling{"rule", "none", list.source("figures", "cooling.*, leftovers.*")};
    of.span("left-begin", leftovers.begin, units::print(leftovers.begin, Toward::down), cooling);
    of.span("left-first", leftovers.first, units::print(leftovers.first), cooling);
    of.span("left-all", leftovers.all, units::print(leftovers.all), cooling);
    of.count("left-days", days_to_keep(leftovers), cooling);
    of.degrees("left-reheat", leftovers.reheat, writer.limit(leftovers.reheat), cooling);
    if (leftovers.reheat_hold.si() > 0.0) {
        of.span("left-reheat-hold", leftovers.reheat_hold, hold_time(leftovers.reheat_hold), cooling);
    }
    of.degrees("left-air", leftovers.air, air_under(leftovers, writer.system()), given);
    if (plan.around.ice) {
        const plan::Ice& ice = *plan.around.ice;
        of.span("ice-takes", ice.takes, units::print(ice.takes, Toward::up), given);
        of.number("ice-box-loss", ice.loss.high.si(), writer.written(ice_box_loss(ice)),
                  {"cautious-ends", "none", list.source("figures", "ice.*")});
    }
    if (writer.reads()) {
        of.number("slush", plan.trip->boxes.front().thermometer->si(), slush_reads(writer), given);
    }
}

}  // namespace

void add_measure_details(NumberList& list) {
    add_fill_measures(list);
    add_touch_measures(list);
    add_kitchen_measures(list);
}

}  // namespace holdwater::card
