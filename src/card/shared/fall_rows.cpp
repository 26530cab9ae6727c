// SPDX-License-Identifier: MIT
#include "card/shared/shared_parts.hpp"
#include "safety/after_fall.hpp"

#include <utility>

namespace holdwater::card {
namespace {

Table two_columns(const CardWriter& writer, Text title, Text head) {
    Table table;
    table.title = std::move(title);
    table.column(std::move(head), Align::left, true);
    table.column(writer.words.text("limits.col-do"));
    return table;
}

/// The times of the nth row, by the words of the card.
Text time_of(const CardWriter& writer, const CardFigures& on, const safety::FallRow& row, int nth) {
    const auto timed = [&](const char* key) {
        return writer.words.text(key, {{"from", where_asked(writer, key, "from", on, "row-from", nth)},
                                       {"to", where_asked(writer, key, "to", on, "row-to", nth)}});
    };
    if (!row.to) {
        return timed(row.again ? "limits.row-again" : "limits.row-over");
    }
    if (row.from > units::Duration{0}) {
        return timed("limits.row-between");
    }
    return timed(row.to_counts ? "limits.row-up-to" : "limits.row-once");
}

}  // namespace

Table fell_below(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const Text hot = full(writer, on);
    Table below = two_columns(writer, "", w.text("limits.col-time", {{"floor", on.brief("read-floor")}}));
    // Back into the bath is for whole food that was done and for eaters who are not at risk; all else goes to the fire.
    const bool fire_only = writer.any_finish() || plan.trip->at_risk;
    const auto do_short = [&] {
        return w.text(fire_only ? "limits.do-short-fire" : "limits.do-short",
                      {{"full", hot}, {"mark", on("top-up-mark")}});
    };
    int nth = 0;
    for (const safety::FallRow& row : safety::rows(safety::fall_rules(plan.trip->rules, plan.trip->at_risk))) {
        const bool next = row.action == safety::FallAction::finish_and_eat_next;
        const bool now = row.action == safety::FallAction::finish_and_eat_now;
        below.row({time_of(writer, on, row, ++nth), next  ? do_short()
                                                    : now ? w.text("limits.do-middle", {{"full", hot}})
                                                          : w.text("limits.do-long")});
    }
    return below;
}

std::optional<Note> cold_bath_line(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    Text steps;
    for (std::size_t i = 0; i < writer.plan.cold_baths.size(); ++i) {
        const Which which = i > 0 ? Which(static_cast<int>(i) + 1) : Which();  // the first goes without a number
        steps += (steps.empty() ? Text() : w.text("limits.cold-or")) +
                 w.text("limits.cold-step", {{"cold", on("cold-bath", which.in(value_unit::celsius))},
                                             {"longest", on("cold-bath", which.in(value_unit::hours))}});
    }
    return steps.empty() ? std::nullopt : std::optional(Note{w.text("limits.cold", {{"steps", steps}})});
}

}  // namespace holdwater::card
