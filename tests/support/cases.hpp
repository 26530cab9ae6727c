// SPDX-License-Identifier: MIT
// Many small cases kept in one text file: each changes a base text, and says where and how it must be refused.
#pragma once

#include <string>
#include <vector>

namespace holdwater::support {

/// A case of a file such as tests/bad-input/trips.txt, whose head says how they are written.
struct Case {
    std::string name;
    std::string text;  // the whole input: base and changes, or a command line
    int line = 0;      // where it must be refused; 0: the file as a whole
    int column = 0;
    std::string says;   // a part of the message
    std::string where;  // "trips.txt:12", for whoever mends it
};

/// Reads all cases of a file below tests/bad-input. A case that cannot be read as it is written fails the test.
std::vector<Case> cases_in(const std::string& file);

/// "boil --altitude '3 m'" as words; quotation marks of both kinds hold words together.
std::vector<std::string> words_of(const std::string& line);

}  // namespace holdwater::support
