// SPDX-License-Identifier: MIT
#include "card/figures/places.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"

#include <algorithm>
#include <cmath>

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
};

Table table_of(const CardWriter& writer, const CardFigures& on, const FoodOnCard& one) {
    const plan::HoldTable& table = one.food.hold;
    const words::Words& w = writer.words;
    Table drawn;
    drawn.title = w.text(one.food.standard.finish ? "hold.table-title-finish" : "hold.table-title");
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
        drawn.column(on(of_system(false, "bath", "bath-us"), bath), Align::right, true);
        if (both) {
            second.push_back(on(of_system(true, "bath", "bath-us"), bath));
        }
    }
    if (both) {
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

/// What the table does not say by itself: how to find its column, and what a dip below that costs.
std::string table_note(const CardWriter& writer, const CardFigures& on, const FoodOnCard& one) {
    const words::Words& w = writer.words;
    const std::string note = w.text("hold.table-note");
    return one.food.hold.dip ? note + " " +
                                   w.text("hold.table-dip", {{"count", on.count("dip", one.nth)},
                                                             {"floor", on.brief("read-floor-level")}})
                             : note;
}

constexpr double label_each_mm = 10.0;

/// A bar each 10 mm and for the trip's own piece, the thickest of them where there are many.
Staircase stairs_of(const CardWriter& writer, const CardFigures& on, const FoodOnCard& one) {
    constexpr std::size_t most = 10;
    const words::Words& w = writer.words;
    const plan::HoldRuler& ruler = one.food.own_hold.ruler;
    const char* title = !writer.reads()            ? "hold.steps-title-clock"
                        : one.food.standard.finish ? "hold.steps-title-finish"
                                                   : "hold.steps-title";
    Staircase stairs;
    stairs.title = w.text(title, {{"food", plain(one.food.food->name)},
                                  {"shape", shape_text(writer, one.food.food->shape)},
                                  {"bath", where_asked(writer, title, "bath", on, "own-bath", one.nth)}});
    struct Chosen {
        std::size_t tick;
        bool own;
    };
    std::vector<Chosen> chosen;
    for (std::size_t i = 0; i < ruler.ticks.size(); ++i) {
        const double mm = units::in_millimetres(ruler.ticks[i].thickness);
        const double thinner = mm - units::in_millimetres(one.food.food->thickness);
        const bool own = thinner > -1e-3 && thinner < 0.5;
        if (own || std::abs(std::remainder(mm, label_each_mm)) < 0.5 || i + 1 == ruler.ticks.size()) {
            chosen.push_back({i, own});
        }
    }
    // The thinnest go first: their pieces are done in the time of the next.
    while (chosen.size() > most) {
        chosen.erase(chosen.begin() + (chosen.front().own ? 1 : 0));
    }
    for (const Chosen& step : chosen) {
        const int nth = one.first.tick + static_cast<int>(step.tick);
        stairs.steps.push_back(
            {units::in_millimetres(ruler.ticks[step.tick].thickness), on("step", nth), on("ruler", nth), step.own});
    }
    stairs.title += ". " + w.text("hold.steps-note");
    stairs.too_thick = w.text("hold.too-thick");
    return stairs;
}

/// The trip's own piece, a table where baths are read, and the thickness steps for the back.
void add_food(const CardWriter& writer, const CardFigures& on, const FoodOnCard& one, Card& card,
              std::vector<Staircase>& stairs) {
    const words::Words& w = writer.words;
    const plan::OwnHold& own = one.food.own_hold;
    const std::string& name = one.food.food->name;
    if (writer.reads()) {
        // The table has the time of the trip's own piece, in its frame.
        card.blocks.add(Heading{w.text("hold.key-label", {{"food", plain(name)}, {"thickness", on("own", one.nth)}})});
        card.blocks.add(Note{table_note(writer, on, one)});
        card.blocks.add(table_of(writer, on, one));
    } else if (own.time) {
        card.blocks.add(on.key(w.text("hold.key-label", {{"food", plain(name)}, {"thickness", on("own", one.nth)}}),
                               "hold", food_place(writer.plan, one.food), w.text("hold.key-aside-clock")));
    }
    if (own.any_piece) {
        stairs.push_back(stairs_of(writer, on, one));
    } else {
        card.blocks.add(Note{w.text("hold.other-piece")});
    }
}

}  // namespace

Ruler ruler_of(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food,
               const plan::HoldRuler& ruler, int nth, int first, bool mark_own) {
    const words::Words& w = writer.words;
    Ruler drawn;
    const char* title = !writer.reads()        ? "hold.ruler-title-clock"
                        : food.standard.finish ? "hold.ruler-title-finish"
                                               : "hold.ruler-title";
    drawn.title = w.text(title, {{"food", plain(food.food->name)},
                                 {"shape", shape_text(writer, food.food->shape)},
                                 {"bath", where_asked(writer, title, "bath", on, "own-bath", nth)}});
    drawn.zero_label = w.text("hold.ruler-zero");
    std::vector<bool> labelled;
    for (const plan::HoldRuler::Tick& tick : ruler.ticks) {
        const double mm = units::in_millimetres(tick.thickness);
        const bool each = std::abs(std::remainder(mm, label_each_mm)) < 0.5;
        // The tick of the trip's own piece, which may be a little thinner but never thicker than it.
        const double thinner = mm - units::in_millimetres(food.food->thickness);
        const bool own = mark_own && thinner > -1e-3 && thinner < 0.5;
        if (own && !each && !labelled.empty()) {
            // Room for this label: what lies between the one before and this takes the longer time anyway.
            labelled.back() = false;
        }
        labelled.push_back(each || own);
        drawn.ticks.push_back({mm, "", own});
    }
    for (std::size_t i = 0; i < labelled.size(); ++i) {
        if (labelled[i]) {
            drawn.ticks[i].label = on("ruler", first + static_cast<int>(i));
        }
    }
    drawn.too_thick_mm = units::in_millimetres(ruler.too_thick);
    drawn.too_thick_label = w.text("hold.ruler-thick");
    return drawn;
}

Card hold_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("hold");
    Card card;
    std::vector<Staircase> stairs;
    int nth = 0;
    std::size_t cooked = 0;  // here; the others only stay hot
    for (const plan::FoodPlan& food : plan.foods) {
        ++nth;
        if (food.standard.kept_hot) {
            card.blocks.add(Note{w.text("hold.kept-hot", {{"food", plain(food.food->name)}})});
            continue;
        }
        ++cooked;
        add_food(writer, on, {food, nth, hold_places(plan, food)}, card, stairs);
    }
    // Without steps nothing but the trip's own piece is known. With several foods each has a limit of its own, where
    // its steps end.
    const bool all = cooked > 0 && stairs.size() == cooked;
    const plan::FoodPlan& only = plan.foods.front();
    card.warn_here(all && plan.foods.size() == 1 && only.thickest
                       ? w.text("hold.caution", {{"thickest", on.brief("thickest", food_place(plan, only))}})
                       : w.text(all && plan.foods.size() > 1 ? "hold.caution-several" : "hold.caution-plain"));
    if (!stairs.empty()) {
        card.blocks.add(Turn{});
        for (Staircase& one : stairs) {
            card.blocks.add(std::move(one));
        }
    }
    return card;
}

}  // namespace holdwater::card
