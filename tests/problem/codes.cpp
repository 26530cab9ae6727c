// SPDX-License-Identifier: MIT
#include "problem/codes.hpp"

#include "problem/problem.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
#include <string>

using namespace holdwater;

namespace {

/// All of src/ but the table itself.
std::string all_sources() {
    std::ostringstream text;
    const std::filesystem::path root = std::filesystem::path(HOLDWATER_SOURCE_DIR) / "src";
    for (const auto& entry : std::filesystem::recursive_directory_iterator(root)) {
        const auto extension = entry.path().extension();
        if ((extension == ".cpp" || extension == ".hpp") && entry.path().filename() != "codes.hpp") {
            text << std::ifstream(entry.path(), std::ios::binary).rdbuf();
        }
    }
    return text.str();
}

}  // namespace

TEST_CASE("each code stands in the table once, in order within its part") {
    std::set<std::string_view> seen;
    const problem::Row* before = nullptr;
    for (const problem::Row& row : problem::code_table) {
        CAPTURE(row.text);
        CHECK(seen.insert(row.text).second);
        if (before != nullptr && before->whose == row.whose) {
            CHECK(before->text < row.text);
        }
        before = &row;
    }
    CHECK(seen.size() > 200);
}

TEST_CASE("each code of the table is used") {
    const std::string sources = all_sources();
    REQUIRE(sources.size() > 100'000);
    for (const problem::Row& row : problem::code_table) {
        CAPTURE(row.text);
        CHECK(sources.find("\"" + std::string(row.text) + "\"") != std::string::npos);
    }
}

TEST_CASE("a code is found by its text, and by no other") {
    for (const problem::Row& row : problem::code_table) {
        const auto code = problem::Code::named(row.text);
        REQUIRE(code.has_value());
        CHECK(code->text() == row.text);
        CHECK(code->whose() == row.whose);
    }
    CHECK(problem::Code::named("unit-missing") == problem::Code("unit-missing"));
    CHECK_FALSE(problem::Code::named("unit-mising").has_value());
    CHECK_FALSE(problem::Code::named("").has_value());
}

TEST_CASE("a code says whose the problem is") {
    CHECK(problem::Code("unit-missing").whose() == problem::Whose::input);
    CHECK(problem::Code("target-too-low").whose() == problem::Whose::plan);
    CHECK(problem::Code("pdf-failed").whose() == problem::Whose::ours);
}
