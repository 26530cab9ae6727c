// SPDX-License-Identifier: MIT
// When the cook is awake, and where in the day a top-up belongs.
#pragma once

#include "plan/search/schedule.hpp"
#include "trip/trip.hpp"

namespace holdwater::plan {

class SleepWindow {
  public:
    explicit SleepWindow(const trip::Trip& trip) : trip_(&trip) {}

    /// A top-up that must come not later than `deadline`: as late as possible, on a quarter of an hour, moved to
    /// bedtime if that saves waking, else `wakes` at the latest moment (on five minutes). All since trip.from.
    ScheduledTopUp place(units::Duration last, units::Duration deadline, units::Duration boils_in) const;

    /// The same without the move to bedtime: somebody wakes for it.
    ScheduledTopUp place_waking(units::Duration deadline) const;

    /// Bedtime and rising of the first night at or after a moment; nothing if the trip names no sleep.
    struct Night {
        units::Duration from;
        units::Duration to;
    };
    std::optional<Night> night_after(units::Duration moment) const;

  private:
    const trip::Trip* trip_;
};

}  // namespace holdwater::plan
