// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"

namespace holdwater::card {
namespace {

using plan::Event;

/// Rows without a time, for whatever is read or poured besides.
constexpr int spare_rows = 3;

/// What is written down of an event; nothing for pours of the fill before the last.
Text row_of(const CardWriter& hand, const Event& event) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    const auto named = [&](const char* key) { return hand.clock(event.at) + " " + w.text(key); };
    const auto of_foods = [&](Text row, units::LocalTime plan::FoodPlan::*time) {
        for (const plan::FoodPlan* food : plan::foods_at(plan, time, event.at)) {
            row += w.text("log.of-food", {{"food", plain(food->food->name)}});
        }
        return row;
    };
    switch (event.kind) {
        case Event::Kind::light_fire:
            return named("log.fire");
        case Event::Kind::warm_box:
            return "";
        case Event::Kind::pour:
            return event.index + 1 == plan.fill.pours.size() ? named("log.filled") : "";
        case Event::Kind::food_in:
            return plan::all_in_at_once(plan) ? named("log.food-in")
                                              : of_foods(named("log.food-in"), &plan::FoodPlan::in);
        case Event::Kind::take_out:
            return of_foods(named("log.out"), &plan::FoodPlan::eaten);
        case Event::Kind::top_up:
            return named(is_swap(plan.top_ups[event.index]) ? "log.swap" : "log.top-up");
        case Event::Kind::ready: {
            const plan::FoodPlan& food = plan.foods[event.index];
            // A food that still needs the fire is not called ready.
            const Text row = named(food.standard.finish ? "log.core" : "log.ready");
            return plan.foods.size() > 1 ? row + w.text("log.of-food", {{"food", plain(food.food->name)}}) : row;
        }
        case Event::Kind::serve:
            return named("log.eat");
    }
    return {};
}

}  // namespace

Card log_card(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    Card card;
    WriteIn grid;
    grid.heads = {w.text("log.col-plan"), w.text("log.col-time")};
    if (hand.reads()) {
        // Before and after a top-up: what was read only after it hides how far the bath had fallen.
        grid.heads.push_back(w.text("log.col-before"));
        grid.heads.push_back(w.text("log.col-after"));
    } else if (hand.wax()) {
        grid.heads.push_back(w.text("log.col-wax"));
    }
    const bool us_first = units::first_of(hand.system()) == units::System::us;
    grid.heads.push_back(w.text(us_first ? "log.col-quarts" : "log.col-litres"));
    for (const Event& event : plan.events) {
        if (Text row = row_of(hand, event); !row.empty()) {
            grid.first_column.push_back(std::move(row));
        }
    }
    grid.first_column.insert(grid.first_column.end(), spare_rows, "");
    card.blocks.emplace_back(std::move(grid));
    card.blocks.emplace_back(
        WriteIn{{w.text("log.after"), ""},
                {w.text(hand.reads() ? "log.coldest" : "log.latest"), w.text("log.people"), w.text("log.food")}});
    if (hand.reads()) {
        card.blocks.emplace_back(Note{w.text("log.boxes")});
    }
    card.blocks.emplace_back(Note{w.text("log.blank")});
    card.blocks.emplace_back(Note{w.text("log.stamp")});
    card.cautions.push_back(
        {SignalWord::warning, hand.reads() ? w.text("log.caution", {{"floor", hand.at_least(plan.read_floor)}})
                                           : w.text("log.caution-clock", {{"late", hand.latest_pour()}})});
    return card;
}

}  // namespace holdwater::card
