// SPDX-License-Identifier: MIT
#include "card/shared/water_line.hpp"
#include "card/trip/cards.hpp"
#include "units/print.hpp"

namespace holdwater::card {
namespace {

using units::Toward;

Ladder ladder_of(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Ladder ladder;
    ladder.left_head = w.text("topup.left");
    ladder.right_heads = {w.text("topup.below"), w.text("topup.pour")};
    // Pots are measured in the first of two systems: two more figures a rung would not fit.
    const units::System system = units::first_of(writer.system());
    for (const plan::LadderRung& rung : plan.ladder) {
        ladder.rungs.push_back({writer.written(writer.at_least(rung.reading)),
                                {writer.written(water_line(writer, rung.below_rim)),
                                 writer.written(units::amount(rung.pour, system, {0.5, Toward::up}))}});
    }
    ladder.floor_reading = w.text("topup.floor", {{"floor", writer.at_least(plan.read_floor)}});
    ladder.floor_action = w.text("topup.floor-action");
    return ladder;
}

/// How far down the water must stand first, and what is poured: a reading trims it; a fixed pour is what the plan was
/// tried with.
Text top_up_action(const CardWriter& writer, const plan::TopUp& top_up) {
    const words::Words& w = writer.words;
    const std::string out =
        top_up.below_rim ? w.text("topup.out-first", {{"below", water_line(writer, *top_up.below_rim)}}) : "";
    return out +
           w.text(writer.reads() ? "topup.step" : "topup.step-fixed", {{"litres", writer.one_boil(top_up.boiling)}});
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
    card.blocks.add(Note{w.text("topup.level")});
    const units::Volume batch = plan.trip->fire.pot * (plan.trip->fire.usable * plan.trip->fire.pots);
    card.blocks.add(Note{w.text("topup.full", {{"minutes", units::print(plan.round, Toward::up)},
                                               {"litres", writer.measured(batch, Toward::down)}})});
    card.warn(w.text("topup.caution"));
    return card;
}

}  // namespace holdwater::card
