// SPDX-License-Identifier: MIT
#include "support/near.hpp"
#include "support/problems.hpp"
#include "trip/read_log.hpp"
#include "trip/reading.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;

namespace {

trip::Log good_log(std::string_view text) {
    auto result = trip::read_log(text, "l.csv");
    REQUIRE_MESSAGE(result.ok(), lines(result.problems()));
    CHECK(lines(result.problems()).empty());
    return std::move(result).value();
}

}  // namespace

TEST_CASE("minutes since the start") {
    const trip::Log log = good_log("time_min,bath_c\n5,64\n15.5,63.5\n");
    CHECK(std::holds_alternative<std::monostate>(log.zero));
    REQUIRE(log.rows.size() == 2);
    CHECK(log.rows[0].at == units::minutes(5));  // not moved to zero: what was before it is not known
    CHECK(log.rows[1].at == units::seconds(930));
    CHECK(log.rows[1].bath == units::celsius(63.5));
    CHECK(!log.rows[1].outside);
    CHECK(!log.mean_outside());
    CHECK(log.rows[1].place.line == 3);
}

TEST_CASE("clock times cross midnight, also twice") {
    const trip::Log log = good_log("time_hhmm,bath_c\n22:30,64\n00:10,62\n7:00,58\n18:00,50\n05:30,45\n");
    CHECK(std::get<units::ClockTime>(log.zero).second_of_day == 81000);
    REQUIRE(log.rows.size() == 5);
    CHECK(log.rows[1].at == units::minutes(100));
    CHECK(log.rows[2].at == units::minutes(510));
    CHECK(log.rows[3].at == units::minutes(1170));
    CHECK(log.rows[4].at == units::minutes(1860));
}

TEST_CASE("date-times") {
    const trip::Log log = good_log("time,bath_c\n2027-10-15T23:50,64\n2027-10-16 00:20:30,63\n");
    CHECK(std::get<units::LocalTime>(log.zero).iso() == "2027-10-15T23:50:00");
    CHECK(log.rows.at(1).at == units::seconds(1830));
}

TEST_CASE("Fahrenheit and Celsius give the same log") {
    const trip::Log f = good_log("bath_f,time_min,outside_f,core_f\n149,0,50,39.2\n147.2,10,,41\n");
    const trip::Log c = good_log("time_min,bath_c,core_c,outside_c\n0,65,4,10\n10,64,5,\n");
    REQUIRE(f.rows.size() == c.rows.size());
    for (std::size_t i = 0; i < f.rows.size(); ++i) {
        CHECK(near_abs(f.rows[i].bath->celsius(), c.rows[i].bath->celsius(), 1e-9));
        CHECK(near_abs(f.rows[i].core->celsius(), c.rows[i].core->celsius(), 1e-9));
    }
    CHECK(!f.rows[1].outside);
    CHECK(near_abs(f.mean_outside()->celsius(), 10, 1e-9));
}

TEST_CASE("a top-up is two rows at one moment, in their order") {
    const trip::Log log = good_log("time_hhmm,bath_c,note\n09:00,58,before\n09:00,63,\"after, 4 \"\"big\"\" cups\"\n");
    REQUIRE(log.rows.size() == 2);
    CHECK(log.rows[0].at == log.rows[1].at);
    CHECK(log.rows[1].note == "after, 4 \"big\" cups");
}

TEST_CASE("remarks, empty lines, blanks, line ends and a byte-order mark are no matter") {
    const trip::Log plain = good_log("time_min,bath_c,note\n0,64,\n10,63,x y\n");
    const trip::Log dressed =
        good_log("\xEF\xBB\xBF# my box\r\n\r\n time_min , bath_c,note\r\n 0,\t64 ,\r\n\r\n# later\r\n10 , 63, \"x y\"");
    REQUIRE(plain.rows.size() == dressed.rows.size());
    CHECK(dressed.rows[1].note == "x y");
    CHECK(dressed.rows[1].bath == plain.rows[1].bath);
    CHECK(dressed.rows[1].place.line == 7);
}

TEST_CASE("a row without a reading keeps its note and makes no reading up") {
    const trip::Log log = good_log("time_min,bath_c,note\n0,64,\n10,,stirred\n20,62,\n");
    REQUIRE(log.rows.size() == 3);
    CHECK(!log.rows[1].bath);
    CHECK(log.rows[1].note == "stirred");
}

TEST_CASE("gaps are named and kept, and rows without a reading do not fill them") {
    const auto result = trip::read_log("time_min,bath_c\n0,64\n10,64\n20,63\n60,\n100,60\n110,60\n120,59\n", "l.csv");
    REQUIRE(result.ok());
    REQUIRE(result->gaps.size() == 1);
    CHECK(result->gaps[0].from == units::minutes(20));
    CHECK(result->gaps[0].to == units::minutes(100));
    CHECK(result->gaps[0].place.line == 6);
    REQUIRE(result.problems().size() == 1);
    CHECK(result.problems()[0].severity == problem::Severity::warning);
    CHECK(result.problems()[0].code == problem::Code("log-gap"));
}

TEST_CASE("an even log has no gaps, however wide its steps") {
    CHECK(good_log("time_min,bath_c\n0,64\n120,61\n240,58\n").gaps.empty());
    CHECK(good_log("time_min,bath_c\n0,64\n1,64\n2,64\n30,60\n").gaps.empty());
}

TEST_CASE("a log of hundreds of thousands of bytes or rows is some other file") {
    std::string rows = "time_min,bath_c\n";
    for (int i = 0; i < 20001; ++i) {
        rows += "1,60\n";
    }
    CHECK(!trip::read_log(rows, "l.csv").ok());
    CHECK(trip::read_log(std::string(5000001, 'x'), "l.csv").problems().front().code == problem::Code("file-too-big"));
}
