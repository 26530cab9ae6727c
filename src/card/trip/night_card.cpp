// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"
#include "card/trip/what_if.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::card {
namespace {

using units::Toward;

std::string action_text(const CardWriter& writer, safety::FallAction action) {
    switch (action) {
        case safety::FallAction::none:
            return writer.words.text("night.action-none");
        case safety::FallAction::finish_and_eat_next:
            return writer.words.text("night.action-next");
        case safety::FallAction::finish_and_eat_now:
            return writer.words.text("night.action-now");
        case safety::FallAction::throw_away:
            return writer.words.text("night.action-away");
    }
    return {};
}

Curve curve_of(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const plan::Night& night = plan.night;
    const words::Words& w = writer.words;
    Curve curve;
    curve.title =
        w.text("night.curve-title", {{"mark", writer.at_least(night.reading)}, {"air", writer.at_most(night.air)}});
    // Drawn in the unit that the cards print first.
    const bool us = units::first_of(writer.system()) == units::System::us;
    const auto drawn = [us](units::Temperature t) { return us ? t.fahrenheit() : t.celsius(); };
    for (std::size_t i = 0; i < night.curve.size(); ++i) {
        const double x = night.curve_hours[i];
        curve.low.push_back({x, drawn(night.curve[i].low)});
        curve.likely.push_back({x, drawn(night.curve[i].likely)});
        curve.high.push_back({x, drawn(night.curve[i].high)});
    }
    curve.floor = std::ceil(drawn(plan.read_floor) - 1e-9);
    curve.floor_label = w.text("night.curve-floor", {{"floor", writer.short_degrees(plan.read_floor, Toward::up)}});
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
Table morning_table(const CardWriter& writer) {
    const words::Words& w = writer.words;
    const auto& rows = writer.plan.night.morning;
    std::vector<std::vector<Text>> actions;
    for (const plan::MorningRow& row : rows) {
        std::vector<Text>& cells = actions.emplace_back();
        for (const plan::MorningRow::Cell& cell : row.cells) {
            cells.push_back(action_text(writer, cell.action));
        }
    }
    const std::vector<std::size_t> columns = telling_columns(actions);
    if (columns.size() == 1) {
        // One column has the room to say what comes first.
        for (std::vector<Text>& cells : actions) {
            if (cells[columns.front()] == w.text("night.action-next")) {
                cells[columns.front()] = w.text("night.action-next-long", {{"full", writer.full()}});
            }
        }
    }
    static const char* const heads[] = {"night.morning-2", "night.morning-4", "night.morning-8"};
    Table table;
    table.column(w.text("night.morning-read"), Align::left, true);
    for (const std::size_t c : columns) {
        table.column(w.text(columns.size() == 1 ? "night.morning-do" : heads[c]));
    }
    const auto named = [&](units::Temperature reading) {
        return columns.size() > 1 ? writer.short_degrees(reading, Toward::up) : writer.at_least(reading);
    };
    std::vector<Text> before;
    units::Temperature above = writer.plan.read_floor;  // where the readings of this row end
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
Card night_by_clock(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Card card;
    const KeyNumber leave{w.text("night.key-label"), writer.may_leave(writer.alone()), "",
                          w.text(plan.top_ups.empty() ? "night.key-aside-shut" : "night.key-aside-clock")};
    if (plan.night.wake) {
        card.blocks.add(KeyRow{
            {KeyNumber{w.text("night.wake-label"), writer.clock_only(plan.night.wake->after(-plan.round)), "", ""},
             leave}});
    } else {
        card.blocks.add(leave);
    }
    if (plan.top_ups.empty()) {
        card.blocks.add(Heading{w.text("night.clock-none")});
    } else {
        card.blocks.add(Heading{w.text("night.clock-title")});
        Steps steps;
        steps.numbered = false;
        for (const plan::TopUp& top_up : plan.top_ups) {
            steps.add(writer.clock(top_up.at), w.text(top_up.wakes ? "night.clock-wake" : "night.clock-step",
                                                      {{"wake", writer.clock_only(top_up.light_fire)},
                                                       {"litres", writer.litres_short(top_up.boiling)}}));
        }
        card.blocks.add(steps);
        card.blocks.add(Note{w.text("night.clock-late", {{"late", writer.latest_pour()}})});
    }
    card.warn(w.text("night.caution"));
    return card;
}

/// The wakings after the first.
std::string later_wakes(const CardWriter& writer) {
    std::string times;
    bool first = true;
    for (const plan::TopUp& top_up : writer.plan.top_ups) {
        if (top_up.wakes && !std::exchange(first, false)) {
            times += (times.empty() ? "" : ", ") + writer.clock_only(top_up.light_fire);
        }
    }
    return times.empty() ? "" : writer.words.text("night.wake-again", {{"times", times}});
}

}  // namespace

Card night_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const plan::Night& night = plan.night;
    const words::Words& w = writer.words;
    if (!writer.reads()) {
        return night_by_clock(writer);
    }
    Card card;
    const KeyNumber leave{
        w.text("night.key-label"), writer.may_leave(writer.alone()), "",
        w.text("night.key-aside", {{"mark", writer.at_least(night.reading)}, {"from", writer.clock_only(night.from)}})};
    if (night.wake) {
        card.blocks.add(KeyRow{{KeyNumber{w.text("night.wake-label"), writer.clock_only(night.wake->after(-plan.round)),
                                          "", later_wakes(writer)},
                                leave}});
    } else {
        card.blocks.add(leave);
    }
    Table alone;
    alone.column(w.text("night.table-read"), Align::right);
    alone.column(w.text("night.table-alone"), Align::right, true);
    for (const plan::Unattended& row : night.unattended) {
        if (row.longest >= units::minutes(45) && alone.rows.size() < 4) {
            alone.row({writer.written(writer.at_least(row.reading)), writer.may_leave(row.longest)});
        }
    }
    card.blocks.add(alone);
    if (!plan.top_ups.empty()) {
        card.blocks.add(Note{w.text("night.before", {{"from", writer.clock_only(night.from)}})});
    }
    card.blocks.add(Note{w.text("night.table-less", {{"rough", writer.may_leave(plan.interval_rough)},
                                                     {"mark", writer.at_least(plan.top_up_mark)}})});
    card.blocks.add(Turn{});
    Table morning = morning_table(writer);
    card.blocks.add(Heading{w.text("night.morning-title", {{"floor", writer.at_least(plan.read_floor)}})});
    if (morning.columns.size() > 2) {
        card.blocks.add(Note{w.text("night.morning-ago", {{"action", writer.at_least(plan.action_line)}})});
    }
    card.blocks.add(std::move(morning));
    card.blocks.add(Note{w.text("night.morning-note", {{"full", writer.full()}})});
    if (!plan.trip->at_risk) {
        card.blocks.add(Note{w.text("night.morning-risk")});
    }
    if (facts::facts().rules_of(plan.trip->rules).fall_once) {
        card.blocks.add(Note{w.text("night.morning-once")});  // no second time there
    }
    card.blocks.add(Turn{});
    card.blocks.add(curve_of(writer));
    card.blocks.append(what_ifs_of_night(writer));
    card.warn(w.text("night.caution"));
    return card;
}

}  // namespace holdwater::card
