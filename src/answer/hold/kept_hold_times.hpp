// SPDX-License-Identifier: MIT
// Hold times that were worked out lately: a plan asks for those of one piece again and again, at every start and fill
// that it tries.
#pragma once

#include "answer/hold/hold_time.hpp"

#include <map>
#include <memory>
#include <mutex>
#include <utility>

namespace holdwater::answer {

/// HoldTimes that remember what they were asked; any thread may ask.
class KeptHoldTimes {
  public:
    explicit KeptHoldTimes(HoldTimes times) : times_(std::move(times)) {}

    HoldTime at(units::Temperature reading) const;
    std::optional<int> dip_factor(units::Temperature reading, units::Temperature floor) const;

  private:
    HoldTimes times_;
    mutable std::mutex mutex_;
    mutable std::map<units::Temperature, HoldTime> known_;
    mutable std::map<std::pair<units::Temperature, units::Temperature>, std::optional<int>> dips_;
};

/// As HoldTimes::of, of all ways; the same as before for the last pieces that were asked for. Errors: as
/// heat::modes_of.
problem::Result<std::shared_ptr<const KeptHoldTimes>> kept_hold_times(const Piece& piece,
                                                                      const safety::Standard& standard,
                                                                      units::TemperatureDifference thermometer);

}  // namespace holdwater::answer
