// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"
#include "card/shared/dip.hpp"
#include "card/trip/kitchen.hpp"
#include "card/shared/mixing.hpp"
#include "card/shared/shared_parts.hpp"
#include "safety/sting.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::card {
namespace {

using safety::HandState;
using safety::Stirring;
using units::System;
using units::Toward;

std::string whole(double value, Toward toward) {
    return units::number(units::round_to(value, 1.0, toward), 0);
}

/// "64–90", whole degrees outwards: the band may be a little wider, never narrower.
std::string span(const safety::BathBand& band, bool fahrenheit) {
    const auto in_unit = [&](units::Temperature t) { return fahrenheit ? t.fahrenheit() : t.celsius(); };
    return whole(in_unit(band.p5), Toward::down) + "–" + whole(in_unit(band.p95), Toward::up);
}

/// The burn time of all rows, where it is one.
std::optional<units::Duration> burns_alike(const std::vector<Dip>& rows) {
    const bool alike = std::all_of(rows.begin(), rows.end(), [&](const Dip& dip) { return dip.burn == rows.front().burn; });
    return alike ? rows.front().burn : std::nullopt;
}

/// What stung a fingertip may have been, for a warm hand in stirred water, and how soon the hottest of that burns.
Table dip_table(const CardWriter& hand) {
    const words::Words& w = hand.words;
    const System system = hand.system();
    Table table;
    table.columns.push_back({w.text("touch.dip-stung"), Align::left, false});
    const bool us_first = units::first_of(system) == System::us;
    table.columns.push_back({w.text("touch.dip-may-be", {{"unit", us_first ? "°F" : "°C"}}), Align::left, true});
    if (units::two(system)) {
        table.columns.push_back({us_first ? "°C" : "°F", Align::left, false});
    }
    const std::vector<Dip> rows = dips();
    const bool one_burn = burns_alike(rows).has_value();
    if (!one_burn) {
        table.columns.push_back({w.text("touch.dip-burns"), Align::left, false});
    }
    for (const Dip& dip : rows) {
        std::vector<Text> cells{w.text(std::string("touch.dip-") + dip.key)};
        cells.push_back(span(dip.band, us_first));
        if (units::two(system)) {
            cells.push_back(span(dip.band, !us_first));
        }
        if (!one_burn) {
            cells.push_back(dip.burn ? hold_time(*dip.burn) : "");
        }
        table.rows.push_back(std::move(cells));
    }
    return table;
}

/// How much later the slow end of cold hands is stung than that of warm ones, in the example of the facts.
double cold_hand_later() {
    const units::Temperature bath = facts::facts().temperature("touch.example");
    const auto warm = safety::sting_band(bath, HandState::warm, Stirring::stirred).p95;
    const auto cold = safety::sting_band(bath, HandState::cold, Stirring::stirred).p95;
    return warm && cold ? *cold / *warm : 1.0;
}

bool any_poultry_or_fish(const plan::Plan& plan) {
    return std::any_of(plan.foods.begin(), plan.foods.end(), [](const plan::FoodPlan& food) {
        const facts::FoodKind* kind = facts::facts().find_food(food.food->kind);
        return kind != nullptr &&
               (kind->category == facts::Category::poultry || kind->category == facts::Category::fish);
    });
}

/// First the parts that this fill is mixed of.
void add_mixing(const CardWriter& hand, Card& card) {
    const plan::Fill& fill = hand.plan.fill;
    const words::Words& w = hand.words;
    const auto mixing = mixing_of(hand.plan);
    const std::string boiled = hand.litres_short(fill.boiled, hand.reads() ? Toward::up : Toward::nearest);
    Steps steps;
    if (mixing) {
        const auto parts = [](double x) { return units::number(units::round_to(x, 0.1, Toward::up), 1); };
        card.blocks.emplace_back(
            KeyNumber{w.text("touch.key-label"), parts(mixing->parts) + " : 1", "",
                      w.text("touch.key-aside", {{"boiled", boiled}, {"cold", hand.litres_short(fill.cold)}})});
        steps.steps.push_back({"", w.text("touch.pour")});
        if (mixing->with_ice_water) {
            steps.steps.push_back({"", w.text("touch.ice-water", {{"parts", parts(*mixing->with_ice_water)}})});
        }
        // Of what comes out, the low end decides: rounded down.
        const System first = units::first_of(hand.system());
        steps.steps.push_back(
            {"", w.text("touch.span", {{"low", units::print(mixing->low, first, {1.0, Toward::down})},
                                       {"high", units::print(mixing->high, first, {1.0, Toward::up})}})});
    } else {
        card.blocks.emplace_back(KeyNumber{w.text("touch.key-label-all"), boiled, "", w.text("touch.key-aside-all")});
        steps.steps.push_back({"", w.text("touch.pour")});
    }
    if (!hand.plan.top_ups.empty()) {
        const std::string most = hand.measured(most_of_a_pour(hand.plan), Toward::up);
        steps.steps.push_back(
            {"", hand.reads() ? w.text("touch.top-up", {{"litres", most}}) : w.text("touch.top-up-fixed")});
    }
    card.blocks.emplace_back(std::move(steps));
}

}  // namespace

void add_wax(const CardWriter& hand, bool poultry_or_fish, Card& card) {
    const words::Words& w = hand.words;
    card.blocks.emplace_back(Heading{w.text("touch.wax-heading")});
    card.blocks.emplace_back(
        Note{w.text("touch.wax", {{"wax", hand.at_least(facts::facts().temperature("wax.floor"))}})});
    card.blocks.emplace_back(Note{w.text(poultry_or_fish ? "touch.who-wax" : "touch.who")});
}

void add_hand(const CardWriter& hand, Card& card) {
    const words::Words& w = hand.words;
    card.blocks.emplace_back(Heading{w.text("touch.hand-heading")});
    if (const auto burn = burns_alike(dips())) {
        card.blocks.emplace_back(Note{w.text("touch.burns", {{"burn", hold_time(*burn)}})});
    }
    Steps steps;
    steps.steps = {{"", w.text("touch.hand-1")}, {"", w.text("touch.hand-2")}};
    card.blocks.emplace_back(std::move(steps));
    card.blocks.emplace_back(dip_table(hand));
    card.blocks.emplace_back(Note{w.text("touch.proves")});
    card.blocks.emplace_back(Note{w.text("touch.cold-hand", {{"times", whole(cold_hand_later(), Toward::nearest)}})});
}

Card touch_card(const CardWriter& hand) {
    Card card;
    add_mixing(hand, card);
    add_wax(hand, any_poultry_or_fish(hand.plan), card);
    card.blocks.emplace_back(Turn{});
    add_hand(hand, card);
    card.cautions.push_back({SignalWord::warning, hand.words.text("touch.caution")});
    return card;
}

}  // namespace holdwater::card
