// SPDX-License-Identifier: MIT
// Changes that make a refused food an allowed one, always by the rules of the trip's own country.
#include "answer/hold/piece.hpp"
#include "facts/facts.hpp"
#include "plan/advice/lever.hpp"
#include "safety/finish.hpp"
#include "safety/refusals.hpp"
#include "trip/ranges.hpp"
#include "units/parse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace holdwater::plan {
namespace {

using trip::Food;
using trip::Trip;
using Kind = Lever::Kind;

/// The box that a food lies in.
trip::Box& box_of(Trip& trip, const Food& food) {
    const auto own = std::find_if(trip.boxes.begin(), trip.boxes.end(),
                                  [&food](const trip::Box& box) { return box.name == food.box; });
    return own != trip.boxes.end() && trip.boxes.size() > 1 ? *own : trip.boxes.front();
}

/// What decides about a food, with its rule; nothing where its kind or a rule is not there.
struct Asked {
    safety::Request request;
    const facts::Rule* rule = nullptr;
};
std::optional<Asked> asked_of(Trip& trip, const Food& food) {
    const facts::FoodKind* const kind = facts::facts().find_food(food.kind);
    if (kind == nullptr || trip.boxes.empty()) {
        return std::nullopt;
    }
    const safety::Request request = answer::request_of(*kind, food, trip, box_of(trip, food));
    const facts::Rule* const rule = facts::facts().find_rule(trip.rules, request.category);
    return rule != nullptr ? std::optional(Asked{request, rule}) : std::nullopt;
}

/// A food that no bath may cook, whatever is changed.
bool is_for_no_bath(Trip& trip, const Food& food) {
    const auto standard = answer::standard_of(food, trip, box_of(trip, food));
    return !standard && std::any_of(standard.problems().begin(), standard.problems().end(),
                                    [](const auto& p) { return p.code == "category-refused" || p.code == "no-rule"; });
}

/// Lower than the rules allow for this food and these eaters.
bool is_too_low(Trip& trip, const Food& food) {
    const auto standard = answer::standard_of(food, trip, box_of(trip, food));
    return !standard && std::any_of(standard.problems().begin(), standard.problems().end(), [](const auto& p) {
        return p.code == "target-too-low" || p.code == "at-risk-target-too-low";
    });
}

/// Over the fire the core need not get so hot in the bath first.
bool is_relieved_by_fire(Trip& trip, const Food& food) {
    const auto asked = asked_of(trip, food);
    return asked && !food.over_fire && asked->request.has_thermometer && !safety::finish_for(asked->request) &&
           safety::lowest_over_fire(*asked->rule) < safety::lowest_target(asked->request, *asked->rule);
}

/// Finished over the fire, where it gets hotter than any bath makes it: in the bath it is as done as that asks for, and
/// no more, and how even it is there does not matter.
void finish_over_fire(Trip& trip, Food& food) {
    food.over_fire = true;
    const auto asked = asked_of(trip, food);
    const units::Temperature lowest =
        units::celsius(std::ceil(std::max(safety::lowest_over_fire(*asked->rule), asked->rule->action_line).celsius()));
    food.target = lowest;
    const auto widest = units::parse<units::TemperatureDifference>(trip::ranges::tolerance.high).value();
    const units::TemperatureDifference room = safety::finish_for(asked->request)->core - food.target;
    food.tolerance = std::max(food.tolerance, std::min(widest, room));
}

Lever once(Kind kind, const char* cost) {
    Lever lever;
    lever.kind = kind;
    lever.at_once = facts::facts().value(cost);
    return lever;
}

std::string named_in(const Trip& before, const Trip& after, const std::function<bool(const Food&)>& meant) {
    std::string names;
    for (const Food& food : after.foods) {
        if (meant(food)) {
            names += (names.empty() ? "" : ", ") + food.name;
        }
    }
    return before.foods.size() > 1 ? " for " + names : std::string{};
}

void add_dropped(Trip& trip, std::vector<Lever>& levers) {
    const auto lost = std::count_if(trip.foods.begin(), trip.foods.end(),
                                    [&trip](const Food& food) { return is_for_no_bath(trip, food); });
    if (lost == 0 || static_cast<std::size_t>(lost) == trip.foods.size()) {
        return;  // nothing is left for the bath
    }
    Lever lever = once(Kind::dropped, "bend.dropped");
    lever.pull = [](Trip& t, int) {
        Trip whole = t;
        std::erase_if(t.foods, [&whole](const Food& food) { return is_for_no_bath(whole, food); });
    };
    lever.words = [](const Trip& before, const Trip& after) {
        std::string names;
        for (const Food& food : before.foods) {
            const bool kept = std::any_of(after.foods.begin(), after.foods.end(),
                                          [&food](const Food& f) { return f.name == food.name; });
            names += kept ? "" : (names.empty() ? "" : ", ") + food.name;
        }
        return fmt::format("[[food]] {} left out (cooked over the fire, not in a bath)", names);
    };
    levers.push_back(std::move(lever));
}

/// As hot as it goes in once it was boiled through, by the trip's own rules; nothing where they let nothing be kept
/// hot.
std::optional<units::Temperature> hot_from_the_fire(const Trip& trip) {
    const facts::Facts& facts = facts::facts();
    const auto& hot = facts.rules_of(trip.rules).keep_hot;
    if (!hot) {
        return std::nullopt;
    }
    const units::Temperature kept = facts.temperature(hot->floor) + units::kelvins(facts.spread("start").high);
    return units::celsius(std::ceil(std::max(kept, facts.temperature(hot->reheat)).celsius()));
}

/// Roots and dishes that no bath cooks can be cooked over the fire first; the bath keeps them hot until the meal.
void add_keep_hot(Trip& trip, std::vector<Lever>& levers) {
    const auto may_be_kept = [](Trip& whole, const Food& food) {
        const facts::FoodKind* const kind = facts::facts().find_food(food.kind);
        const auto category = kind != nullptr ? kind->category : facts::Category::egg;
        return (category == facts::Category::vegetable || category == facts::Category::cooked_dish) &&
               is_for_no_bath(whole, food);
    };
    const auto hot = hot_from_the_fire(trip);
    if (!hot ||
        std::none_of(trip.foods.begin(), trip.foods.end(), [&](const Food& food) { return may_be_kept(trip, food); })) {
        return;
    }
    Lever lever = once(Kind::keep_hot, "bend.keep-hot");
    lever.pull = [may_be_kept, hot](Trip& t, int) {
        Trip whole = t;
        for (Food& food : t.foods) {
            if (may_be_kept(whole, food)) {
                trip::keep_hot(food, *hot);
            }
        }
    };
    lever.words = [](const Trip& before, const Trip& after) {
        const auto kept = [](const Food& food) { return food.use == facts::Use::keep_hot; };
        const auto one = std::find_if(after.foods.begin(), after.foods.end(), kept);
        return fmt::format(
            "use = \"keep-hot\", start = \"{}\"{} (boiled through over the fire first; the box keeps "
            "it hot)",
            one != after.foods.end() ? written(one->start) : "", named_in(before, after, kept));
    };
    levers.push_back(std::move(lever));
}

/// Of several foods each may be cooked over the fire instead: dear, since that is another dish.
void add_left_out(const Trip& trip, std::vector<Lever>& levers) {
    for (std::size_t i = 0; i < trip.foods.size() && trip.foods.size() > 1; ++i) {
        const std::string name = trip.foods[i].name;
        Lever lever = once(Kind::left_out, "bend.left-out");
        lever.pull = [name](Trip& t, int) {
            if (t.foods.size() > 1) {
                std::erase_if(t.foods, [&name](const Food& food) { return food.name == name; });
            }
        };
        lever.words = [name](const Trip&, const Trip&) {
            return fmt::format("[[food]] {} left out (cooked over the fire, not in this bath)", name);
        };
        levers.push_back(std::move(lever));
    }
}

void add_gauges(Trip& trip, std::vector<Lever>& levers) {
    const auto blind = [](const trip::Box& box) { return !box.thermometer; };
    if (std::none_of(trip.boxes.begin(), trip.boxes.end(), blind)) {
        return;
    }
    Lever lever = once(Kind::thermometer, "bend.thermometer");
    lever.pull = [blind](Trip& t, int) {
        for (trip::Box& box : t.boxes) {
            if (blind(box)) {
                box.thermometer = units::parse<units::TemperatureDifference>(trip::ranges::thermometer.example).value();
            }
        }
    };
    lever.words = [](const Trip&, const Trip& after) {
        return fmt::format("thermometer = \"{}\" (bring one, checked in ice slush)",
                           written(*after.boxes.front().thermometer));
    };
    levers.push_back(lever);
    if (std::all_of(trip.boxes.begin(), trip.boxes.end(), [](const trip::Box& box) { return box.wax_tell_tale; })) {
        return;
    }
    Lever wax = once(Kind::wax, "bend.wax");
    wax.pull = [blind](Trip& t, int) {
        for (trip::Box& box : t.boxes) {
            box.wax_tell_tale = box.wax_tell_tale || blind(box);
        }
    };
    wax.words = [](const Trip&, const Trip&) {
        return std::string("wax = true (a crumb of pure beeswax, sealed in, goes in with the food)");
    };
    levers.push_back(std::move(wax));
}

void add_lowest(Trip& trip, std::vector<Lever>& levers) {
    if (std::none_of(trip.foods.begin(), trip.foods.end(), [&](const Food& food) { return is_too_low(trip, food); })) {
        return;
    }
    Lever lever = once(Kind::lowest, "bend.target");
    lever.pull = [](Trip& t, int) {
        for (Food& food : t.foods) {
            if (is_too_low(t, food)) {
                const auto asked = asked_of(t, food);
                food.target = safety::lowest_target(asked->request, *asked->rule);
            }
        }
    };
    lever.words = [](const Trip& before, const Trip& after) {
        std::string text;
        for (const Food& food : after.foods) {
            const auto own = std::find_if(before.foods.begin(), before.foods.end(),
                                          [&food](const Food& f) { return f.name == food.name; });
            if (own != before.foods.end() && own->target < food.target && own->over_fire == food.over_fire) {
                text += fmt::format("{}target = \"{}\"{}", text.empty() ? "" : ", ", written(food.target),
                                    before.foods.size() > 1 ? " for " + food.name : "");
            }
        }
        return text.empty() ? text : text + " (the lowest that is allowed)";
    };
    levers.push_back(std::move(lever));
}

void add_over_fire(Trip& trip, std::vector<Lever>& levers) {
    // Whoever has no thermometer yet may get one: the change before this.
    Trip measured = trip;
    for (trip::Box& box : measured.boxes) {
        box.thermometer = box.thermometer.value_or(units::kelvins(1));
    }
    if (std::none_of(measured.foods.begin(), measured.foods.end(),
                     [&measured](const Food& food) { return is_relieved_by_fire(measured, food); })) {
        return;
    }
    Lever lever = once(Kind::over_fire, "bend.fire");
    lever.rises = false;  // it takes time before the meal
    lever.pull = [](Trip& t, int) {
        for (Food& food : t.foods) {
            if (is_relieved_by_fire(t, food)) {
                finish_over_fire(t, food);
            }
        }
    };
    lever.words = [](const Trip& before, const Trip& after) {
        std::string baths;
        for (const Food& food : after.foods) {
            if (food.over_fire) {
                baths += fmt::format("{}target = \"{}\", tolerance = \"{}\"", baths.empty() ? "" : "; ",
                                     written(food.target), written(food.tolerance));
            }
        }
        return fmt::format("over_fire = true{} (finished over the fire after the bath; in the bath {})",
                           named_in(before, after, [](const Food& food) { return food.over_fire; }), baths);
    };
    levers.push_back(std::move(lever));
}

}  // namespace

void add_rule_levers(const Trip& as_given, std::vector<Lever>& levers) {
    Trip trip = as_given;
    add_dropped(trip, levers);
    add_keep_hot(trip, levers);
    add_left_out(trip, levers);
    add_gauges(trip, levers);
    add_lowest(trip, levers);
    add_over_fire(trip, levers);
}

}  // namespace holdwater::plan
