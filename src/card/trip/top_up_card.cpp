// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::card {
namespace {

using units::Toward;

/// Litres that fit before the first top-up, as the card's own figures of it have them, so that they add up.
units::Volume free_room(const CardWriter& writer) {
    if (writer.plan.top_ups.empty() || !worth_a_pour(writer.plan.top_ups.front().out)) {
        return writer.plan.room;
    }
    const auto half_up = [](units::Volume v) {
        return units::litres(units::round_to(units::in_litres(v), 0.5, Toward::up));
    };
    const plan::TopUp& first = writer.plan.top_ups.front();
    return half_up(first.boiling) - half_up(first.out);
}

Ladder ladder_of(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Ladder ladder;
    ladder.left_head = w.text("topup.left");
    // Pots are measured in the first of two systems: two more figures a rung would not fit.
    const units::System system = units::first_of(writer.system());
    const units::Volume room = free_room(writer);
    bool full = true;
    for (const plan::LadderRung& rung : plan.ladder) {
        ladder.rungs.push_back({writer.written(writer.at_least(rung.reading)),
                                {writer.written(units::amount(rung.pour, system, {0.5, Toward::up}))}});
        full = full && rung.pour > room;
    }
    ladder.right_heads = {w.text(full ? "topup.swap" : "topup.pour")};
    ladder.floor_reading = w.text("topup.floor", {{"floor", writer.at_least(plan.read_floor)}});
    ladder.floor_action = w.text("topup.floor-action");
    return ladder;
}

/// What comes out first, and what is poured: a reading trims it, so it is rounded up; a fixed pour is what the plan was
/// tried with.
Text top_up_action(const CardWriter& writer, const plan::TopUp& top_up) {
    const words::Words& w = writer.words;
    const units::Amount litres = writer.one_boil(top_up.boiling);
    const std::string reads = writer.reads() ? "" : "-fixed";
    if (is_swap(top_up)) {
        return w.text("topup.step-swap" + reads, {{"litres", litres}});
    }
    const std::string out = worth_a_pour(top_up.out)
                                ? w.text("topup.out-first", {{"litres", writer.litres_short(top_up.out, Toward::up)}})
                                : "";
    return out + w.text("topup.step" + reads, {{"litres", litres}});
}

/// What every top-up takes out and pours, with the clock.
Steps by_the_clock(const CardWriter& writer) {
    Steps steps;
    steps.numbered = false;
    for (const plan::TopUp& top_up : writer.plan.top_ups) {
        steps.add(writer.clock(top_up.at), top_up_action(writer, top_up));
    }
    return steps;
}

/// How much may be added before as much must come out: until the first top-up that fills the box.
Text room_text(const CardWriter& writer) {
    const auto& top_ups = writer.plan.top_ups;
    if (top_ups.empty() || is_swap(top_ups.front()) || !worth_a_pour(top_ups.front().out)) {
        return writer.words.text("topup.swap-when");
    }
    return writer.words.text("topup.room", {{"room", writer.litres_short(free_room(writer))},
                                            {"first", writer.clock_only(top_ups.front().at)}});
}

/// Nobody reads the bath: fixed litres by the clock, wax where there is some, and no word of a reading.
Card top_up_by_clock(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Card card;
    if (plan.top_ups.empty()) {
        card.blocks.add(Heading{w.text("topup.fixed-none")});
    } else {
        card.blocks.add(writer.key(w.text("topup.fixed-label"), writer.litres_short(plan.top_ups.front().boiling),
                                   w.text("topup.fixed-aside")));
        card.blocks.add(by_the_clock(writer));
        card.blocks.add(Note{w.text("topup.fixed-late", {{"late", writer.latest_pour()}})});
    }
    if (writer.wax()) {
        card.blocks.add(Note{"*" + w.text("topup.fixed-wax") + "*"});
    }
    if (!plan.top_ups.empty()) {
        card.blocks.add(Note{w.text("topup.fixed-full", {{"minutes", units::print(plan.round, Toward::up)}})});
    }
    card.warn(w.text("topup.caution"));
    return card;
}

}  // namespace

Card top_up_card(const CardWriter& writer) {
    if (!writer.reads()) {
        return top_up_by_clock(writer);
    }
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Card card;
    card.blocks.add(writer.key(w.text("topup.key-label"), plan.top_up_mark, Toward::up, w.text("topup.key-aside")));
    card.blocks.add(Note{w.text("topup.act", {{"action", writer.at_least(plan.action_line)}})});
    card.blocks.add(ladder_of(writer));
    card.blocks.add(Turn{});
    card.blocks.add(Note{w.text("topup.every", {{"calm", writer.may_leave(plan.interval_calm)},
                                                {"rough", writer.may_leave(plan.interval_rough)}})});
    if (!plan.top_ups.empty()) {
        card.blocks.add(Heading{w.text("topup.steps-title")});
        card.blocks.add(by_the_clock(writer));
        card.blocks.add(Note{w.text("topup.late", {{"late", writer.latest_pour()}})});
    }
    card.blocks.add(Note{room_text(writer)});
    const units::Volume batch = plan.trip->fire.pot * (plan.trip->fire.usable * plan.trip->fire.pots);
    card.blocks.add(Note{w.text("topup.full", {{"minutes", units::print(plan.round, Toward::up)},
                                               {"litres", writer.measured(batch, Toward::down)}})});
    card.warn(w.text("topup.caution"));
    return card;
}

}  // namespace holdwater::card
