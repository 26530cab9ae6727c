// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"
#include "card/shared/shared_parts.hpp"
#include "plan/result/hold_table.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::card {
namespace {

using units::Toward;

std::string shape_text(const CardWriter& hand, facts::Shape shape) {
    return hand.words.text("hold.shape-" + std::string(facts::to_name(shape)));
}

/// The system of a figure that has no room for both.
units::System first_of(const CardWriter& hand) {
    return units::first_of(hand.system());
}

/// A thickness in one system without its unit, which stands in the column head; eighths of an inch rounded down.
std::string bare(units::Length thickness, units::System one) {
    const Toward toward = one == units::System::us ? Toward::down : Toward::nearest;
    const std::string printed = units::print(thickness, one, {1.0, toward});
    return printed.substr(0, printed.rfind("\u00A0"));
}

/// "11 h 05" as "11h05": the columns are narrow.
std::string tight(const std::string& duration) {
    std::string out;
    for (std::size_t i = 0; i < duration.size(); ++i) {
        if (duration.compare(i, 2, "\u00A0") == 0) {
            ++i;
            continue;
        }
        out += duration[i];
    }
    return out;
}

Table table_of(const CardWriter& hand, const plan::HoldTable& table) {
    const words::Words& w = hand.words;
    Table drawn;
    drawn.title = w.text(table.food->standard.finish ? "hold.table-title-finish" : "hold.table-title");
    // In both systems each figure would be too wide for a column: the second gets a column of thicknesses and the first
    // row of baths.
    const bool both = units::two(hand.system());
    const units::System first = first_of(hand);
    const units::System other = units::second_of(hand.system());
    const auto unit = [](units::System one) { return one == units::System::us ? "in" : "mm"; };
    drawn.columns.push_back({unit(first), Align::right, false});
    if (both) {
        drawn.columns.push_back({unit(other), Align::right, false});
    }
    std::vector<Text> second{"", ""};
    for (const units::Temperature bath : table.baths) {
        drawn.columns.push_back({units::print(bath, first, {1.0, Toward::up}), Align::right, true});
        second.push_back(units::print(bath, other, {1.0, Toward::up}));
    }
    if (both) {
        drawn.rows.push_back(second);
    }
    for (std::size_t i = 0; i < table.thicknesses.size(); ++i) {
        std::vector<Text> row{bare(table.thicknesses[i], first)};
        if (both) {
            row.push_back(bare(table.thicknesses[i], other));
        }
        for (const plan::HoldCell& cell : table.cells[i]) {
            row.push_back(cell.safe ? tight(hand.must_hold(*cell.safe)) : w.text("hold.never"));
        }
        if (std::abs((table.thicknesses[i] - table.food->food->thickness).si()) < 1e-6) {
            drawn.marked_row = drawn.rows.size();
        }
        drawn.rows.push_back(std::move(row));
    }
    return drawn;
}

/// Without a thermometer only what the clock keeps is known: the bath never below the action line.
bool kept_by_clock(const CardWriter& hand, units::Temperature bath) {
    return bath.celsius() <= std::ceil(hand.plan.action_line.celsius()) + 1e-9;
}

std::string key_aside(const CardWriter& hand, const plan::FoodPlan& food, units::Temperature bath) {
    const words::Words& w = hand.words;
    if (!hand.reads()) {
        return w.text("hold.key-aside-clock");
    }
    const std::string even = w.text("hold.key-aside", {{"bath", hand.at_least(bath)}});
    if (food.standard.finish) {
        return w.text("hold.key-aside-finish", {{"core", hand.at_least(food.standard.finish->core)},
                                                {"hold", hand.for_hold(food.standard.finish->hold)},
                                                {"even", even}});
    }
    return even;
}

/// The thinnest of what each food may be at most: one figure for a deck, right for each of its foods. Nothing where one
/// food may be no thicker than that and another one is.
std::optional<units::Length> thickest_of_all(const plan::Plan& plan) {
    std::optional<units::Length> least;
    units::Length own;
    for (const plan::FoodPlan& food : plan.foods) {
        if (!food.thickest) {
            return std::nullopt;
        }
        least = least ? std::min(*least, *food.thickest) : *food.thickest;
        own = std::max(own, food.food->thickness);
    }
    return least && *least + units::millimetres(1) > own ? least : std::nullopt;
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
void add_food(const CardWriter& hand, const plan::FoodPlan& food, Card& card, std::vector<Ruler>& rulers) {
    const plan::Plan& plan = hand.plan;
    const units::Temperature bath = bath_to_print(plan, food);
    const bool known = hand.reads() || kept_by_clock(hand, bath);
    auto own = plan::safe_hold(plan, food, food.food->thickness, bath);
    if (!known) {
        own = food.ready().since(food.in);  // of this piece in this bath, and of no other
    }
    if (own) {
        const std::string what = hand.thickness(food.food->thickness);
        card.blocks.emplace_back(
            KeyNumber{hand.words.text("hold.key-label", {{"food", plain(food.food->name)}, {"thickness", what}}),
                      hand.must_hold(*own), "", key_aside(hand, food, bath)});
    }
    if (hand.reads()) {
        const plan::HoldTable table = plan::hold_table(plan, food);
        card.blocks.emplace_back(Note{hand.words.text(
            "hold.table-note", {{"least", hand.short_degrees(table.baths.front(), Toward::up)}})});
        card.blocks.emplace_back(table_of(hand, table));
    }
    if (known) {
        rulers.push_back(ruler_of(hand, food, bath));
    } else {
        card.blocks.emplace_back(Note{hand.words.text("hold.other-piece")});
    }
}

/// A print at the wrong scale gives itself away where the distance of a mark is known: one that every format shows.
std::string scale_check(const CardWriter& hand, const Ruler& ruler) {
    constexpr double at_mm = 50.0;
    for (const Ruler::Tick& tick : ruler.ticks) {
        if (std::abs(tick.at_mm - at_mm) < 1e-6 && !tick.label.empty() && ruler.too_thick_mm > at_mm) {
            return " " + hand.words.text("hold.ruler-check", {{"time", tick.label}});
        }
    }
    return "";
}

}  // namespace

Ruler ruler_of(const CardWriter& hand, const plan::FoodPlan& food, units::Temperature bath, bool mark_own) {
    const words::Words& w = hand.words;
    // One tick each 5 mm, a label each 10; as long as pieces of this sort may come, and as the longest card shows.
    const double longest = std::clamp(std::ceil(units::in_millimetres(food.food->thickness) / 5.0) * 10.0, 60.0, 110.0);
    const auto ruler = plan::hold_ruler(hand.plan, food, bath, units::millimetres(5), units::millimetres(longest));
    Ruler drawn;
    drawn.title = w.text(!hand.reads()          ? "hold.ruler-title-clock"
                         : food.standard.finish ? "hold.ruler-title-finish"
                                                : "hold.ruler-title",
                         {{"food", plain(food.food->name)},
                          {"shape", shape_text(hand, food.food->shape)},
                          {"bath", hand.at_least(ruler.bath)}});
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
        drawn.ticks.push_back({mm, labelled || own ? hand.must_hold(tick.hold) : "", own});
    }
    drawn.too_thick_mm = units::in_millimetres(ruler.too_thick);
    drawn.too_thick_label = w.text("hold.ruler-thick");
    return drawn;
}

Card hold_card(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    Card card;
    std::vector<Ruler> rulers;
    for (const plan::FoodPlan& food : plan.foods) {
        add_food(hand, food, card, rulers);
    }
    if (!rulers.empty()) {
        if (hand.reads()) {
            card.blocks.emplace_back(Turn{});
        }
        const std::string check = rulers.size() == 1 ? scale_check(hand, rulers.front()) : "";
        for (Ruler& ruler : rulers) {
            card.blocks.emplace_back(std::move(ruler));
        }
        card.blocks.emplace_back(Note{w.text("hold.ruler-note") + check});
    }
    // Without a ruler nothing but the trip's own piece is known.
    const auto thickest = rulers.size() == plan.foods.size() ? thickest_of_all(plan) : std::nullopt;
    card.cautions.push_back(
        {SignalWord::warning,
         thickest ? w.text("hold.caution", {{"thickest", units::print(*thickest, first_of(hand), {1.0, Toward::down})}})
                  : w.text("hold.caution-plain")});
    return card;
}

}  // namespace holdwater::card
