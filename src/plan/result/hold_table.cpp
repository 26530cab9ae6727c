// SPDX-License-Identifier: MIT
#include "plan/result/hold_table.hpp"

#include "facts/facts.hpp"
#include "safety/clocks.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::plan {

std::optional<units::Duration> safe_hold(const Plan& plan, const FoodPlan& food, units::Length thickness,
                                         units::Temperature bath) {
    const trip::Box& box = plan.trip->boxes.front();
    answer::HoldQuestion question;
    question.body = food.piece.body;
    // A ruler or table row is one smallest way through; the other measures only help, so they are left out.
    question.body.shape = food.food->shape == facts::Shape::block ? facts::Shape::slab : food.food->shape;
    question.body.length.reset();
    question.body.width.reset();
    // Nobody measures a piece of meat to better than the spread of thicknesses.
    const facts::Spread& spread = facts::facts().spread("thickness");
    const double least = facts::facts().spread("thickness.least").high * 1e-3;
    question.body.thickness = thickness + units::Length{std::max(thickness.si() * (spread.high - 1.0), least)};
    question.properties = answer::properties_of(food.piece, heat::Bound::slow);
    question.film = answer::film_of(food.piece, heat::Bound::slow);
    question.bath = bath - box.thermometer.value_or(units::kelvins(0));
    question.start = food.food->start;
    question.target = food.food->target;
    const auto answer = answer::hold(question, food.standard);
    if (!answer || !answer->safe) {
        return std::nullopt;
    }
    // A piece that must be finished over the fire has to be thin enough for that: it may not even warm slowly.
    const safety::ComeUpVerdict warms = safety::judge_come_up(answer->come_up);
    const bool too_slow =
        food.standard.finish ? warms != safety::ComeUpVerdict::fine : warms == safety::ComeUpVerdict::refused;
    return too_slow ? std::nullopt : answer->safe;
}

units::Temperature first_hold_bath(const Plan& plan, const FoodPlan& food) {
    // Fifteen kelvins above the action line every standard of the rules is met.
    const double first = std::ceil(plan.action_line.celsius());
    for (double bath = first; bath < first + 15.0; bath += 1.0) {
        if (safe_hold(plan, food, food.food->thickness, units::celsius(bath))) {
            return units::celsius(bath);
        }
    }
    return units::celsius(first + 15.0);
}

std::optional<units::Length> thickest(const Plan& plan, const FoodPlan& food, units::Temperature bath) {
    double good = 0.0;
    double bad = 300.0;
    while (bad - good > 0.5) {
        const double middle = (good + bad) / 2.0;
        (safe_hold(plan, food, units::millimetres(middle), bath) ? good : bad) = middle;
    }
    const double whole = std::floor(good);
    return whole >= 5.0 ? std::optional(units::millimetres(whole)) : std::nullopt;
}

std::optional<units::Length> thickest_here(const Plan& plan, const FoodPlan& food) {
    const auto by_table = thickest(plan, food, first_hold_bath(plan, food));
    const auto own =
        units::millimetres(units::round_to(units::in_millimetres(food.food->thickness), 1.0, units::Toward::nearest));
    return by_table ? std::max(*by_table, own) : own;
}

HoldTable hold_table(const Plan& plan, const FoodPlan& food) {
    HoldTable table;
    table.food = &food;
    const double first = first_hold_bath(plan, food).celsius();
    for (double bath = first; table.baths.size() < 3; bath += 3.0) {
        table.baths.push_back(units::celsius(bath));
    }
    const double own = units::in_millimetres(food.food->thickness);
    const double step = own > 60 ? 15.0 : own > 30 ? 10.0 : 5.0;
    const double lowest = std::max(step, std::floor(own / step) * step - 2 * step);
    for (double mm = lowest; table.thicknesses.size() < 5; mm += step) {
        table.thicknesses.push_back(units::millimetres(mm));
    }
    if (std::find_if(table.thicknesses.begin(), table.thicknesses.end(), [&](units::Length l) {
            return std::abs(units::in_millimetres(l) - own) < 0.5;
        }) == table.thicknesses.end()) {
        table.thicknesses.push_back(food.food->thickness);
        std::sort(table.thicknesses.begin(), table.thicknesses.end());
    }
    for (const units::Length thickness : table.thicknesses) {
        std::vector<HoldCell> row;
        for (const units::Temperature bath : table.baths) {
            row.push_back({safe_hold(plan, food, thickness, bath)});
        }
        table.cells.push_back(std::move(row));
    }
    return table;
}

HoldRuler hold_ruler(const Plan& plan, const FoodPlan& food, units::Temperature bath, units::Length step,
                     units::Length longest) {
    HoldRuler ruler;
    ruler.bath = bath;
    ruler.too_thick = step;
    for (units::Length d = step; d <= longest + units::Length{1e-9}; d += step) {
        const auto hold = safe_hold(plan, food, d, bath);
        if (!hold) {
            break;
        }
        ruler.ticks.push_back({d, *hold});
        ruler.too_thick = d + step;
    }
    return ruler;
}

}  // namespace holdwater::plan
