// SPDX-License-Identifier: MIT
#include "card/figures/numbers.hpp"

#include "card/figures/parts.hpp"
#include "card/trip/cards.hpp"

namespace holdwater::card {

FigureList trip_figures(const Telling& telling) {
    FigureList list(telling);
    add_one_figures(list);
    add_plan_figures(list);
    for (const plan::FoodPlan& food : telling.plan.foods) {
        add_plan_food(list, food);
        add_hold_food(list, food);
    }
    add_fill_figures(list);
    add_hold_figures(list);
    add_reading_figures(list);
    add_night_figures(list);
    add_touch_figures(list);
    add_trouble_figures(list);
    add_log_figures(list);
    add_kitchen_figures(list);
    add_terminal_figures(list);
    return list;
}

FigureList kitchen_figures(const Telling& telling) {
    FigureList list(telling);
    add_kitchen_figures(list);
    add_terminal_provisions(list);
    return list;
}

std::vector<CardNumber> card_numbers(const Telling& telling) {
    FigureList figures = trip_figures(telling);
    const CardWriter writer{telling, figures};
    for (const TripCard& card : deck_order) {
        if (card.belongs(telling)) {
            card.make(writer);  // notes what stands on it
        }
    }
    return figures.numbers();
}

}  // namespace holdwater::card
