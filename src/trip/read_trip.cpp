// SPDX-License-Identifier: MIT
#include "trip/read_trip.hpp"

#include "problem/bounds.hpp"
#include "trip/kit.hpp"
#include "trip/parts.hpp"
#include "units/toml_bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace holdwater::trip {
namespace {

void table_missing(Report& report, std::string_view heading, std::string_view why) {
    report.error(report.place(0, 0), "table-missing", fmt::format("{} is missing", heading), why);
}

/// Calls `read` for a table such as [fire], if it is there.
template <class Read>
bool read_one(Table& file, std::string_view key, Read read) {
    const toml::node* const found = file.node(key);
    if (found == nullptr) {
        return false;
    }
    if (const auto* const inner = found->as_table()) {
        Table table(file.report(), *inner, fmt::format("[{}]", key));
        read(table);
        return true;
    }
    const std::string hint = fmt::format("head it [{}], in single brackets, once", key);
    file.error(key, "type-wrong", fmt::format("{}: a table is due, not {}", key, kind_of(*found)), hint);
    return true;
}

/// Calls `read` for each table such as [[food]].
template <class Read>
void read_each(Table& file, std::string_view key, Count range, Read read) {
    const toml::node* const found = file.node(key);
    if (found == nullptr) {
        return;
    }
    const std::string hint = fmt::format("head each one [[{}]], in double brackets", key);
    const auto* const list = found->as_array();
    if (list == nullptr) {
        file.error(key, "type-wrong", fmt::format("{}: [[{}]] is due, not {}", key, key, kind_of(*found)), hint);
        return;
    }
    if (list->size() > static_cast<std::size_t>(range.high)) {
        file.error(key, "out-of-range", fmt::format("{}: {} of them are too many", key, list->size()),
                   fmt::format("at most {}", range.high));
        return;
    }
    if (list->size() < static_cast<std::size_t>(range.low)) {
        file.error(key, "out-of-range", fmt::format("{}: the list is empty", key), hint);
    }
    for (const toml::node& node : *list) {
        if (const auto* const inner = node.as_table()) {
            Table table(file.report(), *inner, fmt::format("[[{}]]", key));
            read(table);
        } else {
            file.report().error(file.place(node), "type-wrong",
                                fmt::format("{}: a table is due, not {}", key, kind_of(node)), hint);
        }
    }
}

void read_tables(Table& file, const FileReader& read_file, const Known& known, Trip& trip) {
    Report& report = file.report();
    if (!read_one(file, "trip", [&](Table& table) { read_head(table, known, trip); })) {
        table_missing(report, "[trip]", "it says who eats, where, when and whose rules count");
    }
    read_each(file, "food", ranges::foods, [&](Table& table) { read_food(table, known, trip.foods.emplace_back()); });
    if (!file.has("food")) {
        table_missing(report, "[[food]]", "at least one: what is cooked, its size and its target");
    }
    read_each(file, "box", ranges::boxes, [&](Table& table) { read_box(table, read_file, trip.boxes.emplace_back()); });
    if (!file.has("box")) {
        table_missing(report, "[[box]]", "one or two: inside measures, water, thermometer and box test");
    }
    trip.weather_place = file.place("weather");
    if (!read_one(file, "weather", [&](Table& table) { read_weather(table, trip.weather); })) {
        table_missing(report, "[weather]", "it says the wind and how warm the air is over the day");
    }
    trip.fire_place = file.place("fire");
    if (!read_one(file, "fire", [&](Table& table) { read_fire(table, trip.fire); })) {
        table_missing(report, "[fire]", "it says the pots, how fast they boil and how cold the water is");
    }
    read_one(file, "sleep", [&](Table& table) { read_sleep(table, trip.sleep.emplace()); });
    read_one(file, "journey", [&](Table& table) { read_journey(table, trip.boxes, trip.journey.emplace()); });
    read_each(file, "hot_water", ranges::hot_waters,
              [&](Table& table) { read_hot_water(table, trip.hot_water.emplace_back()); });
    read_each(file, "side", ranges::sides, [&](Table& table) { read_side(table, trip.sides.emplace_back()); });
    read_each(file, "what_if", ranges::what_ifs,
              [&](Table& table) { read_what_if(table, trip.what_ifs.emplace_back()); });
    file.finish();
}

}  // namespace

problem::Result<Trip> read_trip(std::string_view text, const std::string& file_name, const FileReader& read_file,
                                const Known& known) {
    Report report(file_name, known.name_fault);
    if (text.size() > bounds::trip_bytes) {
        report.error(problem::place_in(text, bounds::trip_bytes, file_name), "file-too-big",
                     fmt::format("{} bytes are too many for a trip file", text.size()),
                     fmt::format("at most {}; a trip file is a few pages of text", bounds::trip_bytes));
        return std::move(report).take();
    }
    if (const auto beyond = units::beyond_toml_bounds(text, file_name)) {
        report.add({*beyond});
        return std::move(report).take();
    }
    std::optional<toml::table> parsed;
    try {
        parsed = toml::parse(text);
    } catch (const toml::parse_error& fault) {
        report_syntax(fault, text, report);
        return std::move(report).take();
    }
    put_in_kits(*parsed, known.read_kit, report);
    Trip trip;
    Table file(report, *parsed, "a trip file");
    read_tables(file, read_file, known, trip);
    check_together(trip, file);
    if (report.failed()) {
        return std::move(report).take();
    }
    return {std::move(trip), std::move(report).take()};
}

}  // namespace holdwater::trip
