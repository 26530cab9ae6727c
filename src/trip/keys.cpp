// SPDX-License-Identifier: MIT
#include "trip/keys.hpp"

#include "trip/ranges.hpp"
#include "trip/table.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

namespace holdwater::trip {
namespace {
namespace key_rows {

Key quantity(std::string_view name, const Range& range, std::string_view means) {
    return {.name = name,
            .means = means,
            .value = fmt::format("\"{}\"", range.example),
            .limits = fmt::format("{} to {}", range.low, range.high)};
}

Key whole(std::string_view name, Count count, std::string_view means) {
    return {.name = name,
            .means = means,
            .value = "a whole number",
            .limits = fmt::format("{} to {}", count.low, count.high)};
}

Key truth(std::string_view name, std::string_view means) {
    return {.name = name, .means = means, .value = "true or false", .by_default = "false"};
}

Key text(std::string_view name, std::string_view means) {
    return {.name = name, .means = means, .value = "text in quotes"};
}

Key moment(std::string_view name, std::string_view means) {
    return {.name = name, .means = means, .value = "2027-10-15T16:00:00"};
}

Key clock(std::string_view name, std::string_view means) {
    return {.name = name, .means = means, .value = "\"22:30\""};
}

template <class Enum>
Key choice(std::string_view name, std::string_view means) {
    return {.name = name, .means = means, .value = "one word in quotes", .choices = names_of<Enum>()};
}

Key must(Key key) {
    key.required = true;
    key.by_default.clear();
    return key;
}

Key or_else(Key key, std::string_view by_default) {
    key.by_default = by_default;
    return key;
}

std::string times(Count count) {
    return fmt::format("{} to {} times", count.low, count.high);
}

KeyTable head() {
    Key rules{.name = "rules",
              .means = "whose food-safety rules count: those of the country you are in",
              .value = "one word in quotes",
              .choices = names_of<facts::Ruleset>(),
              .required = true};
    Key units{.name = "units",
              .means = "on the cards: metric, US, or both with metric or US first",
              .value = "one word in quotes",
              .choices = units::system_names(),
              .by_default = "both"};
    return {
        "[trip]",
        "Who eats where and when, and whose food-safety rules count.",
        "once",
        true,
        {must(text("name", "printed on every card")), must(whole("people", ranges::people, "who eats")),
         truth("at_risk",
               "whether anyone who eats is pregnant, under 5, 65 or over, or has weakened immunity; a warning if it "
               "is not said"),
         must(quantity("altitude", ranges::altitude, "of the fire")),
         must(moment("from", "the first moment with fire and box, by the watch at the camp")),
         must(moment("serve",
                     "the meal; or a list of such moments in square brackets, several sittings: ready by the first, "
                     "held until the last")),
         or_else(moment("light_fire", "when the fire is lit, and at no other time"), "the plan chooses"),
         truth("strict", "refuse rather than cook the food more done, or less evenly, than is wished"),
         std::move(rules), std::move(units), or_else(text("language", "of the cards: a file of layouts/words"), "en")}};
}

KeyTable food() {
    return {
        "[[food]]",
        "One sort of piece; pieces of another size are another [[food]].",
        times(ranges::foods),
        true,
        {must(text("name", "your own name for it, printed on the cards")),
         must(text("kind", "decides the safety rules; `holdwater sources --foods` lists the kinds")),
         or_else(choice<facts::Use>("use",
                                    "cooked in the bath; a steak, whole-muscle intact beef whose faces are seared; or "
                                    "cooked through before, goes in hot and is kept so"),
                 "cook"),
         or_else(choice<facts::Cut>("cut", "what was done to the meat; a warning if it is not said"), "intact"),
         must(choice<facts::Shape>("shape", "what a piece looks like most")),
         must(quantity("thickness", ranges::thickness,
                       "the smallest measure, at the thickest place; of a round or ball the diameter")),
         or_else(quantity("width", ranges::length, "of a block, which needs it, or of a slab"), "a wide slab"),
         or_else(quantity("length", ranges::length, "of a block, which needs it, or of a slab or round"), "a long one"),
         must(quantity("mass", ranges::mass, "of one piece; it is compared with the size")),
         or_else(whole("pieces", ranges::pieces, "how many such pieces"), "1"),
         must(quantity("start", ranges::start,
                       "inside the food when it goes into the water; hotter where use is keep-hot")),
         or_else(quantity("target", ranges::target, "inside the food when it is done; required but for keep-hot"),
                 "none for keep-hot"),
         or_else(quantity("tolerance", ranges::tolerance, "how far over the target it may go"),
                 ranges::tolerance.example),
         or_else(choice<facts::Contact>("contact", "how the pieces lie: apart, on the bottom, or on each other"),
                 "bottom for a slab, free for the others"),
         truth("bone", "whether a bone is left in"),
         truth("over_fire", "finished over the fire after the bath, so that the bath may stay cooler"),
         {.name = "bag",
          .means = "what it is packed in",
          .value = fmt::format("one word in quotes, or a measured resistance such as \"{}\"", ranges::bag.example),
          .limits = fmt::format("{} to {}", ranges::bag.low, ranges::bag.high),
          .choices = names_of<facts::Bag>(),
          .by_default = "thin"},
         or_else(text("box", "with two boxes: the name of the one it goes into"), "the only one"),
         or_else(moment("in", "when it goes in, if later than the others"), "into the filled bath"),
         or_else(moment("out", "when it is eaten, if before the meal"), "at the meal"),
         {.name = "composition",
          .means = "its parts, g in 100 g, if they are known",
          .value = "a table in braces, see composition below",
          .limits = fmt::format("together {} to {}", ranges::composition_low, ranges::composition_high),
          .by_default = "that of the kind"},
         or_else(quantity("diffusivity", ranges::diffusivity, "how fast heat spreads in it, if it was measured"),
                 "by the composition"),
         or_else(quantity("conductivity", ranges::conductivity, "how well it conducts heat, if it was measured"),
                 "by the composition")}};
}

KeyTable composition() {
    std::vector<Key> keys;
    for (const std::string_view part : {"water", "protein", "fat", "carbohydrate", "fibre", "ash"}) {
        keys.push_back({.name = part,
                        .means = "so much of it in 100 g, in g",
                        .value = "a number",
                        .limits = "0 to 100",
                        .by_default = "0"});
    }
    return {"composition", "What 100 g of a food consist of, a table in braces in [[food]].", "once a food", false,
            keys};
}

KeyTable box() {
    return {
        "[[box]]",
        "An insulated box; with two each needs a name. How well it holds heat is said by one of test, log and loss; "
        "without any it is taken as an ordinary box that nobody has tested.",
        times(ranges::boxes),
        true,
        {or_else(text("use", "a kit that is kept: what it says of the box holds where this table does not say it"),
                 "no kit"),
         or_else(text("name", "needed with two boxes"), "none"),
         must({.name = "inside",
               .means = "length, width and depth, measured inside",
               .value = R"(["540 mm", "290 mm", "300 mm"])",
               .limits = fmt::format("each {} to {}", ranges::inside.low, ranges::inside.high)}),
         must(quantity("water", ranges::water, "hot water wanted in it at the start")),
         must({.name = "thermometer",
               .means = "how far its reading may be off, or that there is none",
               .value = fmt::format("\"{}\" or \"none\"", ranges::thermometer.example),
               .limits = fmt::format("{} to {}", ranges::thermometer.low, ranges::thermometer.high)}),
         truth("wax", "whether a lump of beeswax goes in with the food as a tell-tale"),
         or_else(quantity("reading_error", ranges::reading_error, "how far the readings of the test may be off"),
                 "that of the thermometer"),
         or_else({.name = "test",
                  .means = "readings of the closed box as it cools, each a table in braces, see test below",
                  .value = R"([{ after = "0 h", bath = "65 C" }, { after = "4 h", bath = "59.5 C" }])",
                  .limits = fmt::format("{} to {} readings", ranges::test_readings.low, ranges::test_readings.high)},
                 "not tested"),
         or_else(text("log", "in place of test: a log beside the trip file (CSV)"), "none"),
         or_else(quantity("loss", ranges::loss, "in place of test, if it is known"), "by the test"),
         or_else(quantity("test_outside", ranges::air,
                          "air around the box during the test; required with test, and with a log that has no such "
                          "column"),
                 "as the log has it"),
         or_else(quantity("test_water", ranges::water, "water in the box during the test; required with test or log"),
                 "none without a test"),
         truth("prewarmed", "whether hot water has stood in it for some minutes before the fill")}};
}

KeyTable test_reading() {
    return {"test",
            "A reading of a box test, a table in braces in [[box]].",
            fmt::format("{} to {} a test", ranges::test_readings.low, ranges::test_readings.high),
            false,
            {must(quantity("after", ranges::test_after, "since the first reading")),
             must(quantity("bath", ranges::test_bath, "what the water read"))}};
}

KeyTable weather() {
    return {
        "[weather]",
        "Wind and air where the box stands.",
        "once",
        true,
        {or_else(choice<facts::Wind>("wind", "where the box stands"), "breezy"),
         must({.name = "hours",
               .means = "air by the clock, every day the same, or by date; in straight lines between; each a table in "
                        "braces, see hours below",
               .value = R"([{ at = "06:00", air = "8 C" }, { at = "14:00", air = "17 C" }])",
               .limits = fmt::format("{} to {} of them", ranges::hours.low, ranges::hours.high)})}};
}

KeyTable hour() {
    return {"hours",
            "The air at one time, a table in braces in [weather].",
            fmt::format("{} to {} of them", ranges::hours.low, ranges::hours.high),
            false,
            {must({.name = "at", .means = "a time of day, or a moment", .value = R"("08:00" or 2027-10-15T16:00:00)"}),
             must(quantity("air", ranges::air, "around the box then"))}};
}

KeyTable fire() {
    return {"[fire]",
            "What heats the water, and the water.",
            "once",
            true,
            {or_else(text("use", "a kit that is kept: what it says of the fire holds where this table does not say it"),
                     "no kit"),
             must(whole("pots", ranges::pots, "that fit on the fire together")),
             must(quantity("pot", ranges::pot, "one pot to the brim")),
             or_else(quantity("usable", ranges::usable, "how much of a pot you dare to fill and carry"),
                     ranges::usable.example),
             must(quantity("boils_in", ranges::boils_in, "one pot of cold water, all pots on, from lighting")),
             must(choice<facts::Fuel>("fuel", "what burns")),
             or_else(quantity("moisture", ranges::moisture, "of wood"), "that of wood dried outdoors"),
             must(quantity("cold_water", ranges::cold_water, "as it comes from tap, lake or stream"))}};
}

std::vector<KeyTable> around() {
    return {
        {"[sleep]",
         "When nobody tops up, if a night lies between.",
         "once",
         false,
         {must(clock("from", "bedtime")), must(clock("to", "when somebody is up again"))}},
        {"[journey]",
         "Raw food on the way, kept cold with ice.",
         "once",
         false,
         {must(quantity("takes", ranges::journey, "how long")),
          must(quantity("air", ranges::air, "around the ice box")),
          or_else({.name = "box",
                   .means = "what it travels and waits in: the name of a [[box]], or the loss of another",
                   .value = fmt::format("text in quotes, such as \"{}\"", ranges::loss.example),
                   .limits = fmt::format("{} to {}", ranges::loss.low, ranges::loss.high)},
                  "a poor box")}},
        {"[[hot_water]]",
         "Boiling water besides the bath's, for drinks or washing-up; one of volume and per_person.",
         times(ranges::hot_waters),
         false,
         {must(text("name", "what it is for")), or_else(quantity("volume", ranges::hot_water, "in all"), "per_person"),
          or_else(quantity("per_person", ranges::hot_water_each, "for each who eats"), "volume"),
          or_else(moment("at", "when it boils; until 3 h after the meal, for washing-up"), "at the meal")}},
        {"[[side]]",
         "A side dish over the fire.",
         times(ranges::sides),
         false,
         {must(text("name", "printed on the cards")), must(quantity("takes", ranges::side, "from cold to plate"))}},
        {"[[what_if]]",
         "What the plan is also tried against; at least one of colder, later and fire_out.",
         times(ranges::what_ifs),
         false,
         {must(text("name", "printed on the cards")),
          or_else(quantity("colder", ranges::colder, "the air, by so much"), "as planned"),
          or_else(quantity("later", ranges::later, "the meal, by so much"), "as planned"),
          or_else(quantity("fire_out", ranges::fire_out, "no fire for so long"), "as planned")}}};
}

}  // namespace key_rows
}  // namespace

std::vector<KeyTable> key_tables() {
    using namespace key_rows;
    std::vector<KeyTable> all{head(), food(), composition(), box(), test_reading(), weather(), hour(), fire()};
    for (KeyTable& table : around()) {
        all.push_back(std::move(table));
    }
    return all;
}

std::string_view shortest_trip() {
    return R"([trip]
name = "Bay paddle"
people = 6
at_risk = false
altitude = "0 m"
from = 2027-07-10T12:00:00
serve = 2027-07-10T19:00:00
rules = "us"

[[food]]
name = "pork loin"
kind = "pork-loin"
cut = "intact"
shape = "round"
thickness = "60 mm"
length = "250 mm"
mass = "0.75 kg"
pieces = 2
start = "4 C"
target = "60 C"

[[box]]
inside = ["500 mm", "300 mm", "300 mm"]
water = "30 L"
thermometer = "1 K"

[weather]
hours = [{ at = "06:00", air = "12 C" }, { at = "14:00", air = "20 C" }]

[fire]
pots = 2
pot = "8 L"
boils_in = "25 min"
fuel = "wood"
cold_water = "12 C"
)";
}

}  // namespace holdwater::trip
