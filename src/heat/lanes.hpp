// SPDX-License-Identifier: MIT
// Baths that run on side by side, each by its own clock, as fast as one. What is poured, put in or taken out happens to
// each bath by itself, after leave().
#pragma once

#include "heat/bath.hpp"
#include "heat/lane_step.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>

namespace holdwater::heat {

class Lanes {
  public:
    /// Stands for a bath until leave(), and takes up its state; at most `lanes` baths, each for itself. Baths may stand
    /// side by side if the same foods lie in them, each in another lane of the same modes: see join().
    Lanes() = default;
    Lanes(const Lanes&) = delete;
    Lanes& operator=(const Lanes&) = delete;
    /// The baths go back to where they now are.
    ~Lanes() { leave(); }

    /// Takes up a bath that may stand beside those that are here already; nothing, and nothing done, if it may not.
    std::optional<std::size_t> join(Bath& bath);
    void leave();
    /// Runs each lane to its moment [s], not before its now; the moments of empty lanes do not matter.
    void advance_to(const LaneRow& moments);

    bool has(std::size_t lane) const { return baths_[lane] != nullptr; }
    double now(std::size_t lane) const { return state_.now.of[lane]; }
    double temperature(std::size_t lane) const { return state_.bath.of[lane]; }  // C
    /// Core of a food that lies in the bath [C], by its index there.
    double core(std::size_t lane, std::size_t food) const;

  private:
    struct Step {
        double length = 0.0;
        std::size_t rung = 0;
        bool last = false;
    };
    Step next_step(std::size_t lane, double moment) const;
    void note(std::size_t lane) const;

    BathsInLanes state_;
    std::array<Bath*, lanes> baths_{};
    std::array<std::size_t, lanes> steps_since_jump_{};
    std::vector<std::size_t> foods_;  // of each piece of the state, its index in the baths
    std::size_t count_ = 0;
};

/// Runs baths on side by side where they may stand so, else one after the other; each to its moment, if that is to
/// come.
void advance_all(std::span<Bath* const> baths, std::span<const units::Duration> moments);

}  // namespace holdwater::heat
