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
Text altitude_text(const ClassFrame& frame, const words::Words& w) {
    constexpr double feet = 0.3048;  // m, exact by definition
    const double metres = frame.wish().altitude.si();
    const Text metric = units::number(units::round_to(metres, 10.0, Toward::nearest), 0) + "\u00A0m";
    const Text us = units::number(units::round_to(metres / feet, 10.0, Toward::nearest), 0) + "\u00A0ft";
    const units::System system = frame.wish().units;
    const bool us_first = units::first_of(system) == units::System::us;
    const Text first = us_first ? us : metric;
    return units::two(system) ? w.text("class-deck.pair", {{"first", first}, {"second", us_first ? metric : us}})
                              : first;
}

Text boils_at(const ClassFrame& frame, const words::Words& w) {
    return w.text("class-deck.boils", {{"altitude", altitude_text(frame, w)},
                                       {"boiling", degrees(frame.boiling(), frame.wish().units, Toward::nearest)}});
}

Card named(const words::Words& w, const std::string& section) {
    Card card;
    card.name = w.text(section + ".name");
    card.question = w.text(section + ".question");
    return card;
}

void add_ruler(const CardWriter& hand, const plan::FoodPlan& food, units::Temperature bath, Card& card) {
    const words::Words& w = hand.words;
    const Text shape = w.text("hold.shape-" + std::string(facts::to_name(food.food->shape)));
    Ruler ruler = ruler_of(hand, food, bath, false);
    // Bath, shape and how the piece lies stay with the ruler that they decide, on whatever face it comes to stand.
    ruler.title = w.text("class-hold.ruler-title-" + std::string(facts::to_name(food.food->contact)),
                         {{"bath", hand.at_least(bath)}, {"shape", shape}});
    constexpr double short_mm = 45.0;  // no room for two lines at the zero line and a label each 10 mm
    if (ruler.too_thick_mm < short_mm) {
        ruler.zero_label = w.text("class-hold.zero");
    }
    card.blocks.emplace_back(std::move(ruler));
}

/// Boiling litres by reading, a column for each amount of water in the box.
Ladder ladder_of(const ClassFrame& frame, const CardWriter& hand, bool full) {
    const words::Words& w = hand.words;
    const units::System system = units::first_of(hand.system());
    Ladder ladder;
    // A ladder may come to stand alone on its face: it says itself what its figures do.
    ladder.left_head = w.text(full ? "class-ladder.left-swap" : "class-ladder.left-add",
                              {{"unit", system == units::System::us ? "qt" : "L"}});
    for (const units::Volume water : common_litres()) {
        // More water asks for more: a column's figure in quarts is rounded down.
        ladder.right_heads.push_back(
            w.text("class-ladder.in-box", {{"litres", units::print(water, system, {1.0, Toward::down})}}));
    }
    for (const units::Temperature reading : frame.rungs()) {
        Ladder::Rung rung{hand.about(reading), {}};
        for (const units::Volume water : common_litres()) {
            // Three columns have no room for units: the line above says it.
            const Text printed =
                units::print(frame.pour(water, reading, hand.plan.top_up_mark, full), system, {0.5, Toward::up});
            rung.amounts.push_back(printed.substr(0, printed.find("\u00A0")));
        }
        ladder.rungs.push_back(std::move(rung));
    }
    ladder.floor_reading = w.text("topup.floor", {{"floor", hand.at_least(hand.plan.read_floor)}});
    ladder.floor_action = w.text("topup.floor-action");
    return ladder;
}

Table mixing_table(const ClassFrame& frame, const CardWriter& hand) {
    const words::Words& w = hand.words;
    Table table;
    table.columns = {
        {w.text("class-mix.col-bath"), Align::left, true},
        {w.text("class-mix.col-cold", {{"cold", hand.short_degrees(facts::facts().temperature("class.cold-water"))}}),
         Align::right, true},
        {w.text("class-mix.col-ice"), Align::right, true}};
    for (const units::Temperature bath : frame.baths()) {
        std::vector<Text> row{hand.at_least(bath)};
        for (const bool ice : {false, true}) {
            const auto mix = class_mix(frame, bath, ice);
            row.push_back(mix ? units::number(units::round_to(mix->parts, 0.1, Toward::up), 1) : w.text("hold.never"));
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

/// Each kind of food has its own floor: as readings, in one line.
Text floors(const ClassFrame& frame, const CardWriter& hand) {
    using facts::Category;
    const auto floor = [&](Category category) {
        const facts::Rule* rule = facts::facts().find_rule(frame.wish().rules, category);
        return hand.short_degrees(std::max(rule->cook_floor, rule->hold_floor) + frame.wish().thermometer, Toward::up);
    };
    return hand.words.text("class-limits.floors", {{"red-meat", floor(Category::red_meat)},
                                                   {"poultry", floor(Category::poultry)},
                                                   {"fish", floor(Category::fish)}});
}

Table other_trouble(const CardWriter& hand) {
    const words::Words& w = hand.words;
    const facts::Facts& facts = facts::facts();
    const Text full = hand.full();
    Table table;
    table.columns = {{w.text("limits.table-other"), Align::left, false}};
    table.rows = {{w.text("limits.leak", {{"full", full}})},
                  {w.text("limits.slow", {{"hours", units::print(facts.duration("come-up.refuse"))},
                                          {"core", hand.at_least(facts.temperature("come-up.to"))}})},
                  {w.text("limits.risk", {{"full", full}})},
                  {w.text("class-limits.minced", {{"full", full}})},
                  {w.text("class-limits.left", {{"middle", hand.short_degrees(facts.temperature("cooling.middle"))},
                                                {"first", units::print(facts.duration("cooling.first"))},
                                                {"end", hand.short_degrees(facts.temperature("cooling.to"))},
                                                {"second", units::print(facts.duration("cooling.second"))}})}};
    return table;
}

}  // namespace

std::vector<Card> class_hold_cards(const ClassFrame& frame, const words::Words& words) {
    const CardWriter hand{frame.plan(), words};
    std::vector<Card> cards;
    for (const units::Temperature bath : frame.baths()) {
        Card card = named(words, "class-hold");
        const plan::FoodPlan& first = frame.plan().foods.front();
        card.blocks.emplace_back(hand.key(words.text("class-hold.key-label"), bath, Toward::up, frame.kind().name));
        card.blocks.emplace_back(Note{words.text("class-hold.note")});
        if (first.standard.below_consumer_advice) {
            card.blocks.emplace_back(Note{advice_line(hand, first, "class-hold.advice")});
        }
        for (const plan::FoodPlan& food : frame.plan().foods) {
            if (&food != &first) {
                card.blocks.emplace_back(Turn{});
            }
            add_ruler(hand, food, bath, card);
        }
        card.cautions.push_back({SignalWord::warning, words.text("class-hold.caution")});
        cards.push_back(std::move(card));
    }
    return cards;
}

std::vector<Card> class_ladder_card(const ClassFrame& frame, const words::Words& words) {
    const CardWriter hand{frame.plan(), words};
    Card card = named(words, "class-ladder");
    const char* unit = units::first_of(hand.system()) == units::System::us ? "qt" : "L";
    card.blocks.emplace_back(
        hand.key(words.text("topup.key-label"), frame.plan().top_up_mark, Toward::up, words.text("topup.key-aside")));
    card.blocks.emplace_back(Note{words.text("class-ladder.add", {{"unit", unit}})});
    card.blocks.emplace_back(ladder_of(frame, hand, false));
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(Heading{words.text("class-ladder.swap-heading")});
    card.blocks.emplace_back(Note{words.text("class-ladder.swap", {{"unit", unit}})});
    card.blocks.emplace_back(ladder_of(frame, hand, true));
    card.blocks.emplace_back(Note{words.text("class-ladder.between", {{"altitude", altitude_text(frame, words)}})});
    card.cautions.push_back({SignalWord::warning, words.text("topup.caution")});
    return {card};
}

std::vector<Card> class_mix_card(const ClassFrame& frame, const words::Words& words) {
    const CardWriter hand{frame.plan(), words};
    Card card = named(words, "class-mix");
    const units::Temperature mark = frame.plan().top_up_mark;
    if (const auto mix = class_mix(frame, mark, false)) {
        const Text parts = units::number(units::round_to(mix->parts, 0.1, Toward::up), 1);
        card.blocks.emplace_back(
            KeyNumber{words.text("touch.key-label"), parts + " : 1", "",
                      words.text("class-mix.key-aside",
                                 {{"bath", hand.at_least(mark)},
                                  {"cold", hand.short_degrees(facts::facts().temperature("class.cold-water"))}})});
    }
    card.blocks.emplace_back(mixing_table(frame, hand));
    Steps steps;
    steps.steps.push_back({"", words.text("touch.pour")});
    if (const auto mix = class_mix(frame, mark, false)) {
        const units::System first = units::first_of(hand.system());
        steps.steps.push_back(
            {"", words.text("class-mix.span", {{"bath", hand.short_degrees(mark, Toward::up)},
                                               {"low", units::print(mix->low, first, {1.0, Toward::down})},
                                               {"high", units::print(mix->high, first, {1.0, Toward::up})}})});
    }
    card.blocks.emplace_back(std::move(steps));
    card.blocks.emplace_back(Note{boils_at(frame, words)});
    card.cautions.push_back({SignalWord::warning, words.text("class-mix.caution")});
    return {card};
}

std::vector<Card> class_touch_card(const ClassFrame& frame, const words::Words& words) {
    const CardWriter hand{frame.plan(), words};
    Card card = named(words, "touch");
    card.blocks.emplace_back(Note{words.text("class-touch.first")});
    add_wax(hand, true, card);
    card.blocks.emplace_back(Turn{});
    add_hand(hand, card);
    card.cautions.push_back({SignalWord::warning, words.text("touch.caution")});
    return {card};
}

std::vector<Card> class_limits_card(const ClassFrame& frame, const words::Words& words) {
    const CardWriter hand{frame.plan(), words};
    Card card = named(words, "limits");
    card.blocks.emplace_back(hand.key(words.text("limits.key-label"), frame.plan().read_floor, Toward::up,
                                      words.text("class-limits.key-aside", {{"food", frame.kind().name}})));
    card.blocks.emplace_back(Note{words.text("class-limits.clock")});
    if (auto cold = cold_bath_line(hand)) {
        card.blocks.emplace_back(std::move(*cold));
    }
    card.blocks.emplace_back(fell_below(hand));
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(other_trouble(hand));
    card.blocks.emplace_back(
        Note{words.text("class-limits.clock-stop", {{"floor", hand.at_least(frame.plan().read_floor)}})});
    card.blocks.emplace_back(Note{floors(frame, hand)});
    card.cautions.push_back({SignalWord::warning, words.text("limits.caution")});
    return {card};
}

}  // namespace holdwater::card
