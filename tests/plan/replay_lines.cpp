// SPDX-License-Identifier: MIT
// A planned schedule lived through twice, by the engine and by the method of lines with CVODE: the same bath, the same
// core, and the promise kept in both. Lid and unstirred layer are left out, which CVODE's side does not know.
#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "answer/piece.hpp"
#include "heat/box.hpp"
#include "plan/lived.hpp"
#include "support/method_of_lines.hpp"
#include "support/near.hpp"
#include "support/trips.hpp"

using namespace holdwater;
using support::near_abs;
using units::Duration;

namespace {

constexpr double air = 3.0;
constexpr double quarter = 900.0;

trip::Trip steady_trip(facts::Shape shape) {
    trip::Trip trip = support::demo_trip("trail-crew");
    for (auto& hour : std::get<std::vector<trip::Weather::Daily>>(trip.weather.hours)) {
        hour.air = units::celsius(air);
    }
    trip::Food& food = trip.foods.front();
    food.shape = shape;
    food.tolerance = units::kelvins(4);
    if (shape == facts::Shape::slab) {
        food.thickness = units::millimetres(45);
        food.length.reset();
    } else {
        food.thickness = units::millimetres(60);
        food.mass = food.mass * std::pow(60.0 / 85.0, 2);
    }
    return trip;
}

void compare(facts::Shape shape) {
    const trip::Trip trip = steady_trip(shape);
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const plan::Ensemble ensemble(*setup, {64, 1});
    const auto schedule = plan::make_schedule(ensemble);
    REQUIRE(schedule.has_value());
    REQUIRE(plan::holds(*schedule));
    REQUIRE(schedule->top_ups.size() >= 2);
    const plan::FoodSetup& food = setup->foods.front();
    const double end = trip.serve.since(trip.from).si();

    for (const std::size_t i : {0UL, 7UL, 21UL, 40UL, 63UL}) {
        CAPTURE(i);
        plan::Scenario scenario = ensemble.scenario(i);
        scenario.lid = 0.0;
        scenario.colder = 0.0;
        scenario.thickness = scenario.diffusivity = scenario.film = 0.0;
        plan::Run empty(*setup, scenario, {}, true);
        empty.fill(schedule->recipe);  // the bath as it is when the food goes in
        plan::Run run(*setup, scenario, {plan::food_in(food, scenario)}, true);
        run.fill(schedule->recipe);
        const double in = run.food_in().si();

        const auto properties = answer::properties_of(food.piece, heat::Reading::likely);
        support::LinesCase lines;
        lines.axes = {{shape == facts::Shape::round ? 1 : 0, food.piece.body.thickness.si() / 2, 41}};
        if (shape == facts::Shape::round) {
            lines.axes.push_back({0, food.piece.body.length->si() / 2, 41});
        }
        lines.diffusivity = properties.diffusivity.si();
        lines.conductivity = properties.conductivity.si();
        lines.film = answer::film_of(food.piece, heat::Reading::likely).si();
        lines.food_capacity = food.piece.mass.si() * properties.specific_heat.si();
        lines.food_start = food.piece.start.celsius() + scenario.start;
        lines.water = empty.bath().water().si();
        lines.liner = setup->liner.si();
        lines.loss = plan::box_in(*setup, scenario).loss.si();
        lines.bath_start = empty.bath().temperature().celsius();
        lines.outside_start = air + scenario.outside;
        for (std::size_t k = 0; k < schedule->top_ups.size(); ++k) {
            const Duration at = schedule->top_ups[k].at + Duration{plan::late_of(scenario, k)};
            if (at.si() >= end) {
                break;
            }
            run.advance_to(at);
            const double room = run.room().si();
            run.top_up(schedule->recipe);
            const double added = run.poured().back().si() * scenario.litres;
            lines.pours.push_back({at.si() - in, std::max(0.0, added - room), added,
                                   (setup->boiling - units::kelvins(scenario.boiling_cooled)).celsius()});
        }
        run.advance_to(Duration{end});

        std::vector<double> moments;
        for (double t = quarter; t < end - in; t += quarter) {
            moments.push_back(t);
        }
        const auto states = support::run_lines(lines, moments);
        int below = 0;
        for (std::size_t m = 0; m < moments.size(); ++m) {
            const Duration at{in + moments[m]};
            // Within some minutes of a jump the engine's outermost share of the food moves at once, the grid's does not.
            bool near_jump = false;
            for (const auto& pour : lines.pours) {
                near_jump = near_jump || (moments[m] >= pour.at && moments[m] < pour.at + 300.0);
            }
            CAPTURE(moments[m]);
            if (!near_jump) {
                CHECK(near_abs(run.bath().bath_history().at(at).celsius(), states[m].bath, 0.05));
            }
            CHECK(near_abs(run.bath().core_history(0).at(at).celsius(), states[m].core, 0.1));
            below += states[m].bath < setup->floor.celsius() ? 1 : 0;
        }
        CHECK(below == 0);
    }
}

}  // namespace

TEST_CASE("slab: a planned trip, replayed by CVODE, is the same bath and core and keeps its promise") {
    compare(facts::Shape::slab);
}

TEST_CASE("round: a planned trip, replayed by CVODE, is the same bath and core and keeps its promise") {
    compare(facts::Shape::round);
}
