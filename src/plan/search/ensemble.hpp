// SPDX-License-Identifier: MIT
// Many scenarios of one trip at once, and quantiles over them.
#pragma once

#include <utility>
#include <vector>

#include "plan/result/plan.hpp"
#include "plan/search/simulation.hpp"

namespace holdwater::plan {

/// Share of the scenarios that a promise may fail in: promises hold in 95 of 100, jointly over the trip.
double allowed_failures();

/// How many scenarios: points of a low-discrepancy set, and how many random shifts of that set.
struct Draw {
    std::size_t points = 0;
    std::size_t shifts = 1;
};

/// What a plan promises by: facts scenario.points and scenario.shifts.
Draw full_draw();

class Ensemble {
  public:
    /// `allowed` less than allowed_failures() is stricter: for a search with few scenarios whose find is to hold in many.
    Ensemble(const Setup& setup, Draw draw, double allowed = allowed_failures());

    std::size_t size() const { return scenarios_.size(); }
    const Setup& setup() const { return *setup_; }
    double allowed() const { return allowed_; }
    const Scenario& scenario(std::size_t i) const { return scenarios_[i]; }
    Simulation start(std::size_t i, bool recording) const { return Simulation(*setup_, scenarios_[i], foods_[i], recording); }
    const std::vector<heat::FoodInBath>& foods(std::size_t i) const { return foods_[i]; }

    /// 5 %, 50 % and 95 % of one value a scenario. With several shifts, and a value of every scenario, its error is that
    /// of one set of points: half of how far the quantiles of the single shifts lie apart, the widest of the three.
    Band band(const std::vector<double>& values) const;

    /// Mean of one value a scenario, and its error in the same sense.
    std::pair<double, double> share(const std::vector<double>& values) const;

  private:
    const Setup* setup_;
    Draw draw_;
    double allowed_;
    std::vector<Scenario> scenarios_;  // shift by shift
    std::vector<std::vector<heat::FoodInBath>> foods_;
};

/// The value that a share of the values lies below, 0 to 1; takes the next value outward, never one between.
double quantile_low(std::vector<double> values, double share);
double quantile_high(std::vector<double> values, double share);

}  // namespace holdwater::plan
