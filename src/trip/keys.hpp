// SPDX-License-Identifier: MIT
// Every key of a trip file, told once: for the manual, and for whoever asks for a trip. The limits are those that the
// readers apply; a test asks the readers which keys they know and holds this list against them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace holdwater::trip {

struct Key {
    std::string_view name;
    std::string_view means;
    std::string value = {};                      // what stands there: "\"4 h\"", "true or false", "text in quotes"
    std::string limits = {};                     // "3 mm to 250 mm"; empty: none but those of its words
    std::vector<std::string_view> choices = {};  // the words that can stand there, if only these can
    std::string by_default = {};                 // what holds if it is not given; empty for a required key
    bool required = false;
};

struct KeyTable {
    std::string_view heading;  // "[trip]", "[[food]]"; of tables in braces the key that holds them, "hours"
    std::string_view means;
    std::string number;  // how many there may be: "once", "1 to 12 times"
    bool required = false;
    std::vector<Key> keys;
};

/// In the order in which files have them.
std::vector<KeyTable> key_tables();

/// The shortest trip file that says all that it must; its box is one without a test.
std::string_view shortest_trip();

}  // namespace holdwater::trip
