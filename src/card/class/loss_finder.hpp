// SPDX-License-Identifier: MIT
// From two readings of a cooling box to its loss without a sum: a table, reading by air, names how far the bath fell
// towards the air; a thread over scales brings that number, the hours and the litres to the loss. Between two values of
// the table, and where a figure is rounded, it goes to the larger loss, so that a box is never taken for a better one
// than it is.
//
//   loss = capacity(litres) / hours * ln((start - air) / (reading - air))
#pragma once

#include "card/content.hpp"
#include "card/figures/list.hpp"
#include "units/print.hpp"
#include "units/quantity.hpp"
#include "words/words.hpp"

#include <vector>

namespace holdwater::card {

struct ClassBox;

class LossFinder {
  public:
    LossFinder();

    units::Temperature start() const { return start_; }                    // the clock starts at this reading
    const std::vector<units::Temperature>& airs() const { return airs_; }  // rising
    /// Falling; the first is the least fall that is no weak test.
    const std::vector<units::Temperature>& readings() const { return readings_; }
    /// How long a test may take.
    static units::Duration shortest();
    static units::Duration longest();
    /// Of water in the box.
    static units::Volume least();
    static units::Volume most();

    /// A thousand times the logarithm of how far the bath fell towards the air.
    double fall(units::Temperature air, units::Temperature reading) const;
    /// As the table prints it: rounded up.
    int fall_number(std::size_t air, std::size_t reading) const;
    /// Of water and the liner of a usual box for it.
    units::HeatCapacity capacity(units::Volume water) const;
    units::HeatLoss loss(double fall, units::Duration after, units::Volume water) const;

  private:
    units::Temperature start_;
    std::vector<units::Temperature> airs_;
    std::vector<units::Temperature> readings_;
};

/// The table as it is printed, from the figures of the sheets.
Table finder_table(const LossFinder& finder, const CardFigures& on, const words::Words& words);

/// Where a value stands on its scale, as a share of the height from the foot: three pairs of scales, all logarithmic.
class LossScales {
  public:
    explicit LossScales(const LossFinder& finder);

    // The scales by their places in the drawing, from the left.
    static constexpr std::size_t falls = 0;
    static constexpr std::size_t turn = 1;  // bare: where the first thread crosses it, the second begins
    static constexpr std::size_t hours = 2;
    static constexpr std::size_t losses = 3;
    static constexpr std::size_t litres = 4;

    double fall_at(double fall) const;
    double hours_at(units::Duration after) const;
    double turn_at(double fall, units::Duration after) const;
    double litres_at(units::Volume water) const;
    double loss_at(units::HeatLoss loss) const;
    double across(std::size_t scale) const;

    /// With the threads of that box as an example.
    Nomogram drawn(const ClassBox& example, units::System system, const words::Words& words) const;

  private:
    const LossFinder* finder_;
    double fall_per_decade_;
    double litres_per_decade_;
    double share_;  // of the way from the turning line to the litres, at which the losses stand
};

}  // namespace holdwater::card
