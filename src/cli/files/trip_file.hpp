// SPDX-License-Identifier: MIT
// A trip file on disk -> Trip -> Plan, and what each outcome means for the exit code.
#pragma once

#include <string>
#include <vector>

#include "cli/app.hpp"
#include "plan/result/plan.hpp"
#include "trip/trip.hpp"
#include "words/words.hpp"

namespace holdwater::cli {

problem::Result<trip::Trip> load_trip(const std::string& path);
/// What the program itself says on the terminal, and what every other language is held against.
inline constexpr const char* own_language = "en";
/// Those with a file in layouts/words, in order.
std::vector<std::string> languages();
/// The words of a language, whole: one that lacks a key or a place of English is refused (words-incomplete).
problem::Result<words::Words> load_words(const std::string& language);

/// Exit code for problems that stopped a plan: bad input if an input is wrong in itself, else refused.
Exit exit_for(const problem::Problems& problems);
/// Exit code for problems that stopped a deck: bad input if a file of the user's, such as one of layouts/, is named as
/// their place, else our own fault.
Exit exit_for_deck(const problem::Problems& problems);
/// Done, or check if the reader must look at something.
Exit exit_with(const problem::Problems& remarks);

/// Of several outcomes, the one that most needs looking at.
Exit worse(Exit a, Exit b);

/// NAME of a trip file: its stem.
std::string stem_of(const std::string& path);

}  // namespace holdwater::cli
