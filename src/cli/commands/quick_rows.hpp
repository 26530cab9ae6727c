// SPDX-License-Identifier: MIT
// The options of `quick`: each but the file puts one value into one line of layouts/trips/quick.toml.
#pragma once

#include "cli/commands/common_rows.hpp"
#include "cli/line/option_row.hpp"
#include "trip/ranges.hpp"
#include "units/print.hpp"

#include <string_view>

namespace holdwater::cli::quick_rows {

inline const OptionRow file{.name = "TRIP",
                            .help = "trip file to write; never over an existing one",
                            .by_default = "meal.toml",
                            .example = "meal.toml",
                            .holds = Holds::trip_file};
inline const OptionRow kind{.name = "--kind",
                            .value = "K",
                            .help = "food, a key of `holdwater sources --foods`",
                            .required = true,
                            .example = "pork-loin",
                            .holds = Holds::food_kind};
inline const OptionRow thickness{.name = "--thickness",
                                 .value = "D",
                                 .help = "of a piece, at its thickest place",
                                 .required = true,
                                 .range = as_in(trip::ranges::thickness)};
inline const OptionRow pieces{
    .name = "--pieces", .value = "N", .help = "how many such pieces", .required = true, .range = {"1", "100", "4"}};
inline const OptionRow water{.name = "--water",
                             .value = "V",
                             .help = "hot water in the box",
                             .required = true,
                             .range = as_in(trip::ranges::water)};
inline const OptionRow serve{.name = "--serve",
                             .value = "TIME",
                             .help = "the meal: a clock, of today or tomorrow, or a date and time",
                             .required = true,
                             .example = "18:30"};
inline const OptionRow from{
    .name = "--from", .value = "TIME", .help = "when fire and box are there", .example = "12:00"};
inline const OptionRow name{.name = "--name", .value = "TEXT", .help = "what the card is headed", .example = "Supper"};
inline const OptionRow people{
    .name = "--people", .value = "N", .help = "who eats, for portions", .range = {"1", "200", "6"}};
inline const OptionRow nobody_at_risk{
    .name = "--nobody-at-risk",
    .help = "nobody who eats is pregnant, under 5, 65 or over, or has a weak immune system"};
inline const OptionRow rules{.name = "--rules", .value = "R", .help = "whose food-safety rules"};
inline const OptionRow altitude{.name = "--altitude",
                                .value = "H",
                                .help = "of the fire; needed above what is taken without it",
                                .range = as_in(trip::ranges::altitude)};
inline const OptionRow cut{.name = "--cut",
                           .value = "C",
                           .help = "what was done to the meat; needed if anything was",
                           .choices = names_of<facts::Cut>()};
inline const OptionRow shape{
    .name = "--shape", .value = "S", .help = "of a piece", .choices = {"slab", "round", "ball"}};
inline const OptionRow contact{.name = "--contact",
                               .value = "C",
                               .help = "how the pieces lie; needed if they lie on the bottom or on each other",
                               .choices = names_of<facts::Contact>()};
inline const OptionRow mass{.name = "--mass", .value = "M", .help = "of one piece", .range = as_in(trip::ranges::mass)};
inline const OptionRow start{
    .name = "--start", .value = "T", .help = "of the food as it goes in", .range = as_in(trip::ranges::start)};
inline const OptionRow target{
    .name = "--target", .value = "T", .help = "inside, when it is done", .range = as_in(trip::ranges::target)};
inline const OptionRow thermometer{.name = "--thermometer",
                                   .value = "K",
                                   .help = "how far its reading may be off",
                                   .range = as_in(trip::ranges::thermometer)};
inline const OptionRow loss{
    .name = "--loss", .value = "L", .help = "of the box, as `gauge` finds it", .range = as_in(trip::ranges::loss)};
inline const OptionRow air{
    .name = "--air", .value = "T", .help = "around the box, at the coldest", .range = as_in(trip::ranges::air)};
inline const OptionRow wind{
    .name = "--wind", .value = "W", .help = "where the box stands", .choices = names_of<facts::Wind>()};
inline const OptionRow pots{
    .name = "--pots", .value = "N", .help = "that fit on the fire together", .range = {"1", "12", "2"}};
inline const OptionRow pot{
    .name = "--pot", .value = "V", .help = "one pot, to the brim", .range = as_in(trip::ranges::pot)};
inline const OptionRow boils_in{.name = "--boils-in",
                                .value = "TIME",
                                .help = "one pot of cold water, all pots on, from lighting",
                                .range = as_in(trip::ranges::boils_in)};
inline const OptionRow cold_water{.name = "--cold-water",
                                  .value = "T",
                                  .help = "as it comes from tap, lake or stream",
                                  .range = as_in(trip::ranges::cold_water)};
inline const OptionRow units{
    .name = "--units", .value = "U", .help = "units of the card", .choices = holdwater::units::system_names()};

}  // namespace holdwater::cli::quick_rows
