// SPDX-License-Identifier: MIT
// A plan and the words in which it is told.
#pragma once

#include "plan/result/plan.hpp"
#include "units/amount.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace holdwater::card {

struct Telling {
    const plan::Plan& plan;
    const words::Words& words;

    units::System system() const { return plan.trip->units; }
    bool us_first() const { return units::first_of(system()) == units::System::us; }

    /// False: nobody can read a bath or a core; such cards go by the clock and by wax alone.
    bool reads() const { return plan.trip->boxes.front().thermometer.has_value(); }
    bool wax() const { return plan.trip->boxes.front().wax_tell_tale; }
    bool any_finish() const {
        return std::any_of(plan.foods.begin(), plan.foods.end(),
                           [](const plan::FoodPlan& food) { return food.standard.finish.has_value(); });
    }
    /// The ring around fire and box in which no child may be, in the first system.
    std::string children_away() const { return words.text(us_first() ? "deck.away-us" : "deck.away"); }
};

}  // namespace holdwater::card
