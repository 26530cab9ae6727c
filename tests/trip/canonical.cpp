// SPDX-License-Identifier: MIT
// Laws of the canonical text: same meaning, same text; other meaning, other text; it can be read again.
#include "trip/reading.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE("the canonical text is a trip file that means the same") {
    std::vector<std::string> texts = {small_trip};
    for (const std::string name : {"trail-crew", "hut-night", "paddling-day", "class-day", "template"}) {
        texts.push_back(read_text(trip_layouts() / (name + ".toml")));
    }
    texts.push_back(changed(small_trip, "loss = \"0.9 W/K\"", "log = \"box.csv\"\ntest_water = \"33 L\""));
    texts.push_back(changed(small_trip, "\"Alder Meadow\"", "'Alder \"Meadow\" \\ Ä'"));
    texts.push_back(small_trip +
                    "\n[sleep]\nfrom = 22:30:15\nto = \"06:00\"\n[[what_if]]\nname = \"x\"\nlater = \"1/3 h\"\n");
    for (const std::string& text : texts) {
        const std::string once = trip::canonical(good_trip(text));
        const std::string twice = trip::canonical(good_trip(once));
        CHECK(once == twice);
    }
}

TEST_CASE("metric and US units give the same canonical text") {
    const std::string metric = R"([trip]
name = "Alder Meadow"
people = 4
at_risk = false
altitude = "304.8 m"
from = 2027-05-08T10:00:00
serve = 2027-05-08T18:00:00
rules = "us"
[[food]]
name = "beef roast"
kind = "beef-top-round"
cut = "intact"
shape = "round"
thickness = "82.55 mm"
length = "20.32 cm"
mass = "1133.980925 g"
start = "0 C"
target = "62.5 C"
tolerance = "2 K"
bag = "thin"
[[box]]
inside = ["508 mm", "0.3048 m", "30.48 cm"]
water = "28.390588352 L"
thermometer = "1 K"
reading_error = "0.5 K"
test = [{ after = "0 min", bath = "65 C" }, { after = "90 min", bath = "60 C" }]
test_outside = "-10 C"
test_water = "28390.588352 mL"
[weather]
wind = "breezy"
hours = [{ at = "12:00", air = "15 C" }]
[fire]
pots = 2
pot = "3.785411784 L"
usable = 0.75
boils_in = "1500 s"
fuel = "wood"
moisture = "20 %"
cold_water = "10 C"
)";
    const std::string us = R"([fire]
cold_water = "50 F"
moisture = 0.2
fuel = "wood"
boils_in = "25 min"
usable = "75 %"
pot = "1 gal"
pots = 2
[weather]
hours = [{ air = "59 F", at = "12:00" }]
[[box]]
prewarmed = false
test_water = "30 qt"
test_outside = "14 F"
test = [{ after = "0 h", bath = "149 F" }, { after = "1 1/2 h", bath = "140 F" }]
reading_error = "0.9 F"
thermometer = "1.8 F"
water = "120 cup"
inside = ["20 in", "1 ft", "12 in"]
[[food]]
target = "144.5 F"
start = "32 F"
mass = "40 oz"
length = "8 in"
thickness = "3 1/4 in"
shape = "round"
cut = "intact"
kind = "beef-top-round"
name = "beef roast"
[trip]
rules = "us"
serve = 2027-05-08 18:00:00
from = 2027-05-08 10:00:00
altitude = "1000 ft"
at_risk = false
people = 4
name = "  Alder Meadow"
units = "both"
)";
    CHECK(trip::canonical(good_trip(metric)) == trip::canonical(good_trip(us)));
}

TEST_CASE("every change of meaning changes the canonical text") {
    const std::string base = trip::canonical(good_trip(small_trip));
    const std::vector<std::pair<std::string, std::string>> changes = {
        {"people = 4", "people = 5"},
        {"at_risk = false", "at_risk = true"},
        {"\"300 m\"", "\"301 m\""},
        {"T10:00:00", "T10:00:01"},
        {"T18:00:00", "T18:01:00"},
        {"rules = \"us\"", "rules = \"uk\""},
        {"rules = \"us\"", "rules = \"us\"\nunits = \"metric\""},
        {"\"beef roast\"", "\"beef roasts\""},
        {"\"beef-top-round\"", "\"pork-loin\""},
        {"\"intact\"", "\"tied\""},
        {"\"60 mm\"", "\"60.1 mm\""},
        {"\"200 mm\"", "\"201 mm\""},
        {"\"0.6 kg\"", "\"601 g\""},
        {"\"4 C\"", "\"4.1 C\""},
        {"\"60 C\"", "\"60.001 C\""},
        {"\"60 C\"", "\"60 C\"\npieces = 2"},
        {"\"60 C\"", "\"60 C\"\ntolerance = \"2.5 K\""},
        {"\"60 C\"", "\"60 C\"\ncontact = \"free\""},  // the same contact, but the card need not say "assumed"
        {"\"60 C\"", "\"60 C\"\nbone = true"},
        {"\"60 C\"", "\"60 C\"\nbag = \"thick\""},
        {"\"60 C\"", "\"60 C\"\ndiffusivity = \"1.3e-7 m2/s\""},
        {"\"500 mm\"", "\"501 mm\""},
        {"\"33 L\"", "\"33.1 L\""},
        {"thermometer = \"1 K\"", "thermometer = \"none\""},
        {"thermometer = \"1 K\"", "thermometer = \"1 K\"\nwax = true"},
        {"thermometer = \"1 K\"", "thermometer = \"1 K\"\nprewarmed = true"},
        {"\"0.9 W/K\"", "\"0.91 W/K\""},
        {"\"15 C\"", "\"14 C\""},
        {"\"12:00\"", "\"12:01\""},
        {"[weather]", "[weather]\nwind = \"still\""},
        {"pots = 2", "pots = 3"},
        {"\"8 L\"", "\"9 L\""},
        {"\"25 min\"", "\"26 min\""},
        {"fuel = \"wood\"", "fuel = \"wood\"\nmoisture = \"10 %\""},
        {"fuel = \"wood\"", "fuel = \"butane\""},
        {"fuel = \"wood\"", "fuel = \"wood\"\nusable = 0.7"},
        {"\"10 C\"", "\"11 C\""},
    };
    for (const auto& [from, to] : changes) {
        CAPTURE(to);
        CHECK(trip::canonical(good_trip(changed(small_trip, from, to))) != base);
    }
    for (const std::string more :
         {"\n[sleep]\nfrom = \"22:00\"\nto = \"06:00\"\n", "\n[journey]\ntakes = \"1 h\"\nair = \"20 C\"\n",
          "\n[journey]\ntakes = \"1 h\"\nair = \"20 C\"\nbox = \"1.2 W/K\"\n",
          "\n[[side]]\nname = \"rice\"\ntakes = \"30 min\"\n", "\n[[what_if]]\nname = \"late\"\nlater = \"1 h\"\n"}) {
        CHECK(trip::canonical(good_trip(small_trip + more)) != base);
    }
}
