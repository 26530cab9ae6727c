// SPDX-License-Identifier: MIT
#include "card/figures/places.hpp"
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
    HoldPlaces first;
    bool tells_how;
};

Table table_of(const CardWriter& writer, const CardFigures& on, const FoodOnCard& one) {
    const plan::HoldTable& table = one.food.hold;
    const words::Words& w = writer.words;
    Table drawn;
    // In both systems each figure would be too wide for a column: the second gets a column of thicknesses and the first
    // row of baths.
    const bool both = units::two(writer.system());
    const auto of_system = [&](bool second, const char* metric, const char* us) {
        return writer.us_first() != second ? us : metric;
    };
    drawn.column(of_system(false, "mm", "in"), Align::right);
    if (both) {
        drawn.column(of_system(true, "mm", "in"), Align::right);
    }
    std::vector<Text> second{"", ""};
    for (int bath = one.first.bath; bath < one.first.bath + static_cast<int>(table.baths.size()); ++bath) {
        drawn.column(writer.reads() ? on(of_system(false, "bath", "bath-us"), bath) : w.text("hold.hours"),
                     Align::right, true);
        if (both && writer.reads()) {
            second.push_back(on(of_system(true, "bath", "bath-us"), bath));
        }
    }
    if (both && writer.reads()) {
        drawn.rows.push_back(second);
    }
    int cell = one.first.cell;
    for (std::size_t i = 0; i < table.thicknesses.size(); ++i) {
        const int nth = one.first.row + static_cast<int>(i);
        std::vector<Text> row{on(of_system(false, "row", "row-in"), nth)};
        if (both) {
            row.push_back(on(of_system(true, "row", "row-in"), nth));
        }
        for (const std::optional<units::Duration>& time : table.cells[i]) {
            row.push_back(time ? on("cell", cell) : w.text("hold.never"));
            ++cell;
        }
        if (i == table.own) {
            drawn.marked_row = drawn.rows.size();
        }
        drawn.rows.push_back(std::move(row));
    }
    return drawn;
}

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

/// The table, a bar of true length under each of its rows.
Staircase stairs_of(const CardWriter& writer, const CardFigures& on, const FoodOnCard& one) {
    const words::Words& w = writer.words;
    Staircase stairs;
    stairs.title = title_of(writer, on, one);
    stairs.table = table_of(writer, on, one);
    stairs.bars.resize(stairs.table.rows.size() - one.food.hold.thicknesses.size());  // the second system's baths
    for (const units::Length thickness : one.food.hold.thicknesses) {
        stairs.bars.push_back(units::in_millimetres(thickness));
    }
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
            card.blocks.add(stairs_of(writer, on, {food, nth, hold_places(plan, food), !std::exchange(told, true)}));
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
