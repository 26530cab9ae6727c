// SPDX-License-Identifier: MIT
// Looks for schedules in the scenarios of one ensemble. What does not hang on what is wanted of them is worked out
// once.
#pragma once

#include "plan/search/deadlines.hpp"
#include "plan/search/schedule.hpp"
#include "plan/search/spread.hpp"

#include <map>
#include <optional>
#include <tuple>
#include <utility>

namespace holdwater::plan {

class ScheduleSearch {
  public:
    explicit ScheduleSearch(Ensemble ensemble) : ensemble_(std::move(ensemble)) {}
    ScheduleSearch(const ScheduleSearch&) = delete;
    ScheduleSearch& operator=(const ScheduleSearch&) = delete;

    /// As make_schedule.
    std::optional<Schedule> best(const Wanted& wanted);
    /// The hottest fill that the cores may bear; nothing if none can be had.
    const std::optional<Recipe>& hottest();

  private:
    const Filled& filled_with(const Recipe& recipe);
    /// The best spread of this fill's recipe with another mark.
    std::optional<Schedule> marked(const Recipe& fill, units::Temperature mark, const ToBeat& to_beat);
    void try_marks(std::optional<Schedule>& best, const Recipe& fill, const Wanted& wanted);
    void try_other_rounds(std::optional<Schedule>& best, const Recipe& hottest, const Wanted& wanted);
    void try_cooler_fills(std::optional<Schedule>& best, const Wanted& wanted);

    Ensemble ensemble_;
    std::optional<std::optional<Recipe>> hottest_;
    std::map<double, Filled> filled_;                             // by the reading of the fill [C]
    std::map<std::tuple<double, double, bool>, Schedule> whole_;  // by fill and mark [C], and whether soon
};

}  // namespace holdwater::plan
