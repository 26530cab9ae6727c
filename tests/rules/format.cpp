// SPDX-License-Identifier: MIT
// The sources are as clang-format has them by .clang-format: those that rules/formatted.txt lists, folders or files.
#include "support/files.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <sstream>
#include <string>

namespace {

namespace fs = std::filesystem;

/// What a command of the shell says on both outputs.
std::string said_by(const std::string& command) {
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen((command + " 2>&1").c_str(), "r"), pclose);
    REQUIRE(pipe);
    std::string text;
    std::array<char, 4096> part{};
    while (const std::size_t n = fread(part.data(), 1, part.size(), pipe.get())) {
        text.append(part.data(), n);
    }
    return text;
}

bool is_source(const fs::path& path) {
    return path.extension() == ".cpp" || path.extension() == ".hpp";
}

/// The sources of a folder and below, or the one file, in quotes one after the other.
std::string sources_in(const fs::path& where) {
    std::string files;
    const auto add = [&](const fs::path& path) { files += " '" + path.string() + "'"; };
    if (fs::is_regular_file(where)) {
        add(where);
    } else {
        for (const auto& entry : fs::recursive_directory_iterator(where)) {
            if (is_source(entry.path())) {
                add(entry.path());
            }
        }
    }
    return files;
}

}  // namespace

TEST_CASE("what is listed as formatted is formatted") {
    // Other versions break lines elsewhere.
    REQUIRE(said_by("clang-format --version").find("version 14.") != std::string::npos);
    std::istringstream list(holdwater::support::source_text("tests/rules/formatted.txt"));
    int listed = 0;
    for (std::string line; std::getline(list, line);) {
        if (line.empty() || line.front() == '#') {
            continue;
        }
        ++listed;
        CAPTURE(line);
        const std::string files = sources_in(fs::path(HOLDWATER_SOURCE_DIR) / line);
        REQUIRE_FALSE(files.empty());
        CHECK(said_by("clang-format --dry-run --Werror" + files) == "");
    }
    REQUIRE(listed > 0);
}

TEST_CASE("a file that is not formatted is found") {
    CHECK(said_by("printf 'int  x;\\n' | clang-format --dry-run --Werror --assume-filename=x.cpp").find("error") !=
          std::string::npos);
}
