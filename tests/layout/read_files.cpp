// SPDX-License-Identifier: MIT
// Formats and sheets from their files, and what is said of faults in them.
#include "layout/layout.hpp"
#include "support/faces.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::layout;

namespace {

const std::string good_format =
    "name = \"hand\"\nwidth_mm = 92\nheight_mm = 124\nmargin_mm = 4\ndistance_mm = 450\nbody_pt = 10\nfigure_pt = 11\n"
    "key_pt = 28\nkey_max_pt = 44\nquestion_pt = 14\nheading_pt = 12\nsmall_pt = 7.5\n";

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

std::string line_of(const problem::Problems& problems, std::size_t which = 0) {
    REQUIRE(problems.size() > which);
    return problem::to_line(problems[which]);
}

}  // namespace

TEST_CASE("the shipped formats have the sizes of the design") {
    const Format hand = support::format("hand");
    CHECK(hand.name == "hand");
    CHECK(hand.width == 92.0_mm);
    CHECK(hand.height == 124.0_mm);
    CHECK(hand.key_pt >= 28.0_pt);
    CHECK(hand.mark.empty());
    const Format pocket = support::format("pocket");
    CHECK(pocket.height == 81.0_mm);
    CHECK(pocket.mark == "daylight");
    CHECK(pocket.compact);
    CHECK_FALSE(hand.compact);
    CHECK(support::format("wallet").width == 85.6_mm);
    CHECK(support::format("wallet").height == 53.98_mm);
    CHECK(support::format("large").width == 190.0_mm);
    CHECK(support::sheet("a4").height == 297.0_mm);
    CHECK(support::sheet("letter").width == 215.9_mm);
}

TEST_CASE("faults name file, line and column and what would be right") {
    CHECK(read_format(good_format, "x.toml").ok());
    CHECK(line_of(read_format(replaced(good_format, "body_pt = 10", "body_pt = \"ten\""), "x.toml").problems()) ==
          "x.toml:6:11: error: body_pt must be a number (its unit is in the name of the key)");
    CHECK(line_of(read_format(replaced(good_format, "margin_mm = 4", "margin_mm = 40"), "x.toml").problems()) ==
          "x.toml:4:13: error: margin_mm = 40 is out of range (1 to 20)");
    CHECK(line_of(read_format(replaced(good_format, "\"hand\"", "7"), "x.toml").problems()) ==
          "x.toml:1:8: error: name must be a text (name = \"...\")");
    CHECK(line_of(read_format(good_format + "compact = 1\n", "x.toml").problems()) ==
          "x.toml:13:11: error: compact must be true or false (compact = true)");
    CHECK(line_of(read_format(good_format + "boddy_pt = 3\n", "x.toml").problems()) ==
          "x.toml:13:1: error: there is no key boddy_pt (did you mean body_pt?)");
    CHECK(line_of(read_format(replaced(good_format, "key_max_pt = 44", "key_max_pt = 20"), "x.toml").problems())
              .find("key_max_pt is below key_pt") != std::string::npos);
    CHECK(line_of(read_format("name = \n", "x.toml").problems()).rfind("x.toml:1:", 0) == 0);
    CHECK(line_of(read_sheet("name = \"a4\"\nwidth_mm = 210\nheight_mm = nan\n", "s.toml").problems())
              .rfind("s.toml:3:13: error", 0) == 0);
}

TEST_CASE("all faults of a file are reported at once") {
    const auto problems =
        read_sheet("name = 3\nwidth_mm = -1\nmargin_sides_mm = 5\nmargin_top_mm = 5\nmargin_bottom_mm = 8\nfoo = 1\n",
                   "s.toml")
            .problems();
    CHECK(support::has_code(problems, "layout-text-expected"));
    CHECK(support::has_code(problems, "layout-out-of-range"));
    CHECK(support::has_code(problems, "layout-key-unknown"));
    CHECK(support::has_code(problems, "layout-key-missing"));
    CHECK(problems.size() == 4);
}

TEST_CASE("a key of many thousand parts is refused with its place") {
    std::string deep = "a";
    for (int i = 0; i < 31000; ++i) {
        deep += ".a";
    }
    CHECK(
        line_of(read_format(good_format + deep + " = 1\n", "x.toml").problems()).starts_with("x.toml:13:32: error: "));
    CHECK(line_of(read_sheet("[[" + deep + "]]\n", "s.toml").problems()).starts_with("s.toml:1:34: error: "));
}
