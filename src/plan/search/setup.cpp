// SPDX-License-Identifier: MIT
#include "plan/search/setup.hpp"

#include "answer/gauge/box_loss.hpp"
#include "facts/facts.hpp"
#include "heat/level.hpp"
#include "heat/water.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::plan {
namespace {

using problem::Problems;

void append(Problems& all, const Problems& more) {
    all.insert(all.end(), more.begin(), more.end());
}

/// Interpolates between the slow, likely and fast reading of a food: place -1, 0, 1.
double between(double slow, double likely, double fast, double place) {
    return place < 0 ? likely + (likely - slow) * place : likely + (fast - likely) * place;
}

units::History outside_of(const trip::Trip& trip) {
    units::History outside;
    const units::Duration until = trip.serve.since(trip.from) + units::hours(48);
    for (units::Duration t{0}; t <= until; t += units::minutes(30)) {
        outside.add(t, trip.weather.air_at(trip.from.after(t)));
    }
    return outside;
}

void take_strictest(Setup& setup) {
    setup.highest_core = setup.foods.front().food->target + setup.foods.front().food->tolerance;
    setup.levels.floor = setup.levels.action_line = units::celsius(0);
    for (const FoodSetup& food : setup.foods) {
        const safety::Standard& standard = food.standard;
        setup.levels.floor = std::max({setup.levels.floor, standard.cook_floor, standard.hold_floor});
        setup.levels.action_line =
            std::max({setup.levels.action_line, standard.action_line, standard.hold_action_line});
        setup.highest_core = std::min(setup.highest_core, food.food->target + food.food->tolerance);
    }
    setup.levels.read_floor = setup.levels.floor + setup.box->thermometer.value_or(units::kelvins(0));
    setup.levels.action_line =
        setup.box->thermometer ? std::max(setup.levels.action_line, setup.levels.read_floor) : setup.levels.floor;
}

/// Foods that come and go change the level: each company of foods that is ever in the box together is looked at, and
/// all of them at once, since nobody knows how late one comes out.
void check_levels(const Setup& setup, Problems& problems) {
    std::vector<std::optional<units::Duration>> moments{std::nullopt};  // nothing: all foods
    for (const FoodSetup& food : setup.foods) {
        moments.emplace_back(food.in.value_or(units::Duration{0}));
    }
    for (const std::optional<units::Duration>& moment : moments) {
        std::vector<heat::Lying> foods;
        for (const FoodSetup& food : setup.foods) {
            if (!moment || (food.in.value_or(units::Duration{0}) <= *moment && food.out > *moment)) {
                foods.push_back(answer::lying(food.piece));
            }
        }
        for (problem::Problem& fault : heat::level_faults(setup.box->inside, setup.box->water, foods)) {
            const bool said = std::any_of(problems.begin(), problems.end(),
                                          [&](const problem::Problem& other) { return other.code == fault.code; });
            if (!said) {
                fault.place = setup.box->place;
                problems.push_back(std::move(fault));
            }
        }
    }
}

}  // namespace

problem::Result<Setup> set_up(const trip::Trip& trip) {
    Problems problems;
    Setup setup;
    setup.trip = &trip;
    if (trip.boxes.size() != 1) {
        problem::Problem two = problem::error("two-boxes", "a plan covers one box, this trip has two",
                                              "write one trip file for each box, with its own foods and pots");
        two.place = trip.boxes.back().place;
        return two;
    }
    setup.box = &trip.boxes.front();
    if (trip.foods.empty()) {
        problem::Problem none =
            problem::error("box-without-food", "no food goes into this box",
                           "a plan needs at least one [[food]]; leave an empty box out of the trip");
        none.place = setup.box->place;
        return none;
    }
    const auto boiling = heat::boiling_point_at(trip.altitude);
    if (!boiling) {
        append(problems, boiling.problems());
    } else {
        setup.levels.boiling = *boiling;
    }
    setup.liner = heat::liner_of(setup.box->inside);
    const auto loss = answer::loss_of(*setup.box, setup.liner);
    if (!loss) {
        append(problems, loss.problems());
    } else {
        setup.loss = *loss;
    }
    // The lid lies over the two longer inside measures or over whatever opening the user wrote first and second.
    setup.surface = units::Area{setup.box->inside[0].si() * setup.box->inside[1].si()};
    setup.most = heat::room_in(setup.box->inside);
    for (const trip::Food& food : trip.foods) {
        auto standard = answer::standard_of(food, trip, *setup.box);
        if (!standard) {
            append(problems, standard.problems());
            continue;
        }
        FoodSetup one;
        one.food = &food;
        one.piece = answer::piece_of(food);
        one.standard = *standard;
        one.hottest = food.target + food.tolerance;
        one.volume = answer::lying(one.piece).volume;
        one.in = food.in ? std::optional(food.in->since(trip.from)) : std::nullopt;
        one.out = trip::eaten(food, trip).since(trip.from);
        one.whole_time = !food.in && trip::eaten(food, trip) == trip.serve;
        setup.food_volume += one.volume;
        setup.foods.push_back(one);
    }
    if (!problems.empty()) {
        return problems;
    }
    setup.outside = outside_of(trip);
    setup.air = heat::OutsideAir(setup.outside);
    setup.round = trip.fire.boils_in + facts::facts().duration("pour.handling");
    setup.rounds_before = setup.box->prewarmed ? 1 : 0;
    setup.batch = trip.fire.pot * (trip.fire.usable * trip.fire.pots);
    take_strictest(setup);
    check_levels(setup, problems);
    if (problem::has_error(problems)) {
        return problems;
    }
    return setup;
}

std::vector<heat::FoodInBath> foods_in(const FoodSetup& food, const std::vector<Scenario>& scenarios) {
    const answer::Piece& piece = food.piece;
    const units::HeatCapacity capacity{piece.mass.si() *
                                       answer::properties_of(piece, heat::Bound::likely).specific_heat.si()};
    std::vector<heat::Modes> modes;
    std::vector<heat::FoodInBath> foods;
    for (const Scenario& one : scenarios) {
        // Sizes were checked by the reader, well inside the engine's range.
        answer::VariedPiece turned_out =
            answer::varied(piece, {one.thickness, one.diffusivity, one.film, units::kelvins(one.start)}).value();
        modes.push_back(std::move(turned_out.modes));
        foods.push_back({{}, capacity, turned_out.start, units::kelvins(one.colder)});
    }
    const std::vector<heat::LaneOfModes> beside = heat::side_by_side(modes);
    for (std::size_t i = 0; i < foods.size(); ++i) {
        foods[i].modes = beside[i];
    }
    return foods;
}

heat::FoodInBath food_in(const FoodSetup& food, const Scenario& scenario) {
    return foods_in(food, {scenario}).front();
}

heat::BoxHeat box_in(const Setup& setup, const Scenario& scenario) {
    const heat::BoxLoss& loss = setup.loss;
    const double tested = between(loss.low.si(), loss.likely.si(), loss.high.si(), scenario.loss);
    const double wind = std::clamp(heat::wind_position(setup.trip->weather.wind) + scenario.wind, 0.0, 2.0);
    heat::BoxHeat box;
    box.loss = units::HeatLoss{tested * heat::wind_factor(wind)};
    box.liner = setup.liner;
    box.open_surface = setup.surface;
    return box;
}

}  // namespace holdwater::plan
