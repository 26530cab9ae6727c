// SPDX-License-Identifier: MIT
#include "card/figures/places.hpp"

#include "plan/result/look_again.hpp"
#include "plan/result/overnight.hpp"
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

namespace {

/// The lowest reading after which the card Night leaves the box alone from the settled look to the next of Plan.
std::optional<units::Temperature> keeps_until_next_look(const plan::Plan& plan) {
    const units::LocalTime look = plan::settled_at(plan);
    units::LocalTime next = plan.trip->serve;
    if (!plan.top_ups.empty()) {
        next = plan.top_ups.front().light_fire;
    } else if (std::none_of(plan.foods.begin(), plan.foods.end(),
                            [&](const plan::FoodPlan& food) { return food.leaves() >= next; })) {
        next = look;  // until the last food leaves the bath
        for (const plan::FoodPlan& food : plan.foods) {
            next = std::max(next, food.leaves());
        }
    }
    std::optional<units::Temperature> lowest;
    for (const plan::Unattended& row : plan.night.unattended) {
        const units::Duration printed{units::round_to(row.longest.si(), 900.0, units::Toward::down)};
        if (printed >= next.since(look) && (!lowest || row.reading < *lowest)) {
            lowest = row.reading;
        }
    }
    return lowest;
}

}  // namespace

std::optional<units::Temperature> settled_reads(const plan::Plan& plan) {
    if (!plan::tells_settled(plan)) {
        return std::nullopt;
    }
    units::Temperature reads = plan::should_read(plan, plan::settled_at(plan), plan.fill.after_food.low);
    // Over a night, and where others light the fire already, it must be left so long by the table of the card Night.
    if (plan::overnight(plan) || reads <= plan.levels.action_line) {
        const auto until_next = keeps_until_next_look(plan);
        if (!until_next) {
            return std::nullopt;
        }
        reads = std::max(reads, *until_next);
    }
    return reads != plan.levels.mark ? std::optional(reads) : std::nullopt;
}

std::optional<units::Temperature> settled_least(const plan::Plan& plan) {
    const units::Temperature reads = plan::should_read(plan, plan::settled_at(plan), plan.fill.after_food.low);
    if (!plan::tells_settled(plan) || reads > plan.levels.action_line) {
        return std::nullopt;
    }
    return settled_reads(plan).value_or(plan::first_over(plan.levels.action_line, plan.trip->units));
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
