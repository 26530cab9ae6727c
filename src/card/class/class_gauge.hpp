// SPDX-License-Identifier: MIT
// A box as a class tests it: its loss by the finder and by the program, and how long a bath in it lasts.
#pragma once

#include "answer/gauge/gauge.hpp"
#include "card/class/class_frame.hpp"
#include "card/class/loss_finder.hpp"

namespace holdwater::card {

/// A box and two readings of its bath, the first at the start of the loss finder.
struct ClassBox {
    units::Volume water;
    units::Temperature air;
    units::Temperature reading;
    units::Duration after;
};

/// What one finds: in the table each value between two goes to the one with the larger loss, the thread is laid with no
/// error, and the loss is rounded up.
struct FoundLoss {
    std::size_t air = 0;
    std::size_t reading = 0;
    int number = 0;  // of the fall
    units::HeatLoss loss;
};
FoundLoss found_loss(const LossFinder& finder, const ClassBox& box);

/// The same test, by the command `gauge`.
answer::Gauge gauge_of(const ClassBox& box, units::Temperature start);

/// From the top mark as read until the floor in this air: the fast end of the box, the thermometer too high.
units::Duration time_alone(const ClassFrame& frame, const ClassBox& box, units::Temperature start,
                           units::Temperature air);

/// The bath from the floor down to a reading, as slowly as this box may have cooled, the thermometer too high: its end
/// is the longest that it can have been below.
units::History slow_fall(const ClassFrame& frame, const ClassBox& box, units::Temperature start,
                         units::Temperature reading, units::Temperature air);

/// The box of the exercises, as its class tested it.
ClassBox class_box();

/// How long the bath of that box was below the floor at the most, if it reads so little now; and what to do.
struct ClassMorning {
    units::Temperature reading;
    units::Temperature air;
    units::Duration below;
    safety::FallAction action = safety::FallAction::none;
};
ClassMorning class_morning(const ClassFrame& frame);

}  // namespace holdwater::card
