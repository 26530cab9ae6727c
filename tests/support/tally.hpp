// SPDX-License-Identifier: MIT
// What a test tried, and what became of it, as a line of the table that tests/hard.sh prints.
#pragma once

#include <cstdlib>
#include <fstream>
#include <string>

namespace holdwater::support {

/// Counts of one part; -1 where the part does not look for it.
struct Tally {
    long tried = 0;
    long crashes = 0;
    long leaks = -1;
    long wrong_exits = 0;
    long slow = -1;
    long harmed = -1;  // files lost, half written or left behind
    long unsafe = -1;  // figures on the unsafe side
};

/// Adds a line to the file that HOLDWATER_TALLY names; without it nothing happens.
inline void record_tally(const std::string& part, const Tally& of) {
    if (const char* const file = std::getenv("HOLDWATER_TALLY")) {
        std::ofstream(file, std::ios::app)
            << part << '|' << of.tried << '|' << of.crashes << '|' << of.leaks << '|' << of.wrong_exits << '|'
            << of.slow << '|' << of.harmed << '|' << of.unsafe << '\n';
    }
}

}  // namespace holdwater::support
