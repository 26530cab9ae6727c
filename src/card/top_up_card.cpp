// SPDX-License-Identifier: MIT
#include <cmath>

#include "card/cards.hpp"
#include "units/print.hpp"

namespace holdwater::card {
namespace {

using units::Toward;

Ladder ladder_of(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    Ladder ladder;
    ladder.left_head = w.text("topup.left");
    ladder.right_heads = {w.text("topup.add"), w.text("topup.swap")};
    // Pots are measured in litres on a card in both systems: two more figures a rung would not fit.
    const units::System system = hand.system() == units::System::both ? units::System::metric : hand.system();
    const auto amount = [&](units::Volume v) { return units::print(v, system, {0.5, Toward::up}); };
    for (const plan::LadderRung& rung : plan.ladder) {
        // Every second kelvin, counted from the lowest: nobody reads a box to one degree, and rungs stay far apart.
        const double above = (rung.reading - plan.ladder.back().reading).si();
        if (rung.reading >= plan.read_floor && std::lround(above) % 2 == 0 && above <= 10.5) {
            ladder.rungs.push_back({hand.about(rung.reading), {amount(rung.add), amount(rung.swap)}});
        }
    }
    ladder.floor_reading = w.text("topup.floor", {{"floor", hand.at_least(plan.read_floor)}});
    ladder.floor_action = w.text("topup.floor-action");
    return ladder;
}

}  // namespace

Card top_up_card(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    Card card;
    if (plan.trip->boxes.front().thermometer) {
        card.blocks.emplace_back(
            hand.key(w.text("topup.key-label"), plan.top_up_mark, Toward::nearest, w.text("topup.key-aside")));
        card.blocks.emplace_back(ladder_of(hand));
    } else if (!plan.top_ups.empty()) {
        const double litres = units::in_litres(plan.top_ups.front().boiling_most);
        card.blocks.emplace_back(KeyNumber{w.text("topup.fixed-label"),
                                           units::number(units::round_to(litres, 0.5, Toward::up), 1), "L",
                                           w.text("topup.fixed-aside")});
    }
    card.blocks.emplace_back(Note{w.text("topup.act", {{"action", hand.at_least(plan.action_line)}})});
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(Note{w.text("topup.every", {{"calm", hand.may_leave(plan.interval_calm)},
                                                         {"rough", hand.may_leave(plan.interval_rough)}})});
    if (!plan.top_ups.empty()) {
        card.blocks.emplace_back(Heading{w.text("topup.steps-title")});
        Steps steps;
        steps.numbered = false;
        for (const plan::TopUp& top_up : plan.top_ups) {
            steps.steps.push_back(
                {hand.clock(top_up.at), w.text("topup.step", {{"litres", hand.litres_short(top_up.boiling, Toward::up)}})});
        }
        card.blocks.emplace_back(steps);
        card.blocks.emplace_back(Note{w.text("topup.full", {{"minutes", units::print(plan.trip->fire.boils_in, Toward::up)}})});
        const units::Volume batch = plan.trip->fire.pot * (plan.trip->fire.usable * plan.trip->fire.pots);
        card.blocks.emplace_back(Note{w.text("topup.pots", {{"litres", hand.litres(batch)}})});
    }
    card.cautions.push_back({SignalWord::warning, w.text("topup.caution")});
    return card;
}

}  // namespace holdwater::card
