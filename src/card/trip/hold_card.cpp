// SPDX-License-Identifier: MIT
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::card {
namespace {

using units::Toward;

std::string shape_text(const CardWriter& writer, facts::Shape shape) {
    return writer.words.text("hold.shape-" + std::string(facts::to_name(shape)));
}

/// The system of a figure that has no room for both.
units::System first_of(const CardWriter& writer) {
    return units::first_of(writer.system());
}

/// A thickness in one system without its unit, which stands in the column head; eighths of an inch rounded down.
units::Amount bare(units::Length thickness, units::System one) {
    const Toward toward = one == units::System::us ? Toward::down : Toward::nearest;
    return units::amount(thickness, one, {1.0, toward}).without_units();
}

Table table_of(const CardWriter& writer, const plan::FoodPlan& food) {
    const plan::HoldTable& table = food.hold;
    const words::Words& w = writer.words;
    Table drawn;
    drawn.title = w.text(food.standard.finish ? "hold.table-title-finish" : "hold.table-title");
    // In both systems each figure would be too wide for a column: the second gets a column of thicknesses and the first
    // row of baths.
    const bool both = units::two(writer.system());
    const units::System first = first_of(writer);
    const units::System other = units::second_of(writer.system());
    const auto unit = [](units::System one) { return one == units::System::us ? "in" : "mm"; };
    drawn.column(unit(first), Align::right);
    if (both) {
        drawn.column(unit(other), Align::right);
    }
    std::vector<Text> second{"", ""};
    for (const units::Temperature bath : table.baths) {
        drawn.column(writer.written(units::amount(bath, first, {1.0, Toward::up})), Align::right, true);
        second.push_back(writer.written(units::amount(bath, other, {1.0, Toward::up})));
    }
    if (both) {
        drawn.rows.push_back(second);
    }
    for (std::size_t i = 0; i < table.thicknesses.size(); ++i) {
        std::vector<Text> row{writer.written(bare(table.thicknesses[i], first))};
        if (both) {
            row.push_back(writer.written(bare(table.thicknesses[i], other)));
        }
        for (const std::optional<units::Duration>& time : table.cells[i]) {
            row.push_back(time ? writer.must_hold_tight(*time) : w.text("hold.never"));
        }
        if (i == table.own) {
            drawn.marked_row = drawn.rows.size();
        }
        drawn.rows.push_back(std::move(row));
    }
    return drawn;
}

std::string key_aside(const CardWriter& writer, const plan::FoodPlan& food, units::Temperature bath) {
    const words::Words& w = writer.words;
    if (!writer.reads()) {
        return w.text("hold.key-aside-clock");
    }
    const std::string even = w.text("hold.key-aside", {{"bath", writer.at_least(bath)}});
    if (food.standard.finish) {
        return w.text("hold.key-aside-finish", {{"core", writer.limit(food.standard.finish->core)},
                                                {"hold", writer.for_hold(food.standard.finish->hold)},
                                                {"even", even}});
    }
    return even;
}

/// What the table does not say by itself: how to find its column, and what a dip below that costs.
std::string table_note(const CardWriter& writer, const plan::HoldTable& table) {
    const words::Words& w = writer.words;
    const std::string note = w.text("hold.table-note");
    return table.dip
               ? note + " " +
                     w.text("hold.table-dip", {{"count", *table.dip},
                                               {"floor", writer.short_degrees(writer.plan.read_floor, Toward::up)}})
               : note;
}

/// The trip's own piece, a table where baths are read, and the ruler for the back.
void add_food(const CardWriter& writer, const plan::FoodPlan& food, Card& card, std::vector<Ruler>& rulers) {
    const plan::OwnHold& own = food.own_hold;
    if (own.time) {
        card.blocks.add(
            KeyNumber{writer.words.text("hold.key-label", {{"food", plain(food.food->name)},
                                                           {"thickness", writer.thickness(food.food->thickness)}}),
                      writer.must_hold(*own.time), "", key_aside(writer, food, own.bath)});
    }
    if (writer.reads()) {
        card.blocks.add(Note{table_note(writer, food.hold)});
        card.blocks.add(table_of(writer, food));
    }
    if (own.any_piece) {
        rulers.push_back(ruler_of(writer, food, own.ruler));
    } else {
        card.blocks.add(Note{writer.words.text("hold.other-piece")});
    }
}

/// A print at the wrong scale gives itself away where the distance of a mark is known: one that every format shows.
std::string scale_check(const CardWriter& writer, const Ruler& ruler) {
    constexpr double at_mm = 50.0;
    for (const Ruler::Tick& tick : ruler.ticks) {
        if (std::abs(tick.at_mm - at_mm) < 1e-6 && !tick.label.empty() && ruler.too_thick_mm > at_mm) {
            return " " + writer.words.text("hold.ruler-check", {{"time", tick.label}});
        }
    }
    return "";
}

}  // namespace

Ruler ruler_of(const CardWriter& writer, const plan::FoodPlan& food, const plan::HoldRuler& ruler, bool mark_own) {
    const words::Words& w = writer.words;
    Ruler drawn;
    drawn.title = w.text(!writer.reads()        ? "hold.ruler-title-clock"
                         : food.standard.finish ? "hold.ruler-title-finish"
                                                : "hold.ruler-title",
                         {{"food", plain(food.food->name)},
                          {"shape", shape_text(writer, food.food->shape)},
                          {"bath", writer.at_least(ruler.bath)}});
    drawn.zero_label = w.text("hold.ruler-zero");
    for (const plan::HoldRuler::Tick& tick : ruler.ticks) {
        const double mm = units::in_millimetres(tick.thickness);
        const bool labelled = std::lround(mm) % 10 == 0;
        // The tick of the trip's own piece, which may be a little thinner but never thicker than it.
        const double thinner = mm - units::in_millimetres(food.food->thickness);
        const bool own = mark_own && thinner > -1e-3 && thinner < 0.5;
        if (own && !labelled && !drawn.ticks.empty()) {
            // Room for this label: what lies between the one before and this takes the longer time anyway.
            drawn.ticks.back().label.clear();
        }
        drawn.ticks.push_back({mm, labelled || own ? writer.must_hold(tick.hold) : "", own});
    }
    drawn.too_thick_mm = units::in_millimetres(ruler.too_thick);
    drawn.too_thick_label = w.text("hold.ruler-thick");
    return drawn;
}

Card hold_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Card card;
    std::vector<Ruler> rulers;
    for (const plan::FoodPlan& food : plan.foods) {
        add_food(writer, food, card, rulers);
    }
    if (!rulers.empty()) {
        if (writer.reads()) {
            card.blocks.add(Turn{});
        }
        const std::string check = rulers.size() == 1 ? scale_check(writer, rulers.front()) : "";
        for (Ruler& ruler : rulers) {
            card.blocks.add(std::move(ruler));
        }
        card.blocks.add(Note{w.text("hold.ruler-note") + check});
    }
    // Without a ruler nothing but the trip's own piece is known. With several foods each has a limit of its own, where
    // its ruler ends.
    const bool all = rulers.size() == plan.foods.size();
    const auto thickest = all && plan.foods.size() == 1 ? plan.foods.front().thickest : std::nullopt;
    card.warn(thickest ? w.text("hold.caution",
                                {{"thickest", units::amount(*thickest, first_of(writer), {1.0, Toward::down})}})
                       : w.text(all && plan.foods.size() > 1 ? "hold.caution-several" : "hold.caution-plain"));
    return card;
}

}  // namespace holdwater::card
