// SPDX-License-Identifier: MIT
// A trip with its scenarios and a schedule that holds in them.
#pragma once

#include "plan/search/schedule.hpp"

#include <doctest/doctest.h>

#include <cstddef>

namespace holdwater::support {

/// As the trip is set up, in so many scenarios; fails the test where none holds.
class Scheduled {
  public:
    Scheduled(const trip::Trip& trip, std::size_t scenarios)
        : setup_(plan::set_up(trip)),
          ensemble_(setup_.value(), {scenarios, 1}),
          found_(plan::make_schedule(ensemble_)) {
        REQUIRE(found_.has_value());
        REQUIRE(plan::holds(*found_));
    }
    Scheduled(const Scheduled&) = delete;  // the scenarios know their setup
    Scheduled& operator=(const Scheduled&) = delete;

    const plan::Setup& setup() const { return setup_.value(); }
    const plan::Ensemble& ensemble() const { return ensemble_; }
    const plan::Schedule& schedule() const { return *found_; }

  private:
    problem::Result<plan::Setup> setup_;
    plan::Ensemble ensemble_;
    std::optional<plan::Schedule> found_;
};

}  // namespace holdwater::support
