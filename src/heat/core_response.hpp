// SPDX-License-Identifier: MIT
// How the core of a body answers a step of its bath, at one moment after another.
#pragma once

#include "heat/body.hpp"

#include <vector>

namespace holdwater::heat {

/// The dimensionless core temperature (T - bath)/(start - bath) of core_at(), for those who ask for many moments in
/// their order: no exponentials but for the first step, as long as steps stay as long as they were or double.
class CoreResponse {
  public:
    /// Stands at the moment of the step, where the core is 1.
    explicit CoreResponse(const Modes& modes);

    /// Goes on by so many seconds, more than 0, and gives the value there, to 1e-12.
    double after(double seconds);

  private:
    struct Part {
        double rate;   // 1/s
        double value;  // what this mode adds to the core now
        double decay;  // over one step
    };
    std::vector<Part> parts_;  // slowest first
    double step_ = 0.0;        // s
};

}  // namespace holdwater::heat
