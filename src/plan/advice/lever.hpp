// SPDX-License-Identifier: MIT
// What a cook could change about a trip, each change with its steps, its cost and its words. The figures of cost and
// range are facts bend.* and mend.*.
#pragma once

#include "trip/trip.hpp"
#include "trip/written.hpp"

#include <functional>
#include <string>
#include <vector>

namespace holdwater::plan {

struct Lever {
    /// In the order in which changes are made and named.
    enum class Kind {
        dropped,      // a food that no bath may cook
        keep_hot,     // the same cooked over the fire, and kept hot in the bath
        left_out,     // a food that makes it hard for the others
        thermometer,  // got
        wax,          // got
        lowest,       // targets raised to the lowest allowed
        over_fire,    // finished there after the bath
        second_box,   // for the foods that ask for another bath
        later,        // the meal
        earlier,      // the first moment
        start,        // the fire is lit when the plan chooses, or later than at the first moment
        tolerance,
        target,
        split,
        baths,  // one after the other
        free,   // pieces apart and off the bottom
        prewarmed,
        wind,
        more_water,
        less_water,
        pots,
        loss,
    };
    Kind kind = Kind::later;
    int steps = 1;         // it can be pulled by 1 to so many printed steps
    bool rises = true;     // a step more never makes it harder; else each has to be tried for itself
    double a_step = 0.0;   // cost of one step [min at the fire]
    double at_once = 0.0;  // and of pulling it at all
    std::function<void(trip::Trip&, int step)> pull;
    std::function<std::string(const trip::Trip& before, const trip::Trip& after)> words;  // as it stands in the file

    double cost(int step) const { return step == 0 ? 0.0 : at_once + a_step * step; }
};

/// All that can be changed about this trip, of one box or two, in the order of Kind. Never its country, its eaters, its
/// altitude or what is cooked, but for a food that no bath may cook.
std::vector<Lever> levers_of(const trip::Trip& trip);

/// Parts of it, in files of their own.
void add_time_levers(const trip::Trip& trip, std::vector<Lever>& levers);
void add_taste_levers(const trip::Trip& trip, std::vector<Lever>& levers);
void add_piece_levers(const trip::Trip& trip, std::vector<Lever>& levers);
void add_rule_levers(const trip::Trip& trip, std::vector<Lever>& levers);
void add_box_levers(const trip::Trip& trip, std::vector<Lever>& levers);

/// When everybody goes to bed, and when somebody is up: as the trip says, else facts mend.bedtime and mend.rising.
units::ClockTime bedtime_of(const trip::Trip& trip);
units::ClockTime rising_of(const trip::Trip& trip);

using trip::written;

}  // namespace holdwater::plan
