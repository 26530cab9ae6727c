// SPDX-License-Identifier: MIT
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"
#include "plan/result/hold_table.hpp"
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

Table table_of(const CardWriter& writer, const plan::HoldTable& table) {
    const words::Words& w = writer.words;
    Table drawn;
    drawn.title = w.text(table.food->standard.finish ? "hold.table-title-finish" : "hold.table-title");
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
        for (const plan::HoldCell& cell : table.cells[i]) {
            row.push_back(cell.safe ? writer.must_hold_tight(*cell.safe) : w.text("hold.never"));
        }
        if (std::abs((table.thicknesses[i] - table.food->food->thickness).si()) < 1e-6) {
            drawn.marked_row = drawn.rows.size();
        }
        drawn.rows.push_back(std::move(row));
    }
    return drawn;
}

/// Without a thermometer only what the clock keeps is known: the bath never below the action line.
bool kept_by_clock(const CardWriter& writer, units::Temperature bath) {
    return bath.celsius() <= std::ceil(writer.plan.action_line.celsius()) + 1e-9;
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

/// The lowest bath of the table in which the trip's own piece is safe within the trip. Just at the target that takes
/// days, a figure for nobody.
units::Temperature bath_to_print(const plan::Plan& plan, const plan::FoodPlan& food) {
    const units::Duration there = food.eaten.since(food.in);
    const plan::HoldTable table = plan::hold_table(plan, food);
    for (const units::Temperature bath : table.baths) {
        const auto hold = plan::safe_hold(plan, food, food.food->thickness, bath);
        if (hold && *hold <= there) {
            return bath;
        }
    }
    return table.baths.front();
}

/// The trip's own piece, a table where baths are read, and the ruler for the back.
void add_food(const CardWriter& writer, const plan::FoodPlan& food, Card& card, std::vector<Ruler>& rulers) {
    const plan::Plan& plan = writer.plan;
    const units::Temperature bath = bath_to_print(plan, food);
    const bool known = writer.reads() || kept_by_clock(writer, bath);
    auto own = plan::safe_hold(plan, food, food.food->thickness, bath);
    if (!known) {
        own = food.ready().since(food.in);  // of this piece in this bath, and of no other
    }
    if (own) {
        card.blocks.add(
            KeyNumber{writer.words.text("hold.key-label", {{"food", plain(food.food->name)},
                                                           {"thickness", writer.thickness(food.food->thickness)}}),
                      writer.must_hold(*own), "", key_aside(writer, food, bath)});
    }
    if (writer.reads()) {
        const plan::HoldTable table = plan::hold_table(plan, food);
        card.blocks.add(Note{
            writer.words.text("hold.table-note", {{"least", writer.short_degrees(table.baths.front(), Toward::up)}})});
        card.blocks.add(table_of(writer, table));
    }
    if (known) {
        rulers.push_back(ruler_of(writer, food, bath));
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

Ruler ruler_of(const CardWriter& writer, const plan::FoodPlan& food, units::Temperature bath, bool mark_own) {
    const words::Words& w = writer.words;
    // One tick each 5 mm, a label each 10; as long as pieces of this sort may come, and as the longest card shows.
    const double longest = std::clamp(std::ceil(units::in_millimetres(food.food->thickness) / 5.0) * 10.0, 60.0, 110.0);
    const auto ruler = plan::hold_ruler(writer.plan, food, bath, units::millimetres(5), units::millimetres(longest));
    Ruler drawn;
    drawn.title = w.text(!writer.reads()        ? "hold.ruler-title-clock"
                         : food.standard.finish ? "hold.ruler-title-finish"
                                                : "hold.ruler-title",
                         {{"food", plain(food.food->name)},
                          {"shape", shape_text(writer, food.food->shape)},
                          {"bath", writer.at_least(ruler.bath)}});
    drawn.zero_label = w.text("hold.ruler-zero");
    for (const plan::RulerTick& tick : ruler.ticks) {
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
