// SPDX-License-Identifier: MIT
#include "card/class/class_deck.hpp"
#include "card/class/class_parts.hpp"
#include "card/figures/parts.hpp"
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

/// A card of a class, for the parts that trip cards have too: their figures are made as those of a trip.
struct ClassWriter {
    SafeSide safe;
    FigureList figures;
    FigureMaker of;
    CardFigures on;
    CardWriter writer;

    ClassWriter(const ClassFrame& frame, const words::Words& words, std::string_view card)
        : safe{{frame.plan(), words}},
          figures(safe),
          of(figures, card),
          on(figures.on(card)),
          writer{{frame.plan(), words}, figures} {}
    ClassWriter(const ClassWriter&) = delete;  // maker and writer point to the list
    ClassWriter& operator=(const ClassWriter&) = delete;

    KeyNumber key(Text label, units::Temperature at_least, const Text& aside) const {
        return key_number(safe.words, std::move(label), safe.at_least(at_least), aside);
    }
};

Card named(const words::Words& w, const std::string& section) {
    Card card;
    card.name = w.text(section + ".name");
    card.question = w.text(section + ".question");
    return card;
}

/// `first`: the number of its first tick, moved on behind its last.
void add_class_ruler(const ClassWriter& one, const plan::FoodPlan& food, int nth, const plan::HoldRuler& times,
                     int& first, Card& card) {
    const words::Words& w = one.safe.words;
    add_ruler(one.of, food, times, nth, first);
    const Text shape = w.text("hold.shape-" + std::string(facts::to_name(food.food->shape)));
    Ruler ruler = ruler_of(one.writer, one.on, food, times, first, false);
    first += static_cast<int>(times.ticks.size());
    // Bath, shape and how the piece lies stay with the ruler that they decide, on whatever face it comes to stand.
    ruler.title = w.text("class-hold.ruler-title-" + std::string(facts::to_name(food.food->contact)),
                         {{"bath", one.on("own-bath", nth)}, {"shape", shape}});
    constexpr double short_mm = 45.0;  // no room for two lines at the zero line and a label each 10 mm
    if (ruler.too_thick_mm < short_mm) {
        ruler.zero_label = w.text("class-hold.zero");
    }
    card.blocks.add(std::move(ruler));
}

/// Boiling litres by reading, a column for each amount of water in the box.
Ladder ladder_of(const ClassFrame& frame, const SafeSide& safe, bool full) {
    const words::Words& w = safe.words;
    const units::System system = units::first_of(safe.system());
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
        Ladder::Rung rung{safe.written(safe.about(reading)), {}};
        for (const units::Volume water : common_litres()) {
            // Three columns have no room for units: the line above says it.
            const units::Volume pour = frame.pour(water, reading, safe.plan.levels.mark, full);
            rung.amounts.push_back(safe.written(safe.litres_short(pour, Toward::up).without_units()));
        }
        ladder.rungs.push_back(std::move(rung));
    }
    ladder.floor_reading = w.text("topup.floor", {{"floor", safe.at_least(safe.plan.levels.read_floor)}});
    ladder.floor_action = w.text("topup.floor-action");
    return ladder;
}

Table mixing_table(const ClassFrame& frame, const SafeSide& safe) {
    const words::Words& w = safe.words;
    Table table;
    const units::Amount cold = safe.short_degrees(facts::facts().temperature("class.cold-water"));
    table.column(w.text("class-mix.col-bath"), Align::left, true);
    table.column(w.text("class-mix.col-cold", {{"cold", cold}}), Align::right, true);
    table.column(w.text("class-mix.col-ice"), Align::right, true);
    for (const units::Temperature bath : frame.baths()) {
        std::vector<Text> row{safe.written(safe.at_least(bath))};
        for (const bool ice : {false, true}) {
            const auto mix = class_mix(frame, bath, ice);
            row.push_back(mix ? safe.written(parts_to_mix(mix->parts)) : w.text("hold.never"));
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

/// Each kind of food has its own floor: as readings, in one line.
Text floors(const ClassFrame& frame, const SafeSide& safe) {
    using facts::Category;
    const auto floor = [&](Category category) {
        const facts::Rule* rule = facts::facts().find_rule(frame.wish().rules, category);
        return safe.short_degrees(std::max(rule->cook_floor, rule->hold_floor) + frame.wish().thermometer, Toward::up);
    };
    return safe.words.text("class-limits.floors", {{"red-meat", floor(Category::red_meat)},
                                                   {"poultry", floor(Category::poultry)},
                                                   {"fish", floor(Category::fish)}});
}

Table other_trouble(const ClassWriter& one) {
    const words::Words& w = one.safe.words;
    const facts::Facts& facts = facts::facts();
    const Text hot = full(one.safe, one.on);
    Table table;
    table.column(w.text("limits.table-other"));
    table.row({w.text("limits.leak", {{"full", hot}})});
    table.row({w.text("limits.slow", {{"hours", one.on("come-up")}, {"core", one.on("come-up-to")}})});
    table.row({w.text("limits.risk", {{"full", hot}})});
    table.row({w.text("class-limits.minced", {{"full", hot}})});
    table.row({w.text("class-limits.left", {{"middle", one.safe.limit_short(facts.temperature("cooling.middle"))},
                                            {"first", units::print(facts.duration("cooling.first"))},
                                            {"end", one.safe.limit_short(facts.temperature("cooling.to"))},
                                            {"all", units::print(facts.duration("cooling.all"))}})});
    return table;
}

}  // namespace

std::vector<Card> class_hold_cards(const ClassFrame& frame, const words::Words& words) {
    std::vector<Card> cards;
    const std::vector<plan::FoodPlan>& foods = frame.plan().foods;
    for (std::size_t bath = 0; bath < frame.baths().size(); ++bath) {
        Card card = named(words, "class-hold");
        const ClassWriter one(frame, words, "hold");
        const plan::FoodPlan& first = foods.front();
        card.blocks.add(one.key(words.text("class-hold.key-label"), frame.baths()[bath], frame.kind().name));
        card.blocks.add(Note{words.text("class-hold.note")});
        if (first.standard.below_consumer_advice) {
            add_food(one.of, first, 1);
            card.blocks.add(Note{advice_line(one.writer, one.on, first, 1, "class-hold.advice")});
        }
        int tick = 1;
        for (std::size_t food = 0; food < foods.size(); ++food) {
            if (food > 0) {
                card.blocks.add(Turn{});
            }
            add_class_ruler(one, foods[food], static_cast<int>(food) + 1, frame.ruler(bath, food), tick, card);
        }
        card.warn(words.text("class-hold.caution"));
        cards.push_back(std::move(card));
    }
    return cards;
}

std::vector<Card> class_ladder_card(const ClassFrame& frame, const words::Words& words) {
    const SafeSide safe{{frame.plan(), words}};
    Card card = named(words, "class-ladder");
    const char* unit = safe.us_first() ? "qt" : "L";
    card.blocks.add(key_number(words, words.text("topup.key-label"), safe.at_least(frame.plan().levels.mark),
                               words.text("topup.key-aside")));
    card.blocks.add(Note{words.text("class-ladder.add", {{"unit", unit}})});
    card.blocks.add(ladder_of(frame, safe, false));
    card.blocks.add(Turn{});
    card.blocks.add(Heading{words.text("class-ladder.swap-heading")});
    card.blocks.add(Note{words.text("class-ladder.swap", {{"unit", unit}})});
    card.blocks.add(ladder_of(frame, safe, true));
    card.blocks.add(Note{words.text("class-ladder.between", {{"altitude", altitude_of(frame)}})});
    card.warn(words.text("topup.caution"));
    return {card};
}

std::vector<Card> class_mix_card(const ClassFrame& frame, const words::Words& words) {
    const SafeSide safe{{frame.plan(), words}};
    Card card = named(words, "class-mix");
    const units::Temperature mark = frame.plan().levels.mark;
    if (const auto mix = class_mix(frame, mark, false)) {
        card.blocks.add(
            KeyNumber{words.text("touch.key-label"), safe.written(parts_to_mix(mix->parts)) + " : 1", "",
                      words.text("class-mix.key-aside",
                                 {{"bath", safe.at_least(mark)},
                                  {"cold", safe.short_degrees(facts::facts().temperature("class.cold-water"))}})});
    }
    card.blocks.add(mixing_table(frame, safe));
    Steps steps;
    steps.add(words.text("touch.pour"));
    if (const auto mix = class_mix(frame, mark, false)) {
        const units::System first = units::first_of(safe.system());
        steps.add(words.text("class-mix.span", {{"bath", safe.short_degrees(mark, Toward::up)},
                                                {"low", units::amount(mix->low, first, {1.0, Toward::down})},
                                                {"high", units::amount(mix->high, first, {1.0, Toward::up})}}));
    }
    card.blocks.add(std::move(steps));
    card.blocks.add(Note{boils_at(frame, words)});
    card.warn(words.text("class-mix.caution"));
    return {card};
}

std::vector<Card> class_touch_card(const ClassFrame& frame, const words::Words& words) {
    const ClassWriter one(frame, words, "touch");
    add_wax_figures(one.of);
    add_dips(one.of);
    Card card = named(words, "touch");
    card.blocks.add(Note{words.text("class-touch.first")});
    add_wax(one.writer, one.on, true, card);
    card.blocks.add(Turn{});
    add_hand(one.writer, one.on, card);
    card.warn(words.text("touch.caution"));
    return {card};
}

std::vector<Card> class_limits_card(const ClassFrame& frame, const words::Words& words) {
    const ClassWriter one(frame, words, "limits");
    add_falls(one.of);
    add_come_up(one.of);
    Card card = named(words, "limits");
    card.blocks.add(one.on.key(words.text("limits.key-label"), "read-floor", {},
                               words.text("class-limits.key-aside", {{"food", frame.kind().name}})));
    card.blocks.add(Note{words.text("class-limits.clock")});
    if (auto cold = cold_bath_line(one.writer, one.on)) {
        card.blocks.add(std::move(*cold));
    }
    card.blocks.add(fell_below(one.writer, one.on));
    card.blocks.add(Turn{});
    card.blocks.add(other_trouble(one));
    card.blocks.add(Note{words.text("class-limits.clock-stop", {{"floor", one.on("read-floor")}})});
    card.blocks.add(Note{floors(frame, one.safe)});
    card.warn(words.text("limits.caution"));
    return {card};
}

}  // namespace holdwater::card
