// SPDX-License-Identifier: MIT
// Runs the built program with what it may use bounded and measured.
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace holdwater::support {

struct Run {
    int exit = -1;  // -1 where a signal ended it
    int signal = 0;
    double cpu_s = 0;  // of the processor: what the clock shows hangs on who else is at work
    long kilobytes = 0;
    std::string out;
    std::string err;
};

/// How it is run besides its words.
struct Surroundings {
    std::filesystem::path folder = {};                    // it is run in
    std::filesystem::path program = {};                   // empty: the one that was built
    std::map<std::string, std::string> environment = {};  // in place of the test's own, all of it
    bool keep_environment = true;
    std::string out_to = {};    // a file for standard output instead of Run::out
    long most_file_bytes = -1;  // of any file that it writes; -1: as it is
};

/// Waits for it, a minute of processor time at most.
Run run(const std::vector<std::string>& words, const Surroundings& surroundings);

/// Each file below a folder, by its path in it, with what it holds; folders end with '/'.
std::map<std::string, std::string> all_below(const std::filesystem::path& folder);

}  // namespace holdwater::support
