// SPDX-License-Identifier: MIT
// The numbers of the Touch and the Kitchen card.
#include "card/shared/dip.hpp"
#include "card/trip/kitchen.hpp"
#include "card/shared/mixing.hpp"
#include "card/shared/numbers.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <cmath>

namespace holdwater::card {
namespace {

using units::Toward;

constexpr const char* heat_balance = "heat balance";
constexpr const char* up_tenth = "up to 0.1";
constexpr const char* cautious_ends = "every cautious end";

std::string tenth_up(double value) {
    return units::number(units::round_to(value, 0.1, Toward::up), 1);
}

/// In the unit that the cards print first.
std::string degree(const CardWriter& hand, units::Temperature t, Toward toward) {
    return units::print(t, units::first_of(hand.system()), {1.0, toward});
}

/// A key of --json from a word's: "by-one" as "by_one".
std::string with_bars(std::string text) {
    for (char& c : text) {
        c = c == '-' ? '_' : c;
    }
    return text;
}

void add_slices(const CardWriter& hand, std::vector<CardNumber>& numbers) {
    struct Where {
        answer::Medium medium;
        const char* name;
    };
    for (const Where& where : {Where{answer::Medium::slush, "slush"}, Where{answer::Medium::loose_snow, "snow"},
                               Where{answer::Medium::still_air, "air"}}) {
        if (const auto slice = thickest_slice(hand.plan.around.leftovers, where.medium, facts::Contact::free)) {
            numbers.push_back({"kitchen", fmt::format("slice_{}_mm", where.name), units::in_millimetres(*slice),
                               hand.thickness(*slice), "slow reading, thinnest over all foods",
                               "down to 1 mm, inches down to 1/8", "figures cooling.first, cooling.second",
                               std::nullopt});
        }
    }
}

}  // namespace

void add_touch_numbers(const CardWriter& hand, std::vector<CardNumber>& numbers) {
    const plan::Plan& plan = hand.plan;
    if (const auto mixing = mixing_of(plan)) {
        numbers.push_back({"touch", "parts_boiling", mixing->parts, tenth_up(mixing->parts), "likely, as the fill",
                           up_tenth, heat_balance, std::nullopt});
        if (mixing->with_ice_water) {
            numbers.push_back({"touch", "parts_boiling_ice_water", *mixing->with_ice_water,
                               tenth_up(*mixing->with_ice_water), "likely, as the fill", up_tenth, heat_balance,
                               std::nullopt});
        }
        numbers.push_back({"touch", "comes_out_low_c", mixing->low.celsius(), degree(hand, mixing->low, Toward::down),
                           "usual errors of pouring, in squares", "down to 1 degree", heat_balance, std::nullopt});
        numbers.push_back({"touch", "comes_out_high_c", mixing->high.celsius(), degree(hand, mixing->high, Toward::up),
                           "nothing lost, usual errors in squares", "up to 1 degree", heat_balance, std::nullopt});
    }
    if (hand.reads() && !plan.top_ups.empty()) {
        const units::Volume most = most_of_a_pour(plan);
        numbers.push_back({"touch", "top_up_most_l", units::in_litres(most), hand.measured(most, Toward::up),
                           "95 of 100 scenarios, the largest of all top-ups", "up to 0.1 L", heat_balance,
                           std::nullopt});
    }
    const units::Temperature wax = facts::facts().temperature("wax.floor");
    numbers.push_back({"touch", "wax_c", wax.celsius(), hand.at_least(wax), "rule", "up to 1 degree",
                       "figure wax.floor [" + facts::facts().figure("wax.floor").source + "]", std::nullopt});
    for (const Dip& dip : dips()) {
        const std::string name = "stung_" + with_bars(dip.key);
        numbers.push_back({"touch", name + "_low_c", dip.band.p5.celsius(), degree(hand, dip.band.p5, Toward::down),
                           "5 of 100 baths, a warm hand", "down to 1 degree", "skin model, figures hand.*, touch.*",
                           std::nullopt});
        numbers.push_back({"touch", name + "_high_c", dip.band.p95.celsius(), degree(hand, dip.band.p95, Toward::up),
                           "95 of 100 baths, a warm hand", "up to 1 degree", "skin model, figures hand.*, touch.*",
                           std::nullopt});
    }
}

void add_kitchen_numbers(const CardWriter& hand, std::vector<CardNumber>& numbers) {
    const plan::Plan& plan = hand.plan;
    const plan::Provisions& around = plan.around;
    numbers.push_back({"kitchen", "fetch_l", units::in_litres(around.water.fetch),
                       units::print(around.water.fetch, hand.system(), {1.0, Toward::up}), cautious_ends, "up to 1 L",
                       heat_balance, std::nullopt});
    numbers.push_back({"kitchen", "boil_most_l", units::in_litres(around.water.boil_most),
                       hand.litres_short(around.water.boil_most, Toward::up), cautious_ends, "up to 0.5 L",
                       heat_balance, std::nullopt});
    if (around.fuel) {
        numbers.push_back({"kitchen", "fuel_kg", around.fuel->mass.high.si(), fuel_mass(hand, *around.fuel),
                           cautious_ends, "up to a step of the fuel", "figures fuel.*", std::nullopt});
    }
    if (around.ice && around.ice->card.si() > 0.0) {
        numbers.push_back({"kitchen", "ice_kg", around.ice->drained.high.si(),
                           units::print(around.ice->card, hand.system(), {0.5, Toward::up}), cautious_ends,
                           "up to a step of the ice", "figures ice.fusion, raw.cold", std::nullopt});
    }
    numbers.push_back({"kitchen", "portion_g", around.portions.each.low.si() * 1e3,
                       small_mass(around.portions.each.low, hand.system(), Toward::down), "most bone, most loss",
                       "down to 5 g", "figures portion.bone, portion.cooking-loss", std::nullopt});
    if (!around.sear.foods.empty()) {
        const units::LocalTime first_out = first_piece_out(plan, around.sear, plan.trip->serve);
        numbers.push_back({"kitchen", "first_piece_out_h", units::in_hours(first_out.since(plan.trip->from)),
                           hand.clock(first_out), "slow end of the sear", "to the minute", "figures sear.*",
                           std::nullopt});
    }
    for (const plan::SideStart& side : around.sides.list) {
        numbers.push_back({"kitchen", "side_h: " + side.name, units::in_hours(side.begin.since(plan.trip->from)),
                           hand.clock(side.begin), "as given", "not at all", "the trip file", std::nullopt});
    }
    if (hand.reads()) {  // without a thermometer nothing is kept
        add_slices(hand, numbers);
    }
}

}  // namespace holdwater::card
