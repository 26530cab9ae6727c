// SPDX-License-Identifier: MIT
// The water covers the food and stays in the box, or the program says which of the two fails and what would mend it.
#include "heat/level.hpp"

#include "facts/facts.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using support::near_rel;
using units::litres;
using units::millimetres;

namespace {

constexpr heat::Inside inside{millimetres(500), millimetres(300), millimetres(300)};  // 45 L, 15 dm2

heat::Lying food(double millimetres_high, double footprint_dm2, bool apart) {
    const units::Length height = millimetres(millimetres_high);
    const units::Area area{footprint_dm2 * 1e-2};
    return {height, area, units::Volume{height.si() * area.si()}, apart};
}

std::string code_of(const problem::Problems& faults) {
    return faults.empty() ? "" : std::string(faults.front().code.text());
}

}  // namespace

TEST_CASE("level is volume over bottom, food included") {
    CHECK(near_rel(heat::level_of(inside, litres(15), litres(0)).si(), 0.100, 1e-12));
    CHECK(near_rel(heat::level_of(inside, litres(15), litres(3)).si(), 0.120, 1e-12));
    CHECK(heat::level_needed(inside, {}).si() == 0.0);
}

TEST_CASE("one layer: the highest piece and the water over it; apart, also the water below it") {
    const double above = facts::facts().value("cover.above");
    const double apart = facts::facts().value("cover.apart");
    CHECK(near_rel(heat::level_needed(inside, {food(60, 5, false)}).si() * 1e3, 60 + above, 1e-12));
    CHECK(near_rel(heat::level_needed(inside, {food(60, 5, true)}).si() * 1e3, 60 + apart + above, 1e-12));
    CHECK(near_rel(heat::level_needed(inside, {food(60, 5, false), food(90, 3, false)}).si() * 1e3, 90 + above, 1e-12));
}

TEST_CASE("what does not fit on the bottom lies in layers") {
    const double above = facts::facts().value("cover.above");
    CHECK(near_rel(heat::level_needed(inside, {food(60, 11.9, false)}).si() * 1e3, 60 + above, 1e-12));
    CHECK(near_rel(heat::level_needed(inside, {food(60, 12.1, false)}).si() * 1e3, 120 + above, 1e-12));
}

TEST_CASE("too much water and too little are both named, with litres that work") {
    const auto many = heat::level_faults(inside, litres(44), {food(60, 5, false)});
    REQUIRE(code_of(many) == "bath-overflows");
    CHECK(many.front().hint.find("39 L") != std::string::npos);  // 0.95 of 45 L, less 3 L of food
    const auto few = heat::level_faults(inside, litres(6), {food(60, 5, false)});
    REQUIRE(code_of(few) == "food-not-covered");
    CHECK(few.front().hint.find("8 L") != std::string::npos);  // 70 mm of 15 dm2, less 3 L of food: 7.5 L
    CHECK(heat::level_faults(inside, litres(8), {food(60, 5, false)}).empty());
    CHECK(heat::level_faults(inside, litres(39), {food(60, 5, false)}).empty());
    CHECK(heat::level_faults(inside, litres(45), {}).size() == 1);
}

TEST_CASE("where no fill can cover the food, another box is asked for") {
    const auto faults = heat::level_faults(inside, litres(2), {food(150, 14, false)});  // two layers: 310 mm of 300
    REQUIRE_FALSE(faults.empty());
    CHECK(faults.back().code == problem::Code("food-not-covered"));
    CHECK(faults.back().hint.find("larger bottom") != std::string::npos);
}

TEST_CASE("law: more water never uncovers, more food never needs less") {
    for (double high = 10; high <= 200; high += 10) {
        for (double foot = 1; foot <= 30; foot += 1) {
            CAPTURE(high);
            CAPTURE(foot);
            const auto needed = heat::level_needed(inside, {food(high, foot, true)});
            CHECK(needed >= heat::level_needed(inside, {food(high, foot, false)}));
            CHECK(needed <= heat::level_needed(inside, {food(high + 10, foot, true)}));
            CHECK(needed <= heat::level_needed(inside, {food(high, foot + 1, true)}));
        }
    }
}

TEST_CASE("meat sinks in a hot bath, lard floats") {
    CHECK_FALSE(heat::floats(units::Density{1040}, units::celsius(60)));
    CHECK(heat::floats(units::Density{920}, units::celsius(60)));
    CHECK(heat::floats(units::Density{990}, units::celsius(4)));  // cold water is heavier
    CHECK_FALSE(heat::floats(units::Density{990}, units::celsius(70)));
}
