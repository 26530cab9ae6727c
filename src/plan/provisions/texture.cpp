// SPDX-License-Identifier: MIT
#include "plan/provisions/texture.hpp"

#include "plan/result/plan.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

namespace holdwater::plan {

problem::Problems held_notes(const Plan& plan) {
    problem::Problems notes;
    for (const FoodPlan& food : plan.foods) {
        const auto held = food.ready_late ? food.held() : std::nullopt;
        if (!held || !food.longest_for_texture || *held <= *food.longest_for_texture) {
            continue;
        }
        notes.push_back(problem::note(
            "held-long",
            fmt::format(
                "{} is ready {} before the last of it is eaten and at its best for about {}: soft and dry by then, "
                "not unsafe",
                food.food->name, units::print(*held, units::Toward::down), units::print(*food.longest_for_texture)),
            "light the fire later, or put this food in later (in)"));
    }
    return notes;
}

}  // namespace holdwater::plan
