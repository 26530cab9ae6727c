// SPDX-License-Identifier: MIT
// The parts of a trip file, one function a table; each reports its own faults. Used by read_trip.cpp only.
#pragma once

#include "trip/read_trip.hpp"
#include "trip/table.hpp"

namespace holdwater::trip {

void read_head(Table& table, const Known& known, Trip& trip);
void read_food(Table& table, const Known& known, Food& food);
void read_box(Table& table, const FileReader& read_file, Box& box);
/// The ways to say how well a box holds heat: test, log or loss, and the circumstances of the test.
void read_box_test(Table& table, const FileReader& read_file, Box& box);
void read_weather(Table& table, Weather& weather);
void read_fire(Table& table, Fire& fire);
void read_sleep(Table& table, Sleep& sleep);
/// `boxes` of the trip: its box may be one of them.
void read_journey(Table& table, const std::vector<Box>& boxes, Journey& journey);
void read_hot_water(Table& table, HotWater& water);
void read_side(Table& table, Side& side);
void read_what_if(Table& table, WhatIf& what_if);

/// Mass against size and shape; see shape_mass.cpp.
void check_mass(const Food& food, Table& table);

/// What only shows when all tables are read: which food lies in which box, what fits, weather against dates.
void check_together(Trip& trip, Table& file);

/// TOML that cannot be read at all: one error, with a hint for the slips that people make.
void report_syntax(const toml::parse_error& fault, std::string_view text, Report& report);

}  // namespace holdwater::trip
