// SPDX-License-Identifier: MIT
// What is printed, read back as a cook reads it: which text of the word file a line was written by, and what stands in
// its places; figures with their units; clock times. It knows the wording of a language, and nothing of how a figure
// was worked out.
#pragma once

#include "units/local_time.hpp"
#include "words/words.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace holdwater::support {

/// Plain spaces for no-break ones, no emphasis; escaped asterisks are themselves.
std::string as_read(std::string_view text);

/// What stood in the {places} of a text.
using Filled = std::map<std::string, std::string, std::less<>>;

/// What fills the places if `text` was written by `form`, a wording with {places}; nothing if it was not. Each place
/// takes as little as it can.
std::optional<Filled> filled(std::string_view form, std::string_view text);

/// The same for a key of the words, in any of its plural forms. `with` puts another text in a place first, so that two
/// places side by side can be told apart.
std::optional<Filled> filled_by(const words::Words& words, std::string_view key, std::string_view text,
                                const std::map<std::string, std::string>& with = {});

/// The first number of a text, with point or comma: "11,5 L" is 11.5, "3 3/8 in" 3.375. Throws if there is none.
double number_in(std::string_view text);
/// Litres of "11.5 L" or "12 qt", the first of two systems. Throws if it is neither.
double litres_in(std::string_view text);
/// Degrees Celsius of "71 °C" or "160 °F", the first of two systems. Throws if it is neither.
double celsius_in(std::string_view text);
/// Millimetres of "30 mm" or "1 1/8 in", the first of two systems. Throws if it is neither.
double millimetres_in(std::string_view text);
/// Seconds of "2 h 15", "45 min", "2h15", "90 s". Throws if it is none.
double seconds_in(std::string_view text);

/// A clock time, "22:30", "4:00 pm", with the day of the week before it or without, as the moment on or after `from`
/// that it means. Throws if it is none.
units::LocalTime moment_in(const words::Words& words, std::string_view text, units::LocalTime from);

}  // namespace holdwater::support
