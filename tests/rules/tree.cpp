// SPDX-License-Identifier: MIT
#include "support/files.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <set>
#include <sstream>
#include <string>

using holdwater::support::file_text;

namespace {

std::string output_of(const std::string& command) {
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    REQUIRE(pipe);
    std::string text;
    std::array<char, 4096> part{};
    while (const std::size_t n = fread(part.data(), 1, part.size(), pipe.get())) {
        text.append(part.data(), n);
    }
    return text;
}

const std::filesystem::path root = HOLDWATER_SOURCE_DIR;

}  // namespace

TEST_CASE("the top level is exactly as the design says, dot-files besides") {
    const std::set<std::string> allowed = {"README.md", "DEVELOPERS.md", "CMakeLists.txt", "src",
                                           "layouts",   "tests",         "fonts",          "out"};
    std::istringstream files(output_of("git -C '" + root.string() + "' ls-files"));
    std::set<std::string> top;
    for (std::string file; std::getline(files, file);) {
        const std::string first = file.substr(0, file.find('/'));
        if (!first.starts_with('.')) {
            top.insert(first);
        }
    }
    CHECK(top == allowed);
}

TEST_CASE("every source file carries its licence line and stays short") {
    for (const char* folder : {"src", "tests"}) {
        for (const auto& entry : std::filesystem::recursive_directory_iterator(root / folder)) {
            const auto extension = entry.path().extension();
            if (extension != ".cpp" && extension != ".hpp" && entry.path().filename() != "CMakeLists.txt") {
                continue;
            }
            const std::string text = file_text(entry.path());
            CAPTURE(entry.path().string());
            CHECK(text.substr(0, 80).find("SPDX-License-Identifier: MIT") != std::string::npos);
            if (std::string(folder) == "src") {
                CHECK(std::count(text.begin(), text.end(), '\n') <= 400);
            }
        }
    }
}

TEST_CASE("README begins with the job and gives the two commands") {
    const std::string readme = file_text(root / "README.md");
    CHECK(readme.find("bash src/demo.sh") != std::string::npos);
    CHECK(readme.find("bash tests/run.sh") != std::string::npos);
    CHECK(readme.find("out/demo-deck.png") != std::string::npos);
    CHECK(std::filesystem::exists(root / "out" / "demo-deck.png"));
}
