// SPDX-License-Identifier: MIT
#include "card/figures/night_curve.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/what_if.hpp"
#include "facts/facts.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::card {
namespace {

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

Curve curve_of(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    Curve curve = night_curve(writer);
    curve.title = w.text("night.curve-title", {{"mark", on("mark")}, {"air", on("air")}});
    curve.floor_label = w.text("night.curve-floor", {{"floor", on.brief("read-floor-level")}});
    curve.x_title = w.text("night.curve-x");
    curve.y_title = w.text(writer.us_first() ? "night.curve-y-us" : "night.curve-y");
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
Table morning_table(const CardWriter& writer, const CardFigures& on) {
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
                cells[columns.front()] = w.text("night.action-next-long", {{"full", full(writer, on)}});
            }
        }
    }
    static const char* const heads[] = {"night.morning-2", "night.morning-4", "night.morning-8"};
    Table table;
    table.column(w.text("night.morning-read"), Align::left, true);
    for (const std::size_t c : columns) {
        table.column(w.text(columns.size() == 1 ? "night.morning-do" : heads[c]));
    }
    // The row of the rules below whose reading another row ends; 0: below the floor.
    const auto named = [&](std::size_t row) {
        const std::string_view key = row == 0 ? "read-floor-level" : "morning";
        const Which which = row == 0 ? Which() : Which(static_cast<int>(row));
        return columns.size() > 1 ? on.brief(key, which) : on(key, which);
    };
    std::vector<Text> before;
    std::size_t above = 0;  // where the readings of this row end
    for (std::size_t i = 0; i < rows.size(); ++i) {
        std::vector<Text> cells;
        for (const std::size_t c : columns) {
            cells.push_back(actions[i][c]);
        }
        if (i > 0 && cells != before) {
            above = i;
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
    const CardFigures on = writer.on("night");
    Card card;
    const KeyNumber leave = on.key(w.text("night.key-label"), "longest-alone", {},
                                   w.text(plan.top_ups.empty() ? "night.key-aside-shut" : "night.key-aside-clock"));
    if (plan.night.wake) {
        card.blocks.add(KeyRow{{KeyNumber{w.text("night.wake-label"), on.brief("first-wake"), "", ""}, leave}});
    } else {
        card.blocks.add(leave);
    }
    if (plan.top_ups.empty()) {
        card.blocks.add(Heading{w.text("night.clock-none")});
    } else {
        card.blocks.add(Heading{w.text("night.clock-title")});
        Steps steps;
        steps.numbered = false;
        int nth = 0;
        for (const plan::TopUp& top_up : plan.top_ups) {
            const Which which = ++nth;
            const Text& litres = on("pour", which.in(value_unit::litres));
            steps.add(on("pour", which.in(value_unit::hours)),
                      top_up.wakes ? w.text("night.clock-wake", {{"wake", on.brief("wake", nth)}, {"litres", litres}})
                                   : w.text("night.clock-step", {{"litres", litres}}));
        }
        card.blocks.add(steps);
        card.blocks.add(Note{w.text("night.clock-late", {{"late", on("late")}})});
    }
    card.warn(w.text("night.caution"));
    return card;
}

/// The wakings after the first.
std::string later_wakes(const CardWriter& writer, const CardFigures& on) {
    std::string times;
    bool first = true;
    int nth = 0;
    for (const plan::TopUp& top_up : writer.plan.top_ups) {
        ++nth;
        if (top_up.wakes && !std::exchange(first, false)) {
            times += (times.empty() ? "" : ", ") + on.brief("wake", nth);
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
    const CardFigures on = writer.on("night");
    Card card;
    const KeyNumber leave = on.key(w.text("night.key-label"), "longest-alone", {},
                                   w.text("night.key-aside", {{"mark", on("mark")}, {"from", on.brief("from")}}));
    if (night.wake) {
        card.blocks.add(KeyRow{
            {KeyNumber{w.text("night.wake-label"), on.brief("first-wake"), "", later_wakes(writer, on)}, leave}});
    } else {
        card.blocks.add(leave);
    }
    Table alone;
    alone.column(w.text("night.table-read"), Align::right);
    alone.column(w.text("night.table-alone"), Align::right, true);
    int nth = 0;
    for (const plan::Unattended& row : night.unattended) {
        ++nth;
        if (row.longest >= units::minutes(45) && alone.rows.size() < 4) {
            alone.row({on("reads", nth), on("leave", nth)});
        }
    }
    card.blocks.add(alone);
    if (plan.mark_out_of_reach) {
        card.blocks.add(Note{w.text("topup.short", {{"mark", on("top-up-mark")}})});
    }
    if (!plan.top_ups.empty()) {
        card.blocks.add(Note{w.text("night.before", {{"from", on.brief("from")}})});
    }
    card.blocks.add(Note{w.text("night.table-less", {{"rough", on("rough")}, {"mark", on("top-up-mark")}})});
    card.blocks.add(Turn{});
    Table morning = morning_table(writer, on);
    card.blocks.add(Heading{w.text("night.morning-title", {{"floor", on("read-floor-level")}})});
    if (morning.columns.size() > 2) {
        card.blocks.add(Note{w.text("night.morning-ago", {{"action", on("action-line-level")}})});
    }
    card.blocks.add(std::move(morning));
    card.blocks.add(Note{w.text("night.morning-note", {{"full", full(writer, on)}})});
    if (!plan.trip->at_risk) {
        card.blocks.add(Note{w.text("night.morning-risk")});
    }
    if (facts::facts().rules_of(plan.trip->rules).fall_once) {
        card.blocks.add(Note{w.text("night.morning-once")});  // no second time there
    }
    card.blocks.add(Turn{});
    card.blocks.add(curve_of(writer, on));
    card.blocks.append(what_ifs_of_night(writer));
    card.warn(w.text("night.caution"));
    return card;
}

}  // namespace holdwater::card
