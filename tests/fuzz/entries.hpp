// SPDX-License-Identifier: MIT
// Whatever can be handed to the program as text, one function a kind: it reads the text as the program does and holds
// the outcome to what must always be true of it. The fuzzing programs call them, and ctest with all that was ever
// found.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace holdwater::fuzz {

/// A value without errors, or a bounded number of problems with errors, each on one line with its place; a trip that is
/// read means the same when it is written and read again. What is not so ends the program: std::abort, with the reason.
void try_trip(std::string_view text);
void try_log(std::string_view text);
/// Of every quantity: a sound value, or a problem.
void try_unit(std::string_view text);
void try_layout(std::string_view text);
/// No point of a drawing is anywhere but on its sheet.
void try_drawing(std::string_view text);
void try_wording(std::string_view text);
/// The words of a command line, one a line.
void try_line(std::string_view text);

struct Entry {
    std::string_view name;
    void (*run)(std::string_view text);
};

inline constexpr Entry entries[] = {{"trip", try_trip},     {"log", try_log},         {"unit", try_unit},
                                    {"layout", try_layout}, {"drawing", try_drawing}, {"wording", try_wording},
                                    {"line", try_line}};

/// Texts to begin with: the files that the program comes with, those that its tests refuse, and the cases of
/// tests/bad-input.
std::vector<std::string> seeds_of(std::string_view name);

}  // namespace holdwater::fuzz
