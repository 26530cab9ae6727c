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

std::vector<int> printed_rungs(const plan::Plan& plan) {
    constexpr int most = 3;
    const int rungs = static_cast<int>(plan.ladder.size());
    if (rungs <= most) {
        std::vector<int> all(static_cast<std::size_t>(rungs));
        std::iota(all.begin(), all.end(), 1);
        return all;
    }
    std::vector<int> chosen;
    for (int i = 1; i <= most; ++i) {
        chosen.push_back(i * rungs / most);
    }
    return chosen;
}

int most_boils(const plan::Plan& plan) {
    const units::Volume batch = plan.trip->fire.pot * (plan.trip->fire.usable * plan.trip->fire.pots);
    int most = 1;
    for (const int nth : printed_rungs(plan)) {
        const units::Volume pour = plan.ladder[static_cast<std::size_t>(nth) - 1].pour;
        most = std::max(most, static_cast<int>(std::ceil(pour / batch - 1e-9)));
    }
    return most;
}

const plan::LadderRung& row_for(const plan::Plan& plan, units::Temperature reading) {
    for (const int nth : printed_rungs(plan)) {
        const plan::LadderRung& rung = plan.ladder[static_cast<std::size_t>(nth) - 1];
        if (!(rung.reading > reading)) {
            return rung;
        }
    }
    return plan.ladder.back();
}

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
