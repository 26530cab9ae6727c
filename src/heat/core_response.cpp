// SPDX-License-Identifier: MIT
#include "heat/core_response.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::heat {

CoreResponse::CoreResponse(const Modes& modes) {
    parts_.reserve(modes.modes.size());
    for (const Mode& mode : modes.modes) {
        parts_.push_back({mode.rate, mode.core, 1.0});
    }
    std::sort(parts_.begin(), parts_.end(), [](const Part& a, const Part& b) { return a.rate < b.rate; });
}

double CoreResponse::after(double seconds) {
    constexpr double gone = 1e-16;
    const bool doubled = seconds == 2.0 * step_;
    double sum = 0.0;
    for (Part& part : parts_) {
        if (doubled) {
            part.decay *= part.decay;
        } else if (seconds != step_) {
            part.decay = std::exp(-part.rate * seconds);
        }
        part.value *= part.decay;
        sum += part.value;
    }
    step_ = seconds;
    while (parts_.size() > 1 && std::abs(parts_.back().value) < gone) {
        parts_.pop_back();  // the fastest die first
    }
    return sum;
}

}  // namespace holdwater::heat
