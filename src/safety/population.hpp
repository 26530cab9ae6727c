// SPDX-License-Identifier: MIT
// A worked-out population of hands, the same every time.
#pragma once

#include "safety/sting.hpp"

#include <optional>
#include <vector>

namespace holdwater::safety {

class Population {
  public:
    /// Built at first use and kept.
    static const Population& of(HandState hand, Stirring stirring);

    /// Sting times [s] with reaction, one a hand, in the order of the hands; infinity for never.
    std::vector<double> sting_seconds(units::Temperature water) const;

  private:
    Population(HandState hand, Stirring stirring);

    struct Draw {
        HandModel hand;
        double reaction = 0.0;     // s
        std::vector<float> share;  // of the way to the water, at its depth, by moment
    };
    double sting_of(const Draw& draw, double water) const;

    std::vector<double> seconds_;
    std::vector<Draw> draws_;
};

}  // namespace holdwater::safety
