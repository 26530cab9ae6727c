// SPDX-License-Identifier: MIT
// The options of a command, one row an option. The same rows read the command line, print help and are held against
// the tables of README.
#pragma once

#include "facts/names.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::cli {

/// The limits of a quantity or a plain number, as one writes them: {"-5 C", "100 C", "60 C"}.
struct Range {
    std::string_view low;
    std::string_view high;
    std::string_view example;
    std::string_view why = {};  // said beside the limits to whoever is outside; may be empty
};

/// The range that something else has with the same three texts, such as a key of trip files.
template <class Other>
constexpr Range as_in(const Other& other) {
    return {other.low, other.high, other.example, {}};
}

/// How many texts an option takes.
enum class Takes {
    one,      // --bath "60 C"
    several,  // one a time, as often as wanted: --reading "0 h=62 C" --reading "3 h=57.5 C"; of words: TRIP TRIP
    three,    // --inside "540x290x300 mm", or --inside "540 mm" "290 mm" "300 mm"
    list      // one word with commas: --only plan,fill; given again, it adds
};

/// What a text that an option takes names, where that is no word of its choices: a shell completes it by this.
enum class Holds { text, trip_file, log_file, folder, food_kind, command };

struct OptionRow {
    std::string_view name = {};   // "--bath"; without dashes, a word that stands by itself: "TRIP"
    std::string_view value = {};  // what stands after it, as help shows it: "T"; empty for a switch
    std::string_view help = {};
    Takes takes = Takes::one;
    bool required = false;
    std::string by_default = {};                 // what holds if it is not given
    Range range = {};                            // of a quantity or number
    std::vector<std::string_view> choices = {};  // the words that can stand after it, if only these can
    std::string_view example = {};               // if no range has one
    Holds holds = Holds::text;
    std::string_view needs = {};     // the option without which it says nothing
    std::string_view one_of = {};    // rows with the same word here: one of them is required
    std::string_view group = {};     // its heading in help; empty: the common one
    std::string_view formerly = {};  // the name that it had in earlier versions

    bool is_option() const { return name.starts_with("--"); }
    bool is_switch() const { return is_option() && value.empty(); }
    std::string_view example_value() const { return example.empty() ? range.example : example; }
};

/// The names of an enumeration, as choices of a row.
template <class Enum>
std::vector<std::string_view> names_of() {
    std::vector<std::string_view> all;
    for (const auto& name : facts::names<Enum>()) {
        all.push_back(name.text);
    }
    return all;
}

}  // namespace holdwater::cli
