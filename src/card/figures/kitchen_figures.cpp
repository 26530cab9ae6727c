// SPDX-License-Identifier: MIT
// The figures of the Kitchen card.
#include "card/figures/kitchen_measures.hpp"
#include "card/figures/parts.hpp"
#include "card/figures/places.hpp"
#include "card/figures/provision_rounding.hpp"
#include "facts/facts.hpp"

#include <string_view>

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

/// What weighs most in the packs, and what a piece of it comes to.
void add_packs(const FigureMaker& of) {
    const FigureMaker act = of.acted_on();
    const SafeSide& safe = of.safe();
    const plan::Provisions& around = of.plan().around;
    const std::string balance = of.source("heat-balance");
    act.litres("fetch", around.water.fetch, water_to_fetch(around.water, safe.system()),
               {"cautious-ends", "up-litre", balance});
    act.brief().litres("boil-most", around.water.boil_most, most_to_boil(around.water, safe.system()),
                       {"cautious-ends", "up-half-litre", balance});
    if (!around.hot_water.list.empty()) {
        of.brief().litres("drinks", around.hot_water.all, safe.litres(around.hot_water.all, Toward::up),
                          {"as-given", "up-half-litre", of.source("trip-file")});
    }
    if (around.fuel) {
        act.kilograms("fuel", around.fuel->mass.high, fuel_mass(*around.fuel, safe.system()),
                      {"cautious-ends", "up-fuel", of.source("figures", "fuel.*")});
    }
    if (around.ice && around.ice->card.si() > 0.0) {
        act.kilograms("ice", around.ice->drained.high, ice_to_carry(*around.ice, safe.system()),
                      {"cautious-ends", "up-ice", of.source("figures", "ice.fusion, raw.cold, journey.box-loss")});
    }
    act.grams("portion", around.portions.each.low, small_mass(around.portions.each.low, safe.system(), Toward::down),
              {"most-lost", "down-5-g", of.source("figures", "portion.bone, portion.cooking-loss")});
}

/// In every medium in which anything can be kept, with cold on both faces.
void add_slices(const FigureMaker& of) {
    struct Where {
        answer::Medium medium;
        std::string_view key;
    };
    const FigureMaker free = of.reads() ? of.acted_on() : of;  // without a thermometer nothing is kept
    const How slow{"slow-thinnest", "down-mm-eighths",
                   of.source("figures", "cooling.first, cooling.all, leftovers.begin, leftovers.thickest")};
    for (const Where& where :
         {Where{answer::Medium::slush, "slice-slush"}, Where{answer::Medium::loose_snow, "slice-snow"},
          Where{answer::Medium::still_air, "slice-air"}}) {
        const plan::Leftovers& leftovers = of.plan().around.leftovers;
        if (const auto slice = thickest_slice(leftovers, where.medium, facts::Contact::free)) {
            free.length(where.key, *slice, slice_at_most(*slice, of.safe().system()), slow);
        }
    }
}

void add_leftovers(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const plan::Leftovers& leftovers = of.plan().around.leftovers;
    const auto limit = [&](std::string_view key, std::string_view fact) {
        of.degrees(key, facts::facts().temperature(fact), safe.limit(facts::facts().temperature(fact), Toward::down),
                   {"rule", "down-degree", of.source("figure", fact)});
    };
    limit("raw-cold", "raw.cold");
    limit("left-middle", "cooling.middle");
    limit("left-cold", "cooling.to");
    const How cooling{"rule", "none", of.source("figures", "cooling.*, leftovers.*")};
    of.span("left-begin", leftovers.begin, units::print(leftovers.begin, Toward::down), cooling);
    of.span("left-first", leftovers.first, units::print(leftovers.first), cooling);
    of.span("left-all", leftovers.all, units::print(leftovers.all), cooling);
    of.count("left-days", days_to_keep(leftovers), cooling);
    of.degrees("left-reheat", leftovers.reheat, safe.limit(leftovers.reheat), cooling);
    if (leftovers.reheat_hold.si() > 0.0) {
        of.span("left-reheat-hold", leftovers.reheat_hold, hold_time(leftovers.reheat_hold), cooling);
    }
    of.degrees("left-air", leftovers.air, air_under(leftovers, safe.system()),
               {"as-given", "none", of.source("trip-file")});
}

void add_pack_details(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const plan::Provisions& around = of.plan().around;
    const How given{"as-given", "none", of.source("trip-file")};
    int pieces = 0;
    for (const plan::FoodPlan& food : of.plan().foods) {
        pieces += food.food->pieces;
    }
    of.count("bags", pieces, given);
    of.count("bags-doubled", 2 * pieces, given);
    of.number("missing", around.portions.missing.si(),
              units::amount(around.portions.missing, safe.system(), {0.1, Toward::up}),
              {"most-lost", "up-tenth", of.source("figures", "portion.*")});
    if (around.ice) {
        of.span("ice-takes", around.ice->takes, units::print(around.ice->takes, Toward::up), given);
        of.number("ice-box-loss", around.ice->loss.high.si(), ice_box_loss(*around.ice),
                  {"cautious-ends", "none", of.source("figures", "ice.*")});
    }
    if (of.reads()) {
        of.number("slush", of.plan().trip->boxes.front().thermometer->si(), slush_reads(safe), given);
    }
}

}  // namespace

void add_kitchen_figures(FigureList& list) {
    const FigureMaker of(list, "packing");
    add_packs(of);
    add_fire_clock(of);
    add_slices(of);
    of.count("people", of.plan().trip->people, {"as-given", "none", of.source("trip-file")});
    add_acts(of);
    add_meals(of);
    int nth = 0;
    for (const plan::FoodPlan& food : of.plan().foods) {
        add_food(of, food, ++nth);
        of.degrees("core-peak", food.core_peak.high, of.safe().at_least(food.core_peak.high),
                   {"share-95", "up-degree", of.source("heat-engine"), food.core_peak.error.si()},
                   food_place(of.plan(), food));
    }
    add_side_dishes(of, of);
    add_pack_details(of);
    add_leftovers(of);
}

}  // namespace holdwater::card
