// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/trip/what_if.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

#include <algorithm>

namespace holdwater::card {
namespace {

using units::Toward;

/// Liver and shellfish are for nobody who is at risk, however hot: viruses.
bool none_at_risk(const plan::Plan& plan) {
    return std::any_of(plan.foods.begin(), plan.foods.end(), [](const plan::FoodPlan& food) {
        const facts::FoodKind* kind = facts::facts().find_food(food.food->kind);
        return kind != nullptr &&
               (kind->category == facts::Category::liver || kind->category == facts::Category::bivalve);
    });
}

Table two_columns(const CardWriter& hand, Text title, Text head) {
    Table table;
    table.title = std::move(title);
    table.columns = {{std::move(head), Align::left, true}, {hand.words.text("limits.col-do"), Align::left, false}};
    return table;
}

/// Short rows over the whole width, each led by its bold trouble.
Table one_column(const CardWriter& hand) {
    Table table;
    table.columns = {{hand.words.text("limits.table-other"), Align::left, false}};
    return table;
}

Table other_trouble(const CardWriter& hand) {
    const words::Words& w = hand.words;
    const facts::Facts& facts = facts::facts();
    const std::string full = hand.full();
    Table other = one_column(hand);
    other.rows = {{w.text("limits.leak", {{"full", full}})},
                  {w.text("limits.slow", {{"hours", units::print(facts.duration("come-up.refuse"))},
                                          {"core", hand.at_least(facts.temperature("come-up.to"))}})},
                  {none_at_risk(hand.plan) ? w.text("limits.risk-none") : w.text("limits.risk", {{"full", full}})},
                  {w.text("limits.left")},
                  {hand.plan.waits_until > hand.plan.trip->serve
                       ? w.text("limits.late", {{"until", hand.clock(hand.plan.waits_until)},
                                                {"mark", hand.at_least(hand.plan.top_up_mark)}})
                       : w.text("limits.late-now", {{"mark", hand.at_least(hand.plan.top_up_mark)}})}};
    return other;
}

/// The times of a row, by the words of the card.
Text time_of(const words::Words& w, const safety::FallRow& row) {
    const auto text = [&](const char* key) {
        return w.text(key, {{"from", units::print(row.from)}, {"to", row.to ? units::print(*row.to) : ""}});
    };
    if (!row.to) {
        return text(row.again ? "limits.row-again" : "limits.row-over");
    }
    if (row.from > units::Duration{0}) {
        return text("limits.row-between");
    }
    return text(row.to_counts ? "limits.row-up-to" : "limits.row-once");
}

/// Nobody can measure bath or core: whatever may have been too cool is thrown away.
Card clock_card(const CardWriter& hand) {
    const words::Words& w = hand.words;
    const std::string late = hand.latest_pour();
    Card card;
    const auto& saved = hand.plan.late_pour;
    const Text no_pour = saved ? units::print(saved->until, Toward::down) : late;
    card.blocks.emplace_back(KeyNumber{
        w.text("limits.clock-key"), late, "",
        w.text(saved ? "limits.clock-key-aside-boil" : "limits.clock-key-aside", {{"late", no_pour}})});
    Table table = two_columns(hand, w.text("limits.clock-title"), "");
    const Text away = w.text("limits.do-long");
    if (saved) {
        table.rows.push_back({w.text("limits.clock-boil", {{"late", late}, {"until", no_pour}}),
                              w.text("limits.do-boil", {{"boil", hand.must_hold(saved->boil)}})});
    }
    table.rows.push_back({w.text("limits.clock-late", {{"late", no_pour}}), away});
    table.rows.push_back({w.text("limits.clock-less"), away});
    table.rows.push_back({w.text("limits.clock-lid"), away});
    if (hand.wax()) {
        table.rows.push_back({w.text("limits.clock-wax"), away});
    }
    table.rows.push_back({w.text("limits.bag-leaked"), away});
    card.blocks.emplace_back(table);
    Table other = one_column(hand);
    // Where no pour was planned there is no gap and no measure to go on with.
    const bool pours = !hand.plan.top_ups.empty();
    other.rows = {{w.text("limits.left-none")},
                  {w.text("limits.risk-none")},
                  {pours ? w.text("limits.late-fixed")
                         : w.text("limits.late-shut", {{"until", hand.clock(hand.plan.waits_until)}})}};
    card.blocks.emplace_back(other);
    card.cautions.push_back({SignalWord::warning, w.text("limits.caution")});
    return card;
}

}  // namespace

Table fell_below(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    const std::string full = hand.full();
    Table below = two_columns(
        hand, "", w.text("limits.col-time", {{"floor", hand.short_degrees(plan.read_floor, Toward::up)}}));
    // Back into the bath is for whole food that was done and for eaters who are not at risk; all else goes to the fire.
    const bool fire_only = hand.any_finish() || plan.trip->at_risk;
    const std::string do_short =
        w.text(fire_only ? "limits.do-short-fire" : "limits.do-short",
               {{"full", full}, {"mark", hand.at_least(plan.top_up_mark)}});
    for (const safety::FallRow& row : safety::rows(safety::fall_rules(plan.trip->rules, plan.trip->at_risk))) {
        Text action = row.action == safety::FallAction::finish_and_eat_next  ? do_short
                      : row.action == safety::FallAction::finish_and_eat_now ? w.text("limits.do-middle", {{"full", full}})
                                                                             : w.text("limits.do-long");
        below.rows.push_back({time_of(w, row), std::move(action)});
    }
    return below;
}

std::optional<Note> cold_bath_line(const CardWriter& hand) {
    const words::Words& w = hand.words;
    Text steps;
    for (const safety::ColdBath& cold : hand.plan.cold_baths) {
        const units::TemperatureDifference error =
            hand.plan.trip->boxes.front().thermometer.value_or(units::kelvins(0));
        const units::Duration longest{units::round_to(cold.longest.si(), 300.0, Toward::down)};
        steps += (steps.empty() ? Text() : w.text("limits.cold-or")) +
                 w.text("limits.cold-step", {{"cold", hand.at_least(cold.lowest + error)},
                                             {"longest", units::print(longest)}});
    }
    return steps.empty() ? std::nullopt : std::optional(Note{w.text("limits.cold", {{"steps", steps}})});
}

Card limits_card(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    if (!hand.reads()) {
        return clock_card(hand);
    }
    Card card;
    card.blocks.emplace_back(
        hand.key(w.text("limits.key-label"), plan.read_floor, Toward::up, w.text("limits.key-aside")));
    card.blocks.emplace_back(Note{w.text("limits.clock")});
    if (auto cold = cold_bath_line(hand)) {
        card.blocks.emplace_back(std::move(*cold));
    }
    card.blocks.emplace_back(fell_below(hand));
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(other_trouble(hand));
    card.blocks.emplace_back(Note{w.text("limits.clock-stop", {{"floor", hand.at_least(plan.read_floor)}})});
    const std::vector<Block> what_ifs = what_ifs_of_limits(hand);
    card.blocks.insert(card.blocks.end(), what_ifs.begin(), what_ifs.end());
    card.cautions.push_back({SignalWord::warning, w.text("limits.caution")});
    return card;
}

}  // namespace holdwater::card
