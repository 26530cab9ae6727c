// SPDX-License-Identifier: MIT
#include "plan/advice/binding.hpp"

#include "plan/search/recipe.hpp"
#include "plan/search/scenario_result.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace holdwater::plan {
namespace {

using trip::Trip;
using units::System;
using units::Toward;
using Limit = Binding::Limit;

// How far each limit is relaxed, and in how many scenarios it is tried: how finely a cause is worth finding, no figures
// of any science.
constexpr int most_room = 8;              // K
constexpr double fine_thermometer = 0.1;  // K
constexpr int many_pots = 12;             // times as many
constexpr double quick_fire = 0.25;       // of the time
constexpr double tight_box = 0.25;        // of the loss
constexpr double warm_water = 30.0;       // C
constexpr double much_later = 12.0;       // h
constexpr Draw few{32, 1};

void relax(Trip& trip, const Setup& setup, Limit limit, int kelvins) {
    trip::Box& box = trip.boxes.front();
    switch (limit) {
        case Limit::room:
            for (trip::Food& food : trip.foods) {
                food.tolerance += units::kelvins(kelvins);
            }
            return;
        case Limit::thermometer:
            box.thermometer = units::kelvins(fine_thermometer);
            return;
        case Limit::pots:
            trip.fire.pots *= many_pots;
            return;
        case Limit::fire:
            trip.fire.boils_in = trip.fire.boils_in * quick_fire;
            return;
        case Limit::box:
            box.test = setup.loss.likely * tight_box;
            return;
        case Limit::water:
            trip.fire.cold_water = std::max(trip.fire.cold_water, units::celsius(warm_water));
            return;
        case Limit::time:
            trip.serve = trip.serve.after(units::hours(much_later));
            for (trip::Food& food : trip.foods) {
                food.out = food.out ? std::optional(food.out->after(units::hours(much_later))) : std::nullopt;
            }
            return;
    }
}

/// Calls `mended` with the setup of a trip in which one limit is relaxed; false where that is no trip.
bool with_relaxed(const Setup& setup, Limit limit, int kelvins, const std::function<bool(const Setup&)>& mended) {
    Trip trip = *setup.trip;
    relax(trip, setup, limit, kelvins);
    const auto relaxed = set_up(trip);
    return relaxed && mended(*relaxed);
}

bool schedule_holds(const Setup& setup) {
    const auto schedule = make_schedule(Ensemble(setup, few));
    return schedule && holds(*schedule);
}

bool ready_in_time(const Setup& setup) {
    const Ensemble ensemble(setup, few);
    const auto schedule = make_schedule(ensemble);
    if (!schedule || !holds(*schedule)) {
        return false;
    }
    const std::vector<ScenarioResult> results = simulate(ensemble, *schedule);
    for (std::size_t food = 0; food < setup.foods.size(); ++food) {
        std::vector<std::optional<units::Duration>> ready;
        for (const ScenarioResult& one : results) {
            ready.push_back(one.foods[food].ready);
        }
        const auto late = quantile_high(ready, 1.0 - allowed_failures());
        if (!late || *late > setup.foods[food].out) {
            return false;
        }
    }
    return true;
}

bool can_be_filled(const Setup& setup) {
    return recipe_for(setup, units::celsius(std::ceil(setup.levels.action_line.celsius()))).has_value();
}

/// The least whole kelvins of room with which it holds; more than most_room: not even with that.
int least_room(const Setup& setup, bool (*mended)(const Setup&)) {
    const auto enough = [&](int kelvins) { return with_relaxed(setup, Limit::room, kelvins, mended); };
    if (!enough(most_room)) {
        return most_room + 1;
    }
    int short_of = 0;
    int good = most_room;
    while (good - short_of > 1) {
        const int middle = (short_of + good) / 2;
        (enough(middle) ? good : short_of) = middle;
    }
    return good;
}

std::string up(units::Temperature t) {
    return units::print(t, System::both, {0.1, Toward::up});
}

const trip::Food& coolest(const Setup& setup) {
    return *std::min_element(
        setup.trip->foods.begin(), setup.trip->foods.end(),
        [](const trip::Food& a, const trip::Food& b) { return a.target + a.tolerance < b.target + b.tolerance; });
}

std::string pots_of(const trip::Fire& fire) {
    return fmt::format("{} {} of {}", fire.pots, fire.pots == 1 ? "pot" : "pots",
                       units::print(fire.pot, System::metric));
}

}  // namespace

std::vector<Binding> bath_bound_by(const Setup& setup) {
    std::vector<Binding> found;
    if (const int room = least_room(setup, schedule_holds); room <= most_room) {
        found.push_back({Limit::room, units::kelvins(room)});
    }
    std::vector<Limit> others{Limit::pots, Limit::fire, Limit::box};
    if (setup.box->thermometer) {
        others.insert(others.begin(), Limit::thermometer);
    }
    for (const Limit limit : others) {
        if (with_relaxed(setup, limit, 0, schedule_holds)) {
            found.push_back({limit, {}});
        }
    }
    return found;
}

std::vector<Binding> ready_bound_by(const Setup& setup) {
    std::vector<Binding> found;
    if (const int room = least_room(setup, ready_in_time); room <= most_room) {
        found.push_back({Limit::room, units::kelvins(room)});
    }
    for (const Limit limit : {Limit::time, Limit::pots, Limit::fire, Limit::box}) {
        if (with_relaxed(setup, limit, 0, ready_in_time)) {
            found.push_back({limit, {}});
        }
    }
    return found;
}

std::vector<Binding> fill_bound_by(const Setup& setup) {
    std::vector<Binding> found;
    for (const Limit limit : {Limit::pots, Limit::fire, Limit::box, Limit::water}) {
        if (with_relaxed(setup, limit, 0, can_be_filled)) {
            found.push_back({limit, {}});
        }
    }
    return found;
}

std::string words_of(const Binding& binding, const Setup& setup) {
    const trip::Fire& fire = setup.trip->fire;
    switch (binding.limit) {
        case Limit::room:
            return fmt::format("the bath must stay over {} and the core of {} under {}, which leaves too little room",
                               up(setup.levels.action_line), coolest(setup).name,
                               units::print(setup.highest_core, System::both, {0.1, Toward::down}));
        case Limit::thermometer:
            return fmt::format("the thermometer may be {} off, so that the bath must read {} or more",
                               units::print(*setup.box->thermometer, System::metric, {0.1}),
                               up(setup.levels.action_line));
        case Limit::pots:
            return fmt::format("{} {} too little at once", pots_of(fire), fire.pots == 1 ? "gives" : "give");
        case Limit::fire:
            return fmt::format("{} {} too slow to boil, {}", pots_of(fire), fire.pots == 1 ? "is" : "are",
                               units::print(fire.boils_in));
        case Limit::box:
            return fmt::format("the box loses too much heat, {:.2f} W/K in still air", setup.loss.likely.si());
        case Limit::water:
            return fmt::format("the cold water is too cold, {}", units::print(fire.cold_water, System::both, {0.1}));
        case Limit::time:
            return fmt::format("from the first fire to the meal it has only {}",
                               units::print(setup.trip->serve.since(setup.trip->from)));
    }
    return {};
}

std::string mend_of(const Binding& binding, const Setup& setup) {
    switch (binding.limit) {
        case Limit::room:
            return fmt::format("leave {:.0f} K more: a higher target or a wider tolerance", binding.more.si());
        case Limit::thermometer:
            return "a thermometer with less error, checked in ice slush";
        case Limit::pots:
            return "more or larger pots";
        case Limit::fire:
            return "a hotter fire";
        case Limit::box:
            return setup.box->thermometer ? "a better box, more water in it, or a calmer place"
                                          : "a better box or a calmer place";
        case Limit::water:
            return "warm the cold water first";
        case Limit::time:
            return "serve later, begin earlier, or thinner pieces";
    }
    return {};
}

}  // namespace holdwater::plan
