// SPDX-License-Identifier: MIT
// What growth less kill must keep, whatever the history.
#include "safety/clocks.hpp"
#include "safety/net_growth.hpp"
#include "safety/standard.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::safety;
using units::celsius;
using units::History;
using units::hours;

namespace {

/// 10 C to 53.9 C in `rise` hours, a jump to the hold, the hold, a dip to 48 C and back, the hold again.
History with_a_dip(double rise, double hold, double time, double dip) {
    History core;
    core.add(hours(0), celsius(10));
    core.add(hours(rise), celsius(53.9));
    core.add(hours(rise), celsius(hold));
    core.add(hours(rise + time), celsius(hold));
    core.add(hours(rise + time + 0.1), celsius(48));
    core.add(hours(rise + time + 0.1 + dip), celsius(48));
    core.add(hours(rise + time + 0.2 + dip), celsius(hold));
    core.add(hours(rise + 2.0 * time + 0.2 + dip), celsius(hold));
    return core;
}

template <class Check>
void over_a_grid(Check check) {
    for (const facts::GrowthModel& model : facts::facts().growth_models()) {
        for (const double rise : {0.5, 2.0, 4.0, 6.0}) {
            for (const double hold : {54.0, 55.0, 57.0, 59.0, 61.0, 65.0}) {
                for (const double time : {0.1, 1.0, 5.0}) {
                    for (const double dip : {0.0, 0.5, 2.0}) {
                        INFO(model.key, ": ", rise, " h to ", hold, " C, ", time, " h, dip of ", dip, " h");
                        check(model, rise, hold, time, dip);
                    }
                }
            }
        }
    }
}

double cautious(const facts::GrowthModel& model, const History& core) {
    return net_growth(model, model.q0_cautious, cautious_kill(), core);
}

}  // namespace

TEST_CASE("never below nothing, never more than grew") {
    over_a_grid([](const facts::GrowthModel& model, double rise, double hold, double time, double dip) {
        const History core = with_a_dip(rise, hold, time, dip);
        const double net = cautious(model, core);
        CHECK(net >= 0.0);
        CHECK(net <= growth_with_lag(model, core, model.q0_cautious) + 1e-9);
    });
}

TEST_CASE("the cautious side never leaves less than the likely one") {
    over_a_grid([](const facts::GrowthModel& model, double rise, double hold, double time, double dip) {
        const History core = with_a_dip(rise, hold, time, dip);
        CHECK(cautious(model, core) >= net_growth(model, model.q0_likely, likely_kill(), core) - 1e-9);
    });
}

TEST_CASE("slower to warm, hotter or longer held: never the wrong way") {
    over_a_grid([](const facts::GrowthModel& model, double rise, double hold, double time, double dip) {
        const double net = cautious(model, with_a_dip(rise, hold, time, dip));
        CHECK(cautious(model, with_a_dip(rise + 0.5, hold, time, dip)) >= net - 1e-9);
        CHECK(cautious(model, with_a_dip(rise, hold, time, dip + 0.3)) >= net - 1e-9);
        if (hold >= 54.4) {
            CHECK(cautious(model, with_a_dip(rise, hold, time + 0.3, dip)) <= net + 1e-9);
        }
    });
}

TEST_CASE("cutting a history into more points changes nothing") {
    over_a_grid([](const facts::GrowthModel& model, double rise, double hold, double time, double dip) {
        const History core = with_a_dip(rise, hold, time, dip);
        History fine;
        for (std::size_t i = 0; i < core.points.size(); ++i) {
            const History::Point& b = core.points[i];
            for (int k = 1; i > 0 && k < 7; ++k) {
                const History::Point& a = core.points[i - 1];
                fine.add(a.at + (b.at - a.at) * (k / 7.0), a.value + (b.value - a.value) * (k / 7.0));
            }
            fine.add(b.at, b.value);
        }
        const double net = cautious(model, core);
        CHECK(cautious(model, fine) <= net + 1e-6);
        CHECK(cautious(model, fine) >= net - 1e-6);
    });
}

TEST_CASE("the moment at which all is undone is the first without anything left") {
    over_a_grid([](const facts::GrowthModel& model, double rise, double hold, double time, double dip) {
        const History core = with_a_dip(rise, hold, time, dip);
        const auto moment = moment_undone(model, model.q0_cautious, cautious_kill(), core, hours(rise));
        const auto until = [&core](units::Duration end) {
            History part;
            for (const History::Point& point : core.points) {
                if (point.at < end) {
                    part.points.push_back(point);
                }
            }
            part.add(end, core.at(end));
            return part;
        };
        if (!moment) {
            CHECK(cautious(model, core) > 0.0);
            return;
        }
        CHECK(*moment >= hours(rise));
        CHECK(cautious(model, until(*moment)) <= 1e-6);
        if (*moment > hours(rise) + units::seconds(2)) {
            CHECK(cautious(model, until(*moment - units::seconds(1))) > 0.0);
        }
    });
}

TEST_CASE("ready is what the whole account says, also where it can be seen at a glance") {
    over_a_grid([](const facts::GrowthModel& model, double rise, double hold, double time, double dip) {
        const History core = with_a_dip(rise, hold, time, dip);
        safety::Standard standard;
        standard.growth = &model;
        for (const double done : {0.0, 0.3, 0.7, 0.95, 1.0}) {
            const units::Duration moment = core.points.back().at * done;
            const safety::LeftOver ready = safety::ready_after(standard, core, moment);
            const safety::LeftOver account = safety::cautious_left_over(model, core, moment);
            CHECK(ready.undone == account.undone);
            CHECK(ready.log10 == account.log10);
        }
    });
}
