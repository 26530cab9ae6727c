// SPDX-License-Identifier: MIT
// Many scenarios of one trip at once, and quantiles over them.
#pragma once

#include <vector>

#include "plan/plan.hpp"
#include "plan/run.hpp"

namespace holdwater::plan {

/// Share of the scenarios that a promise may fail in: promises hold in 95 of 100, jointly over the trip.
double allowed_failures();

class Ensemble {
  public:
    Ensemble(const Setup& setup, std::size_t count);

    std::size_t size() const { return scenarios_.size(); }
    const Setup& setup() const { return *setup_; }
    const Scenario& scenario(std::size_t i) const { return scenarios_[i]; }
    Run start(std::size_t i, bool recording) const { return Run(*setup_, scenarios_[i], foods_[i], recording); }
    const std::vector<heat::FoodInBath>& foods(std::size_t i) const { return foods_[i]; }

  private:
    const Setup* setup_;
    std::vector<Scenario> scenarios_;
    std::vector<std::vector<heat::FoodInBath>> foods_;
};

/// The value that a share of the values lies below, 0 to 1; takes the next value outward, never one between.
double quantile_low(std::vector<double> values, double share);
double quantile_high(std::vector<double> values, double share);
/// 5 %, 50 % and 95 %.
Band band_of(const std::vector<double>& values);

}  // namespace holdwater::plan
