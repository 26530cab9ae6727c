// SPDX-License-Identifier: MIT
#include "plan/result/hold_table.hpp"

#include "answer/hold/hold_time.hpp"
#include "answer/hold/kept_hold_times.hpp"
#include "plan/search/parallel.hpp"
#include "units/print.hpp"
#include "units/whole_degrees.hpp"

#include <algorithm>
#include <cmath>
#include <memory>
#include <set>

namespace holdwater::plan {
namespace {

using units::Length;
using units::Temperature;

using Times = std::shared_ptr<const answer::KeptHoldTimes>;

units::TemperatureDifference thermometer_of(const Plan& plan) {
    return plan.trip->boxes.front().thermometer.value_or(units::kelvins(0));
}

/// Of the food's own piece, only thicker or thinner. Sizes were checked by the reader of trips, well inside the
/// engine's range.
Times times_of(const Plan& plan, const FoodPlan& food, Length thickness) {
    answer::Piece piece = food.piece;
    piece.body.thickness = thickness;
    return answer::kept_hold_times(piece, food.standard, thermometer_of(plan)).value();
}

/// The thickness by which the food's own piece is held: given in eighths of an inch it is printed as the nearest
/// millimetre, and has the time of that where it is the longer one.
Length held_as(const FoodPlan& food) {
    const Length own = food.food->thickness;
    return std::max(own, units::millimetres(units::round_to(units::in_millimetres(own), 1.0, units::Toward::nearest)));
}

/// The readings that head the columns: from the lowest whole degree, from the read floor up, at which the food's own
/// piece becomes safe. Where nobody reads, the clock keeps the action line.
std::vector<Temperature> hold_baths(const Plan& plan, const answer::KeptHoldTimes& own) {
    if (!plan.trip->boxes.front().thermometer) {
        return {plan.levels.action_line};
    }
    // Whole degrees of the system that is printed first, so that each is worked out just as it is printed.
    const bool us = units::first_of(plan.trip->units) == units::System::us;
    const auto bath = [us](double degree) { return us ? units::fahrenheit(degree) : units::celsius(degree); };
    const double floor =
        std::ceil((us ? plan.levels.read_floor.fahrenheit() : plan.levels.read_floor.celsius()) - 1e-9);
    // So far above the read floor every standard of the rules is met.
    const double most = us ? 27.0 : 15.0;
    const double step = us ? 5.0 : 3.0;
    double first = floor;
    while (first < floor + most && !own.at(bath(first)).allowed) {
        first += 1.0;
    }
    return {bath(first), bath(first + step), bath(first + 2.0 * step)};
}

/// The reading on which the plan's own ready time rests heads a column too, in place of the nearest but the first: who
/// kept to it finds it in the table.
std::vector<Temperature> with_condition(std::vector<Temperature> baths, const Plan& plan, const FoodPlan& food) {
    if (!plan.trip->boxes.front().thermometer || food.standard.finish) {
        return baths;
    }
    const Temperature condition = units::whole_degrees(food.ready_if, plan.trip->units, units::Toward::up);
    const units::TemperatureDifference same = units::kelvins(0.1);
    if (condition > baths.front() + same) {
        const auto off = [&](Temperature bath) { return std::abs((bath - condition).si()); };
        Temperature& nearest = off(baths[1]) <= off(baths[2]) ? baths[1] : baths[2];
        nearest = condition;
    }
    return baths;
}

/// Around the trip's own piece, none that would print as it does, and none thicker than the thickest that the same card
/// allows.
std::vector<Length> rows_around(Length own, Length most) {
    constexpr std::size_t rows = 5;
    constexpr double apart = 25.4 / 8.0;  // mm: an eighth of an inch, in which the other system is printed
    const double mm = units::in_millimetres(own);
    const double step = mm > 60 ? 15.0 : mm > 30 ? 10.0 : 5.0;
    const double lowest = std::max(step, std::floor(mm / step) * step - 2 * step);
    std::vector<Length> thicknesses;
    for (double row = lowest; thicknesses.size() < rows && row <= units::in_millimetres(most); row += step) {
        if (std::abs(row - mm) >= apart) {
            thicknesses.push_back(units::millimetres(row));
        }
    }
    thicknesses.push_back(own);
    std::sort(thicknesses.begin(), thicknesses.end());
    return thicknesses;
}

std::optional<Length> thickest_here(const Plan& plan, const FoodPlan& food, Temperature bath) {
    const auto by_table = thickest(plan, food, bath);
    const Length own =
        units::millimetres(units::round_to(units::in_millimetres(food.food->thickness), 1.0, units::Toward::nearest));
    return by_table ? std::max(*by_table, own) : own;
}

/// The largest over all columns, of the trip's own row and the thickest: thin pieces lose least by a dip.
std::optional<int> dip_of(const Plan& plan, const HoldTable& table, const std::vector<Times>& rows) {
    int most = 0;
    for (const std::size_t row : std::set{table.own, rows.size() - 1}) {
        for (std::size_t column = 0; column < table.baths.size(); ++column) {
            if (!table.cells[row][column] || table.baths[column] <= plan.levels.read_floor) {
                continue;
            }
            const auto factor = rows[row]->dip_factor(table.baths[column], plan.levels.read_floor);
            if (!factor) {
                return std::nullopt;
            }
            most = std::max(most, *factor);
        }
    }
    return most > 0 ? std::optional(most) : std::nullopt;
}

/// The plan's ready time allows for food that goes in late; whoever counts from food in must not come to a sooner one
/// by the same reading, nor with a thicker piece.
void keep_to_ready(const Plan& plan, FoodPlan& food) {
    if (!plan.trip->boxes.front().thermometer || food.standard.finish || !food.ready_late) {
        return;
    }
    const units::Duration planned = food.ready_late->since(food.in);
    const Temperature condition = units::whole_degrees(food.ready_if, plan.trip->units, units::Toward::up);
    for (std::size_t row = food.hold.own; row < food.hold.cells.size(); ++row) {
        for (std::size_t column = 0; column < food.hold.baths.size(); ++column) {
            std::optional<units::Duration>& time = food.hold.cells[row][column];
            if (time && food.hold.baths[column] <= condition + units::kelvins(0.1)) {
                time = std::max(*time, planned);
            }
        }
    }
}

OwnHold own_hold_of(const Plan& plan, const FoodPlan& food) {
    const units::Duration there = food.leaves().since(food.in);
    const std::vector<std::optional<units::Duration>>& times = food.hold.cells[food.hold.own];
    const auto soon =
        std::find_if(times.begin(), times.end(), [&](const auto& time) { return time && *time <= there; });
    if (soon != times.end()) {
        return {food.hold.baths[static_cast<std::size_t>(soon - times.begin())], *soon, true};
    }
    const bool reads = plan.trip->boxes.front().thermometer.has_value();
    return {food.hold.baths.front(), reads ? times.front() : food.ready().since(food.in), reads};
}

}  // namespace

std::optional<units::Duration> safe_hold(const Plan& plan, const FoodPlan& food, Length thickness, Temperature bath) {
    return times_of(plan, food, thickness)->at(bath).allowed;
}

std::optional<Length> thickest(const Plan& plan, const FoodPlan& food, Temperature bath) {
    const auto warms = answer::thickest_allowed(food.piece, food.standard, thermometer_of(plan), bath);
    // A thicker steak would warm soon enough, and be none.
    return warms && food.standard.sear ? std::min(*warms, food.standard.sear->thickest) : warms;
}

void work_out_hold(const Plan& plan, FoodPlan& food) {
    const Length own = food.food->thickness;
    HoldTable& table = food.hold;
    table = {};
    table.baths = with_condition(hold_baths(plan, *times_of(plan, food, held_as(food))), plan, food);
    food.thickest = thickest_here(plan, food, table.baths.front());
    table.thicknesses = rows_around(own, *food.thickest);
    table.own = static_cast<std::size_t>(std::find(table.thicknesses.begin(), table.thicknesses.end(), own) -
                                         table.thicknesses.begin());
    std::vector<Times> rows(table.thicknesses.size());
    table.cells.resize(rows.size());
    const auto work_out_row = [&](std::size_t i) {
        rows[i] = times_of(plan, food, i == table.own ? held_as(food) : table.thicknesses[i]);
        for (const Temperature bath : table.baths) {
            table.cells[i].push_back(rows[i]->at(bath).allowed);
        }
    };
    for_each_index(rows.size(), work_out_row, 1);
    keep_to_ready(plan, food);
    if (plan.trip->boxes.front().thermometer) {
        table.dip = dip_of(plan, table, rows);
    }
    food.own_hold = own_hold_of(plan, food);
}

HoldTable hold_every_5_mm(const Plan& plan, const FoodPlan& food, const std::vector<Temperature>& baths) {
    const Length step = units::millimetres(5);
    const double own = units::in_millimetres(food.food->thickness);
    double longest = std::clamp(std::ceil(own / 5.0) * 10.0, 60.0, 110.0);
    if (food.thickest) {
        longest = std::min(longest, units::in_millimetres(*food.thickest));
    }
    const auto thickness = [&](std::size_t i) { return static_cast<double>(i + 1) * step; };
    HoldTable table;
    table.baths = baths;
    table.cells.resize(static_cast<std::size_t>(std::floor(units::millimetres(longest) / step + 1e-6)));
    const auto work_out = [&](std::size_t i) {
        // What prints as the food's own piece has its time.
        const bool as_own = std::abs(units::in_millimetres(thickness(i)) - own) < 0.5;
        const Times piece = times_of(plan, food, as_own ? held_as(food) : thickness(i));
        for (const Temperature bath : baths) {
            table.cells[i].push_back(piece->at(bath).allowed);
        }
    };
    for_each_index(table.cells.size(), work_out, 1);
    for (std::size_t i = 0; i < table.cells.size(); ++i) {
        // What is too thick for a bath is so for each thicker piece.
        for (std::size_t b = 0; b < baths.size() && i > 0; ++b) {
            if (!table.cells[i - 1][b]) {
                table.cells[i][b].reset();
            }
        }
        if (!table.cells[i].back()) {
            table.cells.resize(i);
        } else {
            table.thicknesses.push_back(thickness(i));
        }
    }
    return table;
}

}  // namespace holdwater::plan
