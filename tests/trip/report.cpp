// SPDX-License-Identifier: MIT
#include "trip/report.hpp"

#include "trip/moment.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

TEST_CASE("problems come in the order of the file, each once") {
    trip::Report report("a.toml");
    report.warning(report.place(9, 1), "text-empty", "late");
    report.error(report.place(2, 5), "type-wrong", "second", "hint");
    report.error(report.place(2, 1), "key-missing", "first");
    report.error(report.place(2, 5), "type-wrong", "second", "hint");
    CHECK(report.failed());
    const auto problems = std::move(report).take();
    REQUIRE(problems.size() == 3);
    CHECK(problem::to_line(problems[0]) == "a.toml:2:1: error: first");
    CHECK(problem::to_line(problems[1]) == "a.toml:2:5: error: second (hint)");
    CHECK(problem::to_line(problems[2]) == "a.toml:9:1: warning: late");
}

TEST_CASE("warnings alone are no failure") {
    trip::Report report("a.toml");
    report.warning(report.place(1, 1), "word-unknown", "odd");
    CHECK(!report.failed());
}

TEST_CASE("a message is one line, whatever a user wrote") {
    CHECK(trip::quoted("two\nlines\x1b[2J") == "two?lines?[2J");
    CHECK(trip::quoted("ααααα", 3) == "ααα...");
    CHECK(trip::quoted("ααα", 3) == "ααα");
    trip::Report report("a.toml");
    report.error(report.place(1, 1), "word-unknown", "line\r\nbreak");
    CHECK(std::move(report).take().front().message == "line??break");
}

TEST_CASE("letters are counted, not bytes, and what no card can print is found") {
    CHECK(trip::letters_in("Fjäll") == 5);
    CHECK(!trip::has_unprintable("Fjällhütte 2 – “Ostern”"));
    for (const char* const bad : {"a\nb", "a\tb", "a\x7f", "a\xC2\x85",
                                  "a\xE2\x80\xAE"
                                  "b",
                                  "\xEF\xBB\xBF"
                                  "a",
                                  "a\xE2\x80\x8B", "a\xE2\x80\xA8", "a\xE2\x81\xA6"}) {
        CHECK(trip::has_unprintable(bad));
    }
}

TEST_CASE("moments in quotes or logs") {
    REQUIRE(trip::parse_moment("2027-10-15T16:00").has_value());
    CHECK(trip::parse_moment("2027-10-15T16:00")->iso() == "2027-10-15T16:00:00");
    CHECK(trip::parse_moment("2028-02-29 23:59:59")->iso() == "2028-02-29T23:59:59");
    for (const char* const bad :
         {"", "2027-10-15", "2027-10-15T24:00", "2027-02-29T10:00", "2027-13-01T10:00", "2027-00-10T10:00",
          "2027-10-00T10:00", "2027-10-15T10:60", "2027-10-15T10:00:60", "2027-10-15T10:00Z", "2027-10-15x10:00",
          "20271-10-15T10:0", "1027-10-15T10:00", "2027-1 -15T10:00", "2027-10-15T-1:00", "2027-10-15T10:00:00.5"}) {
        CAPTURE(bad);
        CHECK(!trip::parse_moment(bad));
    }
}

TEST_CASE("well-formed UTF-8 is known from other bytes") {
    for (const char* const good : {"", "a", "ä", "–", "\xF0\x9F\x8D\xB2", "\xED\x9F\xBF", "\xF4\x8F\xBF\xBF"}) {
        CHECK(!trip::first_not_utf8(good));
    }
    // Lone continuation, Latin-1, cut short, overlong (2, 3, 4 bytes), surrogate, beyond U+10FFFF, never used.
    for (const char* const bad : {"ab\x80", "ab\xE4 c", "ab\xC3", "ab\xE2\x80", "ab\xC0\xAF", "ab\xE0\x9F\xBF",
                                  "ab\xF0\x8F\xBF\xBF", "ab\xED\xA0\x80", "ab\xF4\x90\x80\x80", "ab\xFF"}) {
        CHECK(trip::first_not_utf8(bad) == 2U);
    }
}

TEST_CASE("white space of every sort is taken off both ends, and only there") {
    CHECK(trip::without_space_around(" \t\u00A0leg of lamb\u2003\u202F ") == "leg of lamb");
    CHECK(trip::without_space_around("a\u00A0b") == "a\u00A0b");
    CHECK(trip::without_space_around("\u00A0\u1680\u2000\u200A\u205F\u3000").empty());
    CHECK(trip::without_space_around("").empty());
}
