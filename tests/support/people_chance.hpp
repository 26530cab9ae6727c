// SPDX-License-Identifier: MIT
// Draws that are the same on every machine and with every standard library.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <span>

namespace holdwater::support {

class Chance {
  public:
    explicit Chance(std::uint64_t seed) : state_(seed) {}

    /// Evenly in [0, 1).
    double share() {
        constexpr double steps = 9007199254740992.0;  // 2^53, what a double tells apart
        return static_cast<double>(next() >> 11U) / steps;
    }
    double between(double low, double high) { return low + (high - low) * share(); }
    /// A whole number, both ends included.
    int whole(int low, int high) { return low + static_cast<int>(share() * (high - low + 1)); }
    /// True in so many of a hundred.
    bool in_hundred(double cases) { return share() * 100.0 < cases; }
    /// On a grid of that step, both ends included.
    double stepped(double low, double high, double step) {
        return low + step * whole(0, static_cast<int>(std::floor((high - low) / step + 0.5)));
    }
    template <class List>
    const auto& of(const List& list) {
        return *(std::begin(list) + whole(0, static_cast<int>(std::size(list)) - 1));
    }

  private:
    /// The generator splitmix64.
    std::uint64_t next() {
        state_ += 0x9e3779b97f4a7c15U;
        std::uint64_t mixed = state_;
        mixed = (mixed ^ (mixed >> 30U)) * 0xbf58476d1ce4e5b9U;
        mixed = (mixed ^ (mixed >> 27U)) * 0x94d049bb133111ebU;
        return mixed ^ (mixed >> 31U);
    }

    std::uint64_t state_;
};

}  // namespace holdwater::support
