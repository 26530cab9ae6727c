// SPDX-License-Identifier: MIT
// The clock and the growth bound against safety's own clock and against histories worked out by hand.
#include "answer/review/review_clock.hpp"
#include "safety/growth.hpp"
#include "support/beef.hpp"
#include "support/courses.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <initializer_list>
#include <utility>

using namespace holdwater;
using support::beef;
using support::by_hours;
using support::near_abs;
using units::celsius;
using units::Duration;
using units::History;
using units::hours;
using units::in_hours;

namespace {

answer::Course course(const History& bath, const History& core, double end, double cook = 54.4, double hold = 54.4) {
    answer::Course c;
    c.bath = bath;
    c.seen = bath;
    c.core = core;
    c.core_fast = core;
    c.in = hours(0);
    c.out = hours(end);
    c.cook_floor = celsius(cook);
    c.hold_floor = celsius(hold);
    return c;
}

}  // namespace

TEST_CASE("for a core that has been at the floor the clock is safety's own") {
    const History bath = by_hours({{0, 60}, {2, 50}, {3, 50}, {3, 62}, {6, 60}, {7, 53}, {8, 53}});
    const History core = by_hours({{0, 58}, {2, 55}, {3, 52}, {4, 56}, {6, 58}, {8, 55}});
    answer::Course c = course(bath, core, 8);
    c.done = hours(0);
    const auto clocks = answer::clocks_of(c);
    const auto own = safety::measure_fall(bath, core, celsius(54.4), hours(0), beef());
    CHECK(near_abs(in_hours(clocks.fall.below_floor), in_hours(own.below_floor), 1e-9));
    CHECK(near_abs(in_hours(clocks.fall.below_50), in_hours(own.below_50), 1e-9));
    CHECK(clocks.fall.times == own.times);
    CHECK(clocks.fall.times == 2);
    CHECK(near_abs(in_hours(clocks.holding), in_hours(own.below_floor), 1e-9));
    // The bound is never under safety's growth.
    CHECK(safety::lagged_growth(answer::growth_exponent(c, beef()), beef().q0_cautious) >= own.growth - 1e-9);
}

TEST_CASE("strict also while raw: only a core at the floor stops a clock that the bath has started") {
    const History dip = by_hours({{0, 60}, {1, 60}, {1, 53}, {1.5, 53}, {1.5, 62}, {6, 60}});
    const History rising = by_hours({{0, 4}, {4, 56}, {6, 58}});
    // From 1 h until the core is at 54.4 for the first time: 4 h x 50.4 / 52.
    CHECK(near_abs(in_hours(answer::clocks_of(course(dip, rising, 6)).fall.below_floor), 4 * 50.4 / 52 - 1, 1e-6));
    // No fall, no clock, however long the core takes.
    CHECK(in_hours(answer::clocks_of(course(by_hours({{0, 60}, {6, 60}}), rising, 6)).fall.below_floor) == 0.0);
    // 40 at 1 h, down to 38, at 54.4 at 2 h + 2 h x 14.4 / 16: the clock runs until then.
    const History fallen = by_hours({{0, 4}, {1, 40}, {1.5, 38}, {2, 40}, {4, 56}, {6, 58}});
    CHECK(near_abs(in_hours(answer::clocks_of(course(dip, fallen, 6)).fall.below_floor), 1 + 2 * 14.4 / 16, 1e-6));
}

TEST_CASE("a written core that counts starts the clock as the bath does, and only from its moment on") {
    const History bath = by_hours({{0, 60}, {8, 60}});
    const History core = by_hours({{0, 58}, {4, 58}, {5, 50}, {6, 50}, {7, 58}, {8, 58}});
    answer::Course c = course(bath, core, 8);
    c.done = hours(0);
    CHECK(in_hours(answer::clocks_of(c).fall.below_floor) == 0.0);
    c.core_counts_from = hours(4);
    // Below 54.4 from 4 h + 3.6 / 8 to 6 h + 4.4 / 8.
    CHECK(near_abs(in_hours(answer::clocks_of(c).fall.below_floor), 6.55 - 4.45, 1e-6));
    CHECK(answer::clocks_of(c).fall.times == 1);
    c.core_counts_from = hours(5.5);
    CHECK(near_abs(in_hours(answer::clocks_of(c).fall.below_floor), 6.55 - 5.5, 1e-6));
    c.core_counts_from = hours(8);
    CHECK(in_hours(answer::clocks_of(c).fall.below_floor) == 0.0);
}

TEST_CASE("the cook floor counts until done, the hold floor from then on, and both add up") {
    const History bath = by_hours({{0, 65}, {2, 65}, {2, 59}, {2.5, 59}, {2.5, 66}, {4, 66}, {4, 62}, {5, 62}});
    const History core = by_hours({{0, 61}, {5, 64}});
    answer::Course c = course(bath, core, 5, 60, 63);
    c.done = hours(3);
    const auto clocks = answer::clocks_of(c);
    CHECK(near_abs(in_hours(clocks.cooking), 0.5, 1e-6));
    CHECK(near_abs(in_hours(clocks.holding), 1.0, 1e-6));
    CHECK(near_abs(in_hours(clocks.fall.below_floor), 1.5, 1e-6));
    CHECK(clocks.fall.times == 2);
    // Not done: the cook floor counts all the time, and 62 is above it.
    c.done.reset();
    CHECK(near_abs(in_hours(answer::clocks_of(c).fall.below_floor), 0.5, 1e-6));
    // Done in the middle of a fall: one fall.
    c.bath = by_hours({{0, 65}, {2, 65}, {2, 59}, {4, 59}, {4, 66}, {5, 66}});
    c.done = hours(3);
    CHECK(answer::clocks_of(c).fall.times == 1);
    CHECK(near_abs(in_hours(answer::clocks_of(c).fall.below_floor), 2.0, 1e-6));
}

TEST_CASE("growth after the core was warm is that of the coolest layer or any warmer one") {
    const History core = by_hours({{0, 56}, {3, 56}});
    // At 50 the rate there; below the optimum the peak, since a milder reading may have been the true one.
    const answer::Course at_50 = course(by_hours({{0, 56}, {1, 56}, {1, 50}, {3, 50}}), core, 3);
    CHECK(near_abs(answer::growth_exponent(at_50, beef()), 2 * safety::growth_rate(beef(), celsius(50)), 0.05));
    const answer::Course at_20 = course(by_hours({{0, 56}, {1, 56}, {1, 20}, {3, 20}}), core, 3);
    CHECK(near_abs(answer::growth_exponent(at_20, beef()), 2 * safety::growth_rate(beef(), celsius(46)), 0.05));
    CHECK(answer::growth_exponent(course(by_hours({{0, 56}, {3, 53.5}}), core, 3), beef()) == 0.0);
}

TEST_CASE("while a raw core warms growth decides only while the clock runs") {
    const History core = by_hours({{0, 20}, {2, 46}, {4, 50}});
    CHECK(answer::growth_exponent(course(by_hours({{0, 58}, {4, 58}}), core, 4), beef()) == 0.0);
    const answer::Course dip = course(by_hours({{0, 58}, {1, 58}, {1, 53.5}, {2, 53.5}, {2, 58}, {4, 58}}), core, 4);
    // The clock that the dip started goes on while the core is below the floor, to the end.
    const double along_core = safety::growth_without_lag(beef(), by_hours({{1, 33}, {2, 46}, {4, 50}}));
    CHECK(near_abs(answer::growth_exponent(dip, beef()), along_core, 0.05));
}

TEST_CASE("lower temperatures never grow less and are never below for less long") {
    const History bath = by_hours({{0, 62}, {2, 57}, {5, 51}, {5, 60}, {8, 52}, {9, 45}});
    const History core = by_hours({{0, 60}, {2, 57}, {5, 53}, {6, 55}, {9, 50}});
    double growth = -1.0;
    double below = -1.0;
    for (double down = -3.0; down <= 40.0; down += 0.25) {
        const auto lower = [&](History h) {
            for (History::Point& p : h.points) {
                p.value = p.value - units::kelvins(down);
            }
            return h;
        };
        // The core has been warm at the start in every case: its first point stays.
        History low_core = lower(core);
        low_core.points.front().value = celsius(60);
        const answer::Course c = course(lower(bath), low_core, 9);
        const double now = answer::growth_exponent(c, beef());
        const double time = in_hours(answer::clocks_of(c).fall.below_floor);
        CAPTURE(down);
        CHECK(now >= growth - 1e-9);
        CHECK(time >= below - 1e-9);
        growth = now;
        below = time;
    }
}
