// SPDX-License-Identifier: MIT
#include "plan/search/sleep_window.hpp"

#include "units/print.hpp"

#include <algorithm>

namespace holdwater::plan {
namespace {

using units::Duration;

/// On the grid of the clock (not of the time since trip.from), so that people read 02:45 and not 02:43.
Duration down_to(const trip::Trip& trip, Duration moment, double grid_minutes) {
    const double clock = static_cast<double>(trip.from.second_of_day()) + moment.si();
    return moment - Duration{clock - units::round_to(clock, grid_minutes * 60.0, units::Toward::down)};
}

}  // namespace

std::optional<SleepWindow::Night> SleepWindow::night_after(Duration moment) const {
    if (!trip_->sleep) {
        return std::nullopt;
    }
    // The night that ends next: its bedtime may already be past.
    const units::LocalTime now = trip_->from.after(moment);
    const units::LocalTime to = units::next(trip_->sleep->to, units::LocalTime{now.seconds() + 1});
    const units::LocalTime from = units::next(trip_->sleep->from, units::LocalTime{to.seconds() - 86399});
    return Night{from.since(trip_->from), to.since(trip_->from)};
}

ScheduledTopUp SleepWindow::place(Duration last, Duration deadline, Duration boils_in) const {
    const auto night = night_after(last);
    // Fire and pot need their time after rising; a deadline sooner than that still costs sleep.
    const Duration ready_again = night ? night->to + boils_in + units::minutes(15) : Duration{0};
    if (!night || deadline < night->from || deadline >= ready_again) {
        return {down_to(*trip_, deadline, 15), false, {}};
    }
    const Duration bedtime = down_to(*trip_, night->from, 15);
    if (bedtime >= last + units::hours(1) && bedtime >= last + boils_in) {
        return {bedtime, false, {}};
    }
    return place_waking(deadline);
}

ScheduledTopUp SleepWindow::place_waking(Duration deadline) const {
    return {down_to(*trip_, deadline, 5), true, {}};
}

}  // namespace holdwater::plan
