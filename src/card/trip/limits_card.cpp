// SPDX-License-Identifier: MIT
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/what_if.hpp"
#include "facts/facts.hpp"

#include <algorithm>

namespace holdwater::card {
namespace {

/// Liver and shellfish are for nobody who is at risk, however hot: viruses.
bool none_at_risk(const plan::Plan& plan) {
    return std::any_of(plan.foods.begin(), plan.foods.end(), [](const plan::FoodPlan& food) {
        const facts::FoodKind* kind = facts::facts().find_food(food.food->kind);
        return kind != nullptr &&
               (kind->category == facts::Category::liver || kind->category == facts::Category::bivalve);
    });
}

Table two_columns(const CardWriter& writer, Text title, Text head) {
    Table table;
    table.title = std::move(title);
    table.column(std::move(head), Align::left, true);
    table.column(writer.words.text("limits.col-do"));
    return table;
}

/// Short rows over the whole width, each led by its bold trouble.
Table one_column(const CardWriter& writer) {
    Table table;
    table.column(writer.words.text("limits.table-other"));
    return table;
}

Table other_trouble(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    const Text hot = full(writer, on);
    Table other = one_column(writer);
    other.row({w.text("limits.leak", {{"full", hot}})});
    other.row({w.text("limits.slow", {{"hours", on("come-up")}, {"core", on("come-up-to")}})});
    // A plan that was made for people at risk gives them what they need as long as nothing goes wrong.
    other.row({none_at_risk(writer.plan)   ? w.text("limits.risk-none")
               : writer.plan.trip->at_risk ? w.text("limits.risk-planned")
                                           : w.text("limits.risk", {{"full", hot}})});
    other.row({w.text("limits.left")});
    const Text& mark = on("top-up-mark");
    other.row({writer.plan.waits_until > writer.plan.trip->serve
                   ? w.text("limits.late", {{"until", on("waits-until")}, {"least", on("waits-if")}, {"mark", mark}})
                   : w.text("limits.late-now", {{"mark", mark}})});
    return other;
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

/// Nobody can measure bath or core: whatever may have been too cool is thrown away.
Card limits_by_clock(const CardWriter& writer) {
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("limits");
    const Text& late = on("late");
    Card card;
    const auto& saved = writer.plan.late_pour;
    const Text& no_pour = saved ? on("boil-until") : late;
    card.blocks.add(
        KeyNumber{w.text("limits.clock-key"), late, "",
                  w.text(saved ? "limits.clock-key-aside-boil" : "limits.clock-key-aside", {{"late", no_pour}})});
    Table table = two_columns(writer, w.text("limits.clock-title"), "");
    const Text away = w.text("limits.do-long");
    if (saved) {
        table.row({w.text("limits.clock-boil", {{"late", late}, {"until", no_pour}}),
                   w.text("limits.do-boil", {{"boil", on("boil")}})});
    }
    table.row({w.text("limits.clock-late", {{"late", no_pour}}), away});
    table.row({w.text("limits.clock-less"), away});
    table.row({w.text("limits.clock-lid"), away});
    if (writer.wax()) {
        table.row({w.text("limits.clock-wax"), away});
    }
    table.row({w.text("limits.bag-leaked"), away});
    card.blocks.add(table);
    Table other = one_column(writer);
    // Where no pour was planned there is no gap and no measure to go on with.
    const bool pours = !writer.plan.top_ups.empty();
    other.row({w.text("limits.left-none")});
    other.row({w.text("limits.risk-none")});
    other.row({pours ? w.text("limits.late-fixed") : w.text("limits.late-shut", {{"until", on("waits-until")}})});
    card.blocks.add(other);
    card.blocks.append(what_ifs_of_limits(writer));
    card.warn(w.text("limits.caution"));
    return card;
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

Card limits_card(const CardWriter& writer) {
    const words::Words& w = writer.words;
    if (!writer.reads()) {
        return limits_by_clock(writer);
    }
    const CardFigures on = writer.on("limits");
    Card card;
    card.blocks.add(on.key(w.text("limits.key-label"), "read-floor", {}, w.text("limits.key-aside")));
    card.blocks.add(Note{w.text("limits.clock")});
    if (auto cold = cold_bath_line(writer, on)) {
        card.blocks.add(std::move(*cold));
    }
    card.blocks.add(fell_below(writer, on));
    card.blocks.add(Turn{});
    card.blocks.add(other_trouble(writer, on));
    card.blocks.add(Note{w.text("limits.clock-stop", {{"floor", on("read-floor")}})});
    card.blocks.append(what_ifs_of_limits(writer));
    card.warn(w.text("limits.caution"));
    return card;
}

}  // namespace holdwater::card
