// SPDX-License-Identifier: MIT
// The lowest bath that a box with its food can have come to while nobody read it. Inside answer/ only.
#pragma once

#include "answer/review/review_notes.hpp"
#include "heat/bath.hpp"
#include "problem/problem.hpp"
#include "trip/trip.hpp"
#include "units/history.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace holdwater::answer {

/// The box as it loses heat fastest: loss at its fast end in the wind's high end, the least water, the coldest air.
struct WorstBox {
    heat::BoxHeat heat;
    units::Volume water;
    units::History air;  // on the clock of the log
};

/// One food, cold as it can have been, its stay, and its three readings: slow, likely, fast.
struct WorstFood {
    std::array<heat::FoodInBath, 3> readings;
    Stay stay;
};
problem::Result<WorstFood> worst_food(const trip::Food& food, const Stay& stay);

/// Bath and food together, by the energy balance of heat::Bath, run for every reading of the food's properties and for
/// both ends of the thermometer's error. The low end is the path, the lowest of all properties. It holds for every
/// history in which heat came into the box only by pouring: bath and food warm each other, so that whatever was warmer
/// at one moment stays warmer, and a pour that nobody wrote down only lifts what is below here. The true bath is
/// nowhere lower, unless the box lost heat in another way (lid off, leak, cold water).
///
/// A reading less its error and the path up to it are both no higher than the true bath, so that the higher of the two
/// goes on: a reading that is lower than the path, which the high end of the error explains, does not pull the path
/// down, and leaving a reading out never raises it. Only a reading that not even the high end comes to in this box
/// tells of heat lost in another way; it is taken as read, its whole error off.
class LowestBath {
  public:
    /// From a moment on, with the bath at its reading; `error` of the thermometer.
    LowestBath(const WorstBox& box, const std::vector<WorstFood>& foods, units::TemperatureDifference error,
               units::Duration from, units::Temperature reading);

    /// The bath reads this now.
    void read(units::Temperature reading);
    /// The lowest bath of now.
    units::Temperature lowest() const;
    /// The lowest that the thermometer can show now, if it is off by no more than its error.
    units::Temperature lowest_reading() const;
    /// Runs to a moment, food going in and out on its way; adds the path, the error taken off, to `path`.
    void run_to(units::Duration moment, units::History& path);
    /// The same in a bath that stays at this reading.
    void stay_until(units::Duration moment, units::Temperature reading);

  private:
    struct Run {
        heat::Bath bath;
        std::size_t property = 0;
        bool warmer = false;             // than read, by the whole error of the thermometer; else colder by it
        std::vector<std::size_t> index;  // of each food, once it is in
    };
    struct Move {
        units::Duration at;
        std::size_t food = 0;
        bool in = true;
    };
    void move(const Move& move);
    void set(Run& run, units::Temperature reading) const;

    const std::vector<WorstFood>* foods_;
    units::TemperatureDifference error_;
    units::Duration now_;
    units::Duration changed_;  // the last reading or food in or out: from there steps grow
    std::vector<Move> moves_;  // to come, the soonest last
    std::vector<Run> runs_;
};

}  // namespace holdwater::answer
