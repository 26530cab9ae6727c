// SPDX-License-Identifier: MIT
#include "plan/result/overnight.hpp"

#include "plan/search/sleep_window.hpp"

namespace holdwater::plan {

bool overnight(const Plan& plan) {
    const trip::Trip& trip = *plan.trip;
    const auto night = SleepWindow(trip).night_after(units::Duration{0});
    return night && trip.from.after(night->from) < trip.serve && trip.from.after(night->to) > plan.fill.food_in;
}

}  // namespace holdwater::plan
