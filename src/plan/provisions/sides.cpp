// SPDX-License-Identifier: MIT
#include "plan/provisions/sides.hpp"

#include "plan/provisions/boilings.hpp"
#include "plan/result/plan.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::plan {
namespace {

std::string weekday_and_time(units::LocalTime t) {
    constexpr const char* days[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    return fmt::format("{} {}", days[t.weekday()], t.clock_24());
}

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    }
    return text;
}

std::string pots(int count) {
    return fmt::format("{} {}", count, count == 1 ? "pot" : "pots");
}

void add_clash(const Boiling& boiling, const Plan& plan, Sides& sides) {
    PotClash clash{boiling.from, boiling.until, boiling.pots, plan.trip->fire.pots, {}};
    for (const SideStart& side : sides.list) {
        if (side.begin < boiling.until && boiling.from < trip::first_sitting(*plan.trip)) {
            clash.sides.push_back(side.name);
        }
    }
    clash.needed += static_cast<int>(clash.sides.size());
    std::vector<units::LocalTime> meals;  // whose finish over the fire is counted: foods of one meal share its pots
    for (const FoodPlan& food : plan.foods) {
        const bool counted = std::find(meals.begin(), meals.end(), food.eaten) != meals.end();
        if (food.finishing && !counted && food.finishing->light_fire < boiling.until && boiling.from < food.eaten) {
            clash.needed += food.finishing->pots;
            clash.sides.push_back(food.food->name);
            meals.push_back(food.eaten);
        }
    }
    if (clash.sides.empty() || clash.needed <= clash.there) {
        return;
    }
    problem::Problem warning = problem::warning(
        "side-clash",
        fmt::format("from {} to {} water for the bath boils in {} while {} {}: that is {} and there {} {}",
                    weekday_and_time(clash.from), weekday_and_time(clash.until), pots(boiling.pots),
                    joined(clash.sides), clash.sides.size() == 1 ? "cooks" : "cook", pots(clash.needed),
                    clash.there == 1 ? "is" : "are", clash.there),
        "bring one pot more, or begin the side dish earlier and keep it warm; the bath goes first");
    warning.place = plan.trip->fire_place;
    sides.notes.push_back(std::move(warning));
    sides.clashes.push_back(std::move(clash));
}

}  // namespace

Sides sides_of(const Plan& plan) {
    const trip::Trip& trip = *plan.trip;
    Sides sides;
    for (const trip::Side& side : trip.sides) {
        sides.list.push_back({side.name, trip::first_sitting(trip).after(-side.takes), side.takes});
    }
    std::stable_sort(sides.list.begin(), sides.list.end(),
                     [](const SideStart& a, const SideStart& b) { return a.begin < b.begin; });
    for (const SideStart& side : sides.list) {
        if (side.begin < trip.from) {
            sides.notes.push_back(problem::warning("side-before-fire",
                                                   fmt::format("{} would have to begin at {}, before there is a fire",
                                                               side.name, weekday_and_time(side.begin)),
                                                   "cook it at home, or serve later"));
        }
    }
    if (static_cast<int>(sides.list.size()) > trip.fire.pots) {
        sides.notes.push_back(
            problem::warning("too-many-sides",
                             fmt::format("{} side dishes are to be ready at once, and there {} {}", sides.list.size(),
                                         trip.fire.pots == 1 ? "is" : "are", pots(trip.fire.pots)),
                             "cook them one after the other and keep the first ones warm, or bring more pots"));
    }
    for (const Boiling& boiling : boilings_of(plan)) {
        add_clash(boiling, plan, sides);
    }
    return sides;
}

}  // namespace holdwater::plan
