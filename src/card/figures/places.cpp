// SPDX-License-Identifier: MIT
#include "card/figures/places.hpp"

#include "plan/result/ready_condition.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace holdwater::card {

HoldPlaces hold_places(const plan::Plan& plan, const plan::FoodPlan& food) {
    HoldPlaces places;
    for (const plan::FoodPlan& one : plan.foods) {
        const int cells = static_cast<int>(one.hold.baths.size() * one.hold.thicknesses.size());
        if (&one == &food) {
            break;
        }
        places.bath += static_cast<int>(one.hold.baths.size());
        places.row += static_cast<int>(one.hold.thicknesses.size());
        places.cell += cells;
    }
    return places;
}

namespace {

/// `before`: how many before it have the same name.
Which named_place(const std::string& name, int before) {
    return {before > 0 ? std::optional(before + 1) : std::nullopt, name};
}

}  // namespace

std::optional<units::Temperature> settled_reads(const plan::Plan& plan) {
    if (!plan::tells_settled(plan)) {
        return std::nullopt;
    }
    const units::Temperature reads = plan::should_read(plan, plan::settled_at(plan), plan.fill.after_food.low);
    const bool told = reads > plan.levels.action_line && reads != plan.levels.mark;
    return told ? std::optional(reads) : std::nullopt;
}

std::optional<units::Temperature> away_below(const plan::Plan& plan) {
    const auto& rows = plan.night.morning;
    const auto kept = std::find_if(rows.rbegin(), rows.rend(), [](const plan::MorningRow& row) {
        return std::any_of(row.cells.begin(), row.cells.end(), [](const plan::MorningRow::Cell& cell) {
            return cell.action != safety::FallAction::throw_away;
        });
    });
    if (rows.empty() || kept == rows.rbegin()) {
        return std::nullopt;
    }
    return kept == rows.rend() ? plan.levels.read_floor : kept->reading;
}

Which food_place(const plan::Plan& plan, const plan::FoodPlan& food) {
    int before = 0;
    for (const plan::FoodPlan& one : plan.foods) {
        if (&one == &food) {
            break;
        }
        before += one.food->name == food.food->name ? 1 : 0;
    }
    return named_place(food.food->name, before);
}

Which side_place(const plan::Sides& sides, std::size_t index) {
    int before = 0;
    for (std::size_t i = 0; i < index; ++i) {
        before += sides.list[i].name == sides.list[index].name ? 1 : 0;
    }
    return named_place(sides.list[index].name, before);
}

}  // namespace holdwater::card
