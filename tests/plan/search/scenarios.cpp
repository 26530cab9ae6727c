// SPDX-License-Identifier: MIT
#include "answer/spread/draw.hpp"
#include "facts/facts.hpp"
#include "plan/search/food_store.hpp"
#include "plan/search/scenario.hpp"
#include "plan/search/setup.hpp"
#include "support/near.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace holdwater;

TEST_CASE("scenarios are the same each time and fill every spread evenly") {
    const auto a = plan::draw_scenarios(512);
    const auto b = plan::draw_scenarios(512);
    REQUIRE(a.size() == 512);
    double sum = 0.0;
    std::size_t above = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        CHECK(a[i].loss == b[i].loss);
        CHECK(a[i].colder >= 0.0);
        CHECK(a[i].lid > 0.0);
        CHECK(plan::late_of(a[i], 3) >= 0.0);
        CHECK(plan::late_of(a[i], 3) <= 1800.0);
        sum += a[i].litres;
        above += a[i].loss > 1.0 ? 1 : 0;
    }
    CHECK(support::near_abs(sum / 512.0, 1.0, 0.002));
    // The box test's band is its 5 and 95 % points: about one in twenty lies above the upper end.
    CHECK(above >= 20);
    CHECK(above <= 32);
}

TEST_CASE("what the basis sheet prints of a spread is what is drawn: its ends, and its middle") {
    constexpr std::size_t draws = 4096;
    const auto shares = answer::even_shares(1, draws);
    for (const facts::Spread& spread : facts::facts().spreads()) {
        CAPTURE(spread.key);
        const bool log = spread.shape == facts::SpreadShape::lognormal;
        const bool tails = log || spread.shape == facts::SpreadShape::normal;
        const double middle = log ? std::sqrt(spread.low * spread.high) : 0.5 * (spread.low + spread.high);
        double below = 0.0;
        double under_the_middle = 0.0;
        double above = 0.0;
        for (const std::vector<double>& share : shares) {
            const double value = answer::value_at(spread, share.front());
            below += value < spread.low ? 1.0 / draws : 0.0;
            under_the_middle += value < middle ? 1.0 / draws : 0.0;
            above += value > spread.high ? 1.0 / draws : 0.0;
            // The same draw as a place between the ends, from which film and diffusivity of a piece are made.
            const double place = answer::place_at(spread, share.front());
            const double again = log ? middle * std::pow(spread.high / middle, place)
                                     : middle + 0.5 * (spread.high - spread.low) * place;
            CHECK(support::near_rel(value, again, 1e-9));
        }
        CHECK(support::near_abs(below, tails ? 0.05 : 0.0, 0.002));
        CHECK(support::near_abs(above, tails ? 0.05 : 0.0, 0.002));
        CHECK(support::near_abs(under_the_middle, 0.5, 0.002));
    }
}

TEST_CASE("foods that are kept are those of just that piece: another target is another mean temperature") {
    trip::Trip trip = support::demo_trip("template");
    const std::vector<plan::Scenario> scenarios = plan::draw_scenarios(8);
    std::vector<units::HeatCapacity> capacities;
    for (int more = 0; more < 2; ++more) {
        const auto setup = plan::set_up(trip);
        REQUIRE(setup.ok());
        const plan::FoodsInBath kept = plan::foods_of(setup->foods[0], {8, 1}, scenarios);
        const std::vector<heat::FoodInBath> anew = plan::foods_in(setup->foods[0], scenarios);
        CHECK(kept->front().capacity == anew.front().capacity);
        capacities.push_back(anew.front().capacity);
        trip.foods[0].target = trip.foods[0].target + units::kelvins(8);
    }
    CHECK(capacities[0] != capacities[1]);
}
