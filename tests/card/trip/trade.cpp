// SPDX-License-Identifier: MIT
// What the cards say of steaks, of food that is kept hot, of sittings and of hot water.
#include "card/texts.hpp"
#include "support/finding.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace holdwater;
using namespace holdwater::support;

namespace {

std::string text_of(const Dealt& dealt, const char* key) {
    return joined(texts_of(dealt.card(key)));
}

}  // namespace

TEST_CASE("the Plan card of a steak says its conditions and both faces, and nothing of a kill") {
    Dealt dealt("tests/card/trips/steaks-in-sittings.toml");
    dealt.deal(units::System::both, "en");
    const std::string plan = text_of(dealt, "plan");
    INFO(plan);
    CHECK(has(plan, "whole-muscle intact beef by its label"));
    CHECK(has(text_of(dealt, "one"), "under 5, 65 or over, pregnant, weak immune system"));
    CHECK(has(plan, "63 °C (145 °F) at the surface"));
    CHECK(has(plan, "every outer face browned"));
    CHECK(has(plan, "Meets the US steak rule"));
    dealt.deal(units::System::metric, "es");
    CHECK(has(text_of(dealt, "plan"), "ambas caras doradas"));
    // No ruler or table goes on for what is no steak any more.
    const plan::FoodPlan& food = dealt.plan.foods.front();
    REQUIRE(food.thickest);
    CHECK(*food.thickest <= units::millimetres(40));
}

TEST_CASE("sittings and hot water stand on Plan at their times, and in the water of Kitchen") {
    Dealt dealt("tests/card/trips/steaks-in-sittings.toml");
    dealt.deal(units::System::metric, "en");
    const std::string plan = text_of(dealt, "plan");
    INFO(plan);
    CHECK(has(plan, "First pieces out for 14:00"));
    CHECK(has(plan, "2.5 L for coffee, 14:00"));  // 8 people, 0.3 L each, up to half a litre
    CHECK(has(plan, "6.0 L for washing-up, 16:00"));
    const std::string packing = text_of(dealt, "packing");
    INFO(packing);
    CHECK(has(packing, "for drinks and"));
    CHECK_FALSE(has(packing, ": extra"));
}

TEST_CASE("food that is kept hot has its start and floor, and neither hold time nor ruler") {
    for (const char* path : {"tests/card/trips/stew-kept-hot.toml", "tests/card/trips/rice-kept-hot.toml"}) {
        Dealt dealt(path);
        dealt.deal(units::System::metric, "en");
        const bool alone = dealt.trip.foods.size() == 1;
        const std::string plan = text_of(dealt, "plan");
        INFO(path, "\n", plan);
        CHECK(has(text_of(dealt, "one"), "at 80 °C or more"));
        CHECK(has(text_of(dealt, "one"), alone ? "Never below 63 °C" : "Never below 57.2 °C"));
        CHECK_FALSE(has(plan, (alone ? "stew in bags ready" : "rice ready")));
        // Alone it has no Hold card at all.
        CHECK(std::none_of(dealt.deck.cards.begin(), dealt.deck.cards.end(),
                           [](const card::Card& card) { return card.key == "hold"; }) == alone);
        if (!alone) {
            CHECK(has(text_of(dealt, "hold"), "it only stays hot"));
            CHECK(has(text_of(dealt, "hold"), "Hours from food in"));
        }
    }
}

TEST_CASE("leftovers of cooked rice keep a day, whatever else is in the box") {
    const Dealt rice("tests/card/trips/rice-kept-hot.toml");
    const Dealt chicken("layouts/trips/paddling-day.toml");
    CHECK(rice.plan.around.leftovers.keep == units::hours(24));
    CHECK(chicken.plan.around.leftovers.keep == units::hours(72));
}
