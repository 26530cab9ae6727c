// SPDX-License-Identifier: MIT
#include "cli/exit.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using cli::Exit;
using cli::exit_for;

TEST_CASE("without an error, a warning asks to check and a note asks for nothing") {
    CHECK(exit_for({}) == Exit::done);
    CHECK(exit_for({problem::note("mend", "")}) == Exit::done);
    CHECK(exit_for({problem::note("mend", ""), problem::warning("thick", "")}) == Exit::check);
    // A plain PDF is the program's own shortcoming, but the work is done.
    CHECK(exit_for({problem::warning("plain-pdf", "")}) == Exit::check);
}

TEST_CASE("an error is bad input, a refusal or our own fault, by its code") {
    CHECK(exit_for({problem::error("bath-overflows", "")}) == Exit::bad_input);
    CHECK(exit_for({problem::error("not-ready-in-time", "")}) == Exit::refused);
    CHECK(exit_for({problem::error("block-too-tall", "")}) == Exit::our_fault);
}

TEST_CASE("of several errors the worst decides: ours, then the input's, then the plan's") {
    const problem::Problem refused = problem::error("target-too-low", "");
    const problem::Problem wrong = problem::error("food-not-covered", "");
    const problem::Problem ours = problem::error("words-incomplete", "");
    CHECK(exit_for({problem::warning("thick", ""), refused}) == Exit::refused);
    CHECK(exit_for({refused, wrong}) == Exit::bad_input);
    CHECK(exit_for({wrong, refused}) == Exit::bad_input);
    CHECK(exit_for({ours, wrong, refused}) == Exit::our_fault);
}
