// SPDX-License-Identifier: MIT
#include "plan/sear.hpp"

#include "answer/piece.hpp"
#include "facts/facts.hpp"
#include "plan/plan.hpp"
#include "plan/setup.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace holdwater::plan {
namespace {

int in_one_pan(const FoodSetup& food) {
    const double pan = facts::facts().value("sear.pan") * 1e-3;
    const double usable = std::numbers::pi / 4.0 * pan * pan * facts::facts().value("sear.packing");
    answer::Piece alone = food.piece;
    alone.mass = alone.mass / alone.pieces;
    alone.pieces = 1;
    const int fit = static_cast<int>(std::floor(usable / answer::lying(alone).footprint.si()));
    return std::clamp(fit, 1, food.piece.pieces);
}

int turns(facts::Shape shape) {
    return shape == facts::Shape::slab ? 2 : static_cast<int>(std::lround(facts::facts().value("sear.sides")));
}

/// The queue over so many pans; every panful takes the high end of a side.
void queue(Sear& sear, int pans) {
    const facts::Facts& facts = facts::facts();
    sear.pans = pans;
    sear.side = units::seconds(facts.figure("sear.side").high);
    sear.takes = facts.duration("sear.carve");
    for (SearedFood& food : sear.foods) {
        const int panful = food.at_once * pans;
        food.rounds = (food.pieces + panful - 1) / panful;
        food.takes = (sear.side * food.sides + facts.duration("sear.handling")) * food.rounds;
        sear.takes += food.takes;
    }
    sear.in_time = sear.takes <= facts.duration("sear.longest-out");
}

void add_notes(Sear& sear, const Plan& plan) {
    const units::Duration longest = facts::facts().duration("sear.longest-out");
    if (!sear.in_time) {
        sear.notes.push_back(
            problem::warning("sear-too-long",
                             fmt::format("searing everything takes {}; food waits out of the bath for {} at the most",
                                         units::print(sear.takes, units::Toward::up), units::print(longest)),
                             "serve in two sittings, the rest stays in the bath; or bring more pans"));
    }
    const trip::Trip& trip = *plan.trip;
    if (static_cast<int>(trip.sides.size()) >= trip.fire.pots) {
        problem::Problem full =
            problem::warning("sear-no-place", "side dishes take up every place on the fire while the pan needs one",
                             "finish a side dish earlier and keep it warm");
        full.place = trip.fire_place;
        sear.notes.push_back(std::move(full));
    }
    for (const FoodPlan& food : plan.foods) {
        if (!food.standard.finish && food.ready_late > sear.take_out && food.ready_late <= trip.serve) {
            sear.notes.push_back(
                problem::warning("sear-before-ready",
                                 fmt::format("{} is surely ready only at {}, and would come out for the sear at {}",
                                             food.food->name, food.ready_late.clock_24(), sear.take_out.clock_24()),
                                 "leave it in until then: sear less, or eat that much later"));
        }
    }
}

}  // namespace

Sear sear_of(const Setup& setup, const Plan& plan) {
    Sear sear;
    for (const FoodSetup& food : setup.foods) {
        if (food.standard.finish) {
            sear.finished.push_back(food.food->name);
            continue;
        }
        sear.foods.push_back(
            {food.food->name, food.piece.pieces, in_one_pan(food), turns(food.food->shape), 0, units::Duration{}});
    }
    queue(sear, 1);
    const int places = setup.trip->fire.pots - static_cast<int>(setup.trip->sides.size());
    for (int pans = 2; pans <= places && !sear.in_time; ++pans) {
        queue(sear, pans);
    }
    sear.take_out = setup.trip->serve.after(-sear.takes);
    if (!sear.foods.empty()) {
        add_notes(sear, plan);
    }
    return sear;
}

}  // namespace holdwater::plan
