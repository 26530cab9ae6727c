// SPDX-License-Identifier: MIT
// A fall that no closed box makes: two rows that tell of an accident, judged as if it had come at once.
#include "answer/gauge/box_loss.hpp"
#include "answer/hold/piece.hpp"
#include "answer/review/reading.hpp"
#include "answer/review/review_food.hpp"
#include "answer/review/true_verdict.hpp"
#include "heat/bath.hpp"
#include "heat/box.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace holdwater;
using namespace holdwater::support;
using answer::Verdict;
using units::hours;

namespace {

/// The bath of tests/logs/crew.toml in its likely box, with its food in from the start.
heat::Bath crew_bath(const trip::Trip& trip, units::Temperature fill) {
    const trip::Box& box = trip.boxes.front();
    heat::BoxHeat heat;
    heat.liner = heat::liner_of(box.inside);
    const auto loss = answer::loss_of(box, heat.liner);
    REQUIRE(loss.ok());
    heat.loss = loss->likely * heat::wind_factor(heat::wind_position(trip.weather.wind));
    heat.open_surface = units::Area{box.inside[0].si() * box.inside[1].si()};
    units::History air;
    air.add(units::Duration{0}, units::celsius(0));
    heat::Bath bath(heat, box.water, fill, air);
    const answer::Piece piece = answer::piece_of(trip.foods.front());
    auto modes = answer::modes_for(piece, heat::Bound::likely);
    REQUIRE(modes.ok());
    heat::FoodInBath food;
    food.modes = std::move(modes).value();
    food.capacity =
        units::HeatCapacity{piece.mass.si() * answer::properties_of(piece, heat::Bound::likely).specific_heat.si()};
    food.start = piece.start;
    bath.put_in(food);
    return bath;
}

}  // namespace

TEST_CASE("an accident is judged as come at once, since it may have: a lower first reading is kinder only without it") {
    const trip::Trip trip = log_trip("crew.toml");
    problem::Problems remarks;
    const auto standard = answer::standard_for_review(trip, trip.foods.front(), remarks);
    REQUIRE(standard.ok());
    // Read after nine hours; then the lid is off for a while, is put back on, and nobody looks again for three hours.
    heat::Bath bath = crew_bath(trip, units::celsius(74));
    bath.advance_to(hours(9));
    std::string rows =
        fmt::format("time_min,bath_c,note\n0,74,food in\n540,{:.2f},LAST\n", bath.temperature().celsius());
    const double last = bath.temperature().celsius();
    REQUIRE(last > standard->hold_floor.celsius() + 3.0);
    while (bath.temperature() > standard->hold_floor - units::kelvins(1.0)) {
        bath.open_lid(units::minutes(5));
    }
    bath.advance_to(hours(12));
    rows += fmt::format("720,{:.2f},food out\n", bath.temperature().celsius());
    const Truth truth = truth_of(trip, *standard, bath);
    CHECK(truth.verdict == Verdict::finish_and_eat_now);
    CHECK(truth.below_h > 2.5);

    const trip::Log log = log_from(rows);
    CHECK(reviewed(trip, log).verdict >= truth.verdict);
    CHECK(reviewed(trip, log).below_floor >= hours(truth.below_h));
    // The same rows with a last good reading from which the closed box comes down to the end: no accident is told, the
    // box alone is judged, and that is kinder. It is no artefact: the harder verdict is what the accident deserves.
    trip::Log lower = log;
    for (trip::LogRow& row : lower.rows) {
        if (row.note == "LAST") {
            row.bath = *log.rows.back().bath + units::kelvins(4.5);
        }
    }
    CHECK(reviewed(trip, lower).below_floor < hours(truth.below_h));
    // While the rows still tell of it, a lower reading is never kinder.
    Verdict before = reviewed(trip, log).verdict;
    for (double down = 0.5; last - down > log.rows.back().bath->celsius() + 7.0; down += 0.5) {
        trip::Log less = log;
        for (trip::LogRow& row : less.rows) {
            row.bath = row.note == "LAST" ? *row.bath - units::kelvins(down) : *row.bath;
        }
        CAPTURE(down);
        const Verdict now = reviewed(trip, less).verdict;
        CHECK(now >= before);
        before = now;
    }
}
