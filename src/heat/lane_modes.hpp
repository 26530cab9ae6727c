// SPDX-License-Identifier: MIT
// The modes of one food as it turns out in several scenarios, laid side by side so that a processor steps them all at
// once, with ready-made factors for the usual step lengths. Made once and shared by all baths that the food goes into.
#pragma once

#include "heat/body.hpp"
#include "heat/steps.hpp"

#include <array>
#include <cstddef>
#include <memory>
#include <span>
#include <vector>

namespace holdwater::heat {

/// Scenarios side by side.
inline constexpr std::size_t lanes = 8;

/// One number of each lane.
struct alignas(lanes * sizeof(double)) LaneRow {
    std::array<double, lanes> of{};
};

class LaneModes {
  public:
    /// One set of modes a lane, at most `lanes` of them; throws std::invalid_argument for none or more.
    explicit LaneModes(std::span<const Modes> each);

    /// Modes of the lane that has most, filled up with ones of no weight to an even number.
    std::size_t modes() const { return modes_; }
    // Columns, a row a mode.
    const LaneRow* rate() const { return column(rate_at); }        // 1/s
    const LaneRow* core() const { return column(core_at); }        // weight at the slowest point
    const LaneRow* surface() const { return column(surface_at); }  // weight at the middle of the nearest face
    const LaneRow* mean() const { return column(mean_at); }        // weight in the volume mean
    const LaneRow* flow() const { return column(flow_at); }        // mean times rate, 1/s
    /// For each ready-made step length: e^(-rate dt), and (1 - e^(-rate dt)) / rate [s].
    const LaneRow* decay(std::size_t rung) const { return column(columns + 2 * rung); }
    const LaneRow* gain(std::size_t rung) const { return column(columns + 2 * rung + 1); }
    /// Sum of mean times gain [s].
    const LaneRow& lag(std::size_t rung) const { return lag_[rung]; }
    const LaneRow& mean_at_once() const { return mean_at_once_; }

  private:
    enum Column : std::size_t { rate_at, core_at, surface_at, mean_at, flow_at, columns };

    const LaneRow* column(std::size_t which) const { return rows_.data() + which * modes_; }
    LaneRow* column(std::size_t which) { return rows_.data() + which * modes_; }
    void make_steps();

    std::size_t modes_ = 0;
    std::vector<LaneRow> rows_;
    std::array<LaneRow, step_lengths> lag_{};
    LaneRow mean_at_once_;
};

/// The modes of one food in one scenario: a lane of a table.
class LaneOfModes {
  public:
    LaneOfModes() = default;
    /// A table of its own.
    LaneOfModes(const Modes& modes);  // NOLINT(google-explicit-constructor): modes are modes
    LaneOfModes(std::shared_ptr<const LaneModes> table, std::size_t lane) : table_(std::move(table)), lane_(lane) {}

    const LaneModes& table() const { return *table_; }
    std::size_t lane() const { return lane_; }
    double mean_at_once() const { return table_->mean_at_once().of[lane_]; }

    /// What the excesses of the modes come to by these weights.
    double sum(const LaneRow* weights, const std::vector<double>& excess) const;

  private:
    std::shared_ptr<const LaneModes> table_;
    std::size_t lane_ = 0;
};

/// One table for each food of several scenarios, in their order: the lanes of the first eight share one, and so on.
std::vector<LaneOfModes> side_by_side(const std::vector<Modes>& each);

}  // namespace holdwater::heat
