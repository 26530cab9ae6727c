// SPDX-License-Identifier: MIT
#include "card/shared/numbers.hpp"

#include "card/shared/card_text.hpp"
#include "card/trip/cards.hpp"
#include "units/print.hpp"

#include <map>

namespace holdwater::card {
namespace {

using units::Toward;
using Name = NumberList::Name;

double hours_from_start(const plan::Plan& plan, units::LocalTime at) {
    return units::in_hours(at.since(plan.trip->from));
}

/// A published row and the work that it stands in.
std::string rows_of(const plan::FoodPlan& food) {
    return food.standard.kill->key + " [" + food.standard.kill->source + "]";
}

void add_food(NumberList& list, const plan::FoodPlan& food) {
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    const std::string& name = food.food->name;
    list.add(Name{"plan", "core-peak", value_unit::celsius, name}, food.core_peak.high.celsius(),
             writer.at_least(food.core_peak.high), "share-95", "up-degree", list.source("heat-engine"),
             food.core_peak.error.si());
    list.add(Name{"plan", "kill-margin", value_unit::none, name}, food.kill.low, kill_margin(food), "share-95",
             "down-tenth", rows_of(food), food.kill.error);
    list.add(Name{"plan", "ready", value_unit::hours, name}, hours_from_start(plan, food.ready()),
             writer.clock(food.ready()), "share-95", "minute", food.standard.kill->key);
    if (writer.reads() && !food.standard.finish) {
        list.add(Name{"plan", "ready-if", value_unit::celsius, name}, food.ready_if.celsius(),
                 writer.short_degrees(food.ready_if, Toward::up), "share-5", "up-degree", list.source("heat-engine"));
    }
    if (const plan::OwnHold& own = food.own_hold; own.any_piece && own.time) {
        list.add(Name{"hold", "hold-bath", value_unit::celsius, name}, own.bath.celsius(), writer.at_least(own.bath),
                 "chosen", "up-degree", list.source("heat-engine"));
        list.add(Name{"hold", "hold", value_unit::hours, name}, units::in_hours(*own.time), writer.must_hold(*own.time),
                 "hold-95", "up-5-min", rows_of(food));
    }
    if (food.thickest) {
        list.add(Name{"hold", "thickest", value_unit::millimetres, name}, units::in_millimetres(*food.thickest),
                 units::amount(*food.thickest, writer.system(), {1.0, Toward::down}), "hold-95", "down-mm",
                 list.source("figure", "come-up.refuse"));
    }
}

void add_fill(NumberList& list) {
    const CardWriter& writer = list.writer();
    const plan::Fill& fill = writer.plan.fill;
    list.add({"fill", "fill", value_unit::celsius}, fill.reading.celsius(), writer.about(fill.reading),
             "chosen-hottest", "none-whole-degrees", list.source("heat-engine"));
    list.add({"fill", "cold", value_unit::litres}, units::in_litres(fill.cold), writer.litres(fill.cold), "chosen",
             "half-litre", list.source("heat-balance"));
    list.add({"fill", "boiled", value_unit::litres}, units::in_litres(fill.boiled_most),
             writer.litres(fill.boiled_most, Toward::up), "share-95", "up-half-litre", list.source("heat-balance"));
    list.add({"fill", "settled-low", value_unit::celsius}, fill.after_food.low.celsius(),
             writer.short_degrees(fill.after_food.low, Toward::down), "share-5", "down-degree",
             list.source("heat-engine"), fill.after_food.error.si());
}

void add_top_ups(NumberList& list) {
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    list.add({"topup", "mark", value_unit::celsius}, plan.top_up_mark.celsius(), writer.at_least(plan.top_up_mark),
             "chosen-fewest", "none-whole-degrees", list.source("heat-engine"));
    int nth = 0;
    for (const plan::TopUp& top_up : plan.top_ups) {
        ++nth;
        list.add({"topup", "top-up", value_unit::hours, {}, nth}, hours_from_start(plan, top_up.at),
                 writer.clock(top_up.at), "share-95-jointly", "down-15-min-night", list.source("heat-engine"));
        list.add({"topup", "top-up", value_unit::litres, {}, nth}, units::in_litres(top_up.boiling),
                 writer.one_boil(top_up.boiling), writer.reads() ? "likely-ladder" : "fixed", "up-half-litre",
                 list.source("heat-balance"));
    }
    list.add({"topup", "interval-calm", value_unit::hours}, units::in_hours(plan.interval_calm),
             writer.may_leave(plan.interval_calm), "share-95", "down-15-min", list.source("cooling-law"));
    list.add({"topup", "interval-rough", value_unit::hours}, units::in_hours(plan.interval_rough),
             writer.may_leave(plan.interval_rough), "share-95", "down-15-min", list.source("cooling-law"));
}

void add_limits(NumberList& list) {
    const CardWriter& writer = list.writer();
    const plan::Plan& plan = writer.plan;
    const std::string rule = list.source(
        "rules", std::string(facts::to_name(plan.trip->rules)) + " [" + plan.foods.front().standard.rule_source + "]");
    list.add({"limits", "read-floor", value_unit::celsius}, plan.read_floor.celsius(), writer.at_least(plan.read_floor),
             "rule-thermometer", "up-degree", rule);
    std::optional<int> nth;  // the first goes without a number
    for (const safety::ColdBath& cold : plan.cold_baths) {
        const units::Temperature read = cold.lowest + plan.trip->boxes.front().thermometer.value_or(units::kelvins(0));
        list.add({"limits", "cold-bath", value_unit::celsius, {}, nth}, read.celsius(), writer.at_least(read),
                 "growth-clock", "up-degree", list.source("figures", "fall.growth, fall.deep"));
        const units::Duration longest{units::round_to(cold.longest.si(), 300.0, Toward::down)};
        list.add({"limits", "cold-bath", value_unit::hours, {}, nth}, units::in_hours(cold.longest),
                 units::print(longest), "growth-worst", "down-5-min",
                 list.source("figures", "fall.growth, fall.deep-for"));
        nth = nth.value_or(1) + 1;
    }
    list.add({"limits", "action-line", value_unit::celsius}, plan.action_line.celsius(),
             writer.at_least(plan.action_line), "rule", "up-degree", rule);
}

/// Notes which numbers stand on their card: that depends on units, thermometer and times. Of rows, steps and cautions
/// the others go.
void note_what_stands(const CardWriter& writer, std::vector<CardNumber>& numbers) {
    std::map<std::string, Text> texts;
    for (const TripCard& card : deck_order) {
        Text text = text_of(card.make(writer));
        std::erase(text, '*');
        texts[card.key] = std::move(text);
    }
    for (CardNumber& number : numbers) {
        const Text& text = texts.at(number.card);
        // More may follow in the aside of a key number.
        const Text open = number.printed.substr(0, number.printed.size() - (number.printed.ends_with(')') ? 1 : 0));
        number.stands = text.find(number.printed) != Text::npos || text.find(open + ", ") != Text::npos;
    }
    std::erase_if(numbers, [](const CardNumber& number) { return number.detail && !number.stands; });
}

}  // namespace

std::vector<CardNumber> card_numbers(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    NumberList list(writer);
    list.add({"plan", "latest-fire", value_unit::hours}, hours_from_start(plan, plan.fill.latest_fire),
             writer.clock(plan.fill.latest_fire), "share-95", "down-15-min", list.source("hold-times"));
    for (const plan::FoodPlan& food : plan.foods) {
        add_food(list, food);
    }
    add_fill(list);
    add_top_ups(list);
    list.add({"night", "longest-alone", value_unit::hours}, units::in_hours(writer.alone()),
             writer.may_leave(writer.alone()), "share-95", "down-15-min", list.source("cooling-law"));
    add_touch_numbers(list);
    add_limits(list);
    add_kitchen_numbers(list);
    add_act_details(list);
    add_reading_details(list);
    add_measure_details(list);
    std::vector<CardNumber> numbers = list.take();
    note_what_stands(writer, numbers);
    return numbers;
}

}  // namespace holdwater::card
