// SPDX-License-Identifier: MIT
#include "plan/search/later_start.hpp"

#include "plan/result/effort.hpp"
#include "plan/search/sleep_window.hpp"

#include <algorithm>
#include <vector>

namespace holdwater::plan {

std::size_t wakes_of(const Plan& plan) {
    return static_cast<std::size_t>(
        std::count_if(plan.top_ups.begin(), plan.top_ups.end(), [](const TopUp& t) { return t.wakes; }));
}

std::optional<LaterStart> later_start(const Plan& plan) {
    const std::size_t own = wakes_of(plan);
    if (own == 0) {
        return std::nullopt;
    }
    const auto wakes_from = [&](units::LocalTime from, Draw search, Draw promise) -> std::optional<std::size_t> {
        trip::Trip later = *plan.trip;
        later.from = from;
        const bool before_its_foods = std::all_of(later.foods.begin(), later.foods.end(), [&](const trip::Food& food) {
            return food.in.value_or(later.serve) > from && trip::eaten(food, later) > from;
        });
        Effort effort;
        effort.diagnose = false;
        effort.search = search;
        effort.promise = promise;
        effort.advise = false;
        effort.what_ifs = false;
        effort.schedule_only = true;
        effort.fewer_wakes = own;
        const auto made = before_its_foods ? plan_as_given(std::make_shared<const trip::Trip>(later), effort)
                                           : problem::Result<Plan>(problem::Problems{});
        if (!made) {
            return std::nullopt;
        }
        // Whoever fills the box in the night wakes for that.
        const auto night = SleepWindow(later).night_after(units::Duration{0});
        const bool asleep = night && made->fill.food_in.since(from) > night->from;
        return wakes_of(*made) + (asleep ? 1 : 0);
    };
    std::vector<LaterStart> fewer;
    for (units::LocalTime from = plan.trip->from.after(units::hours(1)); from < plan.trip->serve;
         from = from.after(units::hours(1))) {
        if (const auto wakes = wakes_from(from, {64, 1}, {256, 1}); wakes && *wakes < own) {
            fewer.push_back({from, *wakes});
        }
    }
    std::stable_sort(fewer.begin(), fewer.end(),
                     [](const LaterStart& a, const LaterStart& b) { return a.wakes < b.wakes; });
    for (const LaterStart& start : fewer) {
        const auto wakes = wakes_from(start.from, Effort{}.search, full_draw());
        if (wakes && *wakes < own) {
            return LaterStart{start.from, *wakes};
        }
    }
    return std::nullopt;
}

}  // namespace holdwater::plan
