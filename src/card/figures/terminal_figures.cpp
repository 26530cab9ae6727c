// SPDX-License-Identifier: MIT
// What the terminal prints of a trip beside the figures of the cards: here too each is rounded in one place.
#include "card/figures/kitchen_measures.hpp"
#include "card/figures/parts.hpp"
#include "card/figures/places.hpp"
#include "card/figures/provision_rounding.hpp"
#include "facts/facts.hpp"
#include "safety/refusals.hpp"

#include <string_view>
#include <utility>

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

void add_meal_portions(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const std::string portions = of.source("figures", "portion.*");
    int nth = 0;
    const auto add = [&](const plan::Portions& meal) {
        ++nth;
        const auto each = [&](std::string_view key, units::Mass mass) {
            of.grams(key, mass, small_mass(mass, safe.system(), Toward::down), {"most-lost", "down-5-g", portions},
                     nth);
        };
        each("portion", meal.each.low);
        each("portion-likely", meal.each.likely);
        of.kilograms("raw", meal.raw, units::amount(meal.raw, safe.system(), {0.1, Toward::nearest}),
                     {"as-given", "none", of.source("trip-file")}, nth);
        of.kilograms("missing", meal.missing, units::amount(meal.missing, safe.system(), {0.1, Toward::up}),
                     {"most-lost", "up-tenth", portions}, nth);
    };
    for (const plan::Meal& meal : of.plan().around.earlier) {
        add(meal.portions);
    }
    add(of.plan().around.portions);
    const auto served = [&](std::string_view key, std::string_view fact) {
        const units::Mass each{facts::facts().value(fact)};
        of.grams(key, each, small_mass(each, safe.system(), Toward::nearest),
                 {"rule", "none", of.source("figure", fact)});
    };
    served("portion-ordinary", "portion.ordinary");
    served("portion-hearty", "portion.hearty");
}

void add_water_and_fuel(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const plan::Provisions& around = of.plan().around;
    const std::string balance = of.source("heat-balance");
    of.litres("cold", around.water.cold, safe.litres(around.water.cold), {"chosen", "half-litre", balance});
    of.litres("boil-likely", around.water.boil_likely,
              units::amount(around.water.boil_likely, safe.system(), {1.0, Toward::up}),
              {"likely-fill", "up-litre", balance});
    if (around.fuel) {
        const plan::FuelNeed& fuel = *around.fuel;
        const How burnt{"cautious-ends", "up-fuel", of.source("figures", "fuel.*")};
        of.kilograms("fuel-low", fuel.mass.low, fuel_mass(fuel.mass.low, fuel.fuel, safe.system()), burnt);
        of.kilograms("fuel-likely", fuel.mass.likely, fuel_mass(fuel.mass.likely, fuel.fuel, safe.system()), burnt);
    }
}

void add_ice(const FigureMaker& of) {
    const units::System system = of.safe().system();
    const plan::Provisions& around = of.plan().around;
    const How given{"as-given", "none", of.source("trip-file")};
    const std::string melts = of.source("figures", "ice.fusion, raw.cold, journey.box-loss");
    const auto litres = [&](std::string_view key, units::Volume v, Toward toward) {
        of.litres(key, v, units::amount(v, system, {1.0, toward}), given);
    };
    const auto kilograms = [&](std::string_view key, units::Mass m) {
        of.kilograms(key, m, units::amount(m, system, {0.1, Toward::up}), {"cautious-ends", "up-tenth", melts});
    };
    const auto air = [&](std::string_view key, units::Temperature t, Toward toward) {
        of.degrees(key, t, units::amount(t, system, {1.0, toward}), given);
    };
    if (around.ice) {
        kilograms("ice-likely", around.ice->drained.likely);
        kilograms("ice-undrained", around.ice->undrained);
        litres("ice-takes-up", around.ice->takes_up, Toward::up);
        litres("ice-food", around.ice->food, Toward::up);
        if (around.ice->room) {
            litres("ice-room", *around.ice->room, Toward::down);
        }
    }
    if (const auto& journey = of.plan().trip->journey) {
        air("journey-air", journey->air, Toward::nearest);
    }
    if (around.frost) {
        air("frost", *around.frost, Toward::up);
    }
}

void add_sears(const FigureMaker& of) {
    const How sears{"slow-sear", "minute", of.source("figures", "sear.*")};
    int nth = 0;  // through all meals
    const auto add = [&](const plan::Sear& sear) {
        for (const plan::SearedFood& food : sear.foods) {
            of.span("sear-takes", food.takes, units::print(food.takes, Toward::up), sears, ++nth);
        }
    };
    for (const plan::Meal& meal : of.plan().around.earlier) {
        add(meal.sear);
    }
    add(of.plan().around.sear);
    const auto rule = [&](std::string_view key, std::string_view fact) {
        of.span(key, facts::facts().duration(fact), units::print(facts::facts().duration(fact)),
                {"rule", "none", of.source("figure", fact)});
    };
    rule("carve", "sear.carve");
    rule("longest-out", "sear.longest-out");
}

/// With cold on one face of a slice.
void add_lying_slices(const FigureMaker& of) {
    const auto add = [&](std::string_view key, answer::Medium medium) {
        if (const auto slice = thickest_slice(of.plan().around.leftovers, medium, facts::Contact::bottom)) {
            of.length(key, *slice, slice_at_most(*slice, of.safe().system()),
                      {"slow-thinnest", "down-mm-eighths", of.source("figures", "cooling.*, leftovers.*")});
        }
    };
    add("slice-slush-lying", answer::Medium::slush);
    add("slice-snow-lying", answer::Medium::loose_snow);
}

/// How much each way boils and burns.
void add_ways(const FigureMaker& of) {
    int nth = 0;
    for (const plan::Way& way : of.plan().ways) {
        ++nth;
        const plan::Burden& burden = way.burden;
        of.litres("way-boils", burden.boiled, of.safe().litres(burden.boiled, Toward::up),
                  {"likely-fill", "up-half-litre", of.source("heat-balance")}, nth);
        if (burden.fuel > units::Mass{0}) {
            const facts::Fuel fuel = of.plan().trip->fire.fuel;
            of.kilograms("way-burns", burden.fuel, fuel_mass(burden.fuel, fuel, of.safe().system()),
                         {"likely-fill", "up-fuel", of.source("figures", "fuel.*")}, nth);
        }
    }
}

void add_questions(const FigureMaker& of) {
    const How given{"as-given", "none", of.source("trip-file")};
    int nth = 0;
    for (const plan::WhatIfAnswer& answer : of.plan().what_ifs) {
        ++nth;
        const trip::WhatIf& what = *answer.what;
        if (what.colder) {
            of.number("what-if-colder", what.colder->si(),
                      units::amount(*what.colder, of.safe().system(), {1.0, Toward::nearest}), given, nth);
        }
        if (what.later) {
            of.span("what-if-later", *what.later, units::print(*what.later), given, nth);
        }
        if (what.fire_out) {
            of.span("what-if-fire-out", *what.fire_out, units::print(*what.fire_out), given, nth);
        }
        of.span("what-if-below", answer.below, units::print(answer.below, Toward::up),
                {"share-95", "minute", of.source("cooling-law")}, nth);
    }
}

}  // namespace

void add_terminal_provisions(FigureList& list) {
    const FigureMaker of(list, "terminal");
    add_meal_portions(of);
    add_water_and_fuel(of);
    add_ice(of);
    add_sears(of);
    add_lying_slices(of);
}

void add_terminal_figures(FigureList& list) {
    const FigureMaker of(list, "terminal");
    add_terminal_provisions(list);
    add_questions(of);
    add_ways(of);
    int nth = 0;
    for (const plan::TopUp& top_up : of.plan().top_ups) {
        of.degrees("top-up-reads", top_up.reading.likely, of.safe().about(top_up.reading.likely),
                   {"likely-ladder", "none-whole-degrees", of.source("heat-engine")}, ++nth);
    }
    for (const auto& [key, fact] : {std::pair("come-up-from", "come-up.from"), std::pair("come-up-to", "come-up.to")}) {
        const units::Temperature t = facts::facts().temperature(fact);
        of.number(key, t.celsius(), safety::in_both(t), {"rule", "none", of.source("figure", fact)});
    }
    for (const plan::FoodPlan& food : of.plan().foods) {
        if (food.come_up.high) {
            of.span("come-up", *food.come_up.high, units::print(*food.come_up.high, Toward::up),
                    {"share-95", "minute", of.source("heat-engine")}, food_place(of.plan(), food));
        }
    }
}

}  // namespace holdwater::card
