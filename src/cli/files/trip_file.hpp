// SPDX-License-Identifier: MIT
// A trip file on disk -> Trip, and the languages that its cards may be in.
#pragma once

#include "cli/exit.hpp"
#include "plan/result/plan.hpp"
#include "trip/trip.hpp"
#include "words/words.hpp"

#include <string>
#include <vector>

namespace holdwater::cli {

problem::Result<trip::Trip> load_trip(const std::string& path);
/// The same of a text that is, or would be, in that file.
problem::Result<trip::Trip> trip_of(const std::string& text, const std::string& path);
/// What the program itself says on the terminal, and what every other language is held against.
inline constexpr const char* own_language = "en";
/// English and those with a file in layouts/words, in order.
std::vector<std::string> languages();
/// The words of a language, whole: one that lacks a key or a place of English is refused (words-incomplete).
problem::Result<words::Words> load_words(const std::string& language);

/// NAME of a trip file: its stem.
std::string stem_of(const std::string& path);

}  // namespace holdwater::cli
