// SPDX-License-Identifier: MIT
// A schedule lived through, and at every moment from which somebody may leave the box alone: how long it keeps.
#pragma once

#include "plan/search/left_alone.hpp"
#include "plan/search/schedule.hpp"

#include <vector>

namespace holdwater::plan {

/// What one scenario's boxes do, left alone in the trip's wind and coldest air.
struct LeftBox {
    std::vector<Alone> poured;          // once the food is in, then after each top-up
    std::vector<units::Duration> when;  // that was
    Alone settled;                      // from watch_from on, as the schedule has it by then
    Alone marked;                       // the same, brought to last_reading; on through its level
    Alone served;                       // from serving on, in the coldest air of the hours after it
    std::vector<Alone> calm;            // after each top-up, or marked: in still air and the warmest of the trip
    std::vector<Alone> rough;           // the same, windy and in the coldest
    units::Temperature lowest;          // reading from watch_from on, top-ups as planned
    units::Temperature highest;
};

class LeftBoxes {
  public:
    /// The first few hundred scenarios of the ensemble.
    LeftBoxes(const Ensemble& ensemble, const Schedule& schedule);

    /// How long the box may be left after it read each of these at watch_from or later: what all but the allowed share
    /// of scenarios keep, all readings taken together, whenever in the plan they are taken.
    std::vector<units::Duration> after_readings(const std::vector<units::Temperature>& readings) const;
    /// The same of readings taken at any moment since the food went in, and in windy air where that is sooner.
    std::vector<units::Duration> after_readings_at_any_time(const std::vector<units::Temperature>& readings) const;
    units::Duration after_reading(units::Temperature reading) const { return after_readings({reading}).front(); }
    /// The same after any pour, whatever it reads, the fill among them.
    units::Duration after_any_pour() const;
    /// After serving.
    units::Duration after_serving() const;
    /// What the bath reads at serving in all but the allowed share of scenarios, or more.
    units::Temperature reading_at_serving() const;
    /// After a top-up, in still and warm or in windy and cold air.
    units::Duration after_top_up(std::vector<Alone> LeftBox::*air) const;

    units::Duration watch_from() const { return watch_from_; }
    /// What is read last before the box is left: the top-up mark; where nobody is to top up from watch_from on, the
    /// most that the box shows then.
    units::Temperature last_reading() const { return last_reading_; }
    const std::vector<LeftBox>& boxes() const { return boxes_; }

  private:
    template <class Keeps>
    units::Duration all_but_few(const Keeps& keeps) const;
    /// Each row alone is made so strict that all of them together fail no more often than a promise may: a box that
    /// fails one need not be one that fails another. `kept`: by row, by box.
    std::vector<units::Duration> all_but_few_together(const std::vector<std::vector<units::Duration>>& kept) const;

    double allowed_;
    units::Duration watch_from_{0};
    units::Temperature last_reading_;
    std::vector<LeftBox> boxes_;  // a scenario each
};

}  // namespace holdwater::plan
