// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"
#include "card/trip/what_if.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <cmath>

namespace holdwater::card {
namespace {

using units::Toward;

std::string action_text(const CardWriter& hand, safety::FallAction action) {
    switch (action) {
        case safety::FallAction::none:
            return hand.words.text("night.action-none");
        case safety::FallAction::finish_and_eat_next:
            return hand.words.text("night.action-next");
        case safety::FallAction::finish_and_eat_now:
            return hand.words.text("night.action-now");
        case safety::FallAction::throw_away:
            return hand.words.text("night.action-away");
    }
    return {};
}

Curve curve_of(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const plan::Night& night = plan.night;
    const words::Words& w = hand.words;
    Curve curve;
    units::Temperature coldest = plan.trip->weather.air_at(night.from);
    for (double h = 0; h <= night.curve_hours.back(); h += 0.5) {
        coldest = std::min(coldest, plan.trip->weather.air_at(night.from.after(units::hours(h))));
    }
    curve.title = w.text("night.curve-title", {{"mark", hand.at_least(night.reading)}, {"air", hand.at_most(coldest)}});
    // Drawn in the unit that the cards print first.
    const bool us = units::first_of(hand.system()) == units::System::us;
    const auto drawn = [us](units::Temperature t) { return us ? t.fahrenheit() : t.celsius(); };
    for (std::size_t i = 0; i < night.curve.size(); ++i) {
        const double x = night.curve_hours[i];
        curve.low.push_back({x, drawn(night.curve[i].low)});
        curve.likely.push_back({x, drawn(night.curve[i].likely)});
        curve.high.push_back({x, drawn(night.curve[i].high)});
    }
    curve.floor = std::ceil(drawn(plan.read_floor) - 1e-9);
    curve.floor_label = w.text("night.curve-floor", {{"floor", hand.short_degrees(plan.read_floor, Toward::up)}});
    for (double h = 0; h <= night.curve_hours.back() + 1e-9; h += 2.0) {
        curve.x_labels.push_back({h, fmt::format("{:.0f}", h)});
    }
    const double step = us ? 10.0 : 5.0;
    const double top = std::ceil(curve.high.front().y / step) * step;
    const double bottom = std::floor(std::min(curve.low.back().y, curve.floor) / step) * step;
    for (double t = bottom; t <= top; t += step) {
        curve.y_labels.push_back({t, fmt::format("{:.0f}", t)});
    }
    curve.x_title = w.text("night.curve-x");
    curve.y_title = w.text(us ? "night.curve-y-us" : "night.curve-y");
    return curve;
}

/// Those columns of hours that say anything: one that always says the same as the next, longer one is left out.
std::vector<std::size_t> telling_columns(const std::vector<std::vector<Text>>& actions) {
    std::vector<std::size_t> columns;
    for (std::size_t c = 0; c < actions.front().size(); ++c) {
        const bool same = c + 1 < actions.front().size() &&
                          std::all_of(actions.begin(), actions.end(),
                                      [c](const std::vector<Text>& row) { return row[c] == row[c + 1]; });
        if (!same) {
            columns.push_back(c);
        }
    }
    return columns;
}

/// What to do after a reading below the floor. One row for all readings that ask for the same, named by the lowest of
/// them; the last stands for all below.
Table morning_table(const CardWriter& hand) {
    const words::Words& w = hand.words;
    const auto& rows = hand.plan.night.morning;
    std::vector<std::vector<Text>> actions;
    for (const plan::MorningRow& row : rows) {
        std::vector<Text>& cells = actions.emplace_back();
        for (const plan::MorningRow::Cell& cell : row.cells) {
            cells.push_back(action_text(hand, cell.action));
        }
    }
    const std::vector<std::size_t> columns = telling_columns(actions);
    if (columns.size() == 1) {
        // One column has the room to say what comes first.
        for (std::vector<Text>& cells : actions) {
            if (cells[columns.front()] == w.text("night.action-next")) {
                cells[columns.front()] = w.text("night.action-next-long", {{"full", hand.full()}});
            }
        }
    }
    static const char* const heads[] = {"night.morning-2", "night.morning-4", "night.morning-8"};
    Table table;
    table.columns = {{w.text("night.morning-read"), Align::left, true}};
    for (const std::size_t c : columns) {
        table.columns.push_back({w.text(columns.size() == 1 ? "night.morning-do" : heads[c]), Align::left, false});
    }
    const auto named = [&](units::Temperature reading) {
        return columns.size() > 1 ? hand.short_degrees(reading, Toward::up) : hand.at_least(reading);
    };
    std::vector<Text> before;
    units::Temperature above = hand.plan.read_floor;  // where the readings of the row in hand end
    for (std::size_t i = 0; i < rows.size(); ++i) {
        std::vector<Text> cells;
        for (const std::size_t c : columns) {
            cells.push_back(actions[i][c]);
        }
        if (i > 0 && cells != before) {
            above = rows[i - 1].reading;
            before.insert(before.begin(), w.text("night.morning-above", {{"reading", named(above)}}));
            table.rows.push_back(std::move(before));
        }
        before = std::move(cells);
    }
    before.insert(before.begin(), w.text("night.morning-below", {{"reading", named(above)}}));
    table.rows.push_back(std::move(before));
    return table;
}

/// Nobody reads the bath: the pours by the clock and nothing to look up.
Card clock_card(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    Card card;
    const KeyNumber leave{w.text("night.key-label"), hand.may_leave(hand.alone()), "",
                          w.text(plan.top_ups.empty() ? "night.key-aside-shut" : "night.key-aside-clock")};
    if (plan.night.wake) {
        card.blocks.emplace_back(
            KeyRow{{KeyNumber{w.text("night.wake-label"),
                              hand.clock_only(plan.night.wake->after(-plan.round)), "", ""},
                    leave}});
    } else {
        card.blocks.emplace_back(leave);
    }
    if (plan.top_ups.empty()) {
        card.blocks.emplace_back(Heading{w.text("night.clock-none")});
    } else {
        card.blocks.emplace_back(Heading{w.text("night.clock-title")});
        Steps steps;
        steps.numbered = false;
        for (const plan::TopUp& top_up : plan.top_ups) {
            steps.steps.push_back(
                {hand.clock(top_up.at), w.text(top_up.wakes ? "night.clock-wake" : "night.clock-step",
                                               {{"wake", hand.clock_only(top_up.light_fire)},
                                                {"litres", hand.litres_short(top_up.boiling, Toward::nearest)}})});
        }
        card.blocks.emplace_back(steps);
        card.blocks.emplace_back(Note{w.text("night.clock-late", {{"late", hand.latest_pour()}})});
    }
    card.cautions.push_back({SignalWord::warning, w.text("night.caution")});
    return card;
}

/// The wakings after the first.
std::string later_wakes(const CardWriter& hand) {
    std::string times;
    bool first = true;
    for (const plan::TopUp& top_up : hand.plan.top_ups) {
        if (top_up.wakes && !std::exchange(first, false)) {
            times += (times.empty() ? "" : ", ") + hand.clock_only(top_up.light_fire);
        }
    }
    return times.empty() ? "" : hand.words.text("night.wake-again", {{"times", times}});
}

}  // namespace

Card night_card(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const plan::Night& night = plan.night;
    const words::Words& w = hand.words;
    if (!hand.reads()) {
        return clock_card(hand);
    }
    Card card;
    if (night.wake) {
        card.blocks.emplace_back(
            KeyRow{{KeyNumber{w.text("night.wake-label"), hand.clock_only(night.wake->after(-plan.round)), "",
                              later_wakes(hand)},
                    KeyNumber{w.text("night.key-label"), hand.may_leave(hand.alone()), "",
                              w.text("night.key-aside", {{"mark", hand.at_least(night.reading)}})}}});
    } else {
        card.blocks.emplace_back(KeyNumber{w.text("night.key-label"), hand.may_leave(hand.alone()), "",
                                           w.text("night.key-aside", {{"mark", hand.at_least(night.reading)}})});
    }
    Table alone;
    alone.columns = {{w.text("night.table-read"), Align::right, false},
                     {w.text("night.table-alone"), Align::right, true}};
    for (const plan::Unattended& row : night.unattended) {
        if (row.longest >= units::minutes(45) && alone.rows.size() < 4) {
            alone.rows.push_back({hand.at_least(row.reading), hand.may_leave(row.longest)});
        }
    }
    card.blocks.emplace_back(alone);
    card.blocks.emplace_back(Note{w.text("night.table-less", {{"rough", hand.may_leave(plan.interval_rough)},
                                                              {"mark", hand.at_least(plan.top_up_mark)}})});
    card.blocks.emplace_back(Turn{});
    Table morning = morning_table(hand);
    card.blocks.emplace_back(
        Heading{w.text("night.morning-title", {{"floor", hand.at_least(plan.read_floor)}})});
    if (morning.columns.size() > 2) {
        card.blocks.emplace_back(Note{w.text("night.morning-ago", {{"action", hand.at_least(plan.action_line)}})});
    }
    card.blocks.emplace_back(std::move(morning));
    card.blocks.emplace_back(Note{w.text("night.morning-note", {{"full", hand.full()}})});
    if (!plan.trip->at_risk) {
        card.blocks.emplace_back(Note{w.text("night.morning-risk")});
    }
    if (facts::facts().rules_of(plan.trip->rules).fall_once) {
        card.blocks.emplace_back(Note{w.text("night.morning-once")});  // no second time there
    }
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(curve_of(hand));
    const std::vector<Block> what_ifs = what_ifs_of_night(hand);
    card.blocks.insert(card.blocks.end(), what_ifs.begin(), what_ifs.end());
    card.cautions.push_back({SignalWord::warning, w.text("night.caution")});
    return card;
}

}  // namespace holdwater::card
