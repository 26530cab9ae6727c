// SPDX-License-Identifier: MIT
#include "card/class/class_deck.hpp"
#include "card/class/class_parts.hpp"
#include "card/shared/shared_parts.hpp"
#include "units/print.hpp"

#include <cmath>

namespace holdwater::card {
namespace {

using units::Toward;

/// "0 m (0 ft)"; to ten, as nobody knows their height better.
units::Amount altitude_of(const ClassFrame& frame) {
    constexpr double feet = 0.3048;  // m, exact by definition
    const double metres = frame.wish().altitude.si();
    return units::in_order(frame.wish().units, units::figure(metres, 10.0, Toward::nearest, "m"),
                           units::figure(metres / feet, 10.0, Toward::nearest, "ft"));
}

Text boils_at(const ClassFrame& frame, const words::Words& w) {
    return w.text("class-deck.boils", {{"altitude", altitude_of(frame)},
                                       {"boiling", degrees(frame.boiling(), frame.wish().units, Toward::nearest)}});
}

Card named(const words::Words& w, const std::string& section) {
    Card card;
    card.name = w.text(section + ".name");
    card.question = w.text(section + ".question");
    return card;
}

void add_ruler(const CardWriter& writer, const plan::FoodPlan& food, const plan::HoldRuler& hold, Card& card) {
    const words::Words& w = writer.words;
    const Text shape = w.text("hold.shape-" + std::string(facts::to_name(food.food->shape)));
    Ruler ruler = ruler_of(writer, food, hold, false);
    // Bath, shape and how the piece lies stay with the ruler that they decide, on whatever face it comes to stand.
    ruler.title = w.text("class-hold.ruler-title-" + std::string(facts::to_name(food.food->contact)),
                         {{"bath", writer.at_least(hold.bath)}, {"shape", shape}});
    constexpr double short_mm = 45.0;  // no room for two lines at the zero line and a label each 10 mm
    if (ruler.too_thick_mm < short_mm) {
        ruler.zero_label = w.text("class-hold.zero");
    }
    card.blocks.add(std::move(ruler));
}

/// Boiling litres by reading, a column for each amount of water in the box.
Ladder ladder_of(const ClassFrame& frame, const CardWriter& writer, bool full) {
    const words::Words& w = writer.words;
    const units::System system = units::first_of(writer.system());
    Ladder ladder;
    // A ladder may come to stand alone on its face: it says itself what its figures do.
    ladder.left_head = w.text(full ? "class-ladder.left-swap" : "class-ladder.left-add",
                              {{"unit", system == units::System::us ? "qt" : "L"}});
    for (const units::Volume water : common_litres()) {
        // More water asks for more: a column's figure in quarts is rounded down.
        ladder.right_heads.push_back(
            w.text("class-ladder.in-box", {{"litres", units::amount(water, system, {1.0, Toward::down})}}));
    }
    for (const units::Temperature reading : frame.rungs()) {
        Ladder::Rung rung{writer.written(writer.about(reading)), {}};
        for (const units::Volume water : common_litres()) {
            // Three columns have no room for units: the line above says it.
            const units::Volume pour = frame.pour(water, reading, writer.plan.top_up_mark, full);
            rung.amounts.push_back(writer.written(units::amount(pour, system, {0.5, Toward::up}).without_units()));
        }
        ladder.rungs.push_back(std::move(rung));
    }
    ladder.floor_reading = w.text("topup.floor", {{"floor", writer.at_least(writer.plan.read_floor)}});
    ladder.floor_action = w.text("topup.floor-action");
    return ladder;
}

units::Figure parts_of(const ClassMix& mix) {
    return units::figure(mix.parts, 0.1, Toward::up);
}

Table mixing_table(const ClassFrame& frame, const CardWriter& writer) {
    const words::Words& w = writer.words;
    Table table;
    const units::Amount cold = writer.short_degrees(facts::facts().temperature("class.cold-water"));
    table.column(w.text("class-mix.col-bath"), Align::left, true);
    table.column(w.text("class-mix.col-cold", {{"cold", cold}}), Align::right, true);
    table.column(w.text("class-mix.col-ice"), Align::right, true);
    for (const units::Temperature bath : frame.baths()) {
        std::vector<Text> row{writer.written(writer.at_least(bath))};
        for (const bool ice : {false, true}) {
            const auto mix = class_mix(frame, bath, ice);
            row.push_back(mix ? writer.written(parts_of(*mix)) : w.text("hold.never"));
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

/// Each kind of food has its own floor: as readings, in one line.
Text floors(const ClassFrame& frame, const CardWriter& writer) {
    using facts::Category;
    const auto floor = [&](Category category) {
        const facts::Rule* rule = facts::facts().find_rule(frame.wish().rules, category);
        return writer.short_degrees(std::max(rule->cook_floor, rule->hold_floor) + frame.wish().thermometer,
                                    Toward::up);
    };
    return writer.words.text("class-limits.floors", {{"red-meat", floor(Category::red_meat)},
                                                     {"poultry", floor(Category::poultry)},
                                                     {"fish", floor(Category::fish)}});
}

Table other_trouble(const CardWriter& writer) {
    const words::Words& w = writer.words;
    const facts::Facts& facts = facts::facts();
    const Text full = writer.full();
    Table table;
    table.column(w.text("limits.table-other"));
    table.row({w.text("limits.leak", {{"full", full}})});
    table.row({w.text("limits.slow", {{"hours", units::print(facts.duration("come-up.refuse"))},
                                      {"core", writer.limit(facts.temperature("come-up.to"))}})});
    table.row({w.text("limits.risk", {{"full", full}})});
    table.row({w.text("class-limits.minced", {{"full", full}})});
    table.row({w.text("class-limits.left", {{"middle", writer.limit_short(facts.temperature("cooling.middle"))},
                                            {"first", units::print(facts.duration("cooling.first"))},
                                            {"end", writer.limit_short(facts.temperature("cooling.to"))},
                                            {"all", units::print(facts.duration("cooling.all"))}})});
    return table;
}

}  // namespace

std::vector<Card> class_hold_cards(const ClassFrame& frame, const words::Words& words) {
    const CardWriter writer{frame.plan(), words};
    std::vector<Card> cards;
    const std::vector<plan::FoodPlan>& foods = frame.plan().foods;
    for (std::size_t bath = 0; bath < frame.baths().size(); ++bath) {
        Card card = named(words, "class-hold");
        const plan::FoodPlan& first = foods.front();
        card.blocks.add(
            writer.key(words.text("class-hold.key-label"), frame.baths()[bath], Toward::up, frame.kind().name));
        card.blocks.add(Note{words.text("class-hold.note")});
        if (first.standard.below_consumer_advice) {
            card.blocks.add(Note{advice_line(writer, first, "class-hold.advice")});
        }
        for (std::size_t food = 0; food < foods.size(); ++food) {
            if (food > 0) {
                card.blocks.add(Turn{});
            }
            add_ruler(writer, foods[food], frame.ruler(bath, food), card);
        }
        card.warn(words.text("class-hold.caution"));
        cards.push_back(std::move(card));
    }
    return cards;
}

std::vector<Card> class_ladder_card(const ClassFrame& frame, const words::Words& words) {
    const CardWriter writer{frame.plan(), words};
    Card card = named(words, "class-ladder");
    const char* unit = units::first_of(writer.system()) == units::System::us ? "qt" : "L";
    card.blocks.add(
        writer.key(words.text("topup.key-label"), frame.plan().top_up_mark, Toward::up, words.text("topup.key-aside")));
    card.blocks.add(Note{words.text("class-ladder.add", {{"unit", unit}})});
    card.blocks.add(ladder_of(frame, writer, false));
    card.blocks.add(Turn{});
    card.blocks.add(Heading{words.text("class-ladder.swap-heading")});
    card.blocks.add(Note{words.text("class-ladder.swap", {{"unit", unit}})});
    card.blocks.add(ladder_of(frame, writer, true));
    card.blocks.add(Note{words.text("class-ladder.between", {{"altitude", altitude_of(frame)}})});
    card.warn(words.text("topup.caution"));
    return {card};
}

std::vector<Card> class_mix_card(const ClassFrame& frame, const words::Words& words) {
    const CardWriter writer{frame.plan(), words};
    Card card = named(words, "class-mix");
    const units::Temperature mark = frame.plan().top_up_mark;
    if (const auto mix = class_mix(frame, mark, false)) {
        card.blocks.add(
            KeyNumber{words.text("touch.key-label"), writer.written(parts_of(*mix)) + " : 1", "",
                      words.text("class-mix.key-aside",
                                 {{"bath", writer.at_least(mark)},
                                  {"cold", writer.short_degrees(facts::facts().temperature("class.cold-water"))}})});
    }
    card.blocks.add(mixing_table(frame, writer));
    Steps steps;
    steps.add(words.text("touch.pour"));
    if (const auto mix = class_mix(frame, mark, false)) {
        const units::System first = units::first_of(writer.system());
        steps.add(words.text("class-mix.span", {{"bath", writer.short_degrees(mark, Toward::up)},
                                                {"low", units::amount(mix->low, first, {1.0, Toward::down})},
                                                {"high", units::amount(mix->high, first, {1.0, Toward::up})}}));
    }
    card.blocks.add(std::move(steps));
    card.blocks.add(Note{boils_at(frame, words)});
    card.warn(words.text("class-mix.caution"));
    return {card};
}

std::vector<Card> class_touch_card(const ClassFrame& frame, const words::Words& words) {
    const CardWriter writer{frame.plan(), words};
    Card card = named(words, "touch");
    card.blocks.add(Note{words.text("class-touch.first")});
    add_wax(writer, true, card);
    card.blocks.add(Turn{});
    add_hand(writer, card);
    card.warn(words.text("touch.caution"));
    return {card};
}

std::vector<Card> class_limits_card(const ClassFrame& frame, const words::Words& words) {
    const CardWriter writer{frame.plan(), words};
    Card card = named(words, "limits");
    card.blocks.add(writer.key(words.text("limits.key-label"), frame.plan().read_floor, Toward::up,
                               words.text("class-limits.key-aside", {{"food", frame.kind().name}})));
    card.blocks.add(Note{words.text("class-limits.clock")});
    if (auto cold = cold_bath_line(writer)) {
        card.blocks.add(std::move(*cold));
    }
    card.blocks.add(fell_below(writer));
    card.blocks.add(Turn{});
    card.blocks.add(other_trouble(writer));
    card.blocks.add(Note{words.text("class-limits.clock-stop", {{"floor", writer.at_least(frame.plan().read_floor)}})});
    card.blocks.add(Note{floors(frame, writer)});
    card.warn(words.text("limits.caution"));
    return {card};
}

}  // namespace holdwater::card
