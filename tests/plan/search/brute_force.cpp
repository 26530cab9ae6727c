// SPDX-License-Identifier: MIT
// Small trips searched exhaustively: every fill, every mark and every hour for a top-up. No schedule that holds has
// fewer top-ups than the planner's, or fewer of them by night.
#include "plan/search/left_alone.hpp"
#include "plan/search/scenario_result.hpp"
#include "plan/search/sleep_window.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using units::Duration;
using units::hours;

namespace {

trip::Trip small_trip(double loss, double night_air, double thickness_mm, int serve_hours) {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.boxes.front().test = units::HeatLoss{loss};
    auto& daily = std::get<std::vector<trip::Weather::Daily>>(trip.weather.hours);
    for (auto& hour : daily) {
        hour.air = units::celsius(night_air);
    }
    trip::Food& food = trip.foods.front();
    food.mass = food.mass * std::pow(thickness_mm / units::in_millimetres(food.thickness), 2);
    food.thickness = units::millimetres(thickness_mm);
    food.tolerance = units::kelvins(4);
    trip.serve = trip.from.after(hours(serve_hours));
    return trip;
}

/// The promises as the planner keeps them: never below, cores within tolerance, and no gap longer than the cards allow.
bool keeps(const plan::Ensemble& ensemble, const plan::Recipe& recipe, const std::vector<Duration>& at) {
    plan::Schedule schedule;
    schedule.recipe = recipe;
    for (const Duration moment : at) {
        schedule.top_ups.push_back({moment, false});
    }
    const auto most = static_cast<std::size_t>(ensemble.allowed() * static_cast<double>(ensemble.size()));
    std::size_t failed = 0;
    std::size_t hot = 0;
    std::size_t too_long = 0;
    const Duration end = ensemble.setup().trip->serve.since(ensemble.setup().trip->from);
    const plan::Surroundings cold = plan::coldest_of(ensemble.setup());
    for (std::size_t i = 0; i < ensemble.size(); ++i) {
        std::size_t poured = 0;
        const plan::Simulation run = plan::replay(ensemble, schedule, i, false, [&](const plan::Simulation& box) {
            // What the cards allow after the last top-up must reach to the meal.
            const Duration left = end - box.bath().now();
            if (poured++ == at.size() && !at.empty() && left > Duration{0}) {
                too_long += plan::left_alone(box, cold, left).keeps() < left ? 1 : 0;
            }
        });
        failed += run.failed() ? 1 : 0;
        hot += run.excess().si() > 0.0 ? 1 : 0;
        if (failed > most || hot > most || too_long > most) {
            return false;
        }
    }
    return true;
}

struct Fewest {
    int top_ups = 99;
    bool by_day = false;  // some schedule with that many top-ups has none in the sleep window
};

/// Zero and one top-up, over whole degrees and hours.
Fewest exhaustive(const plan::Ensemble& ensemble) {
    const plan::Setup& setup = ensemble.setup();
    const Duration end = setup.trip->serve.since(setup.trip->from);
    const auto night = plan::SleepWindow(*setup.trip).night_after(Duration{0});
    Fewest fewest;
    for (double fill = std::ceil(setup.levels.action_line.celsius()); fill <= 80.0; fill += 2.0) {
        const auto recipe = plan::recipe_for(setup, units::celsius(fill));
        if (!recipe) {
            continue;
        }
        if (keeps(ensemble, *recipe, {})) {
            return {0, true};
        }
        for (double mark = std::ceil(setup.levels.action_line.celsius()) + 2.0; mark <= 70.0; mark += 2.0) {
            plan::Recipe topped = *recipe;
            topped = plan::marked_at(ensemble, topped, units::celsius(mark));
            for (Duration at = hours(3); at < end; at += hours(1)) {
                const bool asleep = night && at > night->from && at < night->to;
                if ((fewest.top_ups == 1 && (fewest.by_day || asleep)) || !keeps(ensemble, topped, {at})) {
                    continue;
                }
                fewest.top_ups = 1;
                fewest.by_day = fewest.by_day || !asleep;
            }
        }
    }
    return fewest;
}

}  // namespace

TEST_CASE("no exhaustive search over a grid beats the planner on twenty small trips") {
    int compared = 0;
    int with_one = 0;
    for (const double loss : {0.5, 0.8, 1.1, 1.5}) {
        for (const double air : {-4.0, 8.0}) {
            for (const int serve : {7, 9, 12}) {
                const trip::Trip trip = small_trip(loss, air, 55, serve);
                const auto setup = plan::set_up(trip);
                REQUIRE(setup.ok());
                const plan::Ensemble ensemble(*setup, {32, 1});
                const auto schedule = plan::make_schedule(ensemble);
                REQUIRE(schedule.has_value());
                CAPTURE(loss);
                CAPTURE(air);
                CAPTURE(serve);
                const Fewest fewest = exhaustive(ensemble);
                const bool holds = plan::holds(*schedule);
                if (!holds) {
                    CHECK(fewest.top_ups > 1);  // nothing simple holds either
                    continue;
                }
                const auto planned = static_cast<int>(schedule->top_ups.size());
                int wakes = 0;
                for (const auto& top_up : schedule->top_ups) {
                    wakes += top_up.wakes ? 1 : 0;
                }
                CHECK(planned <= fewest.top_ups);
                if (planned == fewest.top_ups && fewest.by_day) {
                    CHECK(wakes == 0);
                }
                ++compared;
                with_one += planned == 1 ? 1 : 0;
            }
        }
    }
    CHECK(compared >= 20);
    CHECK(with_one >= 3);  // else the search proves little
}
