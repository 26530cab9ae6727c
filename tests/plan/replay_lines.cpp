// SPDX-License-Identifier: MIT
// A planned schedule simulated twice, by the engine and by the method of lines with CVODE: the same bath, the same
// core, and the promise kept in both. Lid and unstirred layer are left out, which CVODE's side does not know.
#include "plan/search/scenario_result.hpp"
#include "support/lines_of_run.hpp"
#include "support/near.hpp"
#include "support/scheduled.hpp"

#include <doctest/doctest.h>

#include <vector>

using namespace holdwater;
using support::near_abs;
using units::Duration;

namespace {

constexpr double air = 3.0;
constexpr double quarter = 900.0;

void compare(facts::Shape shape) {
    const trip::Trip trip = support::steady_trip(shape, air);
    const support::Scheduled found(trip, 64);
    const plan::Setup& setup = found.setup();
    const plan::Schedule& schedule = found.schedule();
    REQUIRE(schedule.top_ups.size() >= 2);
    const double end = trip.serve.since(trip.from).si();

    for (const std::size_t i : {0UL, 7UL, 21UL, 40UL, 63UL}) {
        CAPTURE(i);
        const auto [lines, run, in] = support::lines_of_run(
            setup, schedule, support::without_lid_and_layer(found.ensemble().scenario(i)), air, 41);
        std::vector<double> moments;
        for (double t = quarter; t < end - in; t += quarter) {
            moments.push_back(t);
        }
        const auto states = support::run_lines(lines, moments);
        int below = 0;
        for (std::size_t m = 0; m < moments.size(); ++m) {
            const Duration at{in + moments[m]};
            // Within some minutes of a jump the engine's outermost share of the food moves at once, the grid's does
            // not.
            bool near_jump = false;
            for (const auto& pour : lines.pours) {
                near_jump = near_jump || (moments[m] >= pour.at && moments[m] < pour.at + 300.0);
            }
            CAPTURE(moments[m]);
            if (!near_jump) {
                CHECK(near_abs(run.bath().bath_history().at(at).celsius(), states[m].bath, 0.05));
            }
            CHECK(near_abs(run.bath().core_history(0).at(at).celsius(), states[m].core, 0.1));
            below += states[m].bath < setup.levels.floor.celsius() ? 1 : 0;
        }
        CHECK(below == 0);
    }
}

}  // namespace

TEST_CASE("slab: a planned trip, replayed by CVODE, is the same bath and core and keeps its promise") {
    compare(facts::Shape::slab);
}

TEST_CASE("round: a planned trip, replayed by CVODE, is the same bath and core and keeps its promise") {
    compare(facts::Shape::round);
}
