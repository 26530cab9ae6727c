// SPDX-License-Identifier: MIT
#include "heat/lane_modes.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace holdwater::heat {

LaneModes::LaneModes(std::span<const Modes> each) {
    if (each.empty() || each.size() > lanes) {
        throw std::invalid_argument("modes side by side: none, or more than there are lanes");
    }
    for (const Modes& one : each) {
        modes_ = std::max(modes_, (one.modes.size() + 1) / 2 * 2);
    }
    rows_.resize((columns + 2 * step_lengths) * modes_);
    // A mode that fills up has no weight, so that its rate does not matter; it must be one.
    for (std::size_t n = 0; n < modes_; ++n) {
        column(rate_at)[n].of.fill(1.0);
    }
    for (std::size_t lane = 0; lane < each.size(); ++lane) {
        const std::vector<Mode>& modes = each[lane].modes;
        for (std::size_t n = 0; n < modes.size(); ++n) {
            column(rate_at)[n].of[lane] = modes[n].rate;
            column(core_at)[n].of[lane] = modes[n].core;
            column(surface_at)[n].of[lane] = modes[n].surface;
            column(mean_at)[n].of[lane] = modes[n].mean;
            column(flow_at)[n].of[lane] = modes[n].mean * modes[n].rate;
        }
        mean_at_once_.of[lane] = each[lane].mean_at_once;
    }
    make_steps();
}

void LaneModes::make_steps() {
    // The shortest step needs exponentials; each longer one is the shorter one twice:
    // decay(2h) = decay(h)^2, gain(2h) = gain(h) (1 + decay(h)).
    for (std::size_t r = 0; r < step_lengths; ++r) {
        LaneRow* decay = column(columns + 2 * r);
        LaneRow* gain = column(columns + 2 * r + 1);
        for (std::size_t n = 0; n < modes_; ++n) {
            for (std::size_t lane = 0; lane < lanes; ++lane) {
                if (r == 0) {
                    const double rate = column(rate_at)[n].of[lane];
                    const double lost = -std::expm1(-rate * step_length(0));
                    decay[n].of[lane] = 1.0 - lost;
                    gain[n].of[lane] = lost / rate;
                } else {
                    const double half = this->decay(r - 1)[n].of[lane];
                    decay[n].of[lane] = half * half;
                    gain[n].of[lane] = this->gain(r - 1)[n].of[lane] * (1.0 + half);
                }
                lag_[r].of[lane] += column(mean_at)[n].of[lane] * gain[n].of[lane];
            }
        }
    }
}

LaneOfModes::LaneOfModes(const Modes& modes)
    : table_(std::make_shared<const LaneModes>(std::span<const Modes>(&modes, 1))) {}

double LaneOfModes::sum(const LaneRow* weights, const std::vector<double>& excess) const {
    double sum = 0.0;
    for (std::size_t n = 0; n < excess.size(); ++n) {
        sum += weights[n].of[lane_] * excess[n];
    }
    return sum;
}

std::vector<LaneOfModes> side_by_side(const std::vector<Modes>& each) {
    std::vector<LaneOfModes> all;
    all.reserve(each.size());
    for (std::size_t from = 0; from < each.size(); from += lanes) {
        const std::size_t count = std::min(lanes, each.size() - from);
        const auto table = std::make_shared<const LaneModes>(std::span<const Modes>(each.data() + from, count));
        for (std::size_t lane = 0; lane < count; ++lane) {
            all.emplace_back(table, lane);
        }
    }
    return all;
}

}  // namespace holdwater::heat
