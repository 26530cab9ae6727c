// SPDX-License-Identifier: MIT
// What can be right in a trip file. A value outside is a slip of the pen (a wrong unit, a lost decimal point), not a
// question of safety: that is judged later, by rules that have sources. All limits here are our own judgement; each
// is written as a user would write it, so that messages quote the very limit that was applied.
#pragma once

#include <string_view>

namespace holdwater::trip {

/// A value with a unit; `example` is what a message shows for a missing or unreadable one.
struct Range {
    std::string_view low;
    std::string_view high;
    std::string_view example;
};

/// A whole number.
struct Count {
    int low = 0;
    int high = 0;
};

namespace ranges {

// [trip]: from the shore of the lowest lake to the highest camp at which anybody cooks for a group.
inline constexpr Range altitude{"-430 m", "6000 m", "1850 m"};
inline constexpr Count people{1, 200};
inline constexpr Range trip_length{"15 min", "72 h", "20 h"};  // from first fire to the meal
inline constexpr Count year{2000, 2199};

// [[food]]: from a thin fillet to the thickest roast that a bag takes.
inline constexpr Count foods{1, 12};
inline constexpr Range thickness{"3 mm", "250 mm", "35 mm"};
inline constexpr Range length{"10 mm", "1000 mm", "300 mm"};
inline constexpr Range mass{"0.02 kg", "15 kg", "1.8 kg"};
inline constexpr Count pieces{1, 100};
inline constexpr Range start{"0 C", "25 C", "4 C"};
inline constexpr Range frozen{"-60 C", "0 C", "-18 C"};  // below start, but no slip of the pen: told how to thaw it
inline constexpr std::string_view thaw =
    "thaw it through at 5 C (41 F) or colder, or in its bag in cold water changed every 30 min; then start = \"4 C\"";
inline constexpr Range hot_start{"0 C", "100 C",
                                 "75 C"};  // of what is kept hot; what is too cold for it, the rules say
inline constexpr Range hot_tolerance{"5 K", "5 K", "5 K"};  // the bath is not made hotter than what it keeps hot
inline constexpr Range target{"40 C", "95 C", "63 C"};
inline constexpr Range tolerance{"0.5 K", "10 K", "2 K"};
inline constexpr Range bag{"0.0001 m2 K/W", "0.1 m2 K/W", "0.01 m2 K/W"};
inline constexpr Range diffusivity{"0.5e-7 m2/s", "3e-7 m2/s", "1.3e-7 m2/s"};
inline constexpr Range conductivity{"0.1 W/m/K", "1 W/m/K", "0.5 W/m/K"};
inline constexpr double composition_low = 97;  // sum of the parts, g per 100 g
inline constexpr double composition_high = 103;
inline constexpr Range odd_thickness{"3 mm", "150 mm", "85 mm"};  // above: warned, since it warms for half a day

// [[box]]
inline constexpr Count boxes{1, 2};
inline constexpr Range inside{"80 mm", "1200 mm", "540 mm"};
inline constexpr Range water{"2 L", "200 L", "36 L"};
inline constexpr double odd_fill = 0.9;  // of the inner volume; above: warned, since the lid floats and spills
inline constexpr Range thermometer{"0.1 K", "5 K", "1 K"};
inline constexpr Range reading_error{"0.05 K", "5 K", "0.5 K"};
inline constexpr Range loss{"0.05 W/K", "20 W/K", "0.9 W/K"};
inline constexpr Count test_readings{2, 2000};
inline constexpr Range test_after{"0 h", "72 h", "4 h"};
inline constexpr Range short_test{"1 h", "72 h", "4 h"};  // below: warned, since the fall drowns in the reading error
inline constexpr Range test_bath{"20 C", "100 C", "64 C"};

// [weather], [fire], [sleep], [journey]
inline constexpr Range air{"-45 C", "55 C", "9 C"};
inline constexpr Count hours{1, 200};
inline constexpr Range weather_gap{"0 h", "3 h", "0 h"};  // dated hours that end further from the trip: warned
inline constexpr Count pots{1, 12};
inline constexpr Range pot{"0.5 L", "60 L", "8 L"};
inline constexpr Range usable{"30 %", "95 %", "80 %"};
inline constexpr Range boils_in{"3 min", "3 h", "25 min"};
inline constexpr Range moisture{"0 %", "60 %", "20 %"};
inline constexpr Range cold_water{"0 C", "30 C", "4 C"};
inline constexpr Range odd_sleep{"0 h", "12 h", "8 h"};  // longer: warned, since from and to may be swapped
inline constexpr Range journey{"1 min", "72 h", "5 h"};

// [[hot_water]]
inline constexpr Count hot_waters{0, 12};
inline constexpr Range hot_water{"0.1 L", "100 L", "4 L"};
inline constexpr Range hot_water_each{"0.05 L", "10 L", "0.5 L"};
inline constexpr Range hot_water_after{"0 h", "3 h", "1 h"};  // after the last meal: washing-up
inline constexpr Count sittings{2, 6};

// [[side]], [[what_if]]
inline constexpr Count sides{0, 20};
inline constexpr Range side{"1 min", "24 h", "50 min"};
inline constexpr Count what_ifs{0, 12};
inline constexpr Range colder{"0.5 K", "40 K", "8 K"};
inline constexpr Range later{"5 min", "24 h", "6 h"};
inline constexpr Range fire_out{"10 min", "48 h", "3 h"};

// Logs
inline constexpr Range logged_bath{"-5 C", "105 C", "62 C"};
inline constexpr Range logged_core{"-5 C", "100 C", "60 C"};

}  // namespace ranges
}  // namespace holdwater::trip
