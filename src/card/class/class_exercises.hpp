// SPDX-License-Identifier: MIT
// Exercises for a class, each with its answer worked out here and now by the same functions as the cards.
#pragma once

#include "card/class/class_frame.hpp"
#include "card/class/loss_finder.hpp"

namespace holdwater::card {

struct Exercise {
    std::string key;  // of its words
    Text question;
    Text answer;
};

/// From the easiest on, as they come in a day with box and fire.
std::vector<Exercise> class_exercises(const ClassFrame& frame, const LossFinder& finder, const words::Words& words);

}  // namespace holdwater::card
