// SPDX-License-Identifier: MIT
#include "card/trip/reading_scale.hpp"

#include "card/figures/places.hpp"
#include "card/trip/overnight.hpp"

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

/// By how many printed degrees the coldest reading that Plan expects lies over the line; 0 where Plan expects none over
/// it.
double over_action(const CardFigures& on) {
    const auto printed = [&](const char* key) { return on.look_at(key).amount->value.value; };
    return on.has("as-planned") ? std::max(0.0, printed("as-planned") - printed("action-line-level")) : 0.0;
}

/// Over the line, and under what Plan expects: where a degree lies between the two, when to read again.
Text calm_text(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    const Text& line = on.brief("action-line-level");
    const double over = over_action(on);
    if (over <= 0.0) {
        return w.text("reading.over", {{"action", line}, {"time", on("again")}});
    }
    return over > 1.0 ? w.text("reading.over-under",
                               {{"action", line}, {"planned", on.brief("as-planned")}, {"time", on("again")}})
                      : w.text("reading.over-none", {{"action", line}});
}

}  // namespace

Thermometer::Section topped_up(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    Thermometer::Section section;
    // Who watches looks again in time for the pots; how long nobody need look is Night's.
    const Text& again = on("again-at-mark");
    section.rows.push_back(
        {std::min(plan.levels.mark, plan.fill.reading).celsius(),
         on("mark"),
         {overnight(plan) ? writer.words.text("reading.leave-asleep", {{"time", again}, {"night", writer.ref("night")}})
                          : writer.words.text("reading.leave", {{"time", again}})}});
    // From there up to the mark, beside rows that lie between: no single level.
    if (over_action(on) > 0.0) {
        section.rows.push_back({std::numeric_limits<double>::quiet_NaN(),
                                writer.words.text("reading.or-more", {{"reading", on("as-planned")}}),
                                {writer.words.text("reading.as-planned", {{"plan", writer.ref("plan")}})}});
    }
    return section;
}

std::vector<Thermometer::Section> pours_by_reading(const CardWriter& writer, const CardFigures& on, bool brief) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const double action = plan.levels.action_line.celsius();
    // By what is printed: no reading stands under a line that it does not belong to.
    const double printed_action = on.look_at("action-line-level").amount->value.value;
    const Text& line = on.brief("action-line-level");
    Thermometer::Section calm;
    calm.bar =
        brief ? w.text("one.over", {{"action", line}, {"reading", writer.ref("reading")}}) : calm_text(writer, on);
    calm.bar_at = action;
    calm.calm = true;
    Thermometer::Section now;
    now.bar = w.text("reading.act", {{"action", brief ? line : on("action-line-level")}});
    now.bar_at = action;
    bool headed = false;
    for (const int nth : printed_rungs(plan)) {
        Thermometer::Section& section = on.look_at("reads", nth).amount->value.value > printed_action ? calm : now;
        if (!std::exchange(headed, true)) {
            section.left_head = w.text(brief ? "one.left" : "reading.left");
            section.heads = {w.text(brief ? "one.below-rim" : "reading.below-rim"),
                             w.text(brief ? "one.pour" : "reading.pour")};
        }
        section.rows.push_back({plan.ladder[static_cast<std::size_t>(nth) - 1].reading.celsius(),
                                brief ? on.brief("reads", nth) : on("reads", nth),
                                {on("below-rim", nth), on("pour", nth)}});
    }
    if (!calm.rows.empty()) {
        calm.bar_at = std::max(action, calm.rows.front().at);
    }
    return {std::move(calm), std::move(now)};
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
