// SPDX-License-Identifier: MIT
// What a trip means in numbers, before anything is decided: boiling point, box, foods with their standards, weather.
#pragma once

#include "answer/hold/piece.hpp"
#include "heat/box.hpp"
#include "plan/result/levels.hpp"
#include "plan/search/scenario.hpp"
#include "problem/problem.hpp"
#include "trip/trip.hpp"
#include "units/history.hpp"

#include <optional>
#include <vector>

namespace holdwater::plan {

struct FoodSetup {
    const trip::Food* food = nullptr;
    answer::Piece piece;
    safety::Standard standard;
    units::Volume volume;               // of water that it takes the place of
    std::optional<units::Duration> in;  // since trip.from; nothing: into the filled bath
    units::Duration out;                // since trip.from: comes out to be eaten
    units::Temperature hottest;         // target and tolerance: no core is to pass it
    bool whole_time = true;             // in the bath from its filling to serving
};

struct Setup {
    const trip::Trip* trip = nullptr;
    const trip::Box* box = nullptr;
    heat::BoxLoss loss;
    units::HeatCapacity liner;
    units::Area surface;  // water surface
    units::Volume most;   // water and food that the box takes
    units::Volume food_volume;
    std::vector<FoodSetup> foods;
    units::History outside;               // since trip.from, past serving by two days
    std::optional<heat::OutsideAir> air;  // the same, as a bath takes it
    units::Volume batch;                  // boiling litres of all pots, once
    units::Duration round;                // from cold pots to the pour
    int rounds_before = 0;                // that warm the box before the fill
    Levels levels;
    units::Temperature highest_core;  // target + tolerance
};

/// Errors: every refusal of a food (with its place), the box test's, two-boxes, bath-overflows, food-not-covered,
/// altitude.
problem::Result<Setup> set_up(const trip::Trip& trip);

/// A food of this setup as the bath meets it in one scenario.
heat::FoodInBath food_in(const FoodSetup& food, const Scenario& scenario);

/// The same in at most so many scenarios as there are heat::lanes, their modes side by side.
std::vector<heat::FoodInBath> foods_in(const FoodSetup& food, const std::vector<Scenario>& scenarios);

/// The box in one scenario, wind and spread of the box test included.
heat::BoxHeat box_in(const Setup& setup, const Scenario& scenario);

}  // namespace holdwater::plan
