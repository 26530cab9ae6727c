// SPDX-License-Identifier: MIT
// Runs the built program as a person would and keeps what it said.
#pragma once

#include "support/trips.hpp"

#include <cstdlib>
#include <filesystem>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

namespace holdwater::support {

struct Said {
    int exit = -1;
    std::string out;
    std::string err;
};

/// A folder of this test's own, emptied.
inline std::filesystem::path fresh_folder(const std::string& name) {
    const auto folder = std::filesystem::path(HOLDWATER_BINARY_DIR) / "test-out" / name;
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    return folder;
}

/// A folder for all test cases of one file, each of which runs as a process of its own, at the same time as others.
inline std::filesystem::path own_folder(const std::string& name) {
    return fresh_folder(name + "-" + std::to_string(getpid()));
}

inline Said holdwater_says(const std::string& arguments, const std::filesystem::path& folder) {
    const std::string out = (folder / "stdout.txt").string();
    const std::string err = (folder / "stderr.txt").string();
    const std::string program = std::string(HOLDWATER_BINARY_DIR) + "/holdwater";
    const int status = std::system(("'" + program + "' " + arguments + " >'" + out + "' 2>'" + err + "'").c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, file_text(out), file_text(err)};
}

/// Done, with remarks or without.
inline bool good(int exit) {
    return exit == 0 || exit == 3;
}

inline std::string demo_path(const std::string& name) {
    return "'" + std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/" + name + ".toml'";
}

}  // namespace holdwater::support
