// SPDX-License-Identifier: MIT
// The numbers that a cook acts on, each with the quantile it is, how it was rounded and where its rule comes from: what
// `plan --explain` and `plan --json` show, so that every figure of a card can be traced.
#pragma once

#include "card/shared/figures.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

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

/// Every number that a card of the deck prints, first those that one acts on, in the order of the deck, then the
/// details.
std::vector<CardNumber> card_numbers(const CardWriter& writer);

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

/// Collects the numbers of a deck. Inside card/ only.
class NumberList {
  public:
    explicit NumberList(const CardWriter& writer) : writer_(writer) {}

    /// What a number is called: "core-peak" of [number] in the words.
    struct Name {
        std::string_view card;
        std::string_view key;
        ValueUnit unit;
        std::string_view of = {};     // a name that the user gave
        std::optional<int> nth = {};  // of several, from 1
    };
    /// `quantile` and `rounding` are keys of the sections of that name.
    void add(const Name& name, double value, std::string printed, std::string_view quantile, std::string_view rounding,
             std::string source, std::optional<double> error = std::nullopt);
    void add(const Name& name, double value, const units::Amount& printed, std::string_view quantile,
             std::string_view rounding, std::string source, std::optional<double> error = std::nullopt);

    /// The same for what stands in rows, steps and cautions; it has no label.
    void add_detail(const Name& name, double value, std::string printed, std::string_view quantile,
                    std::string_view rounding, std::string source);

    /// The text of a key of [source], over the keys of figures or rows.
    std::string source(std::string_view key, std::string_view keys = {}) const;

    const CardWriter& writer() const { return writer_; }
    std::vector<CardNumber> take() { return std::move(numbers_); }

  private:
    const CardWriter& writer_;
    std::vector<CardNumber> numbers_;
};

/// Parts of the list, in provision_numbers.cpp.
void add_touch_numbers(NumberList& list);
void add_kitchen_numbers(NumberList& list);
/// And in act_numbers.cpp, reading_numbers.cpp and measure_numbers.cpp.
void add_act_details(NumberList& list);
void add_reading_details(NumberList& list);
void add_measure_details(NumberList& list);

}  // namespace holdwater::card
