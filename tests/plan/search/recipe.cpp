// SPDX-License-Identifier: MIT
// Laws of the fill: it takes no round more than the pots ask for, and it fills the box. In boxes much smaller than
// these half a litre of cold water, to which a cook measures, can be too coarse for that.
#include "plan/search/recipe.hpp"

#include "facts/facts.hpp"
#include "facts/read_facts.hpp"
#include "plan/choose/start.hpp"
#include "plan/search/ensemble.hpp"
#include "plan/search/schedule.hpp"
#include "support/files.hpp"
#include "support/random_trips.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <vector>

using namespace holdwater;

TEST_CASE("law: a fill boils as many rounds as the pots hold its water in, no more") {
    const trip::Trip demo = support::demo_trip("template");
    int recipes = 0;
    for (const double water : {18.0, 20.0, 28.0, 32.0}) {
        for (const int pots : {1, 2, 3, 4}) {
            for (const double degrees : {60.0, 65.0, 70.0, 75.0, 80.0}) {
                trip::Trip trip = demo;
                trip.boxes[0].water = units::litres(water);
                trip.foods[0].pieces = 1;
                trip.fire.pot = units::litres(12.0);
                trip.fire.pots = pots;
                const auto setup = plan::set_up(trip);
                REQUIRE(setup.ok());
                const auto recipe = plan::recipe_for(*setup, units::celsius(degrees));
                if (!recipe) {
                    continue;
                }
                ++recipes;
                CAPTURE(water);
                CAPTURE(pots);
                CAPTURE(degrees);
                plan::Simulation likely(*setup, plan::likely_scenario(), {}, false);
                likely.fill(*recipe);
                REQUIRE(likely.fill_pours() == static_cast<std::size_t>(recipe->pours));
                double boiled = 0.0;
                for (const units::Volume poured : likely.poured()) {
                    boiled += poured.si();
                    CHECK(plan::is_act(poured));
                }
                // A tenth of the pots' water may be too little to reach the mark with half litres of cold water.
                const double rounds = std::ceil(boiled / (0.9 * setup->batch.si()));
                if (static_cast<double>(likely.fill_pours()) > rounds) {
                    // One more, and only where every cold litre that fills the box with fewer leaves the pots short of
                    // the reading in over 5 of 100 scenarios.
                    CHECK(static_cast<double>(likely.fill_pours()) == rounds + 1.0);
                    const plan::Ensemble all(*setup, {128, 1});
                    for (double cold = 0.0; cold <= 10.0; cold += 0.5) {
                        const plan::Recipe fewer{
                            units::litres(cold), recipe->reading, recipe->pours - 1, recipe->reading, {}};
                        plan::Simulation usual(*setup, plan::likely_scenario(), {}, false);
                        usual.fill(fewer);
                        if (std::abs(usual.bath().water().si() - trip.boxes[0].water.si()) > 0.9e-3 ||
                            usual.fill_pours() > static_cast<std::size_t>(fewer.pours)) {
                            continue;
                        }
                        CAPTURE(cold);
                        std::size_t missing = 0;
                        for (std::size_t i = 0; i < all.size(); ++i) {
                            plan::Simulation run(*setup, all.scenario(i), {}, false);
                            run.fill(fewer);
                            missing += run.fill_pours() > static_cast<std::size_t>(fewer.pours) ? 1 : 0;
                        }
                        CHECK(static_cast<double>(missing) > plan::allowed_failures() * 128.0);
                    }
                }
                // As full as wanted, within a litre or the twentieth by which litres are poured wrong.
                const double wanted = trip.boxes[0].water.si();
                CHECK(std::abs(likely.bath().water().si() - wanted) < std::max(1.0e-3, 0.05 * wanted));
            }
        }
    }
    CHECK(recipes > 60);
}

TEST_CASE("a fill that the pots of a full box reach only by luck is made cooler, so that no boil more is needed") {
    // A high camp with two small pots, found among random trips: with some litres 80 C is reached in 64 of 100 only.
    trip::Trip trip = support::random_trip(2791);
    const units::Temperature wanted = units::celsius(80);
    int by_luck = 0;
    for (double water = 14.0; water <= 22.0; water += 0.5) {
        CAPTURE(water);
        trip.boxes.front().water = units::litres(water);
        const auto setup = plan::set_up(trip);
        REQUIRE(setup.ok());
        const auto hottest = plan::recipe_for(*setup, wanted);
        const plan::Ensemble ensemble(*setup, {128, 1});
        const auto schedule = !hottest || hottest->sure ? std::nullopt : plan::make_schedule(ensemble);
        if (!schedule || !schedule->recipe.sure) {
            continue;
        }
        ++by_luck;
        CHECK(schedule->recipe.reading < wanted);
        CHECK(schedule->recipe.reading >= wanted - facts::facts().difference("fill.cooler"));
        int more = 0;
        for (std::size_t i = 0; i < ensemble.size(); ++i) {
            plan::Simulation run = ensemble.start(i, false);
            run.fill(schedule->recipe);
            more += run.fill_pours() > static_cast<std::size_t>(schedule->recipe.pours) ? 1 : 0;
        }
        CHECK(more <= 0.1 * static_cast<double>(ensemble.size()));  // 5 of 100, and what so few draws may be off by
    }
    CHECK(by_luck >= 1);
    MESSAGE(by_luck << " fills looked at");
}

TEST_CASE("law: a recipe that is kept is the one of just that fill") {
    const trip::Trip demo = support::demo_trip("template");
    const auto of = [](const trip::Trip& trip) {
        const auto setup = plan::set_up(trip);
        REQUIRE(setup.ok());
        return plan::recipe_for(*setup, units::celsius(66));
    };
    const auto same = [](const std::optional<plan::Recipe>& a, const std::optional<plan::Recipe>& b) {
        return a.has_value() == b.has_value() && (!a || (a->cold == b->cold && a->pours == b->pours));
    };
    using Change = void (*)(trip::Trip&);
    const Change changes[] = {
        [](trip::Trip& t) { t.boxes[0].water = t.boxes[0].water * 0.7; },
        [](trip::Trip& t) { t.boxes[0].thermometer = units::kelvins(3); },
        [](trip::Trip& t) { t.boxes[0].thermometer = std::nullopt; },
        [](trip::Trip& t) { t.boxes[0].prewarmed = !t.boxes[0].prewarmed; },
        [](trip::Trip& t) { t.boxes[0].test = units::HeatLoss{6.0}; },
        [](trip::Trip& t) { t.boxes[0].inside[2] = t.boxes[0].inside[2] * 1.5; },
        [](trip::Trip& t) { t.weather.wind = facts::Wind::windy; },
        [](trip::Trip& t) {
            t.weather.hours = std::vector<trip::Weather::Daily>{{{}, units::celsius(-15)}};
        },
        [](trip::Trip& t) { t.altitude = units::metres(4500); },
        [](trip::Trip& t) { t.fire.pots = 1; },
        [](trip::Trip& t) { t.fire.pot = t.fire.pot * 0.6; },
        [](trip::Trip& t) { t.fire.boils_in = t.fire.boils_in * 3.0; },
        [](trip::Trip& t) { t.fire.cold_water = units::celsius(20); },
        [](trip::Trip& t) { t.foods[0].pieces += 1; },
    };
    const auto base = of(demo);
    int others = 0;
    for (std::size_t i = 0; i < std::size(changes); ++i) {
        CAPTURE(i);
        trip::Trip changed = demo;
        changes[i](changed);
        REQUIRE(same(of(demo), base));
        const auto kept = of(changed);
        const facts::FactsInForce anew(facts::facts());  // the same ones, but nothing is kept from before
        CHECK(same(of(changed), kept));
        others += same(kept, base) ? 0 : 1;
    }
    CHECK(others >= 8);
    // What is not of the fill changes nothing.
    trip::Trip wish = demo;
    wish.foods[0].target = wish.foods[0].target + units::kelvins(3);
    wish.serve = wish.serve.after(units::hours(1));
    CHECK(same(of(wish), base));
}

TEST_CASE("where nothing holds after the hottest fill, one of another number of rounds is tried") {
    // Nine litres and one pot: filled to 77 C by four rounds the food goes in a round later than to 78 C by three, and
    // then the bath lasts to the meal.
    trip::Trip trip =
        support::read_trip_text(support::source_text("tests/plan/search/nine-litres.toml"), "nine-litres.toml").value();
    trip = plan::lit_at(trip, trip.light_fire.value());
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    for (const std::size_t scenarios : {256u, 512u}) {
        CAPTURE(scenarios);
        const auto schedule = plan::make_schedule(plan::Ensemble(*setup, {scenarios, 1}));
        REQUIRE(schedule.has_value());
        CHECK(plan::holds(*schedule));
    }
}
