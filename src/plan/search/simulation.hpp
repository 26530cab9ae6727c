// SPDX-License-Identifier: MIT
// One scenario simulated: fill, food in, readings, top-ups, until serving. The same rules as the cook follows from
// the cards: read, look up the ladder, pour.
#pragma once

#include "heat/bath.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/scenario.hpp"
#include "plan/search/setup.hpp"

#include <optional>
#include <span>
#include <vector>

namespace holdwater::plan {

/// What the cook does, the same in every scenario.
struct Recipe {
    units::Volume cold;              // first into the box
    units::Temperature reading;      // fill to this, stirred, before the food goes in
    int pours = 1;                   // batches that are expected
    units::Temperature top_up_mark;  // top up to this reading
    std::vector<LadderRung> ladder;  // for that, hottest first; empty: as much as it takes
    bool sure = true;                // those batches reach the reading in all but the allowed share of scenarios
};

/// What the cards say of one top-up beforehand.
struct PlannedPour {
    units::Volume boiling;  // with a thermometer at the most, without one exactly; zero: not known yet
};

/// What somebody found who looked at the box on the way.
struct SeenBath {
    units::Duration at;                  // since trip.from, food in
    units::Temperature reading;          // shown then, before anything is done about it
    std::optional<units::Volume> water;  // in the box, besides the food; nothing: as the simulation has it
};

/// What a box left to itself stands in: constant air, wind as position 0 still to 2 windy.
struct Surroundings {
    units::Temperature air;
    double wind = 1.0;
};

/// So near its mark a reading counts as there (facts mark.near).
units::TemperatureDifference near_mark();

/// Boiling litres (measured boiling) that lift a bath of this heat capacity, liner and food included, from one
/// temperature to another; they come at `poured`. `room`: litres that still fit before as much must be taken out as
/// goes in. Zero where nothing is to be lifted, endless where boiling water is no hotter than that.
units::Volume lifting_pour(const Setup& setup, units::HeatCapacity capacity, units::Volume room,
                           units::Temperature from, units::Temperature to, units::Temperature poured);

/// How far below the rim the water must stand, food in it, so that this much more does not pass the highest level, with
/// the usual error of pouring and in steps that a ruler shows [0.005 m].
units::Length below_rim(const Setup& setup, units::Volume more);

class Simulation {
  public:
    /// `foods` are the setup's foods as this scenario meets them, see food_in().
    Simulation(const Setup& setup, const Scenario& scenario, std::vector<heat::FoodInBath> foods, bool recording);

    /// One of several runs that go on side by side, and how far.
    struct Leg {
        Simulation* run = nullptr;
        units::Duration until;
        std::optional<units::Temperature> level = std::nullopt;  // or only until the bath meets it
        bool met = false;                                        // set: it did
        /// The bath is added here every so often, counted from where the leg begins; the level is looked at only then.
        units::History* bath = nullptr;
        units::Duration every{0};
    };
    /// As until_level() where a level is given, else as advance_to().
    static void go_on(std::span<Leg> legs);
    /// As fill(), all of them.
    static void fill_all(std::span<Simulation* const> runs, const Recipe& recipe);

    /// From the fire lit at time 0 until the first food is in the filled bath. Foods with times of their own go in and
    /// come out as time passes.
    void fill(const Recipe& recipe);
    /// Runs on until the bath, as read with a true thermometer, meets `level` or the moment `until` comes. True if met.
    bool until_level(units::Temperature level, units::Duration until);
    void advance_to(units::Duration moment);
    /// Reads, looks up the ladder, takes out what stands above the line for so much, pours what the pots give until it
    /// reads the mark. Without a thermometer pours what was planned.
    void top_up(const Recipe& recipe, const PlannedPour& planned = {});
    /// The two halves of a top-up: a look at the thermometer with the lid off, and the pour.
    void arrive();
    void pour_to_mark(const Recipe& recipe, const PlannedPour& planned);
    /// What the cook would pour now for the mark [boiling litres as measured], so much bath taken out first.
    units::Volume wanted(const Recipe& recipe, units::Volume out_first = units::Volume{0}) const;

    /// The box stands elsewhere from now on, for whoever asks how long it keeps there.
    void move_to(const Surroundings& around);
    /// The bath is what reads this, whatever it was; the food is not.
    void set_reading(units::Temperature reading);
    /// The box is as somebody found it, at the present moment. Where that is past the action line a top-up is due at
    /// once, so that until the next pour only the floor itself counts as level().
    void see(const SeenBath& seen);

    /// The bath must stay at or above this: the floor as the food sees it, and the action line.
    units::Temperature level() const { return level_; }
    units::Temperature shown() const;  // what the cook's thermometer shows now

    /// True once the bath, between top-ups and with the food in, was seen below level().
    bool failed() const { return failed_; }
    /// True once a top-up left the reading short of its mark by more than near_mark().
    bool short_of_mark() const { return short_of_mark_; }
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
    /// By how much the fill, food in, would have stood over the highest level; the cook scoops that out. Negative: not.
    units::Volume over_rim() const { return over_rim_; }
    /// The most that stood over that level after a top-up.
    units::Volume spilled() const { return spilled_; }

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

    units::Temperature usual_level() const;
    void pour(units::Volume boiling, units::Volume out_first = units::Volume{0});
    /// What stands above a line so far below the rim.
    units::Volume above(units::Length below) const;
    /// Judges the bath [C], and the core [C] of each food in it by its index there.
    template <class Core>
    void look(units::Temperature bath, const Core& core);
    void look();
    bool is_to_pour(const Recipe& recipe, int nth) const;
    void fill_pour(const Recipe& recipe, int nth);
    void finish_pouring();
    void take_food();
    /// True if the next food moves by then.
    bool moves_by(units::Duration moment) const { return !moves_.empty() && moves_.back().at <= moment; }
    void next_move();
    void move(const Move& move);
    void plan_moves();

    friend class Legs;

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
    bool short_of_mark_ = false;
    std::optional<units::TemperatureDifference> excess_;
    std::size_t fill_pours_ = 0;
    units::Temperature filled_at_;
    units::Volume over_rim_;
    units::Volume spilled_;
    std::vector<units::Volume> poured_;
    std::vector<units::Volume> taken_out_;
    std::vector<units::Temperature> readings_;
};

}  // namespace holdwater::plan
