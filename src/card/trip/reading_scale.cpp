// SPDX-License-Identifier: MIT
#include "card/trip/reading_scale.hpp"

#include "card/figures/places.hpp"

#include <algorithm>
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

}  // namespace

Thermometer::Section topped_up(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    Thermometer::Section section;
    section.rows.push_back({std::min(plan.levels.mark, plan.fill.reading).celsius(),
                            on("mark"),
                            {writer.words.text("reading.leave", {{"rough", on("interval-rough")}})}});
    return section;
}

std::vector<Thermometer::Section> pours_by_reading(const CardWriter& writer, const CardFigures& on, bool brief) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const double action = plan.levels.action_line.celsius();
    // By what is printed: no reading stands under a line that it does not belong to.
    const double printed_action = on.look_at("action-line-level").amount->value.value;
    Thermometer::Section calm;
    const Text& line = on.brief("action-line-level");
    calm.bar = w.text("reading.over", {{"action", brief ? line : on("action-line-level")}});
    calm.bar_at = action;
    calm.calm = true;
    Thermometer::Section now;
    now.bar = w.text("reading.act", {{"action", line}});
    now.bar_at = action;
    std::vector<int> rungs = printed_rungs(plan);
    if (brief && rungs.size() > 2) {
        rungs.erase(rungs.begin(), rungs.end() - 2);  // the next, colder one serves as well
    }
    for (const int nth : rungs) {
        const plan::LadderRung& rung = plan.ladder[static_cast<std::size_t>(nth) - 1];
        Thermometer::Section& section = on.look_at("reads", nth).amount->value.value > printed_action ? calm : now;
        section.rows.push_back({rung.reading.celsius(),
                                brief ? on.brief("reads", nth) : on("reads", nth),
                                {on("below-rim", nth), on("pour", nth)}});
    }
    std::vector<Thermometer::Section> sections;
    bool headed = false;
    for (Thermometer::Section* section : {&calm, &now}) {
        if (section->rows.empty()) {
            continue;
        }
        if (!std::exchange(headed, true)) {
            section->left_head = w.text("reading.left");
            section->heads = {w.text("reading.below-rim"), w.text("reading.pour")};
        }
        section->bar_at = section == &calm ? std::max(action, section->rows.front().at) : action;
        sections.push_back(std::move(*section));
    }
    return sections;
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
