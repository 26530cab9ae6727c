// SPDX-License-Identifier: MIT
// The accuracy table of the README is what this very test run found, line for line.
#include "support/accuracy.hpp"
#include "support/files.hpp"

#include <doctest/doctest.h>

#include <set>
#include <sstream>
#include <string>

TEST_CASE("the README shows what the tests found") {
    std::set<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(holdwater::support::accuracy_folder())) {
        files.insert(entry.path());
    }
    REQUIRE(files.size() >= 9);
    std::string table = "| the engine's | against | worst difference found |\n|---|---|---|\n";
    for (const auto& file : files) {
        table += holdwater::support::file_text(file);
    }
    const std::string readme = holdwater::support::source_text("README.md");
    const bool same = readme.find(table) != std::string::npos;
    INFO("README.md should hold this table:\n" << table);
    CHECK(same);
}
