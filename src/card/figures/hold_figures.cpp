// SPDX-License-Identifier: MIT
// The figures of the Hold card.
#include "card/figures/parts.hpp"
#include "card/figures/places.hpp"

namespace holdwater::card {

using units::System;
using units::Toward;
using How = FigureMaker::How;

namespace {

void add_table(const FigureMaker& of, const plan::FoodPlan& food) {
    const HoldPlaces first = hold_places(of.plan(), food);
    const std::string& kill = food.standard.kill->key;
    int bath = first.bath;
    for (const units::Temperature column : food.hold.baths) {
        for (const System one : {System::metric, System::us}) {
            of.degrees(one == System::us ? "bath-us" : "bath", column, units::amount(column, one, {1.0, Toward::up}),
                       {"chosen", "up-degree", kill}, bath);
        }
        ++bath;
    }
    int row = first.row;
    int cell = first.cell;
    for (std::size_t i = 0; i < food.hold.thicknesses.size(); ++i) {
        // Each system has a column of its own, with its unit at the head; eighths of an inch rounded down.
        for (const System one : {System::metric, System::us}) {
            const Toward toward = one == System::us ? Toward::down : Toward::nearest;
            of.length(one == System::us ? "row-in" : "row", food.hold.thicknesses[i],
                      units::amount(food.hold.thicknesses[i], one, {1.0, toward}).without_units(),
                      {"chosen", "down-mm-eighths", kill}, row);
        }
        ++row;
        for (const std::optional<units::Duration>& time : food.hold.cells[i]) {
            if (time) {
                of.span("cell", *time, of.safe().must_hold_tight(*time), {"hold-95", "up-5-min", kill}, cell);
            }
            ++cell;
        }
    }
}

}  // namespace

void add_hold_food(FigureList& list, const plan::FoodPlan& food) {
    const FigureMaker of = FigureMaker(list, "hold").acted_on();
    const SafeSide& safe = of.safe();
    const Which name = food_place(of.plan(), food);
    if (const plan::OwnHold& own = food.own_hold; own.time) {
        of.degrees("hold-bath", own.bath, safe.at_least(own.bath), {"chosen", "up-degree", of.source("heat-engine")},
                   name);
        of.span("hold", *own.time, safe.must_hold(*own.time),
                {"hold-95", "up-5-min", food.standard.kill->key + " [" + food.standard.kill->source + "]"}, name);
    }
    if (food.thickest) {
        of.length("thickest", *food.thickest, units::amount(*food.thickest, safe.system(), {1.0, Toward::down}),
                  {"hold-95", "down-mm", of.source("figure", "come-up.refuse")}, name);
    }
}

void add_hold_figures(FigureList& list) {
    const FigureMaker of(list, "hold");
    add_full(of);
    add_read_floor(of);
    int nth = 0;
    for (const plan::FoodPlan& food : of.plan().foods) {
        ++nth;
        if (food.standard.kept_hot) {
            continue;
        }
        of.length("own", food.food->thickness, of.safe().thickness(food.food->thickness),
                  {"as-given", "down-mm-eighths", of.source("trip-file")}, nth);
        add_table(of, food);
        if (food.hold.dip) {
            of.brief().degrees("first-bath", food.hold.baths.front(), of.safe().at_least(food.hold.baths.front()),
                               {"chosen", "up-degree", food.standard.kill->key}, nth);
            of.count("dip", *food.hold.dip, {"hold-95", "none", of.source("heat-engine")}, nth);
        }
        if (!food.hold.thicknesses.empty()) {  // a plan from here on has no table
            const units::Length last = food.hold.thicknesses.back();
            of.brief().length("last-row", last, of.safe().thickness(last),
                              {"chosen", "down-mm-eighths", food.standard.kill->key}, nth);
        }
    }
}

}  // namespace holdwater::card
