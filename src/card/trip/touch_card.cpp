// SPDX-License-Identifier: MIT
#include "card/shared/shared_parts.hpp"
#include "card/shared/shown_drawing.hpp"
#include "card/trip/cards.hpp"
#include "facts/facts.hpp"

#include <algorithm>

namespace holdwater::card {
namespace {

constexpr double touch_drawn_mm = 24.0;  // on a hand card

/// The words of the rows of a dip, in the order of their figures.
constexpr const char* dip_keys[] = {"at-once", "by-one", "by-two", "not"};

/// Among what is cooked in the bath alone.
bool any_poultry_or_fish(const plan::Plan& plan) {
    return std::any_of(plan.foods.begin(), plan.foods.end(), [](const plan::FoodPlan& food) {
        if (food.standard.finish) {
            return false;
        }
        const facts::FoodKind* kind = facts::facts().find_food(food.food->kind);
        return kind != nullptr &&
               (kind->category == facts::Category::poultry || kind->category == facts::Category::fish);
    });
}

/// For what and for whom this is no way: what is ready only when its centre was read is so by nothing else.
Note who_may_not(const CardWriter& writer) {
    const words::Words& w = writer.words;
    const Text fire = writer.any_finish() ? w.text("touch.who-fire") + " " : "";
    return Note{fire + w.text(any_poultry_or_fish(writer.plan) ? "touch.who-wax" : "touch.who")};
}

/// First the parts that this fill is mixed of.
void add_mixing(const CardWriter& writer, const CardFigures& on, Card& card) {
    const words::Words& w = writer.words;
    Steps steps;
    const bool cold = on.has("parts-boiling");
    card.blocks.add(on.key(w.text("touch.key-label"), "boil", {},
                           cold ? w.text("touch.key-aside", {{"cold", on("cold")}}) : w.text("touch.key-aside-all")));
    // With a thermometer Fill pours up to a reading; without one just what was reckoned goes in.
    steps.add(w.text(writer.reads() ? "touch.pour-measured" : "touch.pour",
                     {{"fill", writer.ref("fill")}, {"litres", on("boil")}}));
    if (on.has("ice-water")) {
        steps.add(w.text("touch.ice-water", {{"boiled", on("ice-water-boil")}, {"cold", on("ice-water")}}));
    }
    if (!writer.plan.top_ups.empty()) {
        steps.add(writer.reads() ? w.text("touch.top-up", {{"below", on("top-up-below")},
                                                           {"litres", on("top-up-most")},
                                                           {"plan", writer.ref("plan")}})
                                 : w.text("touch.top-up-fixed", {{"plan", writer.ref("plan")}}));
    }
    card.blocks.add(std::move(steps));
}

/// How far wax that is clear still vouches for the bath, and where that is looked up, if each table has a column for
/// it.
Text still_clear(const CardWriter& writer, const CardFigures& on) {
    const auto& foods = writer.plan.foods;
    const double sets = on.look_at("wax-sets").number.value;  // C
    const bool in_tables =
        where_bars(writer) && std::all_of(foods.begin(), foods.end(), [sets](const plan::FoodPlan& food) {
            return !has_bars(food) || food.hold.baths.front().celsius() <= sets;
        });
    return in_tables ? writer.words.text("touch.still-hold", {{"sets", on("wax-sets")}, {"hold", writer.ref("hold")}})
                     : writer.words.text("touch.still", {{"sets", on("wax-sets")}});
}

/// What stung may have been, over one scale with floor and fill: how little it tells is seen at a glance.
Bands dip_picture(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    const bool us = writer.us_first();
    Bands picture;
    picture.head = w.text("touch.dip-stung");
    picture.from = facts::facts().temperature("touch.prior.low").celsius();
    picture.to = facts::facts().temperature("touch.prior.high").celsius();
    int nth = 0;
    for (const char* const dip : dip_keys) {
        if (!on.has("span-c", ++nth)) {
            continue;
        }
        const Which which = nth;
        picture.bars.push_back({w.text(std::string("touch.dip-") + dip), on.look_at("low", which).number.value,
                                on.look_at("high", which).number.value, on(us ? "span-f" : "span-c", nth)});
    }
    if (writer.reads()) {
        const plan::Plan& plan = writer.plan;
        picture.marks = {
            {plan.levels.read_floor.celsius(), w.text("touch.mark-floor", {{"floor", on("read-floor-level")}})},
            {plan.fill.reading.celsius(), w.text("touch.mark-fill", {{"fill", on("fill")}})}};
    }
    picture.scale_head = us ? "°F" : "°C";
    picture.below_head = w.text("touch.burns-in");
    Text before;
    for (nth = 1; on.has("scale", nth); ++nth) {
        const int at = on.count("scale", nth);
        const double celsius = (us ? units::fahrenheit(at) : units::celsius(at)).celsius();
        picture.scale.push_back({celsius, on("scale", nth)});
        // From where it is the same on, once.
        if (on.has("burns-in", nth) && on.look_at("burns-in", nth).number.printed != before) {
            before = on("burns-in", nth);
            picture.below.push_back({celsius, before});
        }
    }
    return picture;
}

}  // namespace

void add_wax(const CardWriter& writer, const CardFigures& on, bool poultry_or_fish, Card& card) {
    const words::Words& w = writer.words;
    card.blocks.add(Heading{w.text("touch.wax-heading")});
    card.blocks.add(Note{w.text("touch.wax", {{"wax", on("wax")}, {"sets", on("wax-sets")}})});
    card.blocks.add(Note{w.text(poultry_or_fish ? "touch.who-wax" : "touch.who")});
}

Text burns_alike(const CardFigures& on) {
    if (!on.has("burn", 1)) {
        return "";
    }
    const Text& first = on.look_at("burn", 1).number.printed;
    for (int nth = 2; on.has("span-c", nth); ++nth) {
        if (!on.has("burn", nth) || on.look_at("burn", nth).number.printed != first) {
            return "";
        }
    }
    return on("burn", 1);
}

Table dip_table(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    const bool both = units::two(writer.system());
    Table table;
    table.column(w.text("touch.dip-stung"));
    table.column(w.text("touch.dip-may-be", {{"unit", writer.us_first() ? "°F" : "°C"}}), Align::left, true);
    if (both) {
        table.column(writer.us_first() ? "°C" : "°F");
    }
    const bool one_burn = !burns_alike(on).empty();
    if (!one_burn) {
        table.column(w.text("touch.dip-burns"));
    }
    int nth = 0;
    for (const char* const dip : dip_keys) {
        if (!on.has("span-c", ++nth)) {
            continue;
        }
        std::vector<Text> cells{w.text(std::string("touch.dip-") + dip)};
        cells.push_back(on(writer.us_first() ? "span-f" : "span-c", nth));
        if (both) {
            cells.push_back(on(writer.us_first() ? "span-c" : "span-f", nth));
        }
        if (!one_burn) {
            cells.push_back(on.has("burn", nth) ? on("burn", nth) : "");
        }
        table.rows.push_back(std::move(cells));
    }
    return table;
}

Card touch_card(const CardWriter& writer) {
    const CardFigures on = writer.on("touch");
    Card card;
    add_mixing(writer, on, card);
    card.blocks.add(Heading{writer.words.text("touch.wax-heading")});
    card.blocks.add(
        Drawings{{shown_drawing(
                     writer.words, "wax-clear-and-cloudy",
                     writer.words.text("touch.wax-glance", {{"wax", on("wax")}, {"still", still_clear(writer, on)}}))},
                 touch_drawn_mm});
    card.blocks.add(who_may_not(writer));
    card.blocks.add(Turn{});
    card.blocks.add(Note{writer.words.text("touch.hand-1") + " " + writer.words.text("touch.hand-2")});
    card.blocks.add(dip_picture(writer, on));
    card.blocks.add(Note{writer.words.text("touch.proves")});
    card.warn_here(writer.words.text("touch.caution"));
    return card;
}

}  // namespace holdwater::card
