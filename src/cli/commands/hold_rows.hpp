// SPDX-License-Identifier: MIT
// The options of `hold`. The limits are those of the physics, wider than a trip file's: it is a bench too.
#pragma once

#include "cli/line/option_row.hpp"
#include "facts/names.hpp"

namespace holdwater::cli::hold_rows {

inline constexpr Range sizes{"1 mm", "2 m", "120 mm", {}};
inline constexpr Range food_temperatures{"-5 C", "100 C", "5 C", {}};

inline const OptionRow kind{.name = "--kind",
                            .value = "K",
                            .help =
                                "food, a key of `holdwater sources --foods`; needed unless you give figures of "
                                "your own",
                            .example = "pork-loin",
                            .holds = Holds::food_kind,
                            .one_of = "food"};
inline const OptionRow shape{
    .name = "--shape", .value = "S", .help = "of the piece", .required = true, .choices = names_of<facts::Shape>()};
inline const OptionRow thickness{.name = "--thickness",
                                 .value = "D",
                                 .help = "smallest way through; diameter of a round or ball",
                                 .required = true,
                                 .range = {"1 mm", "400 mm", "60 mm"}};
inline const OptionRow width{.name = "--width", .value = "W", .help = "of a block, which needs it", .range = sizes};
inline const OptionRow length{.name = "--length",
                              .value = "L",
                              .help =
                                  "of a block, which needs it, or of a round; without it a round is so long that "
                                  "its ends do not matter",
                              .range = sizes};
inline const OptionRow bath{.name = "--bath",
                            .value = "T",
                            .help = "temperature of the water, all the time",
                            .required = true,
                            .range = {"-1 C", "100 C", "60 C"}};
inline const OptionRow start{.name = "--start",
                             .value = "T",
                             .help = "temperature of the food as it goes in",
                             .required = true,
                             .range = food_temperatures};
inline const OptionRow target{.name = "--target",
                              .value = "T",
                              .help = "wanted core temperature",
                              .by_default = "half a kelvin short of the bath",
                              .range = food_temperatures,
                              .example = "57 C"};
inline const OptionRow at{.name = "--at",
                          .value = "TIME",
                          .help = "also tell core, surface and mean temperature after this time",
                          .range = {"0 s", "720 h", "2 h"}};
inline const OptionRow contact{.name = "--contact",
                               .value = "C",
                               .help = "how the piece lies",
                               .by_default = "bottom for a slab, free for the others",
                               .choices = names_of<facts::Contact>()};
inline const OptionRow bag{.name = "--bag",
                           .value = "B",
                           .help = "thin, thick, or its resistance",
                           .by_default = "thin",
                           .range = {"0 m2 K/W", "1 m2 K/W", "0.01 m2 K/W"}};
inline const OptionRow rules{.name = "--rules", .value = "R", .help = "whose food-safety rules"};
inline const OptionRow cut{.name = "--cut",
                           .value = "C",
                           .help = "what was done to the meat",
                           .by_default = "intact",
                           .choices = names_of<facts::Cut>()};
inline const OptionRow at_risk{
    .name = "--at-risk", .help = "someone who eats is pregnant, under 5, 65 or over, or has a weak immune system"};

// Figures of one's own: their column is "given"; what is left out is the kind's likely figure.
inline constexpr std::string_view own =
    "Your own figures (their column is \"given\"; what is left out is the kind's "
    "likely figure)";
inline const OptionRow diffusivity{.name = "--diffusivity",
                                   .value = "A",
                                   .help = "how fast heat spreads in the food",
                                   .range = {"1e-9 m2/s", "1e-3 m2/s", "1.3e-7 m2/s"},
                                   .one_of = "food",
                                   .group = own};
inline const OptionRow conductivity{.name = "--conductivity",
                                    .value = "K",
                                    .help = "how well the food conducts heat",
                                    .range = {"0.01 W/m/K", "500 W/m/K", "0.5 W/m/K"},
                                    .group = own};
inline const OptionRow film{.name = "--film",
                            .value = "H",
                            .help = "from water to food, the whole way unless --bag is given too",
                            .range = {"1 W/m2/K", "100000 W/m2/K", "95 W/m2/K"},
                            .group = own};
inline const OptionRow d_value{.name = "--d-value",
                               .value = "TIME",
                               .help = "time for one log10 of kill at --d-at",
                               .range = {"0.001 s", "10000 h", "5 min"},
                               .group = own};
inline const OptionRow d_at{.name = "--d-at",
                            .value = "T",
                            .help = "where the D-value was measured",
                            .range = {"0 C", "150 C", "60 C"},
                            .group = own};
inline const OptionRow z{.name = "--z",
                         .value = "K",
                         .help = "the rise that makes the kill ten times as fast",
                         .range = {"1 K", "100 K", "6 K"},
                         .group = own};
inline const OptionRow log10{
    .name = "--log10", .value = "N", .help = "log10 of kill wanted", .range = {"0.1", "20", "7"}, .group = own};
inline const OptionRow curvature{.name = "--curvature",
                                 .value = "B",
                                 .help = "a slab with rounded sides: 0 is flat, 1 a long cylinder, 2 a ball",
                                 .by_default = "0",
                                 .range = {"0", "2", "0.3"},
                                 .group = own,
                                 .formerly = "--rounding"};

}  // namespace holdwater::cli::hold_rows
