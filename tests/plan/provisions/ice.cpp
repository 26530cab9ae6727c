// SPDX-License-Identifier: MIT
// Ice for the journey against a simulation that shares nothing with it: enthalpy of ice, food and liner as one mixed
// body, stepped through the journey.
#include "plan/provisions/ice.hpp"

#include "facts/facts.hpp"
#include "made_up.hpp"
#include "plan/search/setup.hpp"
#include "support/borrowed.hpp"
#include "support/near.hpp"
#include "trip/ranges.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

using namespace holdwater;
using plan::IceQuestion;
using support::near_abs;
using support::near_rel;

namespace {

IceQuestion question(double loss, double air, double hours, double food_kg, double food_start) {
    IceQuestion q;
    q.loss = units::HeatLoss{loss};
    q.air = units::celsius(air);
    q.takes = units::hours(hours);
    q.food = units::HeatCapacity{food_kg * 3500.0};
    q.food_start = units::celsius(food_start);
    q.liner = units::HeatCapacity{4000.0};
    return q;
}

/// Warmest that the contents get once they have mixed [C]; the liner's heat and the food's go into the ice at once.
double warmest(const IceQuestion& q, double ice, bool drained) {
    constexpr double fusion = 333500.0;  // J/kg
    constexpr double water = 4186.0;     // J/kg/K
    const double dry = q.food.si() + q.liner.si();
    double melted = 0.0;
    double heat = q.food.si() * q.food_start.celsius() + q.liner.si() * q.air.celsius();  // above 0 C, to be taken up
    double most = -1e9;
    const double step = 20.0;
    for (double t = 0.0; t < q.takes.si() + step / 2; t += step) {
        const double melts = std::min(std::max(heat, 0.0) / fusion, ice - melted);
        melted += melts;
        heat -= melts * fusion;
        const double temperature = heat / (dry + (drained ? 0.0 : melted * water));
        most = std::max(most, temperature);
        heat += q.loss.si() * (q.air.celsius() - temperature) * step;
    }
    return most;
}

double least_that_works(const IceQuestion& q, bool drained) {
    double low = 0.0;
    double high = 200.0;
    for (int i = 0; i < 50; ++i) {
        const double middle = (low + high) / 2;
        (warmest(q, middle, drained) <= 5.0 ? high : low) = middle;
    }
    return high;
}

}  // namespace

TEST_CASE("ice by hand: 1 W/K, 20 C, 10 h, cold food and no liner") {
    IceQuestion q = question(1.0, 20, 10, 4, 4);
    q.liner = units::HeatCapacity{0};
    CHECK(near_rel(plan::ice_drained(q).si(), 20.0 * 36000 / 333500, 1e-9));
    CHECK(near_rel(plan::ice_undrained(q).si(), 20.0 * 36000 / (333500 + 5 * 4186), 1e-9));
    // Food at 9 C has 4 K to lose, 4 kg of 3500 J/kg/K.
    q.food_start = units::celsius(9);
    CHECK(near_rel(plan::ice_drained(q).si(), (20.0 * 36000 + 4 * 3500 * 4) / 333500, 1e-9));
}

TEST_CASE("the ice keeps the food at or below 5 C in a step-by-step journey, drained or not") {
    for (const double loss : {0.3, 0.9, 2.5}) {
        for (const double air : {-10.0, 3.0, 6.0, 18.0, 38.0}) {
            for (const double hours : {0.5, 5.0, 24.0, 72.0}) {
                for (const double start : {0.0, 4.0, 12.0}) {
                    const IceQuestion q = question(loss, air, hours, 4, start);
                    CAPTURE(loss);
                    CAPTURE(air);
                    CAPTURE(hours);
                    CAPTURE(start);
                    CHECK(warmest(q, plan::ice_drained(q).si(), true) <= 5.0 + 1e-6);
                    CHECK(warmest(q, plan::ice_undrained(q).si(), false) <= 5.0 + 1e-6);
                    CHECK(plan::ice_undrained(q) <= plan::ice_drained(q));
                }
            }
        }
    }
}

TEST_CASE("on a long warm journey it is little more than the least that works") {
    for (const double air : {18.0, 30.0, 38.0}) {
        for (const double hours : {24.0, 72.0}) {
            const IceQuestion q = question(0.9, air, hours, 4, 5);
            const double least = least_that_works(q, true);
            const double asked = plan::ice_drained(q).si();
            CAPTURE(air);
            CAPTURE(hours);
            CHECK(asked >= least);
            CHECK(asked <= least * 1.12);
        }
    }
}

TEST_CASE("longer, warmer, a worse box, more and warmer food never take less ice") {
    const std::vector<double> losses{0.2, 0.5, 1.0, 3.0};
    const std::vector<double> airs{-20, 0, 4, 5, 5.1, 12, 25, 40};
    const std::vector<double> hours{0.1, 1, 6, 30};
    const std::vector<double> starts{-1, 4, 5, 8, 20};
    for (const double loss : losses) {
        for (const double air : airs) {
            for (const double time : hours) {
                for (const double start : starts) {
                    const auto here = plan::ice_drained(question(loss, air, time, 4, start));
                    CHECK(here.si() >= 0.0);
                    CHECK(plan::ice_drained(question(loss * 1.3, air, time, 4, start)) >= here);
                    CHECK(plan::ice_drained(question(loss, air + 2, time, 4, start)) >= here);
                    CHECK(plan::ice_drained(question(loss, air, time * 2, 4, start)) >= here);
                    CHECK(plan::ice_drained(question(loss, air, time, 6, start)) >= here);
                    CHECK(plan::ice_drained(question(loss, air, time, 4, start + 1)) >= here);
                }
            }
        }
    }
}

TEST_CASE("in air that keeps the food cold no ice is needed") {
    CHECK(plan::ice_drained(question(0.9, 4, 20, 4, 4)).si() == 0.0);
    CHECK(plan::ice_drained(question(0.9, -15, 20, 4, 2)).si() == 0.0);
    CHECK(plan::ice_drained(question(0.9, -15, 20, 4, 10)).si() > 0.0);
}

TEST_CASE("the ice of a trip takes the worst ends and is rounded up") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.journey->box = trip.boxes.front();  // on the way in the box that becomes the bath
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    plan::Plan plan;
    plan.trip = support::borrowed(trip);
    const auto ice = plan::ice_of(*setup, plan);
    REQUIRE(ice.has_value());
    CHECK(ice->box == plan::IceBox::named);
    CHECK(ice->waits_elsewhere);
    CHECK(ice->drained.low < ice->drained.likely);
    CHECK(ice->drained.likely < ice->drained.high);
    CHECK(ice->card >= ice->drained.high);
    CHECK(ice->card.si() < ice->drained.high.si() + 0.5);
    CHECK(near_abs(ice->takes_up.si() * 500.0, ice->card.si(), 1e-9));
    CHECK(ice->fits);
    // 5 h in 18 + 3 C through a breezy wall at its high end; the food is at 4 + 2 C, the liner as warm as the air.
    const double wall = setup->loss.high.si() * 1.15 * 21 * 5 * 3600;
    const double liner = setup->liner.si() * (21 - 5);
    const double food = 3.6 * 3550 * 1.0;
    CHECK(near_rel(ice->drained.high.si(), (wall + liner + food) / 333500, 0.01));

    // Food that waits for a later bath needs ice until then: 6 h after the way.
    plan.foods.resize(1);
    plan.foods.front().in = trip.from.after(units::hours(6));
    const auto waiting = plan::ice_of(*setup, plan);
    REQUIRE(waiting.has_value());
    CHECK(waiting->takes == units::hours(11));
    const double more = (waiting->drained.high - ice->drained.high).si();
    // That box is full of hot water by then, so the food waits in a poor one: 2.5 W/K.
    // The warmest air is that of the first moment, 9 C at 14:00 on its way to -2 C at 22:00.
    const double air = 9.0 - 11.0 * 2.0 / 8.0 + 3.0;
    CHECK(near_rel(more, 2.5 * 1.15 * air * 6 * 3600 / 333500, 1e-6));

    trip.journey->takes = units::hours(72);
    trip.journey->air = units::celsius(40);
    const auto long_way = plan::ice_of(*setup, plan);
    REQUIRE(long_way.has_value());
    CHECK(long_way->card > ice->card);
    CHECK_FALSE(long_way->fits);
    trip.journey.reset();
    CHECK_FALSE(plan::ice_of(*setup, plan).has_value());
}

TEST_CASE("ice is reckoned in the box that the raw food is in, not in the one with the bath") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    plan::Plan plan;
    plan.trip = support::borrowed(trip);
    const auto drained = [&] { return plan::ice_of(*setup, plan)->drained.high.si(); };

    // Nobody said: a poor box, with more ice than the hot box itself would take.
    trip.journey->box = {};
    const auto poor = plan::ice_of(*setup, plan);
    REQUIRE(poor.has_value());
    CHECK(poor->box == plan::IceBox::planning);
    CHECK_FALSE(poor->room.has_value());
    CHECK(poor->fits);
    trip.journey->box = trip.boxes.front();
    const double in_the_bath_box = drained();
    CHECK(poor->drained.high.si() > in_the_bath_box);

    // A loss: 5 h in 18 + 3 C through 1.2 W/K at its high end, breezy.
    trip.journey->box = units::HeatLoss{1.2};
    const auto given = plan::ice_of(*setup, plan);
    CHECK(given->box == plan::IceBox::given);
    const double wall = 1.2 * facts::facts().spread("box-loss").high * 1.15 * 21 * 5 * 3600;
    const double liner = setup->liner.si() * (21 - 5);
    const double food = 3.6 * 3550 * 1.0;
    CHECK(near_rel(given->drained.high.si(), (wall + liner + food) / 333500, 0.01));
    // The better the box, the less ice; and the box of the bath has no say in it.
    trip.journey->box = units::HeatLoss{0.6};
    const double better = drained();
    CHECK(better < given->drained.high.si());
    trip.boxes.front().test = units::HeatLoss{4.0};
    const auto leaky = plan::set_up(trip);
    REQUIRE(leaky.ok());
    CHECK(near_rel(plan::ice_of(*leaky, plan)->drained.high.si(), better, 1e-12));

    // Another box by its name has room and liner of its own.
    trip::Box other = trip.boxes.front();
    other.name = "cold box";
    other.inside = {units::millimetres(200), units::millimetres(200), units::millimetres(150)};
    trip.journey->box = other;
    const auto named = plan::ice_of(*setup, plan);
    CHECK(named->name == "cold box");
    REQUIRE(named->room.has_value());
    CHECK(near_abs(units::in_litres(*named->room), 6.0, 1e-9));
}

TEST_CASE("frost on the way or at the fire is told, mild air is not") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    plan::Plan plan;
    plan.trip = support::borrowed(trip);
    const auto frost = [&] {
        const auto setup = plan::set_up(trip);
        REQUIRE(setup.ok());
        return plan::frost_of(*setup, plan);
    };
    trip.weather.hours = std::vector<trip::Weather::Daily>{{{0}, units::celsius(10)}};
    CHECK_FALSE(frost().has_value());
    trip.journey->air = units::celsius(-6);
    CHECK(frost().has_value());
    trip.journey.reset();
    CHECK_FALSE(frost().has_value());
    trip.weather.hours = std::vector<trip::Weather::Daily>{{{0}, units::celsius(-2)}};
    CHECK(frost().has_value());
    // It may be 3 K colder than foretold: 1 C can freeze, 3 C cannot.
    trip.weather.hours = std::vector<trip::Weather::Daily>{{{0}, units::celsius(1)}};
    CHECK(frost().has_value());
    trip.weather.hours = std::vector<trip::Weather::Daily>{{{0}, units::celsius(3)}};
    CHECK_FALSE(frost().has_value());
}

TEST_CASE("what a trip file says of thawing is what the facts say") {
    const std::string thaw{trip::ranges::thaw};
    const facts::Facts& facts = facts::facts();
    CHECK(thaw.find(fmt::format("{:g} C (41 F)", facts.temperature("raw.cold").celsius())) != std::string::npos);
    CHECK(thaw.find(fmt::format("every {:g} min", units::in_minutes(facts.duration("thaw.change")))) !=
          std::string::npos);
}
