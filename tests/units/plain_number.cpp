// SPDX-License-Identifier: MIT
// What is taken for a number: no infinite one, no NaN, none that has lost its digits, and nothing behind it.
#include "units/plain_number.hpp"

#include "units/parse.hpp"

#include <doctest/doctest.h>

#include <limits>
#include <string>

using namespace holdwater::units;

TEST_CASE("a plain number is sound and stands alone") {
    CHECK(plain_number("0") == 0.0);
    CHECK(plain_number("-0") == 0.0);
    CHECK(plain_number("62.5") == 62.5);
    CHECK(plain_number("1e3") == 1000.0);
    CHECK(plain_number("2.3e-308") == 2.3e-308);
    for (const char* text :
         {"",         " ",      "nan",    "NaN",      "-nan", "inf", "-inf", "infinity", "1e999", "-1e999", "1e-999",
          "2.2e-308", "1e-310", "5e-324", "4.9e-324", "1.0 ", " 1",  "1,5",  "+1",       "0x10",  "1e",     "1f"}) {
        CAPTURE(std::string(text));
        CHECK_FALSE(plain_number(text).has_value());
    }
    CHECK(is_sound(0.0));
    CHECK(is_sound(std::numeric_limits<double>::min()));
    CHECK(is_sound(std::numeric_limits<double>::max()));
    CHECK_FALSE(is_sound(std::numeric_limits<double>::denorm_min()));
    CHECK_FALSE(is_sound(-std::numeric_limits<double>::min() / 2));
    CHECK_FALSE(is_sound(std::numeric_limits<double>::infinity()));
    CHECK_FALSE(is_sound(std::numeric_limits<double>::quiet_NaN()));
}

TEST_CASE("no quantity gets out of bounds by its exponent, its division or its unit") {
    for (const char* text :
         {"nan m", "inf m", "-inf m", "infinity m", "1e999 m", "1e-310 m", "1e-999 m", "1e300/1e-300 m", "1/0 m",
          "1e-300/1e300 m", "1e-300/1e10 m", "3 1e300/1e-300 m", "1e-307 mm"}) {
        CAPTURE(std::string(text));
        const auto length = parse<Length>(text);
        REQUIRE_FALSE(length.ok());
        CHECK(length.problems().front().code == holdwater::problem::Code("number-unreadable"));
        CHECK_FALSE(length.problems().front().hint.empty());
    }
    CHECK_FALSE(parse<Duration>("1e306 h").ok());
    CHECK_FALSE(parse<Temperature>("-1e-309 C").ok());
    CHECK_FALSE(parse<TemperatureDifference>("1e-309 C").ok());
    CHECK_FALSE(parse<Fraction>("2e-307 %").ok());
    CHECK(parse<Length>("1/2 in").ok());
    CHECK(parse<Temperature>("0 C").ok());
}
