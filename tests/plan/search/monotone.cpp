// SPDX-License-Identifier: MIT
// What makes a trip harder never makes its plan kinder: a worse box, colder air, more wind, a thicker piece, a slower
// fire, a poorer thermometer. Planned to the letter, since a choice may well go another way.
// HOLDWATER_MONOTONE=60 build/tests/test_plan -tc='*harder*' draws many and tells each pair.
#include "plan/search/burden.hpp"
#include "support/efforts.hpp"
#include "support/random_trips.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdlib>
#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

using namespace holdwater;

namespace {

struct Harder {
    const char* what;
    std::function<bool(trip::Trip&)> apply;  // false: does not apply
};

const std::vector<Harder>& harder_ways() {
    static const std::vector<Harder> ways{
        {"loss",
         [](trip::Trip& trip) {
             auto* const loss = std::get_if<units::HeatLoss>(&trip.boxes.front().test);
             if (loss != nullptr) {
                 *loss = *loss * 1.2;
             }
             return loss != nullptr;
         }},
        {"air",
         [](trip::Trip& trip) {
             auto* const daily = std::get_if<std::vector<trip::Weather::Daily>>(&trip.weather.hours);
             if (daily != nullptr) {
                 for (auto& hour : *daily) {
                     hour.air = hour.air - units::kelvins(5);
                 }
             }
             return daily != nullptr;
         }},
        {"thickness",
         [](trip::Trip& trip) {
             for (trip::Food& food : trip.foods) {
                 food.thickness = food.thickness * 1.1;
                 food.mass = food.mass * 1.1;
             }
             return true;
         }},
        {"fire",
         [](trip::Trip& trip) {
             trip.fire.boils_in = trip.fire.boils_in * 1.25;
             return true;
         }},
        {"thermometer",
         [](trip::Trip& trip) {
             auto& error = trip.boxes.front().thermometer;
             if (error) {
                 error = *error + units::kelvins(0.5);
             }
             return error.has_value();
         }},
    };
    return ways;
}

}  // namespace

TEST_CASE("what makes a trip harder turns no refusal into a plan, nor a last chance into a later one for less work") {
    const char* const given = std::getenv("HOLDWATER_MONOTONE");
    const int count = given != nullptr ? std::atoi(given) : 8;
    plan::Effort effort = support::effort_of({64, 1}, {256, 1});
    effort.diagnose = effort.for_cards = effort.what_ifs = false;
    plan::Effort in_full = support::full_effort();
    in_full.diagnose = in_full.for_cards = in_full.what_ifs = false;
    int pairs = 0;
    std::map<std::string, int> kinder;
    for (int number = 1; number <= count; ++number) {
        const trip::Trip trip = support::random_trip(static_cast<std::uint64_t>(number));
        if (trip.boxes.size() != 1) {
            continue;
        }
        const auto easy = plan::make_plan(trip, effort);
        for (const Harder& harder : harder_ways()) {
            trip::Trip worse = trip;
            if (!harder.apply(worse)) {
                continue;
            }
            const auto hard = plan::make_plan(worse, effort);
            ++pairs;
            CAPTURE(number);
            CAPTURE(std::string(harder.what));
            const auto tell = [&](const std::string& what) {
                ++kinder[fmt::format("{}: {}", harder.what, what)];
                if (given != nullptr) {
                    MESSAGE(fmt::format("{} {}: {}", number, harder.what, what));
                }
            };
            // What lies at the edge in few scenarios is asked again in all of them.
            if (hard.ok() && !easy.ok() && plan::make_plan(worse, in_full).ok() &&
                !plan::make_plan(trip, in_full).ok()) {
                tell("refused, then a plan (" + std::string(easy.problems().front().code.text()) + ")");
                CHECK(easy.ok());
            }
            if (hard.ok() && easy.ok() && hard->fill.latest_fire > easy->fill.latest_fire) {
                // The last chance of another schedule: one that asks more of the cook, and is ready sooner for it.
                tell("a later last chance");
                CHECK(plan::burden_of(*hard).weight() > plan::burden_of(*easy).weight());
            }
        }
    }
    std::string all;
    for (const auto& [what, times] : kinder) {
        all += fmt::format("\n  {} x {}", times, what);
    }
    MESSAGE(fmt::format("{} pairs{}", pairs, all));
    CHECK(pairs > count);
}
