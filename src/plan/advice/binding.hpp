// SPDX-License-Identifier: MIT
// Which limit keeps a bath from being held: each is relaxed alone, and what then holds is what binds. Sleep is a wish
// and never among them: the search wakes the cook where it must.
#pragma once

#include "plan/search/setup.hpp"

#include <string>
#include <vector>

namespace holdwater::plan {

struct Binding {
    enum class Limit {
        room,         // between the bath that must be kept and the core that must not be passed
        thermometer,  // its error lies on the bath that must be read
        pots,         // what they give at once
        fire,         // how soon they boil
        box,          // its loss
        water,        // the cold water of the fill
        time,         // until the meal
    };
    Limit limit = Limit::box;
    units::TemperatureDifference more;  // room: so much more would be enough, in whole kelvins
};

/// The limits that alone, relaxed as far as anybody could wish, let a schedule hold. With few scenarios: all of them
/// together cost about one search.
std::vector<Binding> bath_bound_by(const Setup& setup);
/// The same for a bath that can be held, but does not make the food ready in time.
std::vector<Binding> ready_bound_by(const Setup& setup);
/// The same for a box that cannot even be filled hot enough.
std::vector<Binding> fill_bound_by(const Setup& setup);

/// What the limit is here, with its figures, and what would mend it: "1 pot of 5.0 L gives too little at once".
std::string words_of(const Binding& binding, const Setup& setup);
std::string mend_of(const Binding& binding, const Setup& setup);

}  // namespace holdwater::plan
