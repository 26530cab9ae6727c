// SPDX-License-Identifier: MIT
// Ways side by side: each differs from the others in something a cook would ask about, and its lines choose it.
#include "plan/choose/ways.hpp"

#include "support/efforts.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;

namespace {

plan::Effort choosing() {
    plan::Effort effort = support::effort_of({64, 1}, {256, 1});
    effort.choose = true;
    effort.ways = true;
    return effort;
}

}  // namespace

TEST_CASE("a night that wakes the cook has a way beside it that wakes nobody, or there is none") {
    trip::Trip trip = support::demo_trip("hut-night");
    std::get<std::vector<trip::BoxReading>>(trip.boxes.front().test)[1].bath = units::celsius(57.8);  // a poorer box
    trip.foods.front().tolerance = units::kelvins(3);
    const auto plan = plan::make_plan(trip, choosing());
    REQUIRE(plan.ok());
    REQUIRE_FALSE(plan->ways.empty());
    CHECK(plan->ways.size() <= 3);
    const plan::Way& own = plan->ways.front();
    CHECK(own.kind == plan::Way::Kind::planned);
    CHECK(own.light_fire == plan->fill.light_fire);
    REQUIRE(own.burden.wakings > 0);
    const auto unwoken = std::find_if(plan->ways.begin(), plan->ways.end(),
                                      [](const plan::Way& way) { return way.kind == plan::Way::Kind::unwoken; });
    REQUIRE(unwoken != plan->ways.end());
    CHECK(unwoken->burden.wakings == 0);
    CHECK(unwoken->share >= 0.95);
    // Its lines, put into the trip.
    trip::Trip changed = trip;
    changed.light_fire = unwoken->light_fire;
    for (const std::string& line : unwoken->lines) {
        if (const auto at = line.find("tolerance = \""); at != std::string::npos) {
            changed.foods.front().tolerance = units::kelvins(std::stod(line.substr(at + 13)));
        }
        if (const auto at = line.find("water = \""); at != std::string::npos) {
            changed.boxes.front().water = units::litres(std::stod(line.substr(at + 9)));
        }
    }
    const auto again = plan::make_plan(changed, choosing());
    REQUIRE(again.ok());
    CHECK(again->fill.light_fire == unwoken->light_fire);
    CHECK(plan::burden_of(*again).wakings == 0);
    CHECK(again->top_ups.size() == unwoken->top_ups);
}

TEST_CASE("with its wishes strict a trip is offered no other tolerance") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.light_fire.reset();
    trip.strict = true;
    const auto plan = plan::make_plan(trip, choosing());
    REQUIRE(plan.ok());
    for (const plan::Way& way : plan->ways) {
        for (const std::string& line : way.lines) {
            CHECK(line.find("tolerance") == std::string::npos);
        }
    }
}

TEST_CASE("a plan with top-ups has a way in a better box beside it, and its lines give fewer of them") {
    trip::Trip trip = support::demo_trip("hut-night");
    plan::Effort effort = choosing();
    const auto plan = plan::make_plan(trip, effort);
    REQUIRE(plan.ok());
    REQUIRE_FALSE(plan->top_ups.empty());
    const auto better = std::find_if(plan->ways.begin(), plan->ways.end(),
                                     [](const plan::Way& way) { return way.kind == plan::Way::Kind::better_box; });
    REQUIRE(better != plan->ways.end());
    CHECK(better->top_ups < plan->top_ups.size());
    trip::Trip changed = trip;
    changed.light_fire = better->light_fire;
    for (const std::string& line : better->lines) {
        if (const auto at = line.find("loss = \""); at != std::string::npos) {
            changed.boxes.front().test = units::HeatLoss{std::stod(line.substr(at + 8))};
        }
        if (const auto at = line.find("water = \""); at != std::string::npos) {
            changed.boxes.front().water = units::litres(std::stod(line.substr(at + 9)));
        }
    }
    const auto again = plan::make_plan(changed, effort);
    REQUIRE(again.ok());
    CHECK(again->top_ups.size() <= better->top_ups);
    CHECK(again->top_ups.size() < plan->top_ups.size());
}
