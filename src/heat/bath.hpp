// SPDX-License-Identifier: MIT
// The hot bath: one mixed body of water in its box, losing heat to the outside and giving heat to food, with water
// poured in and taken out, step by step. Energy closes to rounding in every step.
#pragma once

#include "heat/lane_modes.hpp"
#include "heat/outside_air.hpp"
#include "units/history.hpp"
#include "units/quantity.hpp"

#include <cstddef>
#include <vector>

namespace holdwater::heat {

struct BoxHeat {
    units::HeatLoss loss;       // lid closed, at the wind class of the run
    units::HeatCapacity liner;  // what the bath must heat besides water, at bath temperature
    units::Area open_surface;   // water surface when the lid is off
};

struct FoodInBath {
    LaneOfModes modes;             // of several foods in one bath all in the same lane
    units::HeatCapacity capacity;  // of all pieces
    units::Temperature start;
    units::TemperatureDifference colder;  // the food sees the bath this much colder (unstirred box); reached within
                                          // an hour after the last stirring
};

/// Where the heat went since the start [J, of water and food above 0 C]; at all times
/// poured = change of stored_energy + lost_to_outside + lost_by_lid + taken_out.
/// Food counts as poured when it goes in and as taken out when it comes out; given_to_food is what passed from the bath
/// into food.
struct Ledger {
    double poured = 0.0;
    double taken_out = 0.0;
    double lost_to_outside = 0.0;
    double lost_by_lid = 0.0;
    double given_to_food = 0.0;
};

class Bath {
  public:
    /// outside: air temperature over the run's time, at least one point. water may be zero at first (an empty box at
    /// `start`).
    Bath(BoxHeat box, units::Volume water, units::Temperature start, OutsideAir outside);

    /// Runs to a moment not before now, lid closed, recording bath and food.
    void advance_to(units::Duration moment);
    /// Takes out `remove` at bath temperature (never more than there is), then pours in `add` at `poured`; both are
    /// volumes as measured at their temperature. Stirs.
    void pour(units::Volume remove, units::Volume add, units::Temperature poured);
    /// Water and liner are at this temperature from now on, whatever they were: somebody read it. Food keeps its heat
    /// but for what follows the bath at once. Does not stir. The ledger books the difference as poured.
    void set_temperature(units::Temperature t);
    /// Heat lost while the lid is open, at once (evaporation and radiation of the open surface, facts lid.*).
    void open_lid(units::Duration how_long);
    /// The box stands elsewhere from now on: in other wind [W/K, lid closed], in other air over the run's time.
    void move_to(units::HeatLoss loss, OutsideAir outside);
    /// Food goes in / comes out now, which does not stir; the index counts from 0 in the order of put_in. A food that
    /// is out keeps its last temperatures.
    std::size_t put_in(FoodInBath food);
    void take_out(std::size_t food);

    units::Duration now() const { return now_; }
    units::Temperature temperature() const { return units::Temperature{bath_}; }
    units::Volume water() const;                   // at the present temperature
    units::HeatCapacity capacity() const;          // water and liner
    units::HeatCapacity capacity_at_once() const;  // and what of the foods follows the bath at once
    units::Temperature core(std::size_t food) const;
    units::Temperature surface(std::size_t food) const;
    units::Temperature mean(std::size_t food) const;

    const units::History& bath_history() const { return bath_history_; }
    const units::History& core_history(std::size_t food) const;  // starts when the food went in; same clock as now()
    const Ledger& ledger() const { return ledger_; }
    double stored_energy() const;  // J above 0 C, water + liner + food in the bath

    /// Without recording, for scenario runs that only look at the state.
    void record(bool on) { recording_ = on; }

  private:
    friend class Lanes;  // which runs several on together
    struct Piece {
        FoodInBath food;
        std::vector<double> excess;  // K, of each mode
        double seen = 0.0;           // C, the bath as the food sees it
        double core = 0.0;           // C
        bool inside = true;
        units::History core_history;

        double mean() const;  // C
        /// The bath as it sees it jumps by so many K; returns the heat [J] that passes into it at once.
        double shift(double kelvins);
    };

    /// How far an unstirred box has gone by then towards its colder layer, 0 to 1.
    double settled(double moment) const;
    /// All heat of water and liner [J above 0 C] is `heat` before the foods take their share at once.
    void settle(double heat);
    void note();

    BoxHeat box_;
    OutsideAir outside_;
    double mass_ = 0.0;  // kg of water
    double bath_ = 0.0;  // C
    units::Duration now_{0};
    units::Duration last_stir_{0};
    std::size_t steps_since_jump_ = 0;
    bool recording_ = true;
    std::vector<Piece> pieces_;
    units::History bath_history_;
    Ledger ledger_;
    double ramp_;  // s until the colder layer is whole
};

}  // namespace holdwater::heat
