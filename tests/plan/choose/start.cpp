// SPDX-License-Identifier: MIT
// When the fire is lit and with how much water: against every quarter of an hour and every tenth of the water.
#include "plan/choose/start.hpp"

#include "support/efforts.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <optional>
#include <string>

using namespace holdwater;
using units::hours;
using units::minutes;

namespace {

/// As the choice itself looks.
plan::Effort looked_at() {
    plan::Effort effort = support::effort_of({64, 1}, {128, 1});
    effort.schedule_only = true;
    effort.diagnose = false;
    return effort;
}

trip::Trip small(double loss, double air, double thickness_mm, double span) {
    trip::Trip trip = support::demo_trip("paddling-day");
    trip.boxes.front().test = units::HeatLoss{loss};
    auto& daily = std::get<std::vector<trip::Weather::Daily>>(trip.weather.hours);
    for (auto& hour : daily) {
        hour.air = units::celsius(air);
    }
    trip.foods.front().thickness = units::millimetres(thickness_mm);
    trip.serve = trip.from.after(hours(span));
    return trip;
}

/// The least weight over all starts and waters; nothing where none holds.
std::optional<units::Duration> exhaustive(const trip::Trip& trip) {
    std::optional<units::Duration> least;
    for (units::LocalTime start = trip.from; start < trip.serve; start = start.after(minutes(15))) {
        for (int tenths = 4; tenths <= 10; ++tenths) {
            trip::Trip one = plan::lit_at(trip, start);
            one.boxes.front().water =
                units::litres(std::ceil(units::in_litres(trip.boxes.front().water) * tenths / 10.0));
            const auto plan = plan::make_plan(one, looked_at());
            if (plan) {
                const units::Duration weight = plan::burden_of(*plan).weight();
                least = least ? std::min(*least, weight) : weight;
            }
        }
    }
    return least;
}

}  // namespace

TEST_CASE("what is chosen weighs no more than a twentieth over the best of every start and water") {
    // HOLDWATER_CHOICES=all: forty trips instead of six.
    const bool all = std::getenv("HOLDWATER_CHOICES") != nullptr;
    int compared = 0;
    int within = 0;
    double worst = 1.0;
    for (const double loss : {0.8, 1.4}) {
        for (const double air : {2.0, 20.0}) {
            for (const double thickness : {25.0, 40.0}) {
                for (const double span : {4.0, 5.0, 6.0, 7.0, 9.0}) {
                    if (!all && (compared == 6 || (static_cast<int>(span + thickness) % 4) != 1)) {
                        continue;
                    }
                    const trip::Trip trip = small(loss, air, thickness, span);
                    const auto best = exhaustive(trip);
                    const auto chosen = plan::choices_of(trip);
                    CAPTURE(loss);
                    CAPTURE(air);
                    CAPTURE(thickness);
                    CAPTURE(span);
                    CHECK(best.has_value() == !chosen.empty());
                    if (!best || chosen.empty()) {
                        continue;
                    }
                    const double over = chosen.front().burden.weight().si() / best->si();
                    CHECK(over <= 1.05);
                    ++compared;
                    within += over <= 1.05 ? 1 : 0;
                    worst = std::max(worst, over);
                }
            }
        }
    }
    MESSAGE(compared << " trips compared, " << within << " within a twentieth, worst " << worst);
    CHECK(compared >= 4);
}

TEST_CASE("a fire that the trip fixes is lit then, whatever would be lighter") {
    trip::Trip trip = support::demo_trip("class-day");
    trip.light_fire = trip.from.after(minutes(30));
    plan::Effort effort = looked_at();
    effort.choose = true;
    const auto plan = plan::make_plan(trip, effort);
    REQUIRE(plan.ok());
    CHECK(plan->fill.light_fire == *trip.light_fire);
    CHECK(plan->trip->first == trip.from);
    CHECK(plan->trip->boxes.front().water == trip.boxes.front().water);
}

TEST_CASE("left open, the fire of a day is lit later than its first moment and takes no more water than there is") {
    const trip::Trip trip = support::demo_trip("paddling-day");
    plan::Effort effort = looked_at();
    effort.choose = true;
    const auto chosen = plan::make_plan(trip, effort);
    const auto given = plan::make_plan(trip, looked_at());
    REQUIRE(chosen.ok());
    REQUIRE(given.ok());
    CHECK(chosen->fill.light_fire > trip.from);
    CHECK(chosen->trip->boxes.front().water <= trip.boxes.front().water);
    CHECK(plan::burden_of(*chosen).weight() < plan::burden_of(*given).weight());
}

TEST_CASE("raw food that waits for a later fire is kept cold from the first moment on") {
    const trip::Trip trip = support::demo_trip("paddling-day");
    REQUIRE(trip.journey.has_value());
    const auto iced = [&](units::LocalTime start) {
        const auto plan = plan::make_plan(plan::lit_at(trip, start), support::effort_of({64, 1}, {128, 1}));
        REQUIRE(plan.ok());
        return plan->around.ice.value().takes;
    };
    const units::Duration later = hours(2);
    CHECK(iced(trip.from.after(later)) == iced(trip.from) + later);
}
