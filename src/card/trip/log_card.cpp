// SPDX-License-Identifier: MIT
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"

#include <algorithm>

namespace holdwater::card {
namespace {

using plan::Event;

/// Rows without a time, for whatever is read or poured besides; as many as make this many rows.
constexpr std::size_t rows_in_all = 9;

/// What is written down of an event, the nth from 1; nothing for pours of the fill before the last.
Text row_of(const CardWriter& writer, const CardFigures& on, int nth) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const Event& event = plan.events[static_cast<std::size_t>(nth) - 1];
    const auto named = [&](const char* key) { return on("act", nth) + " " + w.text(key); };
    const auto of_foods = [&](Text row, units::LocalTime plan::FoodPlan::*time) {
        for (const plan::FoodPlan* food : plan::foods_at(plan, time, event.at)) {
            row += w.text("log.of-food", {{"food", name_of(writer, *food->food)}});
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
        case Event::Kind::boil_finish:
            return "";
        case Event::Kind::finish: {  // its centre is read over the fire
            const Text row = named("log.out") + ", " + w.text("log.core");
            return plan.foods.size() > 1
                       ? row + w.text("log.of-food", {{"food", name_of(writer, *plan.foods[event.index].food)}})
                       : row;
        }
        case Event::Kind::take_out:
            if (plan.foods[event.index].finishing) {
                return "";  // it left the bath for the fire
            }
            return of_foods(named("log.out"), &plan::FoodPlan::eaten);
        case Event::Kind::top_up:
            return named("log.top-up");
        case Event::Kind::ready: {
            const plan::FoodPlan& food = plan.foods[event.index];
            if (food.standard.finish) {
                return "";  // what still needs the fire is not called ready
            }
            if (!writer.reads() && plan.foods.size() == 1) {
                return named("log.ready-clock");
            }
            if (plan.foods.size() > 1) {  // Plan has the condition of each
                return named("log.ready-short") + w.text("log.of-food", {{"food", name_of(writer, *food.food)}});
            }
            return on("act", nth) + " " + w.text("log.ready", {{"least", on("ready-if", 1)}});
        }
        case Event::Kind::hot_water:
        case Event::Kind::sitting:
            return "";
        case Event::Kind::serve:
            return named("log.eat");
    }
    return {};
}

}  // namespace

Card log_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("log");
    Card card;
    WriteIn grid;
    grid.heads = {w.text("log.col-plan"), w.text("log.col-time")};
    if (writer.reads()) {
        // Before and after a top-up: what was read only after it hides how far the bath had fallen.
        grid.heads.push_back(w.text("log.col-before"));
        grid.heads.push_back(w.text("log.col-after"));
    } else if (writer.wax()) {
        grid.heads.push_back(w.text("log.col-wax"));
    }
    grid.heads.push_back(w.text(writer.us_first() ? "log.col-quarts" : "log.col-litres"));
    for (std::size_t i = 0; i < plan.events.size(); ++i) {
        if (Text row = row_of(writer, on, static_cast<int>(i) + 1); !row.empty()) {
            grid.first_column.push_back(std::move(row));
        }
    }
    grid.first_column.resize(std::max(rows_in_all, grid.first_column.size()));
    grid.first_column.push_back(w.text(writer.reads() ? "log.coldest" : "log.latest"));
    grid.first_column.push_back(w.text("log.food"));
    card.blocks.add(std::move(grid));
    card.harmless = true;
    return card;
}

}  // namespace holdwater::card
