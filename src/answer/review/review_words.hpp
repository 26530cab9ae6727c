// SPDX-License-Identifier: MIT
// What one note of a log says about food, by its words. Inside answer/ only.
#pragma once

#include "trip/trip.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace holdwater::answer {

/// Words in small letters and numbers, without signs; letters outside ASCII stay as they are.
std::vector<std::string> words_of(std::string_view text);

struct Said {
    enum class What { nothing, in, out, eaten, unclear };
    What what = What::nothing;
    bool named = false;              // it names a food
    std::vector<std::size_t> foods;  // which of the trip: the named ones, else all
    std::string unknown;             // "food in: NAME" with a name that no food of the trip has
};

/// One note, without semicolons, clause by clause (parted by commas). A clause with "in", "into", or one of the words
/// for coming out ("out", "served", "eaten", "removed", "took" ...) is about the food, unless it speaks of something
/// else (lid, wood, thermometer, in the morning ...) and not of food as well. It is clear if all its other words are
/// names of foods, words for food, numbers, or small words; else it is unclear, and nobody may be told to eat by it.
std::vector<Said> said_in(std::string_view note, const std::vector<trip::Food>& foods);

/// The clauses of a note, parted by semicolons; trimmed, in small letters.
std::vector<std::string> parts_of(std::string_view note);

/// "top-up", "topped up", "swap" and the like at the head of a part, whatever follows.
bool says_poured_first(std::string_view part);
/// "before" alone, or "before top-up" and the like at the head of a part.
bool says_before_pour(std::string_view part);
/// "nothing poured", "no top-up", "not topped up" at the head of a part.
bool says_none_poured(std::string_view part);

}  // namespace holdwater::answer
