// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"

namespace holdwater::card {
namespace {

Ladder ladder_of(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    Ladder ladder;
    ladder.left_head = w.text("topup.left");
    ladder.right_heads = {w.text("topup.below"), w.text("topup.pour")};
    for (std::size_t i = 0; i < writer.plan.ladder.size(); ++i) {
        const int nth = static_cast<int>(i) + 1;
        ladder.rungs.push_back({on("reads", nth), {on("below-rim", nth), on("pour", nth)}});
    }
    ladder.floor_reading = w.text("topup.floor", {{"floor", on("read-floor-level")}});
    ladder.floor_action = w.text("topup.floor-action");
    return ladder;
}

/// How far down the water must stand first, and what is poured: a reading trims it; a fixed pour is what the plan was
/// tried with. With the clock.
Steps by_the_clock(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    Steps steps;
    steps.numbered = false;
    int nth = 0;
    for (const plan::TopUp& top_up : writer.plan.top_ups) {
        const Which which = ++nth;
        const Text out =
            top_up.below_rim ? w.text("topup.out-first", {{"below", on("by-clock-below-rim", which)}}) : "";
        steps.add(on("top-up", which.in(value_unit::hours)),
                  out + w.text(writer.reads() ? "topup.step" : "topup.step-fixed",
                               {{"litres", on("top-up", which.in(value_unit::litres))}}));
    }
    return steps;
}

/// Nobody reads the bath: fixed litres by the clock, wax where there is some, and no word of a reading.
Card top_up_by_clock(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("topup");
    Card card;
    if (plan.top_ups.empty()) {
        card.blocks.add(Heading{w.text("topup.fixed-none")});
    } else {
        card.blocks.add(on.key(w.text("topup.fixed-label"), "top-up", Which(1).in(value_unit::litres),
                               w.text("topup.fixed-aside")));
        card.blocks.add(by_the_clock(writer, on));
        card.blocks.add(Note{w.text("topup.fixed-late", {{"late", on("late")}})});
    }
    if (writer.wax()) {
        card.blocks.add(Note{"*" + w.text("topup.fixed-wax") + "*"});
    }
    if (!plan.top_ups.empty()) {
        card.blocks.add(Note{w.text("topup.fixed-full", {{"minutes", on("round")}})});
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
    const CardFigures on = writer.on("topup");
    Card card;
    card.blocks.add(on.key(w.text("topup.key-label"), "mark", {}, w.text("topup.key-aside")));
    card.blocks.add(Note{w.text("topup.act", {{"action", on("action-line-level")}})});
    card.blocks.add(ladder_of(writer, on));
    if (plan.mark_out_of_reach) {
        card.blocks.add(Note{w.text("topup.short", {{"mark", on("mark")}})});
    }
    card.blocks.add(Turn{});
    card.blocks.add(Note{w.text("topup.every", {{"calm", on("interval-calm")}, {"rough", on("interval-rough")}})});
    if (!plan.top_ups.empty()) {
        card.blocks.add(Heading{w.text("topup.steps-title")});
        card.blocks.add(by_the_clock(writer, on));
        card.blocks.add(Note{w.text("topup.late", {{"late", on("late")}})});
    }
    card.blocks.add(Note{w.text("topup.level")});
    card.blocks.add(Note{w.text("topup.full", {{"minutes", on("round")}, {"litres", on("pots-give")}})});
    card.warn(w.text("topup.caution"));
    return card;
}

}  // namespace holdwater::card
