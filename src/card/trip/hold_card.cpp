// SPDX-License-Identifier: MIT
#include "card/figures/places.hpp"
#include "card/shared/hold_steps.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"

#include <utility>

namespace holdwater::card {
namespace {

std::string shape_text(const CardWriter& writer, facts::Shape shape) {
    return writer.words.text("hold.shape-" + std::string(facts::to_name(shape)));
}

/// A food with the number that it has among the figures.
struct FoodOnCard {
    const plan::FoodPlan& food;
    int nth;
    bool tells_how;
};

/// What the table of a food does not say by itself.
Text title_of(const CardWriter& writer, const CardFigures& on, const FoodOnCard& one) {
    const words::Words& w = writer.words;
    Text title = one.tells_how ? w.text(writer.reads() ? "hold.how" : "hold.how-clock") + " " : "";
    title += w.text("hold.steps-title",
                    {{"food", name_of(writer, *one.food.food)}, {"shape", shape_text(writer, one.food.food->shape)}});
    if (!writer.reads()) {
        return title;
    }
    // Below the first column this is all there is to say.
    if (one.food.hold.dip && on.look_at("first-bath", one.nth).brief != on.look_at("read-floor-level").brief) {
        title += " " + w.text("hold.table-dip", {{"count", on.count("dip", one.nth)},
                                                 {"first", on.brief("first-bath", one.nth)},
                                                 {"floor", on.brief("read-floor-level")}});
    }
    return title;
}

/// Its table with bars, the row of the trip's own piece marked.
Staircase stairs_of(const CardWriter& writer, const CardFigures& on, const FoodOnCard& one) {
    const words::Words& w = writer.words;
    Staircase stairs = hold_steps(writer, on, one.food);
    stairs.title = title_of(writer, on, one);
    stairs.table.marked_row = stairs.bars.size() - one.food.hold.thicknesses.size() + one.food.hold.own;
    stairs.too_thick = w.text("hold.too-thick", {{"last", on("last-row", one.nth)}});
    stairs.longer = w.text("hold.longer", {{"last", on("last-row", one.nth)}});
    return stairs;
}

}  // namespace

Card hold_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("hold");
    Card card;
    bool told = false;  // how the bars are used, before the first of them
    int nth = 0;
    for (const plan::FoodPlan& food : plan.foods) {
        ++nth;
        const plan::OwnHold& own = food.own_hold;
        if (food.standard.kept_hot) {
            card.blocks.add(Note{w.text("hold.kept-hot", {{"food", name_of(writer, *food.food)}})});
        } else if (food.standard.finish) {
            card.blocks.add(Note{w.text(
                "hold.finish",
                {{"food", name_of(writer, *food.food)}, {"thickness", on("own", nth)}, {"plan", writer.ref("plan")}})});
        } else if (food.hold.thicknesses.empty()) {
            continue;  // a plan from here on, of which no deck is printed
        } else if (own.any_piece) {
            card.blocks.add(stairs_of(writer, on, {food, nth, !std::exchange(told, true)}));
        } else {
            // Nothing but the trip's own piece is known.
            if (own.time) {
                card.blocks.add(on.key(
                    w.text("hold.key-label", {{"food", name_of(writer, *food.food)}, {"thickness", on("own", nth)}}),
                    "hold", food_place(plan, food), w.text("hold.key-aside-clock")));
            }
            card.blocks.add(Note{w.text("hold.other-piece")});
        }
    }
    card.harmless = true;  // what is thrown away or cut stands in black bars
    return card;
}

}  // namespace holdwater::card
