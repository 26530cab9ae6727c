// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"

#include <utility>

namespace holdwater::card {
namespace {

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
        card.blocks.add(Note{w.text("night.clock-late", {{"late", on("late")}, {"trouble", writer.ref("trouble")}})});
    }
    card.warn_here(w.text("night.caution"));
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
        card.blocks.add(Note{w.text("reading.short", {{"mark", on("top-up-mark")}})});
    }
    if (!plan.top_ups.empty()) {
        card.blocks.add(Note{w.text("night.before", {{"from", on.brief("from")}, {"reading", writer.ref("reading")}})});
    }
    card.blocks.add(Note{w.text("night.table-less", {{"rough", on("rough")}, {"mark", on("top-up-mark")}})});
    card.warn_here(w.text("night.caution"));
    return card;
}

}  // namespace holdwater::card
