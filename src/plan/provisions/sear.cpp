// SPDX-License-Identifier: MIT
#include "plan/provisions/sear.hpp"

#include "answer/hold/piece.hpp"
#include "facts/facts.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/setup.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <utility>

namespace holdwater::plan {
namespace {

int in_one_pan(const answer::Piece& piece) {
    const double pan = facts::facts().value("sear.pan") * 1e-3;
    const double usable = std::numbers::pi / 4.0 * pan * pan * facts::facts().value("sear.packing");
    answer::Piece alone = piece;
    alone.mass = alone.mass / alone.pieces;
    alone.pieces = 1;
    const int fit = static_cast<int>(std::floor(usable / answer::lying(alone).footprint.si()));
    return std::clamp(fit, 1, piece.pieces);
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

/// Side dishes are made for the trip's serving.
std::size_t sides_at(const Setup& setup, units::LocalTime serve) {
    return serve == setup.trip->serve ? setup.trip->sides.size() : 0;
}

void add_notes(Sear& sear, const Plan& plan, std::size_t sides) {
    const units::Duration longest = facts::facts().duration("sear.longest-out");
    if (!sear.in_time) {
        sear.notes.push_back(
            problem::warning("sear-too-long",
                             fmt::format("searing everything takes {}; food waits out of the bath for {} at the most",
                                         units::print(sear.takes, units::Toward::up), units::print(longest)),
                             "serve in two sittings, the rest stays in the bath; or bring more pans"));
    }
    const trip::Trip& trip = *plan.trip;
    if (static_cast<int>(sides) >= trip.fire.pots) {
        problem::Problem full =
            problem::warning("sear-no-place", "side dishes take up every place on the fire while the pan needs one",
                             "finish a side dish earlier and keep it warm");
        full.place = trip.fire_place;
        sear.notes.push_back(std::move(full));
    }
}

}  // namespace

units::LocalTime Sear::own_out() const {
    units::LocalTime out = take_out;
    for (const SearedFood& food : foods) {
        if (!food.elsewhere) {
            break;
        }
        out = out.after(food.takes);
    }
    return out;
}

namespace {

/// The queue for the plates at `serve`; whether a food of this box is finished over the fire instead, somebody else
/// says.
Sear queued(const Setup& setup, units::LocalTime serve, const std::function<bool(std::size_t)>& is_finished) {
    Sear sear;
    sear.serve = serve;
    // At several sittings each has its share of the pieces.
    const auto sittings = static_cast<int>(serve == setup.trip->serve ? setup.trip->earlier_sittings.size() + 1 : 1);
    const auto take = [&](const trip::Food& food, const answer::Piece& piece, bool finish, bool elsewhere) {
        if (trip::eaten(food, *setup.trip) != serve || food.use == facts::Use::keep_hot) {
            return;
        }
        if (finish) {
            sear.finished.push_back(food.name);
        } else {
            const int share = (piece.pieces + sittings - 1) / sittings;
            sear.foods.push_back({food.name, share, std::min(share, in_one_pan(piece)), turns(food.shape), 0,
                                  units::Duration{}, elsewhere});
        }
    };
    std::vector<std::pair<int, std::function<void()>>> in_order;  // of the trip file, whatever the box
    for (std::size_t i = 0; i < setup.foods.size(); ++i) {
        const FoodSetup& food = setup.foods[i];
        in_order.emplace_back(food.food->place.line, [&, i] { take(*food.food, food.piece, is_finished(i), false); });
    }
    // What comes out of another box for the same meal waits for the same pans.
    for (const trip::Food& food : setup.trip->elsewhere) {
        if (const auto standard = answer::standard_of(food, *setup.trip, *setup.box)) {
            const bool finish = standard->finish.has_value();
            in_order.emplace_back(food.place.line, [&, finish] { take(food, answer::piece_of(food), finish, true); });
        }
    }
    std::stable_sort(in_order.begin(), in_order.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [line, add] : in_order) {
        add();
    }
    queue(sear, 1);
    const int places = setup.trip->fire.pots - static_cast<int>(sides_at(setup, serve));
    for (int pans = 2; pans <= places && !sear.in_time; ++pans) {
        queue(sear, pans);
    }
    sear.take_out = serve.after(-sear.takes);
    return sear;
}

}  // namespace

Sear sear_of(const Setup& setup, const Plan& plan, units::LocalTime serve) {
    Sear sear = queued(setup, serve, [&plan](std::size_t i) {
        return i < plan.foods.size() && plan.foods[i].standard.finish.has_value();  // for what grew in it as well
    });
    if (!sear.foods.empty()) {
        add_notes(sear, plan, sides_at(setup, serve));
    }
    return sear;
}

units::Duration sear_takes(const Setup& setup, const trip::Food& food) {
    return queued(setup, trip::eaten(food, *setup.trip),
                  [&setup](std::size_t i) { return setup.foods[i].standard.finish.has_value(); })
        .takes;
}

}  // namespace holdwater::plan
