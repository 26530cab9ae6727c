// SPDX-License-Identifier: MIT
#include "card/trip/acts.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/plan_timeline.hpp"

#include <utility>

namespace holdwater::card {
Card plan_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("plan");
    Card card;
    card.blocks.add(timeline_of(writer));
    Text late = w.text("plan.late", {{"latest", on("latest-fire")}});
    if (!(plan.waits_until > plan.trip->serve)) {
        late += " " + w.text("plan.wait-not", {{"serve", on("act", act_at(plan, plan.trip->serve))}});
    }
    card.blocks.add(Note{std::move(late)});
    card.blocks.add(Note{writer.reads()
                             ? w.text("plan.caution", {{"floor", on("read-floor")}, {"reading", writer.ref("reading")}})
                             : w.text(writer.wax() ? "plan.caution-clock-wax" : "plan.caution-clock",
                                      {{"late", on("late")}, {"trouble", writer.ref("trouble")}})});
    card.harmless = true;  // what one reads here scalds nobody: each act has its own card
    return card;
}

}  // namespace holdwater::card
