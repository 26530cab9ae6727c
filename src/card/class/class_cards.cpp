// SPDX-License-Identifier: MIT
// Hold, Mix, Without a thermometer, Box and If something goes wrong, as a class has them.
#include "card/class/class_parts.hpp"
#include "card/figures/class_figures.hpp"
#include "card/figures/places.hpp"
#include "card/shared/hold_steps.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/shared/shown_drawing.hpp"

#include <cmath>
#include <string>

namespace holdwater::card {
namespace {

Text class_shape(const ClassWriter& writer, const plan::FoodPlan& food) {
    return writer.words().text("hold.shape-" + std::string(facts::to_name(food.food->shape)));
}

/// The table, a bar of true length under each of its rows; for no piece of its own: what is longer is measured.
Staircase class_stairs(const ClassWriter& writer, const CardFigures& on, const plan::FoodPlan& food) {
    const words::Words& w = writer.words();
    Staircase stairs = hold_steps(writer.writer, on, food);
    stairs.may_turn = false;
    const int rows = static_cast<int>(food.hold.thicknesses.size());
    const int last = hold_places(writer.frame.plan(), food).row + rows - 1;
    const Text& thickest = on(writer.writer.us_first() ? "row-in" : "row", last);
    stairs.too_thick = w.text("hold.too-thick", {{"last", thickest}});
    stairs.longer = w.text("hold.longer", {{"last", thickest}});
    return stairs;
}

Drawings shown(const ClassWriter& writer, std::initializer_list<std::pair<const char*, Text>> all, double height_mm) {
    Drawings drawings;
    for (const auto& [name, label] : all) {
        drawings.shown.push_back(shown_drawing(writer.words(), name, label));
    }
    drawings.height_mm = height_mm;
    return drawings;
}

}  // namespace

std::vector<Card> class_hold_cards(const ClassWriter& writer) {
    const words::Words& w = writer.words();
    const CardFigures on = writer.on("hold");
    std::vector<Card> cards;
    int nth = 0;
    for (const plan::FoodPlan& food : writer.frame.plan().foods) {
        ++nth;
        Card card;
        const std::string lies(facts::to_name(food.food->contact));
        card.blocks.add(Heading{w.text("class-hold.heading-" + lies,
                                       {{"food", writer.frame.kind().name}, {"shape", class_shape(writer, food)}})});
        card.blocks.add(Note{w.text("hold.how")});
        card.blocks.add(class_stairs(writer, on, food));
        card.warn_here(w.text("class-hold.caution"));
        if (food.standard.below_consumer_advice) {
            card.blocks.add(Note{advice_line(writer.writer, on, food, nth, "class-hold.advice")});
        }
        cards.push_back(std::move(card));
    }
    return cards;
}

std::vector<Card> class_mix_card(const ClassWriter& writer) {
    const words::Words& w = writer.words();
    const CardFigures on = writer.on("mix");
    const std::vector<units::Temperature>& baths = writer.frame.baths();
    const int hottest = class_cell(baths.size() - 1, 0, 2);
    const Text& bath = on("bath", static_cast<int>(baths.size()));
    Card card;
    if (on.has("parts", hottest)) {
        card.blocks.add(KeyNumber{w.text("class-mix.key-label"), on("parts", hottest) + " : 1", "",
                                  w.text("class-mix.key-aside", {{"bath", bath}, {"cold", on("cold")}})});
    }
    Table table;
    table.column(w.text("class-mix.col-bath"), Align::left, true);
    table.column(w.text("class-mix.col-cold", {{"cold", on("cold")}}), Align::right, true);
    table.column(w.text("class-mix.col-ice"), Align::right, true);
    for (std::size_t row = 0; row < baths.size(); ++row) {
        std::vector<Text> cells{on("bath", class_cell(row, 0, 1))};
        for (const std::size_t column : {0U, 1U}) {
            const int nth = class_cell(row, column, 2);
            cells.push_back(on.has("parts", nth) ? on("parts", nth) : w.text("hold.never"));
        }
        table.rows.push_back(std::move(cells));
    }
    card.blocks.add(std::move(table));
    Steps steps;
    steps.add(w.text("class-mix.pour"));
    if (on.has("low")) {
        steps.add(w.text("class-mix.span", {{"bath", bath}, {"low", on("low")}, {"high", on("high")}}));
    }
    card.blocks.add(std::move(steps));
    card.blocks.add(Note{w.text("class-mix.boils", {{"altitude", on("altitude")}, {"boiling", on("boiling")}})});
    card.warn_here(w.text("class-mix.caution"));
    return {card};
}

std::vector<Card> class_touch_card(const ClassWriter& writer) {
    constexpr double wax_mm = 22.0;
    const words::Words& w = writer.words();
    const CardFigures on = writer.on("touch");
    Card card;
    card.blocks.add(Note{w.text("class-touch.first", {{"mix", writer.ref("mix")}})});
    add_wax(writer.writer, on, true, card);
    card.blocks.add(shown(writer, {{"wax-clear-and-cloudy", w.text("class-touch.wax")}}, wax_mm));
    card.blocks.add(Turn{});
    Steps dip;
    dip.add(w.text("class-touch.hand"));
    dip.add(w.text("class-touch.two"));
    card.blocks.add(std::move(dip));
    card.blocks.add(dip_table(writer.writer, on));
    Text proves = w.text("touch.proves");
    if (const Text burn = burns_alike(on); !burn.empty()) {
        proves += " " + w.text("touch.burns", {{"burn", burn}});
    }
    card.blocks.add(Note{std::move(proves)});
    card.warn_here(w.text("touch.caution"));
    return {card};
}

std::vector<Card> class_box_card(const ClassWriter& writer) {
    constexpr double section_mm = 42.0;
    constexpr double small_mm = 26.0;
    const words::Words& w = writer.words();
    Card card;
    card.blocks.add(shown(writer, {{"box-in-section", ""}}, section_mm));
    Steps steps;
    steps.add(w.text("class-box.hang"));
    steps.add(w.text("class-box.thermometer"));
    steps.add(w.text("class-box.lid"));
    card.blocks.add(std::move(steps));
    card.warn_here(w.text("class-box.caution", {{"away", writer.writer.children_away()}}));
    card.blocks.add(Turn{});
    card.blocks.add(shown(writer,
                          {{"press-air-out", w.text("class-box.press")}, {"probe-in-core", w.text("class-box.probe")}},
                          small_mm));
    card.blocks.add(shown(writer, {{"thickness-and-split", w.text("class-box.thickness")}}, small_mm));
    return {card};
}

std::vector<Card> class_trouble_card(const ClassWriter& writer) {
    constexpr double slush_mm = 22.0;
    const words::Words& w = writer.words();
    const CardFigures on = writer.on("trouble");
    const Text hot = full(writer.writer, on);
    Card card;
    Steps rows;
    rows.numbered = false;
    rows.add(w.text("trouble.leak"), w.text("class-trouble.leak-do", {{"full", hot}}));
    rows.add(w.text("trouble.tipped"), w.text("class-trouble.tipped-do"));
    rows.add(w.text("trouble.slow"),
             w.text("class-trouble.slow-do", {{"hours", on("come-up")}, {"core", on("come-up-to")}}));
    rows.add(w.text("trouble.burn"), w.text("class-trouble.burn-do"));
    rows.add(w.text("trouble.headache"), w.text("class-trouble.headache-do"));
    rows.add(w.text("class-trouble.minced"), w.text("class-trouble.minced-do", {{"full", hot}}));
    card.blocks.add(std::move(rows));
    card.blocks.add(Note{w.text("class-trouble.read", {{"reading", writer.ref("reading")}})});
    card.warn_here(w.text("trouble.caution"));
    card.blocks.add(Turn{});
    card.blocks.add(Heading{w.text("class-trouble.left-heading")});
    card.blocks.add(shown(writer, {{"slices-in-slush", ""}}, slush_mm));
    card.blocks.add(Note{w.text("class-trouble.left", {{"middle", on("left-middle")},
                                                       {"first", on("left-first")},
                                                       {"end", on("left-end")},
                                                       {"all", on("left-all")}})});
    card.blocks.add(Note{w.text("class-trouble.risk", {{"full", hot}})});
    card.blocks.add(Heading{w.text("class-trouble.floors-heading")});
    card.blocks.add(Note{
        w.text("class-trouble.floors",
               {{"red-meat", on("floor-red-meat")}, {"poultry", on("floor-poultry")}, {"fish", on("floor-fish")}})});
    return {card};
}

}  // namespace holdwater::card
