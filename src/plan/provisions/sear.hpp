// SPDX-License-Identifier: MIT
// The queue at the pan: when the food comes out of the bath so that all of it is on the plates at serving.
#pragma once

#include "problem/problem.hpp"
#include "trip/trip.hpp"
#include "units/local_time.hpp"
#include "units/quantity.hpp"

#include <string>
#include <vector>

namespace holdwater::plan {

struct Setup;
struct Plan;

struct SearedFood {
    std::string name;
    int pieces = 0;
    int at_once = 1;         // pieces in one pan
    int sides = 2;           // turns a piece
    int rounds = 0;          // panfuls one after the other
    units::Duration takes;   // all rounds
    bool elsewhere = false;  // comes out of the other box
};

struct Sear {
    units::LocalTime serve;             // for the plates at
    std::vector<SearedFood> foods;      // in the order of the trip; without those that are finished over the fire
    std::vector<std::string> finished;  // those: the finish is their sear
    units::Duration side;               // in the pan, a side, as the clock has it
    int pans = 1;
    units::Duration takes;      // pan, then carving
    units::LocalTime take_out;  // first piece out of the bath
    /// When the first piece of this box comes out: after what another box puts into the pans before it.
    units::LocalTime own_out() const;
    bool in_time = true;      // nothing waits longer out of the bath than facts sear.longest-out
    problem::Problems notes;  // warnings: sear-too-long, sear-no-place
};

/// What is eaten at `serve`, in one pan, or in as many as keep the waiting short, at most one on each place of the fire
/// that no side dish takes.
Sear sear_of(const Setup& setup, const Plan& plan, units::LocalTime serve);

/// From the first piece out of the bath to the plates, at the meal at which this food is eaten.
units::Duration sear_takes(const Setup& setup, const trip::Food& food);

}  // namespace holdwater::plan
