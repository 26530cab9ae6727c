// SPDX-License-Identifier: MIT
// The curve of the Night card against its own title: the same boxes left, after the reading that it names, in the air
// that it names.
#include "plan/result/left_boxes.hpp"
#include "plan/result/night.hpp"
#include "support/near.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>

using namespace holdwater;
using units::Duration;
using units::Temperature;

namespace {

/// The coldest air of the forecast up to the meal, hour by hour.
Temperature coldest_forecast(const trip::Trip& trip) {
    Temperature coldest = trip.weather.air_at(trip.from);
    for (Duration t{0}; t <= trip.serve.since(trip.from); t += units::minutes(10)) {
        coldest = std::min(coldest, trip.weather.air_at(trip.from.after(t)));
    }
    return coldest;
}

/// The bath of one scenario so many hours after it read what the title says, in steady air.
Temperature left_in(const plan::Ensemble& ensemble, const plan::Schedule& schedule, std::size_t i, Duration watch,
                    Temperature reading, Temperature air, double hours) {
    std::optional<plan::Simulation> box;
    plan::replay(ensemble, schedule, i, false, [&](const plan::Simulation& run) {
        if (!box || run.bath().now() <= watch) {
            box = run;
        }
    });
    box->advance_to(watch);
    box->set_reading(std::max(box->shown(), reading));
    box->move_to({air, heat::wind_position(ensemble.setup().trip->weather.wind)});
    box->advance_to(box->bath().now() + units::hours(hours));
    return box->bath().temperature();
}

}  // namespace

TEST_CASE("the curve of Night is that of boxes left after the reading, and in the air, of its title") {
    for (const char* name : {"frosty-weekend", "paddling-day"}) {
        CAPTURE(name);
        const trip::Trip trip = support::demo_trip(name);
        const auto setup = plan::set_up(trip);
        REQUIRE(setup.ok());
        const auto schedule = plan::make_schedule(plan::Ensemble(*setup, {64, 1}));
        REQUIRE(schedule.has_value());
        const plan::Ensemble ensemble(*setup, {128, 1});
        const plan::LeftBoxes boxes(ensemble, *schedule);
        const plan::Night night = plan::night_of(ensemble, *schedule, boxes);
        CHECK(support::near_abs(night.air.celsius(), coldest_forecast(trip).celsius(), 1e-9));
        // Other air would be told apart: on the way the forecast is warmer than its coldest hour by kelvins.
        REQUIRE(plan::warmest_of(*setup) > night.air + units::kelvins(3));
        for (const std::size_t k : {std::size_t{8}, std::size_t{20}, night.curve.size() - 1}) {
            const double hours = night.curve_hours[k];
            CAPTURE(hours);
            std::vector<Temperature> baths;
            std::vector<Temperature> warmer;
            for (std::size_t i = 0; i < ensemble.size(); ++i) {
                const auto left = [&](Temperature air) {
                    return left_in(ensemble, *schedule, i, boxes.watch_from(), night.reading, air, hours);
                };
                baths.push_back(left(night.air));
                warmer.push_back(left(plan::warmest_of(*setup)));
            }
            const auto titled = ensemble.interval(baths);
            // Followed in steps of its own, and drawn by straight lines.
            constexpr double drawn = 0.03;  // K
            CHECK(support::near_abs(night.curve[k].low.celsius(), titled.low.celsius(), drawn));
            CHECK(support::near_abs(night.curve[k].likely.celsius(), titled.likely.celsius(), drawn));
            CHECK(support::near_abs(night.curve[k].high.celsius(), titled.high.celsius(), drawn));
            CHECK(ensemble.interval(warmer).likely.celsius() - titled.likely.celsius() > 2.0 * drawn);
        }
    }
}
