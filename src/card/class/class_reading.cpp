// SPDX-License-Identifier: MIT
// Reading and Full box of a class: how much boiling water, for boxes of common sizes, and what to do below the floor.
#include "card/class/class_parts.hpp"
#include "card/figures/class_figures.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/shared/shown_drawing.hpp"
#include "safety/after_fall.hpp"

#include <string>

namespace holdwater::card {
namespace {

/// Litres by reading, a column for each amount of water in the box, down to the floor.
Thermometer::Section class_pours(const ClassWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words();
    const std::vector<units::Temperature> rungs = writer.frame.rungs();
    const std::size_t columns = common_litres().size();
    Thermometer::Section section;
    section.left_head = w.text("reading.left");
    for (std::size_t column = 0; column < columns; ++column) {
        section.heads.push_back(on("water", class_cell(0, column, columns)));
    }
    for (std::size_t row = 0; row < rungs.size(); ++row) {
        std::vector<Text> cells;
        for (std::size_t column = 0; column < columns; ++column) {
            cells.push_back("*" + on("pour", class_cell(row, column, columns)) + "*");
        }
        section.rows.push_back({rungs[row].celsius(), on("rung", class_cell(row, 0, 1)), std::move(cells)});
    }
    return section;
}

Text class_action(const words::Words& w, safety::FallAction action) {
    return action == safety::FallAction::finish_and_eat_next  ? w.text("class-reading.action-next")
           : action == safety::FallAction::finish_and_eat_now ? w.text("class-reading.action-now")
           : action == safety::FallAction::throw_away         ? w.text("reading.action-away")
                                                              : w.text("reading.action-none");
}

/// "up to 2 h", "2 h to 4 h", "over 4 h": a row of the rules as the head of a column.
Text class_time(const ClassWriter& writer, const CardFigures& on, const safety::FallRow& row, int nth) {
    const char* key = !row.to && row.again            ? "class-reading.again"
                      : !row.to                       ? "class-reading.over"
                      : row.from > units::Duration{0} ? "class-reading.between"
                      : row.to_counts                 ? "class-reading.up-to"
                                                      : "class-reading.once";
    return writer.words().text(key, {{"from", where_asked(writer.writer, key, "from", on, "row-from", nth)},
                                     {"to", where_asked(writer.writer, key, "to", on, "row-to", nth)}});
}

/// Below the floor: what the rules say by time, and the baths in which germs are sooner than those times.
Thermometer::Section class_fall(const ClassWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words();
    const plan::Plan& plan = writer.frame.plan();
    Thermometer::Section section;
    section.bar = w.text("class-reading.floor", {{"floor", on("read-floor")}});
    section.left_head = w.text("reading.left");
    std::vector<Text> actions;  // by time; what is colder has the first of them, for less long
    int nth = 0;
    for (const safety::FallRow& row : safety::rows(safety::fall_rules(writer.frame.wish().rules, false))) {
        section.heads.push_back(class_time(writer, on, row, ++nth));
        actions.push_back(class_action(w, row.action));
    }
    const units::TemperatureDifference error = writer.frame.wish().thermometer;
    const auto cold = [](std::size_t i) { return i > 0 ? Which(static_cast<int>(i) + 1) : Which(); };
    const Text from =
        plan.cold_baths.empty()
            ? w.text("class-reading.below", {{"reading", on.brief("read-floor")}})
            : w.text("class-reading.or-more", {{"reading", on.brief("cold-bath", cold(0).in(value_unit::celsius))}});
    const Text first = actions.front();
    section.rows.push_back({plan.levels.read_floor.celsius(), from, std::move(actions)});
    for (std::size_t i = 0; i < plan.cold_baths.size(); ++i) {
        section.rows.push_back(
            {(plan.cold_baths[i].lowest + error).celsius(),
             w.text("class-reading.below", {{"reading", on.brief("cold-bath", cold(i).in(value_unit::celsius))}}),
             {w.text("class-reading.longer",
                     {{"longest", on("cold-bath", cold(i).in(value_unit::hours))}, {"action", first}})}});
    }
    return section;
}

}  // namespace

std::vector<Card> class_reading_card(const ClassWriter& writer) {
    const words::Words& w = writer.words();
    const CardFigures on = writer.on("reading");
    const double floor = writer.frame.plan().levels.read_floor.celsius();
    Card card;
    card.blocks.add(on.key(w.text("class-reading.key-label"), "top-up-mark", {}, w.text("class-reading.key-aside")));
    card.blocks.add(Thermometer{{class_pours(writer, on)}, floor});
    card.blocks.add(Note{w.text(writer.writer.us_first() ? "class-reading.column-us" : "class-reading.column",
                                {{"full", writer.ref("full")}})});
    card.warn_here(w.text("class-reading.caution"));
    card.blocks.add(Turn{});
    card.blocks.add(Thermometer{{class_fall(writer, on)}, floor});
    card.blocks.add(Note{w.text("class-reading.fire", {{"hot", full(writer.writer, on)}}) + " " +
                         w.text("class-reading.ready-before", {{"mark", on("top-up-mark")}})});
    card.blocks.add(Note{w.text("class-reading.count")});
    return {card};
}

std::vector<Card> class_full_card(const ClassWriter& writer) {
    constexpr double scoop_mm = 20.0;
    const words::Words& w = writer.words();
    const CardFigures on = writer.on("full");
    Card card;
    card.blocks.add(Drawings{{shown_drawing(w, "out-then-in", "")}, scoop_mm});
    card.blocks.add(Note{w.text("class-full.act", {{"mark", on("top-up-mark")}})});
    card.blocks.add(Thermometer{{class_pours(writer, on)}, writer.frame.plan().levels.read_floor.celsius()});
    card.warn_here(w.text("class-full.caution"));
    return {card};
}

}  // namespace holdwater::card
