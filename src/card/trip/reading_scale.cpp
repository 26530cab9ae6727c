// SPDX-License-Identifier: MIT
#include "card/trip/reading_scale.hpp"

#include "card/figures/places.hpp"
#include "plan/result/overnight.hpp"
#include "plan/result/reading_rows.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace holdwater::card {
namespace {

std::string action_text(const CardWriter& writer, safety::FallAction action) {
    switch (action) {
        case safety::FallAction::none:
            return writer.words.text("reading.action-none");
        case safety::FallAction::finish_and_eat_next:
            return writer.words.text("reading.action-next");
        case safety::FallAction::finish_and_eat_now:
            return writer.words.text("reading.action-now");
        case safety::FallAction::throw_away:
            return writer.words.text("reading.action-away");
    }
    return {};
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

/// The reading that asks for the fire, as a bar.
Text fire_bar(const CardWriter& writer, const CardFigures& on) {
    return writer.words.text("reading.act", {{"action", on.brief("action-line-level")}});
}

}  // namespace

std::vector<Thermometer::Section> good_readings(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Thermometer::Section calm;
    // Who watches looks again in time for the pots, and does what Plan has before that; how long nobody need look is
    // Night's.
    const char* leave = plan.top_ups.empty() ? "reading.leave" : "reading.leave-plan";
    const Text& again = on("again-at-mark");
    calm.rows.push_back(
        {std::min(plan.levels.mark, plan.fill.reading).celsius(),
         w.text("reading.or-more", {{"reading", on.brief("mark")}}),
         {overnight(plan) ? w.text("reading.leave-asleep", {{"time", again}, {"night", writer.ref("night")}})
                          : w.text(leave, {{"time", again}})}});
    if (const auto settled = settled_reads(plan)) {
        // Under the line it stands on no level of its own: it is for that look alone.
        const bool over = *settled > plan.levels.action_line;
        const double at = over ? settled->celsius() : std::numeric_limits<double>::quiet_NaN();
        Thermometer::Row row{at,
                             w.text("reading.or-more", {{"reading", on.brief("as-planned")}}),
                             {w.text("reading.as-planned", {{"time", on.brief("settled-at")}})}};
        calm.rows.insert(at > calm.rows.front().at ? calm.rows.begin() : calm.rows.end(), std::move(row));
    }
    // For whatever reading is left over the line, so beside rows that lie there: no single level.
    calm.rows.push_back({std::numeric_limits<double>::quiet_NaN(),
                         w.text("reading.over", {{"action", on.brief("action-line-level")}}),
                         {w.text(leave, {{"time", on("again")}})}});
    Thermometer::Section now;
    now.bar = fire_bar(writer, on);
    now.bar_at = plan.levels.action_line.celsius();
    Thermometer::Section fallen;
    fallen.bar = w.text("reading.turn", {{"floor", on.brief("read-floor-level")}});
    return {std::move(calm), std::move(now), std::move(fallen)};
}

std::vector<Thermometer::Section> short_readings(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Thermometer::Section calm;
    calm.bar = w.text("one.over", {{"action", on.brief("action-line-level")}, {"reading", writer.ref("reading")}});
    calm.bar_at = std::min(plan.levels.mark, plan.fill.reading).celsius();
    calm.calm = true;
    Thermometer::Section now;
    now.bar = fire_bar(writer, on);
    now.bar_at = plan.levels.action_line.celsius();
    Thermometer::Section fallen;
    fallen.bar = w.text("one.below", {{"floor", on.brief("read-floor-level")}, {"reading", writer.ref("reading")}});
    if (away_below(plan)) {
        fallen.rows.push_back({plan.night.morning.back().reading.celsius(),
                               w.text("reading.below", {{"reading", on("away")}}),
                               {w.text("reading.action-away")}});
    }
    return {std::move(calm), std::move(now), std::move(fallen)};
}

Table top_up_table(const CardWriter& writer, const CardFigures& on, bool brief) {
    const words::Words& w = writer.words;
    Table table;
    table.column(w.text(brief ? "reading.row-from" : "reading.from"), Align::left, true);
    table.column(w.text("reading.below-rim"));
    table.column(w.text("reading.pour"));
    const std::vector<int> rungs = plan::printed_rungs(writer.plan);
    for (const int nth : rungs) {
        // Each row is for all readings down to its own, the last for whatever is colder.
        const Text reads = rungs.size() == 1     ? w.text("reading.row-only")
                           : nth == rungs.back() ? w.text("reading.row-last")
                           : brief               ? on.brief("reads", nth)
                                                 : on("reads", nth);
        table.row({reads, on("below-rim", nth), on("pour", nth)});
    }
    return table;
}

Thermometer::Section fallen_readings(const CardWriter& writer, const CardFigures& on) {
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
    static const char* const heads[] = {"reading.since-2", "reading.since-4", "reading.since-more"};
    Thermometer::Section section;
    const bool timed = columns.size() > 1;
    const Text& floor = on.brief("read-floor-level");
    section.bar = timed ? w.text("reading.floor-since", {{"floor", floor}, {"action", on.brief("action-line-level")}})
                        : w.text("reading.floor", {{"floor", floor}});
    if (timed) {
        section.left_head = w.text("reading.at-least");
        for (const std::size_t c : columns) {
            section.heads.push_back(w.text(heads[c]));
        }
    }
    // After so many rows of the rules; 0: the floor.
    const auto named = [&](std::size_t above) {
        const int nth = static_cast<int>(above);
        return above == 0 ? on.brief("read-floor-level") : timed ? on.brief("fallen", nth) : on("fallen", nth);
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
            section.rows.push_back({rows[i - 1].reading.celsius(),
                                    w.text(timed ? "reading.fallen" : "reading.or-more", {{"reading", named(above)}}),
                                    std::move(before)});
        }
        before = std::move(cells);
    }
    section.rows.push_back(
        {rows.back().reading.celsius(), w.text("reading.below", {{"reading", named(above)}}), std::move(before)});
    return section;
}

}  // namespace holdwater::card
