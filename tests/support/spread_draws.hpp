// SPDX-License-Identifier: MIT
// Draws from an entry of facts spread by its printed meaning, with a generator and inverse distributions of their own:
// what the program draws is not asked.
#pragma once

#include "facts/facts.hpp"

#include <cmath>
#include <cstdint>
#include <string_view>

namespace holdwater::support {

class SpreadDraws {
  public:
    explicit SpreadDraws(std::uint64_t seed) : state_(seed) {}

    /// Even over [0, 1): splitmix64.
    double share() {
        state_ += 0x9E3779B97F4A7C15ULL;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
        z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
        z ^= z >> 31U;
        return static_cast<double>(z >> 11U) * 0x1p-53;
    }

    /// Of the unit normal: Box and Muller's cosine.
    double normal() {
        const double u = 1.0 - share();
        constexpr double turn = 6.283185307179586;
        return std::sqrt(-2.0 * std::log(u)) * std::cos(turn * share());
    }

    /// In the unit of the entry: normal and log-normal by their 5 and 95 % points, the others by their ends.
    double of(std::string_view key) {
        const facts::Spread& s = facts::facts().spread(key);
        constexpr double points = 1.6448536269514722;  // of the unit normal at 95 %
        switch (s.shape) {
            case facts::SpreadShape::uniform:
                return s.low + (s.high - s.low) * share();
            case facts::SpreadShape::triangular:
                return s.low + 0.5 * (s.high - s.low) * (share() + share());  // the sum of two even draws
            case facts::SpreadShape::normal:
                return 0.5 * (s.low + s.high) + 0.5 * (s.high - s.low) * normal() / points;
            case facts::SpreadShape::lognormal:
                return std::sqrt(s.low * s.high) * std::pow(s.high / s.low, 0.5 * normal() / points);
        }
        return 0.0;
    }

  private:
    std::uint64_t state_;
};

}  // namespace holdwater::support
