// SPDX-License-Identifier: MIT
// How much of anything is read before it is refused: of files, of texts in them, and of the command line. What goes
// past is refused with its bound, before a library sees it. How many foods, boxes or hours a trip may have, and how
// long it may last, is a question of what can be meant and stands in trip/ranges.hpp. All of it is our own judgement.
#pragma once

#include <cstddef>

namespace holdwater::bounds {

// Files, in bytes.
inline constexpr std::size_t file_bytes = 5'000'000;  // any file; the longest log
inline constexpr std::size_t trip_bytes = 500'000;    // a bigger trip file is some other file
inline constexpr std::size_t toml_bytes = 2'000'000;  // facts, formats, wordings: the longest has a tenth of that
inline constexpr std::size_t drawing_bytes = 64'000;  // no drawing of ours has a tenth of it

// What is in what.
inline constexpr std::size_t toml_depth = 16;     // parts of a key, brackets open at once; no file needs more than four
inline constexpr std::size_t drawing_depth = 12;  // elements open at once: groups in groups
inline constexpr std::size_t log_rows = 20'000;   // two weeks, a reading a minute
inline constexpr std::size_t log_columns = 16;    // there are ten names of columns

// Texts, in letters.
inline constexpr int name_letters = 60;                // more do not fit a card
inline constexpr int file_name_letters = 200;          // of a file that a trip file names
inline constexpr std::size_t note_letters = 2'000;     // of a row of a log
inline constexpr std::size_t wording_letters = 2'000;  // of a text on cards; the longest has a quarter of that
inline constexpr std::size_t quoted_letters = 40;      // of a user's text in a message

// The command line: its words, and the bytes of one, which may be the path of a file.
inline constexpr std::size_t line_words = 5'000;
inline constexpr std::size_t word_bytes = 4'096;

// Messages.
inline constexpr std::size_t listed_problems = 100;  // more are counted, not listed
inline constexpr std::size_t kept_problems = 2'000;  // of one file, to be put in order; more are only counted

}  // namespace holdwater::bounds
