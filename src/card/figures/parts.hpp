// SPDX-License-Identifier: MIT
// The figures of the cards, a function for each card and for each part that several of them have. A figure is one line
// in one of these. Inside card/figures, and for the lists of the class deck.
#pragma once

#include "card/figures/maker.hpp"

namespace holdwater::card {

// Of every food what one acts on: Plan, Hold.
void add_plan_food(FigureList& list, const plan::FoodPlan& food);
void add_hold_food(FigureList& list, const plan::FoodPlan& food);
// All else, card by card.
void add_one_figures(FigureList& list);
void add_plan_figures(FigureList& list);
void add_fill_figures(FigureList& list);
void add_hold_figures(FigureList& list);
void add_reading_figures(FigureList& list);
void add_night_figures(FigureList& list);
void add_touch_figures(FigureList& list);
void add_trouble_figures(FigureList& list);
void add_log_figures(FigureList& list);
void add_kitchen_figures(FigureList& list);
// What only the terminal prints, of the card "terminal" that there is not: all of it, and what is around the bath.
void add_terminal_figures(FigureList& list);
void add_terminal_provisions(FigureList& list);

// Parts of several cards, in shared_figures.cpp.

/// The times of what is done: "act", numbered as the events of the plan.
void add_acts(const FigureMaker& of);
/// The rounds of the fill, each with its litres: "pour".
void add_rounds(const FigureMaker& of);
/// A food as its card tells of it: pieces, thickness, target, advice, finish.
void add_food(const FigureMaker& of, const plan::FoodPlan& food, int nth);
/// The temperature of a whole food over the fire after a fall, "reheat", and that of the foods that are finished.
void add_full(const FigureMaker& of);
/// The first of these alone, where add_food brings the others.
void add_reheat(const FigureMaker& of);
void add_read_floor(const FigureMaker& of);
void add_action_line(const FigureMaker& of);
void add_top_up_mark(const FigureMaker& of);
/// When a food is ready, "ready-if", and when it is where a reading was lower: "ready-late", never under "late-bath".
void add_ready(const FigureMaker& of, const plan::FoodPlan& food);
/// How long the bath may be left after it was topped up: "interval-calm", "interval-rough".
void add_intervals(const FigureMaker& of);
/// The rungs of the ladder: "reads", "pour", "below-rim".
void add_ladder(const FigureMaker& of);
/// The boiling water that warms the box, if any does: "warming".
void add_warming(const FigureMaker& of);
/// How late a pour may be.
void add_late(const FigureMaker& of);
/// The answers to the what-if questions of the trip.
void add_what_ifs(const FigureMaker& of);
/// For every meal, from the first: "meal", "first-piece-out", "sear-side", "pans", "pan-fire".
void add_meals(const FigureMaker& of);
/// "side" at its time, "side-takes", "clash-from", "clash-until".
/// What is done when around the bath: `act` makes what one acts on.
void add_side_dishes(const FigureMaker& of, const FigureMaker& act);
void add_fire_clock(const FigureMaker& act);
/// Until when the meal may wait, and the reading at serving from which that holds.
void add_waits_until(const FigureMaker& of);

// Parts that the class deck has too.

/// What to do after a fall: floor, rows, cold baths, mark.
void add_falls(const FigureMaker& of);
void add_come_up(const FigureMaker& of);
void add_wax_figures(const FigureMaker& of);
/// The rows of a fingertip dip and what cold hands do to them.
void add_dips(const FigureMaker& of);

}  // namespace holdwater::card
