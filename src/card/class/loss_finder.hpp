// SPDX-License-Identifier: MIT
// From two readings of a cooling box to its loss without a sum: first a table a kind of air, reading by hours, that
// names a line; then one table, line by litres, that names the loss. Between two values, and where a figure is rounded,
// it always goes to the larger loss, so that a box is never taken for a better one than it is.
#pragma once

#include "card/content.hpp"
#include "units/print.hpp"
#include "units/quantity.hpp"
#include "words/words.hpp"

#include <optional>
#include <vector>

namespace holdwater::card {

class LossFinder {
  public:
    LossFinder();

    units::Temperature start() const { return start_; }                    // the clock starts at this reading
    const std::vector<units::Temperature>& airs() const { return airs_; }  // rising
    const std::vector<units::Temperature>& readings() const {
        return readings_;
    }                                                                     // falling; the first is the least
                                                                          // fall that is no weak test
    const std::vector<units::Duration>& hours() const { return hours_; }  // rising
    const std::vector<units::Volume>& litres() const { return litres_; }  // rising
    int lines() const { return static_cast<int>(rates_.size()); }

    /// From 1; nothing: a box that cools this fast is none, or the lid was open.
    std::optional<int> line(std::size_t air, std::size_t reading, std::size_t hours) const;
    /// The largest loss of this line, rounded up.
    units::HeatLoss loss(int line, std::size_t litres) const;

  private:
    units::Temperature start_;
    std::vector<units::Temperature> airs_;
    std::vector<units::Temperature> readings_;
    std::vector<units::Duration> hours_;
    std::vector<units::Volume> litres_;
    std::vector<double> rates_;                            // largest 1/(time constant) of each line [1/s], rising
    std::vector<double> capacities_;                       // of water and liner for each of litres_ [J/K]
    std::vector<std::vector<std::vector<double>>> cells_;  // 1/(time constant) by air, reading, hours
};

/// The tables as they are printed, the one of losses last.
std::vector<Table> finder_tables(const LossFinder& finder, units::System system, const words::Words& words);

/// A loss as the finder prints it: "1.25".
units::Figure loss_figure(units::HeatLoss loss);

}  // namespace holdwater::card
