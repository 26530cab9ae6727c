// SPDX-License-Identifier: MIT
// Formats, sheets, drawings and wordings that must be refused at their place. They come with the program, so that the
// program itself calls a bad one its own fault (tests/cli/program_data.cpp); here they are read as it reads them.
#include "layout/drawing/drawing.hpp"
#include "layout/layout.hpp"
#include "support/cases.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <ctime>

using namespace holdwater;
using support::Case;

namespace {

template <class Read>
void check_refused(const Case& one, Read read) {
    CAPTURE(one.where);
    CAPTURE(one.name);
    const std::clock_t start = std::clock();
    const problem::Problems problems = read(one.text);
    const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    REQUIRE_FALSE(problems.empty());
    const auto said = std::find_if(problems.begin(), problems.end(), [&](const auto& p) {
        return problem::to_line(p).find(one.says) != std::string::npos;
    });
    CAPTURE(problem::to_line(problems.front()).substr(0, 500));
    REQUIRE(said != problems.end());
    REQUIRE(said->place.has_value());
    CHECK(said->place->line == one.line);
    CHECK(said->place->column == one.column);
    CHECK(said->severity == problem::Severity::error);
    CHECK(said->code.whose() == problem::Whose::ours);
    CHECK_FALSE(said->hint.empty());
    CHECK(problem::to_line(*said).size() < 1'000);
#ifndef HOLDWATER_SANITIZED
    CHECK(seconds < 1.0);
#else
    CHECK(seconds < 30.0);
#endif
}

template <class Read>
void check_all(const std::string& file, std::size_t at_least, Read read) {
    const auto cases = support::cases_in(file);
    CHECK(cases.size() >= at_least);
    for (const Case& one : cases) {
        check_refused(one, read);
    }
}

}  // namespace

TEST_CASE("every bad format and sheet is refused at its place") {
    check_all("formats.txt", 25,
              [](const std::string& text) { return layout::read_format(text, "x.toml").problems(); });
    check_all("sheets.txt", 10, [](const std::string& text) { return layout::read_sheet(text, "x.toml").problems(); });
}

TEST_CASE("every bad drawing is refused at its place") {
    check_all("drawings.txt", 40,
              [](const std::string& text) { return layout::read_drawing(text, "x.svg").problems(); });
}

TEST_CASE("every bad wording is refused at its place") {
    check_all("wordings.txt", 15, [](const std::string& text) {
        const auto words = words::Words::read(text, "xx.toml");
        return words ? words->faults_against(words::Words::model(), {}) : words.problems();
    });
}
