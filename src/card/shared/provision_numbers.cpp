// SPDX-License-Identifier: MIT
// The numbers of the Touch and the Kitchen card.
#include "card/shared/dip.hpp"
#include "card/shared/mixing.hpp"
#include "card/shared/numbers.hpp"
#include "card/shared/provision_figures.hpp"
#include "card/trip/kitchen.hpp"
#include "units/print.hpp"

#include <string_view>

namespace holdwater::card {
namespace {

using units::Toward;
using Name = NumberList::Name;

units::Figure tenth_up(double value) {
    return units::figure(value, 0.1, Toward::up);
}

void add_slices(NumberList& list) {
    struct Where {
        answer::Medium medium;
        std::string_view key;
    };
    for (const Where& where :
         {Where{answer::Medium::slush, "slice-slush"}, Where{answer::Medium::loose_snow, "slice-snow"},
          Where{answer::Medium::still_air, "slice-air"}}) {
        const CardWriter& writer = list.writer();
        if (const auto slice = thickest_slice(writer.plan.around.leftovers, where.medium, facts::Contact::free)) {
            list.add({"kitchen", where.key, value_unit::millimetres}, units::in_millimetres(*slice),
                     slice_at_most(*slice, writer.system()), "slow-thinnest", "down-mm-eighths",
                     list.source("figures", "cooling.first, cooling.all, leftovers.begin, leftovers.thickest"));
        }
    }
}

void add_dips(NumberList& list) {
    const CardWriter& writer = list.writer();
    const std::string skin = list.source("skin", "hand.*, touch.*");
    for (const Dip& dip : dips()) {
        const std::string low = std::string("stung-") + dip.key + "-low";
        const std::string high = std::string("stung-") + dip.key + "-high";
        list.add({"touch", low, value_unit::celsius}, dip.band.p5.celsius(),
                 writer.short_degrees(dip.band.p5, Toward::down), "baths-5", "down-degree", skin);
        list.add({"touch", high, value_unit::celsius}, dip.band.p95.celsius(),
                 writer.short_degrees(dip.band.p95, Toward::up), "baths-95", "up-degree", skin);
    }
}

}  // namespace

void add_touch_numbers(NumberList& list) {
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    const std::string balance = list.source("heat-balance");
    if (const auto mixing = mixing_of(plan)) {
        list.add({"touch", "parts-boiling", value_unit::none}, mixing->parts, tenth_up(mixing->parts), "likely-fill",
                 "up-tenth", balance);
        if (mixing->with_ice_water) {
            list.add({"touch", "parts-boiling-ice-water", value_unit::none}, *mixing->with_ice_water,
                     tenth_up(*mixing->with_ice_water), "likely-fill", "up-tenth", balance);
        }
        list.add({"touch", "comes-out-low", value_unit::celsius}, mixing->low.celsius(),
                 writer.short_degrees(mixing->low, Toward::down), "pouring-errors", "down-degree", balance);
        list.add({"touch", "comes-out-high", value_unit::celsius}, mixing->high.celsius(),
                 writer.short_degrees(mixing->high, Toward::up), "nothing-lost", "up-degree", balance);
    }
    if (writer.reads() && !plan.top_ups.empty()) {
        const units::Volume most = most_of_a_pour(plan);
        list.add({"touch", "top-up-most", value_unit::litres}, units::in_litres(most),
                 writer.measured(most, Toward::up), "share-95-largest", "up-tenth-litre", balance);
    }
    const facts::Figure& wax = facts::facts().figure("wax.floor");
    const units::Temperature clear = facts::facts().temperature(wax.key);
    list.add({"touch", "wax", value_unit::celsius}, clear.celsius(), writer.at_least(clear), "rule", "up-degree",
             list.source("figure", wax.key + " [" + wax.source + "]"));
    const units::Temperature sets = wax_sets();
    list.add({"touch", "wax-sets", value_unit::celsius}, sets.celsius(), writer.short_degrees(sets, Toward::down),
             "rule", "down-degree", list.source("figure", "wax.sets-below"));
    add_dips(list);
}

void add_kitchen_numbers(NumberList& list) {
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    const plan::Provisions& around = plan.around;
    list.add({"kitchen", "fetch", value_unit::litres}, units::in_litres(around.water.fetch),
             water_to_fetch(around.water, writer.system()), "cautious-ends", "up-litre", list.source("heat-balance"));
    list.add({"kitchen", "boil-most", value_unit::litres}, units::in_litres(around.water.boil_most),
             most_to_boil(around.water, units::first_of(writer.system())), "cautious-ends", "up-half-litre",
             list.source("heat-balance"));
    if (around.fuel) {
        list.add({"kitchen", "fuel", value_unit::kilograms}, around.fuel->mass.high.si(),
                 fuel_mass(*around.fuel, writer.system()), "cautious-ends", "up-fuel",
                 list.source("figures", "fuel.*"));
    }
    if (around.ice && around.ice->card.si() > 0.0) {
        list.add({"kitchen", "ice", value_unit::kilograms}, around.ice->drained.high.si(),
                 ice_to_carry(*around.ice, writer.system()), "cautious-ends", "up-ice",
                 list.source("figures", "ice.fusion, raw.cold, journey.box-loss"));
    }
    list.add({"kitchen", "portion", value_unit::grams}, around.portions.each.low.si() * 1e3,
             small_mass(around.portions.each.low, writer.system(), Toward::down), "most-lost", "down-5-g",
             list.source("figures", "portion.bone, portion.cooking-loss"));
    const auto hours_from_start = [&](units::LocalTime at) { return units::in_hours(at.since(plan.trip->from)); };
    if (!around.sear.foods.empty()) {
        const units::LocalTime first_out = first_piece_out(plan, around.sear, plan.trip->serve);
        list.add({"kitchen", "first-piece-out", value_unit::hours}, hours_from_start(first_out),
                 writer.clock(first_out), "slow-sear", "minute", list.source("figures", "sear.*"));
    }
    for (const plan::FoodPlan& food : plan.foods) {
        if (food.finishing) {
            list.add(Name{"kitchen", "finish-out", value_unit::hours, food.food->name}, hours_from_start(food.leaves()),
                     writer.clock(food.leaves()), "cautious-ends", "minute", list.source("figures", "finish.*"));
            list.add(Name{"kitchen", "finish-takes", value_unit::hours, food.food->name},
                     units::in_hours(food.finishing->one.simmering), fire_time(food.finishing->one.simmering),
                     "cautious-ends", "minute", list.source("figures", "finish.*"));
        }
    }
    for (const plan::SideStart& side : around.sides.list) {
        list.add(Name{"kitchen", "side", value_unit::hours, side.name}, hours_from_start(side.begin),
                 writer.clock(side.begin), "as-given", "none", list.source("trip-file"));
    }
    if (writer.reads()) {  // without a thermometer nothing is kept
        add_slices(list);
    }
}

}  // namespace holdwater::card
