// SPDX-License-Identifier: MIT
// One scenario simulated: fill, food in, readings, top-ups, until serving. The same rules as the cook follows from
// the cards: read, look up the ladder, pour.
#pragma once

#include "heat/bath.hpp"
#include "plan/search/scenario.hpp"
#include "plan/search/setup.hpp"

#include <optional>
#include <vector>

namespace holdwater::plan {

/// What the cook does, the same in every scenario.
struct Recipe {
    units::Volume cold;              // first into the box
    units::Temperature reading;      // fill to this, stirred, before the food goes in
    int pours = 1;                   // batches that are expected
    units::Temperature top_up_mark;  // top up to this reading
};

/// Boiling litres (measured boiling) that lift `water` litres in the box from one reading to another. `room`: litres
/// that still fit before as much must be taken out as goes in. Nominal figures: what the ladder prints.
/// Zero when the reading is at or above the mark.
units::Volume ladder_litres(const Setup& setup, units::Volume water, units::Volume room, units::Temperature reading,
                            units::Temperature mark);

class Simulation {
  public:
    /// `foods` are the setup's foods as this scenario meets them, see food_in().
    Simulation(const Setup& setup, const Scenario& scenario, std::vector<heat::FoodInBath> foods, bool recording);

    /// From the fire lit at time 0 until the first food is in the filled bath. Foods with times of their own go in and
    /// come out as time passes.
    void fill(const Recipe& recipe);
    /// Runs on until the bath, as read with a true thermometer, meets `level` or the moment `until` comes. True if met.
    bool until_level(units::Temperature level, units::Duration until);
    void advance_to(units::Duration moment);
    /// Reads, looks up the ladder, pours what the pots give.
    void top_up(const Recipe& recipe);

    /// The bath must stay at or above this: the floor as the food sees it, and the action line.
    units::Temperature level() const { return level_; }
    units::Temperature shown() const;  // what the cook's thermometer shows now

    /// True once the bath, between top-ups and with the food in, was seen below level().
    bool failed() const { return failed_; }
    /// The most by which any core has passed its target and tolerance so far; negative while all are below. A food that
    /// has not gone in counts with its start temperature; there must be food.
    units::TemperatureDifference excess() const { return excess_.value(); }

    const heat::Bath& bath() const { return bath_; }
    units::Duration food_in() const { return food_in_; }  // the bath is filled and settled
    /// The core of a food of the setup so far; empty while it has not gone in.
    const units::History& core_history(std::size_t food) const;
    const std::vector<units::Volume>& poured() const { return poured_; }        // fill batches, then top-ups
    const std::vector<units::Volume>& taken_out() const { return taken_out_; }  // before each of these
    std::size_t fill_pours() const { return fill_pours_; }
    units::Temperature filled_at() const { return filled_at_; }  // right after the last pour of the fill
    const std::vector<units::Temperature>& readings() const { return readings_; }  // at each top-up, on arrival
    units::Volume room() const;

  private:
    /// A food goes in or comes out.
    struct Move {
        units::Duration at;
        std::size_t food = 0;
        bool in = true;
    };
    struct Place {
        std::size_t index = 0;  // in the bath
        bool inside = true;
    };

    void pour(units::Volume boiling);
    void look();
    void pass_to(units::Duration moment);
    void move(const Move& move);
    void plan_moves();

    const Setup* setup_;
    Scenario scenario_;
    std::vector<heat::FoodInBath> foods_;
    heat::Bath bath_;
    units::TemperatureDifference error_;
    units::Temperature level_;
    units::Temperature poured_at_;
    units::Duration food_in_{0};
    std::vector<std::optional<Place>> places_;  // of each food, once it went in
    std::vector<Move> moves_;                   // to come, the soonest last
    units::Volume food_volume_;                 // in the box or still to go in
    bool filled_ = false;
    bool failed_ = false;
    std::optional<units::TemperatureDifference> excess_;
    std::size_t fill_pours_ = 0;
    units::Temperature filled_at_;
    std::vector<units::Volume> poured_;
    std::vector<units::Volume> taken_out_;
    std::vector<units::Temperature> readings_;
};

}  // namespace holdwater::plan
