// SPDX-License-Identifier: MIT
// Whatever the bytes: a trip file or a log gives a value without errors or a bounded list of problems with errors,
// and never anything else. Every prefix is tried, and every byte in turn replaced, dropped and doubled.
#include "problem/bounds.hpp"
#include "support/problems.hpp"
#include "trip/read_log.hpp"
#include "trip/reading.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using namespace holdwater::support;

namespace {

/// True if the outcome is one of the two allowed; no CHECK for each, since there are hundreds of thousands.
template <class T>
bool sound(const problem::Result<T>& result) {
    const bool bounded = result.problems().size() <= bounds::listed_problems + 1;
    bool placed = true;
    for (const problem::Problem& problem : result.problems()) {
        placed = placed && problem.place && problem.place->line >= 0 && !problem.message.empty() &&
                 problem::to_line(problem).find('\n') == std::string::npos;
    }
    return bounded && placed && result.ok() != problem::has_error(result.problems());
}

/// A good value means the same after it was written and read again.
bool keeps_meaning(const problem::Result<trip::Trip>& result) {
    if (!result.ok()) {
        return true;
    }
    const std::string once = trip::canonical(*result);
    const auto again = read_trip_text(once);
    return again.ok() && trip::canonical(*again) == once;
}

// Characters that mean something in TOML, CSV, numbers, units and times, and some that mean nothing anywhere.
constexpr char replacement_bytes[] = "\0\n\r\t \"'[]{}=#.,:;-+/\\09aeTZmC%\x7f\x80\xC3\xFF";
constexpr std::string_view replacements(replacement_bytes, sizeof replacement_bytes - 1);

template <class Read>
void try_all(const std::string& text, Read good) {
    std::size_t tried = 0;
    std::size_t failed = 0;
    const auto attempt = [&](const std::string& changed_text) {
        ++tried;
        if (!good(changed_text)) {
            ++failed;
            if (failed <= 3) {
                MESSAGE(changed_text);
            }
        }
    };
    for (std::size_t i = 0; i <= text.size(); ++i) {
        attempt(text.substr(0, i));
    }
    for (std::size_t i = 0; i < text.size(); ++i) {
        std::string copy = text;
        for (const char c : replacements) {
            copy[i] = c;
            attempt(copy);
        }
        for (int bit = 0; bit < 8; ++bit) {
            copy[i] = static_cast<char>(static_cast<unsigned char>(text[i]) ^ (1U << bit));
            attempt(copy);
        }
        copy = text;
        attempt(copy.erase(i, 1));
        attempt(std::string(text).insert(i, 1, text[i]));
    }
    CHECK(failed == 0);
    CHECK(tried >= text.size() * (replacements.size() + 11));
}

/// Without its remarks, in which nothing can go wrong.
std::string without_remarks(const std::string& text) {
    std::stringstream in(text);
    std::string out;
    for (std::string line; std::getline(in, line);) {
        line = line.substr(0, line.find('#'));
        const auto end = line.find_last_not_of(' ');
        if (end != std::string::npos) {
            out += line.substr(0, end + 1) + "\n";
        }
    }
    return out;
}

}  // namespace

TEST_CASE("no prefix and no changed byte of the trail-crew trip is more than a value or problems") {
    const std::string text = without_remarks(read_text(trip_layouts() / "trail-crew.toml"));
    CHECK(good_trip(text).foods.size() == 1);
    try_all(text, [](const std::string& changed_text) {
        const auto result = read_trip_text(changed_text);
        return sound(result) && keeps_meaning(result);
    });
}

TEST_CASE("no prefix and no changed byte of a log is more than a value or problems") {
    for (const std::string name : {"box.csv", "trip.csv"}) {
        const std::string text = read_text(trip_tests() / "logs" / name);
        try_all(text, [](const std::string& changed_text) { return sound(trip::read_log(changed_text, "l.csv")); });
    }
}

TEST_CASE("depth and size do not fell the reader") {
    CHECK(sound(read_trip_text(std::string(20000, '['))));
    CHECK(sound(read_trip_text("a" + std::string(5000, '=') + "1")));
    std::string dotted = "a";
    for (int i = 0; i < 5000; ++i) {
        dotted += ".a";
    }
    CHECK(sound(read_trip_text(dotted + " = 1")));
    for (int i = 5000; i < 31000; ++i) {
        dotted += ".a";
    }
    // Each of these took the whole stack of the parser once.
    for (const std::string& deep :
         {dotted + " = 1", "[" + dotted + "]", "[[" + dotted + "]]", "a = { " + dotted + " = 1 }",
          "a = [{ " + dotted + " = 1 }]", "a = " + std::string(31000, '[') + std::string(31000, ']')}) {
        CAPTURE(deep.substr(0, 12));
        const auto refused = read_trip_text(small_trip + deep + "\n");
        REQUIRE(refused.problems().size() == 1);
        CHECK(refused.problems().front().code == problem::Code("toml-too-deep"));
        CHECK(refused.problems().front().place->line == std::count(small_trip.begin(), small_trip.end(), '\n') + 1);
    }
    std::string braces = "food = ";
    for (int i = 0; i < 5000; ++i) {
        braces += "{ a = ";
    }
    CHECK(sound(read_trip_text(braces)));
    CHECK(
        sound(read_trip_text("food = [1, {}, [], \"x\", {}]\nbox = [2, {}, {}]\ntrip = 1\nweather = []\nfire = true")));
    CHECK(sound(read_trip_text("[[food]]\nname = \"" + std::string(100000, 'x') + "\"")));
    CHECK(sound(trip::read_log(std::string(100000, ','), "l.csv")));
    CHECK(sound(trip::read_log(std::string(100000, '"'), "l.csv")));
}
