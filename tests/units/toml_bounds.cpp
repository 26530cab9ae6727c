// SPDX-License-Identifier: MIT
#include "units/toml_bounds.hpp"

#include "problem/bounds.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using units::beyond_toml_bounds;

namespace {

std::string times(std::string_view part, std::size_t count) {
    std::string text;
    for (std::size_t i = 0; i < count; ++i) {
        text += part;
    }
    return text;
}

/// "name:line:column code", or "within".
std::string said(const std::string& text) {
    const auto beyond = beyond_toml_bounds(text, "x.toml");
    if (!beyond) {
        return "within";
    }
    CHECK(beyond->place.has_value());
    CHECK_FALSE(beyond->hint.empty());
    return beyond->place->file + ":" + std::to_string(beyond->place->line) + ":" +
           std::to_string(beyond->place->column) + " " + std::string(beyond->code.text());
}

}  // namespace

TEST_CASE("keys of many parts and brackets in brackets are refused where they pass the bound") {
    for (const std::size_t many : {bounds::toml_depth, std::size_t{31000}}) {
        CAPTURE(many);
        CHECK(said(times("a.", many) + "a = 1\n") == "x.toml:1:32 toml-too-deep");
        CHECK(said("\n[" + times("a.", many) + "a]\n") == "x.toml:2:33 toml-too-deep");
        CHECK(said("# so\n[[" + times("a.", many) + "a]]\n") == "x.toml:2:34 toml-too-deep");
        CHECK(said("x = { " + times("a.", many) + "a = 1 }\n") == "x.toml:1:38 toml-too-deep");
        CHECK(said("x = { b = 1, " + times("\"a\" . ", many) + "a = 1 }\n") == "x.toml:1:108 toml-too-deep");
        CHECK(said("x = " + times("[", many + 1) + times("]", many + 1) + "\n") == "x.toml:1:21 toml-too-deep");
        CHECK(said("x = [\n" + times("[\n", many) + times("]\n", many) + "]\n") == "x.toml:17:1 toml-too-deep");
        CHECK(said("x = " + times("{a=", many + 1) + "1" + times("}", many + 1) + "\n") == "x.toml:1:53 toml-too-deep");
        CHECK(said("x = \"\"\"\n\"\"\\\"\"\"\"\"\"\ny." + times("a.", many) + "a = 1\n") ==
              "x.toml:3:32 toml-too-deep");
        CHECK(said("\xEF\xBB\xBF\"\xC3\xA9\"." + times("a.", many) + "a = 1") == "x.toml:1:34 toml-too-deep");
    }
}

TEST_CASE("up to the bound all passes, and so does what only looks deep") {
    const std::size_t most = bounds::toml_depth;
    CHECK(said(times("a.", most - 1) + "a = 1\n") == "within");
    CHECK(said("x = " + times("[", most) + times("]", most) + "\n") == "within");
    for (const std::string& deep : {times("a.", 40), times("[", 40), times("{", 40)}) {
        CAPTURE(deep);
        CHECK(said("x = \"" + deep + "\" # " + deep + "\n") == "within");
        CHECK(said("x = '" + deep + "\\'\n# \"" + deep) == "within");
        CHECK(said("x = \"\\\"" + deep + "\"\n") == "within");
        CHECK(said("x = \"\"\"\n\"" + deep + "\n\\\"\"\" " + deep + "\"\"\"\"\"\n") == "within");
        CHECK(said("x = '''" + deep + "\n'" + deep + "''''\n") == "within");
    }
    CHECK(said(times("x = [{ at = \"08:00\", air = 1.5 }, [1.5, 2.5]]\n", 1000)) == "within");
    CHECK(said(times("[a.b.c]\nd.e = 1\n", 1000)) == "within");
    CHECK(said("") == "within");
}

TEST_CASE("a text of megabytes is no file of this program") {
    CHECK(said(std::string(bounds::toml_bytes, '\n')) == "within");
    CHECK(said(std::string(bounds::toml_bytes + 1, '\n')) == "x.toml:2000001:1 toml-too-big");
}
