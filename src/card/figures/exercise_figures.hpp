// SPDX-License-Identifier: MIT
// All figures of the class sheets: of the box test and the loss finder, of the exercises with their answers, of the
// notes. Made and rounded before there is a sheet.
#pragma once

#include "card/class/class_frame.hpp"
#include "card/class/loss_finder.hpp"
#include "card/figures/list.hpp"
#include "safety/after_fall.hpp"
#include "safety/clocks.hpp"

namespace holdwater::card {

/// What the answers decide, besides their figures.
struct ExerciseDecisions {
    safety::ComeUpVerdict come_up = safety::ComeUpVerdict::fine;
    safety::FallAction morning = safety::FallAction::none;
};

/// Under "exercises", by exercise and place: "mix-parts". What there is no answer to is not there.
ExerciseDecisions add_exercise_figures(FigureList& list, const ClassFrame& frame, const LossFinder& finder);

/// Under "sheets".
void add_sheet_figures(FigureList& list, const ClassFrame& frame, const LossFinder& finder);

}  // namespace holdwater::card
