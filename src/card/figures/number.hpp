// SPDX-License-Identifier: MIT
// A figure as it is told beside the cards: with the quantile that it is, how it was rounded and where its rule comes
// from, so that every figure of a card can be traced.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace holdwater::card {

struct CardNumber {
    std::string card;       // key of the card, "night"
    bool detail = false;    // a row of a table, a step or a caution: too many for the basis sheet and --explain
    bool stands = false;    // on that card, as `printed`; else only explained
    std::string name;       // "longest_alone_h", the same in every language
    std::string label;      // "longest alone", in the language of the words
    double value = 0.0;     // unrounded, in the unit that ends the name
    std::string_view unit;  // as it is printed, "h"; may be empty
    std::string printed;    // as it stands on the card
    // In the language of the words:
    std::string quantile;         // "95 of 100 scenarios", "rule", "chosen"
    std::string rounding;         // "down to 15 min"
    std::string_view side;        // "up", "down" or "none": to which side that is
    std::string source;           // key of a source, of a figure, or what it was worked out from
    std::optional<double> error;  // of the value, from drawing scenarios at all; where it was worked out
};

/// The unit of an unrounded value.
struct ValueUnit {
    std::string_view ending;   // of the name
    std::string_view printed;  // "°C"
};
namespace value_unit {
inline constexpr ValueUnit none{"", ""};
inline constexpr ValueUnit celsius{"_c", "°C"};
inline constexpr ValueUnit hours{"_h", "h"};
inline constexpr ValueUnit millimetres{"_mm", "mm"};
inline constexpr ValueUnit litres{"_l", "L"};
inline constexpr ValueUnit kilograms{"_kg", "kg"};
inline constexpr ValueUnit grams{"_g", "g"};
}  // namespace value_unit

}  // namespace holdwater::card
