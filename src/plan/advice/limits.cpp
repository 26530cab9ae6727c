// SPDX-License-Identifier: MIT
#include "plan/advice/limits.hpp"

#include "facts/facts.hpp"
#include "heat/level.hpp"
#include "plan/advice/binding.hpp"
#include "plan/result/judged_warming.hpp"
#include "safety/refusals.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace holdwater::plan {
namespace {

using problem::Problem;
using problem::Problems;
using units::System;
using units::Toward;

Problem at(problem::Place place, Problem problem) {
    problem.place = std::move(place);
    return problem;
}

std::string day_time(units::LocalTime t) {
    return t.date() + " " + t.clock_24();
}

/// The ends of the zone in which germs grow, in both systems: whoever reads this may know only one.
std::string zone_from() {
    return safety::in_both(facts::facts().temperature("come-up.from"));
}
std::string zone_to() {
    return safety::in_both(facts::facts().temperature("come-up.to"));
}

bool takes_over(const FoodPlan& food, units::Duration limit) {
    // A trip that ends sooner than the limit is short of time, not slow to warm.
    return (!food.come_up.high || *food.come_up.high > limit) && food.due.since(food.in) > limit;
}

/// Too long on its way through the zone in which germs grow.
std::optional<Problem> too_slow(const FoodPlan& food) {
    const units::Duration refuse = facts::facts().duration("come-up.refuse");
    if (!takes_over(food, refuse)) {
        return std::nullopt;
    }
    return at(food.food->place,
              problem::error("come-up-too-slow",
                             fmt::format("{}: the core may take more than {:.0f} h from {} to {}; that is "
                                         "too long in the zone in which germs grow",
                                         food.food->name, units::in_hours(refuse), zone_from(), zone_to()),
                             "thinner or split pieces, free in the water, or a hotter bath"));
}

/// A plan that goes as expected, and whose written log says throw it away all the same.
std::optional<Problem> log_condemned(const Ensemble& ensemble, const FoodPlan& food, const Plan& plan,
                                     const std::vector<ScenarioResult>& results) {
    const units::Duration refuse = facts::facts().duration("come-up.refuse");
    const bool read = plan.trip->boxes.front().thermometer.has_value();
    // A trip that ends sooner than the limit has no such log.
    if (!read || food.standard.kept_hot || food.leaves().since(food.in) <= refuse ||
        surely_comes_up(plan, food, low_readings(ensemble, results, food))) {
        return std::nullopt;
    }
    return at(food.food->place,
              problem::error("come-up-too-slow",
                             fmt::format("{}: by what is read the core may take more than {:.0f} h from {} to {}, with "
                                         "piece and thermometer at their worst; whoever judges its log throws it "
                                         "away",
                                         food.food->name, units::in_hours(refuse), zone_from(), zone_to()),
                             "thinner or split pieces, a more exact thermometer, or a hotter bath"));
}

/// To be finished over the fire, and cannot be.
std::optional<Problem> no_finish(const FoodPlan& food, units::Temperature boiling) {
    if (!food.standard.finish) {
        return std::nullopt;
    }
    const units::Temperature full = food.standard.finish->core;
    if (takes_over(food, facts::facts().duration("come-up.warn"))) {
        return at(food.food->place,
                  problem::error("too-thick-to-finish",
                                 fmt::format("{}: it must be finished over the fire to {}, and a piece that warms this "
                                             "slowly cannot be",
                                             food.food->name, units::print(full, System::metric, {1, Toward::up})),
                                 "thinner pieces"));
    }
    if (!food.finishing) {
        return at(food.food->place,
                  problem::error("finish-impossible",
                                 fmt::format("{}: it must be finished over the fire to {}, and water that boils at {} "
                                             "does not bring its middle there",
                                             food.food->name, safety::in_both(full),
                                             units::print(boiling, System::metric, {1, Toward::down})),
                                 "cook lower down, or take a whole piece of red meat"));
    }
    return std::nullopt;
}

std::string when_ready(const FoodPlan& food) {
    if (!food.ready_late) {
        return fmt::format("not surely ready by the serving time {}", day_time(food.due));
    }
    if (food.finishing) {
        return fmt::format("surely ready for the fire only at {}, and for the meal at {} it must leave the bath at {}",
                           day_time(*food.ready_late), day_time(food.due), day_time(food.leaves()));
    }
    if (food.leaves() < food.due) {
        return fmt::format("surely ready only at {}, and for the meal at {} the first piece goes into the pan at {}",
                           day_time(*food.ready_late), day_time(food.due), day_time(food.leaves()));
    }
    return fmt::format("surely ready only at {}, after the serving time {}", day_time(*food.ready_late),
                       day_time(food.due));
}

/// In time only on the condition of readings that the likely bath comes under: a cook who reads what is to be expected
/// would have to wait longer than the plan says.
bool rests_on_luck(const FoodPlan& food) {
    return food.ready_if > food.coolest.likely;
}

Problem only_by_luck(const FoodPlan& food, const trip::Trip& trip) {
    return at(
        food.food->out ? food.food->out_place : trip.serve_place,
        problem::error("not-ready-in-time",
                       fmt::format("{}: surely ready by {} only if the bath never reads under {}, and it is to be "
                                   "expected to read {}",
                                   food.food->name, day_time(food.leaves()),
                                   units::print(food.ready_if, System::both, {1, Toward::up}),
                                   units::print(food.coolest.likely, System::both, {1, Toward::down})),
                       "serve later, begin earlier, thinner pieces, or a wider tolerance for a hotter bath"));
}

/// `seen`: a plan from a box that was seen on the way; its readings so far are known, and break no condition.
std::optional<Problem> too_late(const FoodPlan& food, const trip::Trip& trip, bool seen) {
    const auto in_time = [&food](const std::optional<units::LocalTime>& when) {
        return when && *when <= food.leaves();
    };
    if (in_time(food.ready_late)) {
        return !seen && rests_on_luck(food) ? std::optional(only_by_luck(food, trip)) : std::nullopt;
    }
    const bool growth = food.ready_late ? food.growth_waits : food.growth_left.high > 0.0;
    if (food.finished_for_growth || (!food.standard.finish && in_time(food.done_late) && growth)) {
        return at(food.food->place,
                  problem::error("growth-not-undone",
                                 fmt::format("{}: while the core warms germs grow in it, and at {} they are not surely "
                                             "dead; it cannot be finished over the fire either",
                                             food.food->name, day_time(food.due)),
                                 "serve later, thinner pieces, or a higher target for a hotter bath"));
    }
    return at(food.food->out ? food.food->out_place : trip.serve_place,
              problem::error("not-ready-in-time", food.food->name + ": " + when_ready(food),
                             "serve later, begin earlier, thinner pieces, or a wider tolerance for a hotter bath"));
}

/// The heaviest of what is against it.
std::optional<Problem> fault_of(const FoodPlan& food, const Plan& plan, bool seen) {
    if (auto slow = too_slow(food)) {
        return slow;
    }
    auto unfinished = no_finish(food, plan.levels.boiling);
    return unfinished ? unfinished : too_late(food, *plan.trip, seen);
}

/// "1 pot of 5.0 L that boils in 25 min".
std::string pots_that_boil(const trip::Trip& trip) {
    const bool one = trip.fire.pots == 1;
    return fmt::format("{} {} of {} that {} in {}", trip.fire.pots, one ? "pot" : "pots",
                       units::print(trip.fire.pot, System::metric), one ? "boils" : "boil",
                       units::print(trip.fire.boils_in));
}

std::string all_of(const std::vector<Binding>& bound, const Setup& setup,
                   std::string (*text)(const Binding&, const Setup&), std::string_view between) {
    std::string all;
    for (const Binding& one : bound) {
        all += (all.empty() ? "" : std::string(between)) + text(one, setup);
    }
    return all;
}

/// The bath cannot be held, by the limit that binds: the one that alone, if it were wider, would let it hold.
Problem bath_refusal(const Setup& setup, bool too_hot, bool diagnose) {
    const std::vector<Binding> bound = diagnose ? bath_bound_by(setup) : std::vector<Binding>{};
    const bool room = bound.empty() ? too_hot : bound.front().limit == Binding::Limit::room;
    const problem::Code code = room ? problem::Code("core-too-hot") : problem::Code("bath-falls-too-fast");
    const problem::Place place = room ? setup.foods.front().food->place : setup.box->place;
    if (!bound.empty()) {
        return at(place, problem::error(code, "the bath cannot be held: " + all_of(bound, setup, words_of, "; or "),
                                        all_of(bound, setup, mend_of, ", or ")));
    }
    // No limit alone: each is named with its figure.
    return at(place,
              problem::error(code,
                             fmt::format("the bath cannot be held between {} and a core of {}: not with a box of "
                                         "{:.2f} W/K and {}",
                                         units::print(setup.levels.action_line, System::both, {0.1, Toward::up}),
                                         units::print(setup.highest_core, System::both, {0.1, Toward::down}),
                                         setup.loss.likely.si(), pots_that_boil(*setup.trip)),
                             "a better box, more or larger pots, and more room between bath and core"));
}

/// Adds the limit that binds to what is said of food that is not ready in time.
void say_why_late(const Setup& setup, Problems& broken) {
    std::optional<std::vector<Binding>> bound;
    for (Problem& one : broken) {
        if (one.code == "not-ready-in-time") {
            bound = bound ? bound : ready_bound_by(setup);
            if (!bound->empty()) {
                one.message += ": " + all_of(*bound, setup, words_of, "; or ");
                one.hint = all_of(*bound, setup, mend_of, ", or ");
            }
        }
    }
}

}  // namespace

Problems fill_impossible(const Setup& setup, bool diagnose) {
    const std::vector<Binding> bound = diagnose ? fill_bound_by(setup) : std::vector<Binding>{};
    const std::string why = bound.empty()
                                ? fmt::format("not with {} and water that boils at {}", pots_that_boil(*setup.trip),
                                              units::print(setup.levels.boiling, System::metric, {1, Toward::down}))
                                : all_of(bound, setup, words_of, "; or ");
    return {
        at(setup.trip->fire_place,
           problem::error("fill-impossible",
                          fmt::format("{:.0f} L at {} or more cannot be had: {}", units::in_litres(setup.box->water),
                                      units::print(setup.levels.action_line, System::metric, {1, Toward::up}), why),
                          bound.empty() ? "fill less water, or more or larger pots, or a better box"
                                        : all_of(bound, setup, mend_of, ", or ")))};
}

Problems limits_broken(const Ensemble& ensemble, const Schedule& schedule, const Plan& plan,
                       const std::vector<ScenarioResult>& results, bool diagnose) {
    const Setup& setup = ensemble.setup();
    Problems broken;
    const trip::Trip& trip = *setup.trip;
    if (plan.fill.food_in >= trip.serve) {
        return {at(trip.serve_place, problem::error("serve-too-early",
                                                    fmt::format("the bath is filled only at {}, the meal is due at {}",
                                                                day_time(plan.fill.food_in), day_time(trip.serve)),
                                                    "serve later, begin earlier, or use more pots"))};
    }
    for (const FoodPlan& food : plan.foods) {
        auto fault = fault_of(food, plan, schedule.seen.has_value());
        fault = fault ? std::move(fault) : log_condemned(ensemble, food, plan, results);
        if (fault) {
            broken.push_back(std::move(*fault));
        }
    }
    std::vector<units::TemperatureDifference> excess;
    for (const ScenarioResult& one : results) {
        excess.push_back(one.excess);
    }
    const bool too_hot = quantile_high(excess, 1.0 - ensemble.allowed()) > units::kelvins(1e-9);
    const bool falls = !schedule.boils_in_time || 1.0 - plan.promise.share > ensemble.allowed() + 1e-9;
    if (too_hot || falls) {
        // What else is wrong may come of it, so it is told first.
        broken.insert(broken.begin(), bath_refusal(setup, too_hot, diagnose));
    } else if (diagnose) {
        say_why_late(setup, broken);
    }
    return broken;
}

Problems remarks(const Setup& setup, const Plan& plan) {
    Problems notes;
    for (const FoodPlan& food : plan.foods) {
        if (food.finished_for_growth) {
            notes.push_back(
                at(food.food->place,
                   problem::warning(
                       "growth-finish",
                       fmt::format("{}: finished over the fire, since germs that grew in it while it warmed are "
                                   "not all dead by {}",
                                   food.food->name, day_time(food.due)),
                       "serve later, take thinner pieces or a higher target, and the bath alone will do")));
        }
        if (food.come_up.high && *food.come_up.high > facts::facts().duration("come-up.warn")) {
            notes.push_back(
                at(food.food->place,
                   problem::warning("come-up-slow",
                                    fmt::format("{}: the core may take {} from {} to {}", food.food->name,
                                                units::print(*food.come_up.high, Toward::up), zone_from(), zone_to()),
                                    "thinner pieces are safer")));
        }
    }
    for (const FoodSetup& food : setup.foods) {
        if (heat::floats(answer::properties_of(food.piece, heat::Bound::likely).density, plan.fill.reading)) {
            notes.push_back(
                at(food.food->place,
                   problem::warning("food-floats",
                                    fmt::format("{} is lighter than the bath and floats: what is out of the "
                                                "water does not cook",
                                                food.food->name),
                                    "tie a clean stone or spoon to the bag, or lay a rack on top")));
        }
    }
    if (setup.loss.weak) {
        notes.push_back(at(setup.box->place,
                           problem::warning("box-test-weak", "the box test fell by less than 5 K",
                                            "test longer: the loss is known poorly and the plan is stricter for it")));
    }
    return notes;
}

}  // namespace holdwater::plan
