// SPDX-License-Identifier: MIT
// A worked-out population of hands, the same every time.
#pragma once

#include "safety/sting.hpp"

#include <optional>
#include <vector>

namespace holdwater::safety {

class Population {
  public:
    /// Built at first use and kept as long as the facts it is made from are in force.
    static const Population& of(HandState hand, Stirring stirring);

    /// Sting times [s] with reaction, one a hand, in the order of the hands; infinity for never.
    std::vector<double> sting_seconds(units::Temperature water) const;

    /// How many of all hands are stung before `moment` [s] in each of the baths, which rise by the same step.
    std::vector<double> stung_before(double moment, const std::vector<double>& baths) const;
    std::size_t size() const { return draws_.size(); }

  private:
    Population(HandState hand, Stirring stirring);

    struct Draw {
        HandModel hand;
        double reaction = 0.0;     // s
        std::vector<float> share;  // of the way to the water, at its depth, by moment
    };
    double sting_of(const Draw& draw, double water) const;
    double coolest_that_stings(const Draw& draw, double moment) const;

    std::vector<double> seconds_;
    std::vector<Draw> draws_;
};

}  // namespace holdwater::safety
