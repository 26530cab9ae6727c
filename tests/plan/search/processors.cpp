// SPDX-License-Identifier: MIT
// A plan does not depend on what the processor can do at once.
#define HWY_COMPILE_ALL_ATTAINABLE
#include "plan/search/scenario_result.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <hwy/highway.h>
#include <vector>

using namespace holdwater;

namespace {

/// All that was decided, and how it came out in each scenario.
std::vector<double> decided(const trip::Trip& trip) {
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const plan::Ensemble ensemble(*setup, {64, 1});
    const auto schedule = plan::make_schedule(ensemble);
    REQUIRE(schedule);
    std::vector<double> all{schedule->recipe.reading.celsius(), schedule->recipe.cold.si(),
                            schedule->recipe.top_up_mark.celsius(), schedule->failing, schedule->excess};
    for (const plan::ScheduledTopUp& top_up : schedule->top_ups) {
        all.push_back(top_up.at.si());
        all.push_back(top_up.pour.boiling.si());
    }
    for (const plan::ScenarioResult& one : plan::simulate(ensemble, *schedule)) {
        all.push_back(one.at_end.celsius());
        all.push_back(one.excess.si());
        all.push_back(one.foods.front().done.value_or(units::Duration{-1}).si());
        for (const units::Temperature core : one.core) {
            all.push_back(core.celsius());
        }
    }
    return all;
}

}  // namespace

TEST_CASE("every kind of processor decides the same") {
    for (const char* name : {"paddling-day", "frosty-weekend"}) {
        CAPTURE(name);
        const trip::Trip trip = support::demo_trip(name);
        const std::vector<double> usual = decided(trip);
        for (const std::int64_t target : hwy::SupportedAndGeneratedTargets()) {
            CAPTURE(hwy::TargetName(target));
            hwy::SetSupportedTargetsForTest(target);
            const std::vector<double> now = decided(trip);
            hwy::SetSupportedTargetsForTest(0);
            CHECK(now == usual);
        }
    }
}
