// SPDX-License-Identifier: MIT
#include "card/shared/numbers.hpp"

#include <fmt/format.h>

#include <cmath>

#include "plan/result/hold_table.hpp"
#include "units/print.hpp"

namespace holdwater::card {
namespace {

using units::Toward;

constexpr const char* joint = "95 of 100 scenarios, jointly";
constexpr const char* ninety_five = "95 of 100 scenarios";
constexpr const char* up_1 = "up to 1 degree";

std::string rule_of(const plan::Plan& plan) {
    return "rules " + std::string(facts::to_name(plan.trip->rules)) + " [" + plan.foods.front().standard.rule_source + "]";
}

void add_foods(const CardWriter& hand, std::vector<CardNumber>& numbers) {
    const plan::Plan& plan = hand.plan;
    for (const plan::FoodPlan& food : plan.foods) {
        const std::string& name = food.food->name;
        numbers.push_back({"plan", "core_peak_c: " + name, food.core_peak.high.celsius(),
                           hand.at_least(food.core_peak.high), ninety_five, up_1, "heat engine",
                           food.core_peak.error.si()});
        const double margin = std::floor(food.kill.low * 10.0) / 10.0;
        numbers.push_back({"plan", "kill_margin: " + name, food.kill.low, fmt::format("{:.1f}", margin), ninety_five,
                           "down to 0.1", food.standard.kill->key + " [" + food.standard.kill->source + "]",
                           food.kill.error});
        numbers.push_back({"plan", "ready_h: " + name,
                           units::in_hours(food.ready().since(plan.trip->from)), hand.clock(food.ready()),
                           ninety_five, "to the minute", food.standard.kill->key, std::nullopt});
        const units::Temperature bath = plan::first_hold_bath(plan, food);
        if (const auto hold = plan::safe_hold(plan, food, food.food->thickness, bath)) {
            numbers.push_back({"hold", "hold_h: " + name, units::in_hours(*hold), hand.must_hold(*hold),
                               "slow reading; thickness and thermometer at their ends", "up to 5 min",
                               food.standard.kill->key + " [" + food.standard.kill->source + "]", std::nullopt});
        }
        if (food.thickest) {
            numbers.push_back({"hold", "thickest_mm: " + name, units::in_millimetres(*food.thickest),
                               units::print(*food.thickest, hand.system(), {1.0, Toward::down}),
                               "slow reading; thickness and thermometer at their ends", "down to 1 mm",
                               "figure come-up.refuse", std::nullopt});
        }
    }
}

}  // namespace

std::vector<CardNumber> card_numbers(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const bool reads = plan.trip->boxes.front().thermometer.has_value();
    const std::string rule = rule_of(plan);
    std::vector<CardNumber> numbers;
    numbers.push_back({"plan", "latest_fire_h", units::in_hours(plan.fill.latest_fire.since(plan.trip->from)),
                       hand.clock(plan.fill.latest_fire), ninety_five, "down to 15 min", "hold times and ready",
                       std::nullopt});
    add_foods(hand, numbers);
    numbers.push_back({"fill", "fill_c", plan.fill.reading.celsius(), hand.about(plan.fill.reading),
                       "chosen: hottest that keeps cores in tolerance in 95 of 100 scenarios", "not at all, chosen in whole degrees",
                       "heat engine", std::nullopt});
    numbers.push_back({"fill", "cold_l", units::in_litres(plan.fill.cold), hand.litres(plan.fill.cold), "chosen",
                       "to 0.5 L", "heat balance", std::nullopt});
    numbers.push_back({"fill", "boiled_l", units::in_litres(plan.fill.boiled), hand.litres(plan.fill.boiled, Toward::up),
                       "likely; the last pot trims by reading", "up to 0.5 L", "heat balance", std::nullopt});
    numbers.push_back({"fill", "settled_low_c", plan.fill.after_food.low.celsius(),
                       hand.short_degrees(plan.fill.after_food.low, Toward::down), "5 of 100 scenarios",
                       "down to 1 degree", "heat engine", plan.fill.after_food.error.si()});
    numbers.push_back({"topup", "mark_c", plan.top_up_mark.celsius(), hand.at_least(plan.top_up_mark),
                       "chosen: fewest top-ups that hold", "not at all, chosen in whole degrees", "heat engine", std::nullopt});
    for (std::size_t i = 0; i < plan.top_ups.size(); ++i) {
        const plan::TopUp& top_up = plan.top_ups[i];
        numbers.push_back({"topup", fmt::format("top_up_{}_h", i + 1), units::in_hours(top_up.at.since(plan.trip->from)),
                           hand.clock(top_up.at), joint, "down to 15 min, by night 5 min", "heat engine", std::nullopt});
        numbers.push_back({"topup", fmt::format("top_up_{}_l", i + 1), units::in_litres(top_up.boiling),
                           hand.litres(top_up.boiling, Toward::up), reads ? "likely; the ladder goes by reading" : "fixed",
                           "up to 0.5 L", "heat balance", std::nullopt});
    }
    numbers.push_back({"topup", "interval_calm_h", units::in_hours(plan.interval_calm), hand.may_leave(plan.interval_calm),
                       ninety_five, "down to 15 min", "cooling law", std::nullopt});
    numbers.push_back({"topup", "interval_rough_h", units::in_hours(plan.interval_rough),
                       hand.may_leave(plan.interval_rough), ninety_five, "down to 15 min", "cooling law", std::nullopt});
    numbers.push_back({"night", "longest_alone_h", units::in_hours(hand.alone()), hand.may_leave(hand.alone()),
                       ninety_five, "down to 15 min", "cooling law", std::nullopt});
    add_touch_numbers(hand, numbers);
    numbers.push_back({"limits", "read_floor_c", plan.read_floor.celsius(), hand.at_least(plan.read_floor),
                       "rule, and the thermometer's whole error on it", up_1, rule, std::nullopt});
    for (std::size_t i = 0; i < plan.cold_baths.size(); ++i) {
        const safety::ColdBath& cold = plan.cold_baths[i];
        const units::Temperature read =
            cold.lowest + plan.trip->boxes.front().thermometer.value_or(units::kelvins(0));
        const std::string which = i == 0 ? "" : fmt::format("_{}", i + 1);
        numbers.push_back({"limits", "cold_bath" + which + "_c", read.celsius(), hand.at_least(read),
                           "growth of a log before the clock ends, fast germs, thermometer's error", up_1,
                           "figures fall.growth, fall.deep", std::nullopt});
        numbers.push_back({"limits", "cold_bath" + which + "_h", units::in_hours(cold.longest),
                           units::print(units::Duration{units::round_to(cold.longest.si(), 300.0, Toward::down)}),
                           "growth of a log at the worst of these temperatures, fast germs", "down to 5 min",
                           "figures fall.growth, fall.deep-for", std::nullopt});
    }
    numbers.push_back({"limits", "action_line_c", plan.action_line.celsius(), hand.at_least(plan.action_line), "rule",
                       up_1, rule, std::nullopt});
    add_kitchen_numbers(hand, numbers);
    return numbers;
}

}  // namespace holdwater::card
