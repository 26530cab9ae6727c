// SPDX-License-Identifier: MIT
#include "support/near.hpp"
#include "trip/reading.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE("what is not said takes the default that the contract names") {
    const trip::Trip t = good_trip(small_trip);
    CHECK(t.units == units::System::both);
    CHECK(t.language == "en");
    const trip::Food& food = t.foods.at(0);
    CHECK(food.pieces == 1);
    CHECK(food.tolerance == units::kelvins(2));
    CHECK(food.contact == facts::Contact::free);
    CHECK(!food.contact_given);
    CHECK(!food.bone);
    CHECK(std::get<facts::Bag>(food.bag) == facts::Bag::thin);
    CHECK(food.box.empty());
    CHECK(!food.composition);
    CHECK(!food.properties.diffusivity);
    CHECK(!t.boxes.at(0).prewarmed);
    CHECK(!t.boxes.at(0).wax_tell_tale);
    CHECK(t.weather.wind == facts::Wind::breezy);
    CHECK(near_abs(t.fire.usable, 0.8, 1e-12));
    CHECK(!t.fire.moisture);
    CHECK(!t.sleep);
    CHECK(!t.journey);
    CHECK(t.sides.empty());
    CHECK(t.what_ifs.empty());
}

TEST_CASE("a slab lies on the floor unless the file says otherwise") {
    const std::string slab = changed(small_trip, "shape = \"round\"", "shape = \"slab\"");
    const trip::Trip assumed = good_trip(changed(slab, "length = \"200 mm\"\n", ""));
    CHECK(assumed.foods.at(0).contact == facts::Contact::bottom);
    CHECK(!assumed.foods.at(0).contact_given);
    const trip::Trip said = good_trip(changed(slab, "length = \"200 mm\"\n", "contact = \"free\"\n"));
    CHECK(said.foods.at(0).contact == facts::Contact::free);
    CHECK(said.foods.at(0).contact_given);
}

TEST_CASE("choices, given properties and bags") {
    const trip::Trip t = good_trip(changed(small_trip, "target = \"60 C\"", R"(target = "60 C"
tolerance = "3.6 F"
contact = "stacked"
bone = true
bag = "0.01 m2 K/W"
composition = { water = 72, protein = 21, fat = 5.7, ash = 1 }
diffusivity = "1.3e-7 m2/s"
conductivity = "0.5 W/m/K")"));
    const trip::Food& food = t.foods.at(0);
    CHECK(near_abs(food.tolerance.si(), 2, 1e-9));
    CHECK(food.contact == facts::Contact::stacked);
    CHECK(food.bone);
    CHECK(near_abs(std::get<units::ThermalResistance>(food.bag).si(), 0.01, 1e-12));
    CHECK(near_abs(food.composition.value().fat, 5.7, 1e-12));
    CHECK(near_abs(food.composition.value().carbohydrate, 0, 1e-12));
    CHECK(near_rel(food.properties.diffusivity.value().si(), 1.3e-7, 1e-12));
    CHECK(near_rel(food.properties.conductivity.value().si(), 0.5, 1e-12));
}

TEST_CASE("usable is a share or per cent") {
    for (const std::string written : {"0.75", "\"75 %\"", "\"75%\""}) {
        const trip::Trip t = good_trip(small_trip + "usable = " + written + "\n");
        CHECK(near_abs(t.fire.usable, 0.75, 1e-12));
    }
    CHECK(!read_trip_text(small_trip + "usable = nan\n").ok());
    CHECK(!read_trip_text(small_trip + "usable = inf\n").ok());
    CHECK(!read_trip_text(small_trip + "usable = -0.5\n").ok());
}

TEST_CASE("limits belong to the range, one step beyond does not") {
    const auto read = [](std::string_view from, const std::string& to) {
        return read_trip_text(changed(small_trip, from, to));
    };
    CHECK(read("\"300 m\"", "\"6000 m\"").ok());
    CHECK(!read("\"300 m\"", "\"6000.1 m\"").ok());
    CHECK(read("\"300 m\"", "\"-430 m\"").ok());
    CHECK(!read("\"300 m\"", "\"-431 m\"").ok());
    CHECK(read("people = 4", "people = 200").ok());
    CHECK(!read("people = 4", "people = 201").ok());
    CHECK(read("\"60 C\"", "\"40 C\"").ok());
    CHECK(read("\"60 C\"", "\"104 F\"").ok());  // 40 C but for the last binary digit
    CHECK(!read("\"60 C\"", "\"103.9 F\"").ok());
    CHECK(read("\"4 C\"", "\"0 C\"").ok());
    CHECK(!read("\"4 C\"", "\"-0.1 C\"").ok());
    CHECK(read("T18:00:00", "T10:15:00").ok());
    CHECK(!read("T18:00:00", "T10:14:59").ok());
    CHECK(read("08T18:00:00", "11T10:00:00").ok());
    CHECK(!read("08T18:00:00", "11T10:00:01").ok());
}

TEST_CASE("sleep crosses midnight, or does not") {
    const trip::Trip over = good_trip(small_trip + "\n[sleep]\nfrom = \"22:30\"\nto = \"6:30\"\n");
    CHECK(over.sleep.value().from.second_of_day == 81000);
    CHECK(over.sleep.value().to.second_of_day == 23400);
    const trip::Trip after = good_trip(small_trip + "\n[sleep]\nfrom = 00:30:00\nto = 08:00:00\n");
    CHECK(after.sleep.value().from.second_of_day == 1800);
}

TEST_CASE("local times are plain: a day has 24 h on the nights when clocks change elsewhere") {
    for (const std::string date : {"2027-03-13", "2027-03-27", "2027-10-30", "2027-11-06", "2028-02-28"}) {
        std::string text = changed(small_trip, "2027-05-08T10:00:00", date + "T20:00:00");
        const std::string next = date == "2028-02-28" ? "2028-02-29" : date.substr(0, 8) + [&] {
            const int day = std::stoi(date.substr(8)) + 1;
            return (day < 10 ? "0" : "") + std::to_string(day);
        }();
        text = changed(text, "2027-05-08T18:00:00", next + "T20:00:00");
        const trip::Trip t = good_trip(text);
        CHECK(t.serve.since(t.from) == units::hours(24));
    }
}

TEST_CASE("two boxes, each food in its own") {
    const std::string second = R"(
[[box]]
name = "red box"
inside = ["400 mm", "300 mm", "300 mm"]
water = "20 L"
thermometer = "none"
wax = true
loss = "0.8 W/K"

[[food]]
name = "onions"
kind = "onion"
cut = "intact"
shape = "ball"
thickness = "60 mm"
mass = "119 g"
pieces = 8
start = "10 C"
target = "85 C"
box = "red box"
)";
    std::string text = changed(small_trip, "[[box]]\n", "[[box]]\nname = \"blue box\"\n") + second;
    text = changed(text, "target = \"60 C\"", "target = \"60 C\"\nbox = \"blue box\"");
    const trip::Trip t = good_trip(text);
    REQUIRE(t.boxes.size() == 2);
    CHECK(t.boxes[1].name == "red box");
    CHECK(!t.boxes[1].thermometer);
    CHECK(t.boxes[1].wax_tell_tale);
    CHECK(t.foods.at(0).box == "blue box");
    CHECK(t.foods.at(1).box == "red box");
}

TEST_CASE("with one box its name may be said and is then left out") {
    std::string text = changed(small_trip, "[[box]]\n", "[[box]]\nname = \"blue box\"\n");
    text = changed(text, "target = \"60 C\"", "target = \"60 C\"\nbox = \"blue box\"");
    CHECK(good_trip(text).foods.at(0).box.empty());
}

TEST_CASE("a box log gives the readings, and the air outside if it kept it") {
    const std::string log = changed(small_trip, "loss = \"0.9 W/K\"", "log = \"box.csv\"\ntest_water = \"33 L\"");
    const trip::Trip t = good_trip(log);
    const auto& readings = std::get<std::vector<trip::BoxReading>>(t.boxes.at(0).test);
    REQUIRE(readings.size() == 4);
    CHECK(readings[0].after == units::seconds(0));
    CHECK(readings[0].bath == units::celsius(64));
    CHECK(readings[3].after == units::hours(6));
    CHECK(readings[3].bath == units::celsius(55));
    // Outside 10 C, 8 C and 4 C at 0, 2 and 6 h: (9 x 2 + 6 x 4) / 6 = 7 C.
    CHECK(near_abs(t.boxes[0].test_outside.celsius(), 7, 1e-9));
    CHECK(t.boxes[0].reading_error == units::kelvins(1));  // the thermometer's
    const trip::Trip said = good_trip(changed(log, "test_water", "test_outside = \"6 C\"\ntest_water"));
    CHECK(said.boxes[0].test_outside == units::celsius(6));
}

TEST_CASE("what-if keeps what it says and only that") {
    const trip::Trip t = good_trip(small_trip + R"(
[[what_if]]
name = "cold snap"
colder = "8 K"
[[what_if]]
name = "late and no fire"
later = "2 h"
fire_out = "3 h"
)");
    REQUIRE(t.what_ifs.size() == 2);
    CHECK(t.what_ifs[0].colder == units::kelvins(8));
    CHECK(!t.what_ifs[0].later);
    CHECK(t.what_ifs[1].later == units::hours(2));
    CHECK(t.what_ifs[1].fire_out == units::hours(3));
}

TEST_CASE("places of the tables are kept for later messages") {
    const trip::Trip t = good_trip(small_trip);
    CHECK(t.place.line == 1);
    CHECK(t.serve_place.line == 7);
    CHECK(t.serve_place.column == 9);
    CHECK(t.foods.at(0).place.line == 10);
    CHECK(t.boxes.at(0).place.line == 21);
    CHECK(t.weather_place.line == 27);
    CHECK(t.fire_place.line == 30);
    CHECK(t.place.file == "t.toml");
}

TEST_CASE("a box without any test is read as one that nobody has tested, with a warning") {
    const auto read = read_trip_text(changed(small_trip, "loss = \"0.9 W/K\"\n", ""));
    REQUIRE(read.ok());
    CHECK(std::holds_alternative<trip::Untested>(read->boxes.at(0).test));
    REQUIRE(read.problems().size() == 1);
    CHECK((read.problems().front().code == "box-untested"));
    CHECK(read.problems().front().hint.find("gauge") != std::string::npos);
}
