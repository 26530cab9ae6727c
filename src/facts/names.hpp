// SPDX-License-Identifier: MIT
// The lists of names that trip files use and that every part of the program understands; closed but for the sets of
// rules, which are read from the facts.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace holdwater::facts {

enum class Cut { intact, tied, tenderised, injected, rolled, stuffed, minced };
enum class Shape { slab, round, block, ball };
/// free: kept apart and off the bottom, water on every face. bottom: one face blocked. stacked: blocked on one face by
/// another piece of the same size, which doubles the thickness.
/// What becomes of a food in the bath: it is cooked there; it is a steak, seared afterwards; or it was cooked through
/// before, goes in hot and is kept hot.
enum class Use { cook, steak, keep_hot };
enum class Contact { free, bottom, stacked };
/// A set of food-safety rules, by its place in facts/rules.toml, where its name stands too; Ruleset{} is the first set.
enum class Ruleset : std::size_t {};
enum class Wind { still, breezy, windy };
enum class Bag { thin, thick };
enum class Fuel { wood, propane, butane, none_needed };

template <class Enum>
struct Name {
    Enum value;
    std::string_view text;  // as written in a trip file
};

/// Every name of an enumeration, in the order in which help texts list them.
template <class Enum>
std::span<const Name<Enum>> names();

template <class Enum>
std::optional<Enum> from_name(std::string_view text) {
    for (const Name<Enum>& name : names<Enum>()) {
        if (name.text == text) {
            return name.value;
        }
    }
    return std::nullopt;
}

/// The name of today for one that earlier versions had ("floor" is "bottom" now); nothing for any other word.
std::optional<std::string_view> renamed(std::string_view text);

template <class Enum>
std::string_view to_name(Enum value) {
    for (const Name<Enum>& name : names<Enum>()) {
        if (name.value == value) {
            return name.text;
        }
    }
    return {};
}

}  // namespace holdwater::facts
