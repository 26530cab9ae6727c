// SPDX-License-Identifier: MIT
// The trips that come with the program can be read, explain their keys, and the template names every key there is.
#include "support/near.hpp"
#include "support/rulesets.hpp"
#include "trip/reading.hpp"

#include <doctest/doctest.h>

#include <set>

using namespace holdwater;
using namespace holdwater::support;

namespace {

trip::Trip demo(const std::string& name) {
    return good_trip(read_text(trip_layouts() / (name + ".toml")));
}

/// The keys that a table knows, as the message about an unknown key lists them.
std::vector<std::string> keys_of(const std::string& table_end) {
    const auto result =
        read_trip_text(changed(small_trip + "\n[sleep]\n[journey]\n[[hot_water]]\n[[side]]\n[[what_if]]\n", table_end,
                               table_end + "\nqqqqqqqqqqqq = 1"));
    for (const problem::Problem& problem : result.problems()) {
        if (problem.code == "key-unknown") {
            REQUIRE(problem.hint.starts_with("it has: "));
            std::vector<std::string> keys;
            std::stringstream list(problem.hint.substr(8));
            for (std::string key; std::getline(list >> std::ws, key, ',');) {
                keys.push_back(key);
            }
            return keys;
        }
    }
    FAIL("no unknown key was found after " << table_end);
    return {};
}

}  // namespace

TEST_CASE("the trail-crew demo holds what its cards are built on") {
    const trip::Trip t = demo("trail-crew");
    CHECK(t.name == "Larch Ridge trail-crew weekend");
    CHECK(t.people == 11);
    CHECK(!t.at_risk);
    CHECK(near_abs(t.altitude.si(), 1850, 1e-9));
    CHECK(t.from.iso() == "2027-10-16T06:30:00");
    CHECK(t.light_fire.value().iso() == "2027-10-16T07:00:00");
    CHECK(t.serve.iso() == "2027-10-16T18:30:00");
    CHECK(t.rules == support::ruleset("us"));
    CHECK(t.units == units::System::both);
    REQUIRE(t.foods.size() == 1);
    const trip::Food& food = t.foods[0];
    CHECK(food.kind == "pork-loin");
    CHECK(food.shape == facts::Shape::round);
    CHECK(near_abs(food.thickness.si(), 0.085, 1e-12));
    CHECK(near_abs(food.length.value().si(), 0.3, 1e-12));
    CHECK(!food.width);
    CHECK(near_abs(food.mass.si(), 1.8, 1e-12));
    CHECK(food.pieces == 2);
    CHECK(food.target == units::celsius(63));
    CHECK(food.contact == facts::Contact::free);
    CHECK(food.contact_given);
    REQUIRE(t.boxes.size() == 1);
    const trip::Box& box = t.boxes[0];
    CHECK(near_abs(box.inside[0].si(), 0.54, 1e-12));
    CHECK(near_abs(units::in_litres(box.water), 36, 1e-9));
    CHECK(box.thermometer == units::kelvins(1));
    CHECK(box.reading_error == units::kelvins(0.5));
    const auto& readings = std::get<std::vector<trip::BoxReading>>(box.test);
    REQUIRE(readings.size() == 2);
    CHECK(readings[1].after == units::hours(8));
    CHECK(readings[1].bath == units::celsius(58.5));
    CHECK(box.test_outside == units::celsius(8));
    CHECK(t.fire.pots == 2);
    CHECK(near_abs(t.fire.usable, 0.8, 1e-12));
    CHECK(near_abs(t.fire.moisture.value(), 0.2, 1e-12));
    CHECK(t.sleep.value().from.second_of_day == 22 * 3600 + 1800);
    CHECK(t.journey.value().takes == units::hours(5));
    REQUIRE(t.sides.size() == 1);
    CHECK(t.sides[0].takes == units::minutes(50));
    CHECK(t.what_ifs.empty());
}

TEST_CASE("the other demos and the template can be read without a warning") {
    const trip::Trip paddling = demo("paddling-day");
    CHECK(paddling.foods.at(0).kind == "chicken-breast");
    CHECK(near_abs(units::in_millimetres(paddling.foods[0].thickness), 35, 0.1));
    CHECK(near_abs(paddling.foods[0].mass.si(), 0.180, 0.0005));
    CHECK(near_abs(paddling.foods[0].target.celsius(), 65, 1e-9));
    CHECK(paddling.serve.since(paddling.from) == units::hours(9));
    const trip::Trip lesson = demo("class-day");
    CHECK(lesson.foods.at(0).pieces == 14);
    CHECK(std::holds_alternative<std::vector<trip::Weather::Dated>>(lesson.weather.hours));
    CHECK(lesson.boxes.at(0).wax_tell_tale);
    CHECK(demo("template").foods.size() == 1);
}

TEST_CASE("every line with a key in the demos says what the key means") {
    for (const std::string name : {"trail-crew", "hut-night", "paddling-day", "class-day", "template"}) {
        std::stringstream text(read_text(trip_layouts() / (name + ".toml")));
        std::string before;
        for (std::string line; std::getline(text, line); before = line) {
            const bool has_key = !line.empty() && line[0] >= 'a' && line[0] <= 'z';
            const bool explained = line.find('#') != std::string::npos || before.starts_with("#");
            // Width and length of the template share the remark of the line above; so do the keys of the box test.
            const bool shared = line.starts_with("length = ") && before.starts_with("width = ");
            CAPTURE(name);
            CHECK_MESSAGE((!has_key || explained || shared), line);
        }
    }
}

TEST_CASE("the template shows every key of every table") {
    const std::string text = read_text(trip_layouts() / "template.toml");
    const std::vector<std::pair<std::string, std::size_t>> tables = {
        {"[trip]", 9},  {"[[food]]", 19}, {"[[box]]", 12},      {"[weather]", 2}, {"[fire]", 7},
        {"[sleep]", 2}, {"[journey]", 2}, {"[[hot_water]]", 4}, {"[[side]]", 2},  {"[[what_if]]", 4}};
    for (const auto& [table, count] : tables) {
        CAPTURE(table);
        CHECK(text.find(table) != std::string::npos);
        const auto keys = keys_of(table);
        CHECK(keys.size() >= count);
        for (const std::string& key : keys) {
            CHECK_MESSAGE(text.find(key + " = ") != std::string::npos, key);
        }
    }
}
