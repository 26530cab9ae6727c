// SPDX-License-Identifier: MIT
#include "support/lines_of_run.hpp"

#include "answer/hold/piece.hpp"
#include "support/trips.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

namespace holdwater::support {

using units::Duration;

plan::Scenario without_lid_and_layer(plan::Scenario scenario) {
    scenario.lid = 0.0;
    scenario.colder = 0.0;
    scenario.thickness = scenario.diffusivity = scenario.film = 0.0;
    return scenario;
}

LinesOfRun lines_of_run(const plan::Setup& setup, const plan::Schedule& schedule, const plan::Scenario& scenario,
                        double air, int nodes) {
    const plan::FoodSetup& food = setup.foods.front();
    const double end = setup.trip->serve.since(setup.trip->from).si();
    plan::Simulation empty(setup, scenario, {}, true);
    empty.fill(schedule.recipe);  // the bath as it is when the food goes in
    LinesOfRun both{{}, plan::Simulation(setup, scenario, {plan::food_in(food, scenario)}, true), 0.0};
    plan::Simulation& run = both.run;
    run.fill(schedule.recipe);
    both.food_in = run.food_in().si();

    // The median of what is drawn: between the published ends on the logarithm.
    const auto slow = answer::properties_of(food.piece, heat::Bound::slow).diffusivity.si();
    const auto fast = answer::properties_of(food.piece, heat::Bound::fast).diffusivity.si();
    const auto properties = heat::with_diffusivity(answer::properties_of(food.piece, heat::Bound::likely),
                                                   units::Diffusivity{std::sqrt(slow * fast)});
    const facts::Spread& films = facts::facts().spread("film");
    const units::FilmCoefficient film =
        heat::with_bag(units::FilmCoefficient{std::sqrt(films.low * films.high)}, food.piece.bag);
    const heat::Body& body = food.piece.body;
    LinesCase& lines = both.lines;
    lines.axes = {{body.shape == facts::Shape::round ? 1 : 0, body.thickness.si() / 2, nodes}};
    if (body.shape == facts::Shape::block) {
        lines.axes.push_back({0, body.width->si() / 2, nodes});
    }
    if (body.shape != facts::Shape::slab) {
        lines.axes.push_back({0, body.length->si() / 2, nodes});
    }
    lines.diffusivity = properties.diffusivity.si();
    lines.conductivity = properties.conductivity.si();
    lines.film = film.si();
    lines.food_capacity = food.piece.mass.si() * properties.specific_heat.si();
    lines.food_start = food.piece.start.celsius() + scenario.start;
    lines.water = empty.bath().water().si();
    lines.liner = setup.liner.si();
    lines.loss = plan::box_in(setup, scenario).loss.si();
    lines.bath_start = empty.bath().temperature().celsius();
    lines.outside_start = air + scenario.outside;
    for (std::size_t k = 0; k < schedule.top_ups.size(); ++k) {
        const Duration at = schedule.top_ups[k].at + Duration{plan::late_of(scenario, k)};
        if (at.si() >= end) {
            break;
        }
        run.advance_to(at);
        run.top_up(schedule.recipe);
        const double added = run.poured().back().si() * scenario.litres;
        lines.pours.push_back({at.si() - both.food_in, run.taken_out().back().si(), added,
                               (setup.levels.boiling - units::kelvins(scenario.boiling_cooled)).celsius()});
    }
    run.advance_to(Duration{end});
    return both;
}

trip::Trip steady_trip(facts::Shape shape, double air) {
    trip::Trip trip = demo_trip("frosty-weekend");
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
    if (shape == facts::Shape::block) {
        food.width = units::millimetres(70);
    }
    return trip;
}

}  // namespace holdwater::support
