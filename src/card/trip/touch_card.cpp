// SPDX-License-Identifier: MIT
#include "card/shared/dip.hpp"
#include "card/shared/mixing.hpp"
#include "card/shared/provision_figures.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/kitchen.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::card {
namespace {

using units::System;
using units::Toward;

units::Figure parts(double to_one_cold) {
    return units::figure(to_one_cold, 0.1, Toward::up);
}

/// The burn time of all rows, where it is one.
std::optional<units::Duration> burns_alike(const std::vector<Dip>& rows) {
    const bool alike =
        std::all_of(rows.begin(), rows.end(), [&](const Dip& dip) { return dip.burn == rows.front().burn; });
    return alike ? rows.front().burn : std::nullopt;
}

/// What stung a fingertip may have been, for a warm hand in stirred water, and how soon the hottest of that burns.
Table dip_table(const CardWriter& writer) {
    const words::Words& w = writer.words;
    const System system = writer.system();
    Table table;
    table.column(w.text("touch.dip-stung"));
    const bool us_first = units::first_of(system) == System::us;
    table.column(w.text("touch.dip-may-be", {{"unit", us_first ? "°F" : "°C"}}), Align::left, true);
    if (units::two(system)) {
        table.column(us_first ? "°C" : "°F");
    }
    const std::vector<Dip> rows = dips();
    const bool one_burn = burns_alike(rows).has_value();
    if (!one_burn) {
        table.column(w.text("touch.dip-burns"));
    }
    for (const Dip& dip : rows) {
        std::vector<Text> cells{w.text(std::string("touch.dip-") + dip.key)};
        cells.push_back(span_of(dip.band, us_first));
        if (units::two(system)) {
            cells.push_back(span_of(dip.band, !us_first));
        }
        if (!one_burn) {
            cells.push_back(dip.burn ? hold_time(*dip.burn) : "");
        }
        table.rows.push_back(std::move(cells));
    }
    return table;
}

bool any_poultry_or_fish(const plan::Plan& plan) {
    return std::any_of(plan.foods.begin(), plan.foods.end(), [](const plan::FoodPlan& food) {
        const facts::FoodKind* kind = facts::facts().find_food(food.food->kind);
        return kind != nullptr &&
               (kind->category == facts::Category::poultry || kind->category == facts::Category::fish);
    });
}

/// First the parts that this fill is mixed of.
void add_mixing(const CardWriter& writer, Card& card) {
    const plan::Fill& fill = writer.plan.fill;
    const words::Words& w = writer.words;
    const auto mixing = mixing_of(writer.plan);
    const units::Amount boiled = writer.litres_short(fill.boiled, writer.reads() ? Toward::up : Toward::nearest);
    Steps steps;
    if (mixing) {
        card.blocks.add(
            KeyNumber{w.text("touch.key-label"), writer.written(parts(mixing->parts)) + " : 1", "",
                      w.text("touch.key-aside", {{"boiled", boiled}, {"cold", writer.litres_short(fill.cold)}})});
        steps.add(w.text("touch.pour"));
        if (mixing->with_ice_water) {
            steps.add(w.text("touch.ice-water", {{"parts", parts(*mixing->with_ice_water)}}));
        }
        // Of what comes out, the low end decides: rounded down.
        const System first = units::first_of(writer.system());
        steps.add(w.text("touch.span", {{"low", units::amount(mixing->low, first, {1.0, Toward::down})},
                                        {"high", units::amount(mixing->high, first, {1.0, Toward::up})}}));
    } else {
        card.blocks.add(
            KeyNumber{w.text("touch.key-label-all"), writer.written(boiled), "", w.text("touch.key-aside-all")});
        steps.add(w.text("touch.pour"));
    }
    if (!writer.plan.top_ups.empty()) {
        const units::Amount most = writer.measured(most_of_a_pour(writer.plan), Toward::up);
        steps.add(writer.reads() ? w.text("touch.top-up", {{"litres", most}}) : w.text("touch.top-up-fixed"));
    }
    card.blocks.add(std::move(steps));
}

}  // namespace

void add_wax(const CardWriter& writer, bool poultry_or_fish, Card& card) {
    const words::Words& w = writer.words;
    card.blocks.add(Heading{w.text("touch.wax-heading")});
    card.blocks.add(Note{w.text("touch.wax", {{"wax", writer.at_least(facts::facts().temperature("wax.floor"))},
                                              {"sets", writer.short_degrees(wax_sets(), Toward::down)}})});
    card.blocks.add(Note{w.text(poultry_or_fish ? "touch.who-wax" : "touch.who")});
}

void add_hand(const CardWriter& writer, Card& card) {
    const words::Words& w = writer.words;
    card.blocks.add(Heading{w.text("touch.hand-heading")});
    if (const auto burn = burns_alike(dips())) {
        card.blocks.add(Note{w.text("touch.burns", {{"burn", hold_time(*burn)}})});
    }
    Steps steps;
    steps.add(w.text("touch.hand-1"));
    steps.add(w.text("touch.hand-2"));
    card.blocks.add(std::move(steps));
    card.blocks.add(dip_table(writer));
    card.blocks.add(Note{w.text("touch.proves")});
    card.blocks.add(Note{w.text("touch.cold-hand", {{"times", units::decimal(cold_hand_later(), 0)}})});
}

Card touch_card(const CardWriter& writer) {
    Card card;
    add_mixing(writer, card);
    add_wax(writer, any_poultry_or_fish(writer.plan), card);
    card.blocks.add(Turn{});
    add_hand(writer, card);
    card.warn(writer.words.text("touch.caution"));
    return card;
}

}  // namespace holdwater::card
