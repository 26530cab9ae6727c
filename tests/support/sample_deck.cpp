// SPDX-License-Identifier: MIT
#include "support/sample_deck.hpp"

#include <cmath>

namespace holdwater::support {

namespace {

using card::Align;
using card::SignalWord;

card::Card plan_card() {
    card::Card made{"plan", "Plan", "What happens when?", 1, {}, {}};
    card::KeyRow row;
    row.numbers = {
        {"Food in", "20:40", "", "Friday"}, {"Eat", "12:30", "", "Saturday"}, {"Margin", "1 h 50", "", "done 10:40"}};
    made.blocks.add(row);
    card::DayBar bar;
    bar.from = 16.0;
    bar.to = 36.5;
    bar.spans = {{card::DayBar::Kind::fill, 16.0, 20.7, "fire, fill"},
                 {card::DayBar::Kind::cook, 20.7, 22.5, "cook"},
                 {card::DayBar::Kind::sleep, 22.5, 30.5, "leave it alone"},
                 {card::DayBar::Kind::cook, 30.5, 34.7, "cook"},
                 {card::DayBar::Kind::hold, 34.7, 36.5, "hold"}};
    bar.marks = {{16.0, "16:00", "fire"},   {20.67, "20:40", "food in"}, {22.5, "22:30", "top up"},
                 {30.5, "06:30", "top up"}, {34.67, "10:40", "done"},    {36.5, "12:30", "eat"}};
    made.blocks.add(bar);
    made.blocks.add(card::Steps{{{"16:00", "Light the fire; set the box where it stays"},
                                 {"17:10", "Pour 12 L of cold water in, then *3 pots* of boiling"},
                                 {"20:40", "Stir, read *71 °C*, lower the bags in"},
                                 {"22:30", "Top up *2.5 L* of boiling, then sleep"},
                                 {"06:30", "Stir, read, go by the Night card"},
                                 {"12:30", "Lift out, sear, slice, eat at once"}},
                                false});
    made.blocks.add(
        card::Note{"Pork loin, 85 mm thick, 2 pieces of 1.8 kg. Core reaches *63 °C* at 10:40 at the latest and never "
                   "passes 65 °C."});
    made.cautions = {
        {SignalWord::warning,
         "Keep pieces apart and off the floor of the box; a piece that touches another warms too slowly."}};
    return made;
}

card::Card fill_card() {
    card::Card made{"fill", "Fill", "How hot, how much?", 2, {}, {}};
    made.blocks.add(card::KeyNumber{"Fill to", "71", "°C", "160 °F, stirred, before the food goes in"});
    card::KeyRow row;
    row.numbers = {{"Cold water first", "12", "L", "from the stream, 4 °C"},
                   {"Then boiling", "24", "L", "3 pots; the last one trims"}};
    made.blocks.add(row);
    made.blocks.add(card::Heading{"Order of work"});
    made.blocks.add(card::Steps{{{"", "Set the box in its final place, level, out of the wind"},
                                 {"", "Bag the food; press the air out in *cold* water; tie"},
                                 {"", "Pour the cold litres in, then the boiling, lid shut between pots"},
                                 {"", "Stir to the floor, wait *1 min*, read"},
                                 {"", "Trim with the last pot to *71 °C*"},
                                 {"", "Lower the bags by their string; ties stay above the water"}},
                                true});
    made.blocks.add(card::Turn{});
    made.blocks.add(card::Heading{"If the reading is off"});
    made.blocks.add(card::Table{
        "",
        {{"It reads", Align::right, false}, {"Add boiling", Align::right, true}, {"or add cold", Align::right, true}},
        {{"65 °C", "7.5 L", "—"},
         {"67 °C", "5 L", "—"},
         {"69 °C", "2.5 L", "—"},
         {"71 °C", "0 L", "0 L"},
         {"73 °C", "—", "1.1 L"},
         {"75 °C", "—", "2.3 L"}},
        3});
    made.blocks.add(
        card::Note{"Water boils at *93.8 °C* here (201 °F, 1850 m). A pot cools 1 to 5 K on its way: pour at once."});
    made.cautions = {
        {SignalWord::warning, "*30 kg of scalding water:* do not carry the box. Children stay 3 m away."},
        {SignalWord::warning,
         "Burn: cool water over it for *20 min*, then cover loosely. Get help for face, hands or blisters."}};
    return made;
}

card::Card hold_card() {
    card::Card made{"hold", "Hold", "How long for this thickness?", 3, {}, {}};
    made.blocks.add(card::Table{"Hours from food in, pork loin, round",
                                {{"thick", Align::right, false},
                                 {"bath 58 °C", Align::right, true},
                                 {"60 °C", Align::right, true},
                                 {"63 °C", Align::right, true}},
                                {{"40 mm", "3 h 05", "2 h 20", "1 h 35"},
                                 {"55 mm", "4 h 40", "3 h 45", "2 h 50"},
                                 {"70 mm", "6 h 30", "5 h 30", "4 h 25"},
                                 {"85 mm", "8 h 50", "7 h 35", "6 h 15"},
                                 {"100 mm", "11 h 30", "10 h 00", "8 h 25"},
                                 {"110 mm", "never", "11 h 45", "10 h 00"}},
                                3});
    made.blocks.add(
        card::Note{"Count from the last bag in. Use the *lowest* bath reading since then. Between two rows take the "
                   "thicker one."});
    made.blocks.add(card::Turn{});
    card::Ruler ruler;
    ruler.title = "Pork loin, round. Bath never under 60 °C";
    ruler.zero_label = "line up here";
    const char* labels[] = {"",       "",       "",       "45 min", "1 h 25", "1 h 55", "2 h 20",
                            "2 h 50", "3 h 25", "3 h 45", "4 h 30", "5 h",    "5 h 30", "6 h 10",
                            "6 h 50", "7 h 35", "8 h 20", "9 h 10", "10 h"};
    for (int i = 1; i < 19; ++i) {
        const double mm = 5.0 * (i + 1);
        ruler.ticks.push_back({mm, (i % 2 == 1 || i == 16) && labels[i][0] != '\0' ? labels[i] : "", false});
    }
    ruler.ticks[15].marked = true;
    ruler.ticks[15].label = "7 h 35";
    ruler.too_thick_mm = 95.0;
    ruler.too_thick_label = "too thick: split it";
    made.blocks.add(ruler);
    made.blocks.add(card::Steps{{{"", "Lay the card on the *closed* bag, zero line at one side"},
                                 {"", "Read the time at the other side"},
                                 {"", "Wipe the card"}},
                                true});
    made.cautions = {{SignalWord::warning, "Raw juice spreads germs. Measure through the closed bag only."},
                     {SignalWord::none, "A bath that fell below 57 °C: go to Limits."}};
    return made;
}

card::Card top_up_card() {
    card::Card made{"top-up", "Top-up", "How much boiling now?", 4, {}, {}};
    card::Ladder ladder;
    ladder.left_head = "bath reads";
    ladder.right_heads = {"box not full: add", "full: swap"};
    ladder.rungs = {{"66 °C", {"nothing", "nothing"}}, {"64 °C", {"1.5 L", "1.5 L"}}, {"62 °C", {"3 L", "3.5 L"}},
                    {"60 °C", {"4.5 L", "5.5 L"}},     {"58 °C", {"6 L", "7.5 L"}},   {"57 °C", {"7 L", "9 L"}}};
    ladder.floor_reading = "below 57 °C";
    ladder.floor_action = "go to Limits, card 7";
    made.blocks.add(ladder);
    made.blocks.add(card::Heading{"Look again in"});
    made.blocks.add(
        card::Table{"",
                    {{"outside", Align::right, false}, {"still", Align::right, true}, {"windy", Align::right, true}},
                    {{"10 °C", "5 h 30", "4 h 15"}, {"0 °C", "4 h 30", "3 h 30"}, {"−10 °C", "3 h 45", "2 h 50"}},
                    1});
    made.cautions = {{SignalWord::warning, "Never pour boiling water on a bag. Scald: cool water, 20 min."}};
    return made;
}

card::Card night_card() {
    card::Card made{"night", "Night", "How long may I leave it?", 5, {}, {}};
    made.blocks.add(card::KeyNumber{"Leave it alone for at most", "8 h 10", "", "from 22:30, filled to 69 °C"});
    card::Curve curve;
    curve.title = "Bath through the night";
    for (int i = 0; i <= 20; ++i) {
        const double t = 0.6 * i;
        curve.likely.push_back({t, 69.0 - 14.0 * (1.0 - std::exp(-t / 14.0))});
        curve.high.push_back({t, 69.0 - 11.0 * (1.0 - std::exp(-t / 14.0))});
        curve.low.push_back({t, 69.0 - 22.5 * (1.0 - std::exp(-t / 14.0))});
    }
    curve.floor = 57.0;
    curve.floor_label = "57 °C: action line";
    curve.x_labels = {{0, "22:30"}, {2, "00:30"},  {4, "02:30"}, {6, "04:30"},
                      {8, "06:30"}, {10, "08:30"}, {12, "10:30"}};
    curve.y_labels = {{50, "50"}, {55, "55"}, {60, "60"}, {65, "65"}, {70, "70"}};
    curve.y_title = "bath, °C";
    curve.x_title = "clock";
    made.blocks.add(curve);
    made.blocks.add(card::Turn{});
    made.blocks.add(card::Heading{"In the morning: stir, read, find the row"});
    made.blocks.add(
        card::Table{"",
                    {{"reads", Align::right, false}, {"below since", Align::right, true}, {"do", Align::left, false}},
                    {{"60 °C", "never", "top up, go on"},
                     {"56 °C", "0 h 40", "bath up at once, eat next"},
                     {"54 °C", "1 h 45", "core to *74 °C* over the fire"},
                     {"52 °C", "2 h 50", "core to *74 °C*, eat now"},
                     {"50 °C", "4 h 10", "*throw it away*"}},
                    std::nullopt});
    made.blocks.add(
        card::Note{"Hours count from the last good reading at *22:30*. A top-up does not stop this clock."});
    made.cautions = {{SignalWord::warning, "*No fire, stove or charcoal in a tent:* carbon monoxide has no smell."}};
    return made;
}

card::Card touch_card() {
    card::Card made{"touch", "Touch", "No thermometer?", 6, {}, {}};
    made.blocks.add(card::Heading{"1 Mix by parts: the best you have"});
    made.blocks.add(card::Table{
        "",
        {{"boiling", Align::right, true}, {"cold 4 °C", Align::right, true}, {"gives about", Align::right, false}},
        {{"1 part", "1 part", "48 °C"}, {"2 parts", "1 part", "63 °C"}, {"3 parts", "1 part", "70 °C"}},
        1});
    made.blocks.add(card::Heading{"2 Wax: a bead of beeswax in a bag"});
    made.blocks.add(card::Note{"Clear and runny: *65 °C* or more. Cloudy: less. Hard: under 60 °C."});
    made.blocks.add(card::Turn{});
    made.blocks.add(card::Heading{"3 One fingertip, out at the first sting"});
    made.blocks.add(
        card::Table{"",
                    {{"stings", Align::left, false}, {"may be", Align::right, true}, {"burns in", Align::right, false}},
                    {{"at once", "60–80 °C", "under 5 s"},
                     {"by one", "54–66 °C", "5 s"},
                     {"by two", "51–62 °C", "20 s"},
                     {"not by two", "cannot tell", "—"}},
                    3});
    made.blocks.add(card::Note{"Not stung by two proves nothing: treat it as *too cool*, use mixing or wax."});
    made.cautions = {{SignalWord::warning, "Never with a cold or numb hand, never a child, never longer than two."}};
    return made;
}

card::Card limits_card() {
    card::Card made{"limits", "Limits", "Is it still safe?", 7, {}, {}};
    made.blocks.add(
        card::Table{"Below 57 °C since the last good reading",
                    {{"so far", Align::right, true}, {"do this", Align::left, false}},
                    {{"2 h", "Core to *74 °C* over the fire, or bath back above 57 °C at once and eat next"},
                     {"4 h", "Core to *74 °C* over the fire and eat now"},
                     {"over 4 h", "*Throw it away.* Heating does not undo toxin"}},
                    std::nullopt});
    made.blocks.add(card::Heading{"Other troubles"});
    made.blocks.add(card::Table{"",
                                {{"you see", Align::left, false}, {"do", Align::left, false}},
                                {{"Bag leaked, seen at once", "Core to *74 °C* over the fire, eat now"},
                                 {"Bag leaked, time unknown", "*Throw it away*"},
                                 {"Core under 54 °C after 6 h", "*Throw it away*"}},
                                std::nullopt});
    made.blocks.add(
        card::Caution{SignalWord::caution,
                      "Anyone pregnant, under 5, over 65 or ill eats only what reached 63 °C for 3 min at the core."});
    made.cautions = {{SignalWord::warning, "In doubt, throw it away. A top-up neither stops nor resets the clock."}};
    return made;
}

card::Card log_card() {
    card::Card made{"log", "Log", "What happened?", 8, {}, {}};
    made.blocks.add(card::WriteIn{{"plan", "clock", "bath °C", "litres", "who"},
                                  {"20:40", "22:30", "06:30", "09:00", "10:40", "12:30", "", "", ""}});
    made.cautions = {{SignalWord::caution, "Stir to the floor before each reading."}};
    return made;
}

}  // namespace

card::Deck sample_deck() {
    card::Deck deck;
    deck.title = "Larch Ridge trail-crew weekend";
    deck.stamp = "7K2M9QXD";
    deck.language = "en";
    deck.footer = "Local food-safety rules and licensed practice have the last word.";
    deck.cards = {plan_card(),  fill_card(),  hold_card(),   top_up_card(),
                  night_card(), touch_card(), limits_card(), log_card()};
    return deck;
}

}  // namespace holdwater::support
