// SPDX-License-Identifier: MIT
// Logs that are not what they seem: each fault by its name, line and column.
#include "answer/gauge/boxes.hpp"
#include "answer/gauge/gauge_log.hpp"
#include "answer/gauge/gauge_stretch.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;
using units::celsius;

namespace {

/// What gauge says of a log in steady air of 8 C unless it has a column for it.
struct Outcome {
    bool ok = false;
    problem::Problems problems;
    std::optional<answer::Gauge> made;
};

Outcome outcome(const std::string& text) {
    const auto log = answer::read_gauge_log(text, "box.csv");
    if (!log) {
        return {false, log.problems(), {}};
    }
    answer::GaugeQuestion question;
    question.readings = log->readings;
    question.touches = log->touches;
    question.outside = log->outside.empty() ? steady(8) : log->outside;
    question.water = units::litres(25);
    question.reading_error = units::kelvins(0.5);
    question.floor = celsius(54.4);
    const auto made = answer::gauge(question);
    problem::Problems all = log.problems();
    all.insert(all.end(), made.problems().begin(), made.problems().end());
    return {made.ok(), all, made.ok() ? std::optional(*made) : std::nullopt};
}

/// The fault of this code stands at this line and column of the log.
void check_at(const Outcome& found, problem::Code code, int line, int column) {
    for (const problem::Problem& p : found.problems) {
        if (p.code == code) {
            REQUIRE(p.place.has_value());
            CHECK(p.place->file == "box.csv");
            CHECK(p.place->line == line);
            CHECK(p.place->column == column);
            return;
        }
    }
    FAIL("not reported: " << code);
}

const std::string head = "time_min,bath_c,note\n";

}  // namespace

TEST_CASE("a sound log has nothing to be remarked") {
    const Outcome found = outcome(head + "0,62,filled\n60,60.7,\n120,59.4,\n180,58.2,lid closed\n240,57,\n");
    CHECK(found.ok);
    CHECK(found.problems.empty());
    CHECK(found.made->first_used() == 0);
    CHECK(found.made->last_used() == 4);
}

TEST_CASE("hot water added: a jump, and only the longest stretch counts") {
    const Outcome found =
        outcome(head + "0,62,\n60,60.7,\n120,59.4,\n180,66,\n240,64.6,\n300,63.2,\n360,61.9,\n420,60.5,\n");
    REQUIRE(found.ok);
    check_at(found, "log-jump", 5, 1);
    check_at(found, "stretch-cut", 5, 1);
    CHECK(found.made->first_used() == 3);
    CHECK(found.made->last_used() == 7);
}

TEST_CASE("two readings at one time are a jump as well") {
    const Outcome found = outcome(head + "0,62,\n60,60.7,\n60,64,\n120,62.6,\n240,60,\n");
    REQUIRE(found.ok);
    check_at(found, "log-jump", 4, 1);
    CHECK(found.made->first_used() == 2);
}

TEST_CASE("a sudden fall: an open lid, a leak") {
    const Outcome found = outcome(head + "0,62,\n60,60.7,\n120,59.4,\n180,58.2,\n240,49,\n300,48.1,\n");
    REQUIRE(found.ok);
    check_at(found, "log-fall", 6, 1);
    CHECK(found.made->last_used() == 3);
}

TEST_CASE("notes of a lid: neither the step before nor the one after is trusted") {
    const Outcome found = outcome(head +
                                  "0,62,filled with the lid off\n60,60.7,\n120,59.4,\"lid open, 5 min\"\n"
                                  "180,58,\n240,56.8,\n300,55.6,\n");
    REQUIRE(found.ok);
    check_at(found, "lid-opened", 4, 1);
    CHECK(found.made->first_used() == 3);
    const Outcome between = outcome(head + "0,62,\n60,60.7,\n90,,opened to look\n120,59,\n180,57.8,\n240,56.6,\n");
    REQUIRE(between.ok);
    check_at(between, "lid-opened", 4, 1);
    CHECK(between.made->first_used() == 2);
}

TEST_CASE("words of notes") {
    for (const char* note :
         {"lid open", "LID OFF", "topped up with 2 L", "opened and closed again", "added hot water"}) {
        CHECK(answer::tells_of_touching(note));
    }
    for (const char* note : {"", "lid closed", "lid stays shut", "snowing", "not opened", "filled"}) {
        CHECK_FALSE(answer::tells_of_touching(note));
    }
}

TEST_CASE("a gap is named and bridged") {
    const Outcome found = outcome(head + "0,62,\n15,61.7,\n30,61.3,\n45,61,\n300,55.8,\n315,55.5,\n");
    REQUIRE(found.ok);
    check_at(found, "log-gap", 6, 1);
    CHECK(found.made->last_used() == 5);
}

TEST_CASE("one far-off reading is named, not smoothed") {
    const Outcome found = outcome(head + "0,62,\n60,60.7,\n120,58.1,\n180,58.2,\n240,57,\n300,55.8,\n360,54.7,\n");
    REQUIRE(found.ok);
    check_at(found, "residual-large", 4, 1);
}

TEST_CASE("refused: units mixed up, order, a bath no warmer than the air, no number, one reading, nothing clean") {
    Outcome found = outcome(head + "0,143.6,\n60,141.3,\n120,138.9,\n");
    CHECK_FALSE(found.ok);
    check_at(found, "unit-fahrenheit", 2, 3);
    found = outcome("time_min,bath_f\n0,62\n60,60.7\n120,59.4\n");
    CHECK_FALSE(found.ok);
    check_at(found, "unit-celsius", 2, 1);
    found = outcome(head + "0,62,\n120,59.4,\n60,60.7,\n");
    CHECK_FALSE(found.ok);
    check_at(found, "times-order", 4, 1);
    found = outcome("time_min,bath_c,outside_c\n0,62,8\n600,41,8\n9000,8,8\n");
    CHECK_FALSE(found.ok);
    check_at(found, "bath-not-above-outside", 4, 1);
    found = outcome(head + "0,62,\n60,nan,\n");
    CHECK_FALSE(found.ok);
    check_at(found, "number-unreadable", 3, 4);
    found = outcome(head + "0,62,\n60,inf,\n");
    CHECK_FALSE(found.ok);
    check_at(found, "number-unreadable", 3, 4);
    found = outcome(head + "0,62,\n");
    CHECK_FALSE(found.ok);
    check_at(found, "too-few-readings", 2, 1);
    found = outcome(head + "0,62,\n60,70,\n120,80,\n");
    CHECK_FALSE(found.ok);
    CHECK(support::has_code(found.problems, "no-clean-stretch"));
    check_at(found, "log-jump", 3, 1);
    found = outcome(head + "0,62,\n60,62,\n");
    CHECK_FALSE(found.ok);
    CHECK(support::has_code(found.problems, "bath-not-falling"));
}

TEST_CASE("the log's own air is followed") {
    const Outcome found = outcome("time_min,bath_c,outside_c\n0,62,10\n120,59.5,4\n240,57,0\n");
    REQUIRE(found.ok);
    CHECK(near_abs(found.made->outside.celsius(), 4.5, 1e-9));
}
