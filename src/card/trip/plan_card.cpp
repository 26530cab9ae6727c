// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"
#include "card/trip/food_lines.hpp"
#include "card/trip/plan_timeline.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::card {
namespace {

/// When to go to another card. Without a thermometer a late pour is one with the food in: nothing is amiss while the
/// box is filled.
Text caution(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    if (writer.reads()) {
        return w.text("plan.caution", {{"floor", on("read-floor")}, {"reading", writer.ref("reading")}});
    }
    if (!writer.plan.top_ups.empty()) {
        return w.text(writer.wax() ? "plan.caution-clock-wax" : "plan.caution-clock",
                      {{"late", on("late")}, {"trouble", writer.ref("trouble")}});
    }
    return writer.wax() ? w.text("plan.caution-wax", {{"trouble", writer.ref("trouble")}}) : Text{};
}

}  // namespace

Card plan_card(const CardWriter& writer) {
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("plan");
    Card card;
    card.blocks.add(timeline_of(writer));
    if (!tells_settled(writer)) {
        if (const auto text = caution(writer, on); !text.empty()) {
            card.blocks.add(Note{text});
        }
    }
    if (std::any_of(writer.plan.foods.begin(), writer.plan.foods.end(),
                    [](const plan::FoodPlan& food) { return food.standard.sear.has_value(); })) {
        card.blocks.add(Note{w.text("plan.steak-rule")});
    }
    for (Note& note : advice_lines(writer, on)) {
        card.blocks.add(std::move(note));
    }
    card.harmless = true;  // what one reads here scalds nobody: each act has its own card
    return card;
}

}  // namespace holdwater::card
