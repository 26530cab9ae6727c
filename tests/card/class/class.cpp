// SPDX-License-Identifier: MIT
// The class deck: its numbers are the engine's, rounded to the safe side.
#include "card/class/class_deck.hpp"
#include "card/class/class_frames.hpp"
#include "card/texts.hpp"
#include "plan/result/hold_table.hpp"
#include "support/faces.hpp"
#include "support/few_ways.hpp"
#include "support/finding.hpp"
#include "support/near.hpp"
#include "units/print.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <regex>
#include <variant>

using namespace holdwater;
using namespace holdwater::support;

namespace {

/// "2 h 25", "35 min" in minutes.
double minutes_of(std::string text) {
    text = squeezed(text);
    std::smatch parts;
    if (std::regex_match(text, parts, std::regex(R"((\d+)min)"))) {
        return std::stod(parts[1]);
    }
    REQUIRE(std::regex_match(text, parts, std::regex(R"((\d+)h(\d*))")));
    return 60.0 * std::stod(parts[1]) + (parts[2].length() > 0 ? std::stod(parts[2]) : 0.0);
}

template <class Block>
std::vector<Block> all_of(const card::Card& card) {
    std::vector<Block> found;
    for (const card::Block& block : card.blocks) {
        if (const auto* one = std::get_if<Block>(&block)) {
            found.push_back(*one);
        }
    }
    return found;
}

}  // namespace

TEST_CASE("every tick of a class ruler is the cautious hold of the engine, rounded up to five minutes") {
    const facts::FactsInForce few_ways(facts_of_few_ways());
    for (const facts::Ruleset rules : rulesets()) {
        const auto frame = frame_of(wish(rules));
        const card::Deck deck = card::class_deck(*frame, english(), "TEST-TEST");
        REQUIRE(frame->baths().size() == 3);
        for (std::size_t b = 0; b < 3; ++b) {
            const card::Card& hold = deck.cards[b];
            CHECK(hold.key == "hold");
            CHECK(hold.number == static_cast<int>(b) + 1);
            const auto rulers = all_of<card::Ruler>(hold);
            const auto keys = all_of<card::KeyNumber>(hold);
            REQUIRE(rulers.size() == frame->plan().foods.size());
            REQUIRE(keys.size() == 1);
            CHECK(std::stod(keys.front().value) >= frame->baths()[b].celsius() - 1e-9);
            for (std::size_t r = 0; r < rulers.size(); ++r) {
                const plan::FoodPlan& food = frame->plan().foods[r];
                CHECK(rulers[r].title.starts_with(keys.front().value));  // wherever it comes to stand
                CHECK(has(rulers[r].title, std::string(facts::to_name(food.food->shape))));
                int labels = 0;
                for (const card::Ruler::Tick& tick : rulers[r].ticks) {
                    const auto engine =
                        plan::safe_hold(frame->plan(), food, units::millimetres(tick.at_mm), frame->baths()[b]);
                    REQUIRE(engine.has_value());
                    if (!tick.label.empty()) {
                        ++labels;
                        CHECK(minutes_of(tick.label) >= units::in_minutes(*engine) - 1e-9);
                        CHECK(minutes_of(tick.label) < units::in_minutes(*engine) + 5.0);
                    }
                }
                CHECK(labels >= 2);
                // Where the bar begins, nothing is promised.
                CHECK(rulers[r].too_thick_mm > rulers[r].ticks.back().at_mm);
            }
        }
    }
}

TEST_CASE("a hotter bath never takes longer, and no bath of a class is below its floor") {
    const facts::FactsInForce few_ways(facts_of_few_ways());
    for (const facts::Ruleset rules : rulesets()) {
        for (const char* kind : {"pork-loin", "chicken-breast", "trout-farmed", "beef-eye-of-round"}) {
            CAPTURE(kind);
            const auto frame = frame_of(wish(rules, kind));
            const plan::Plan& plan = frame->plan();
            CHECK(near_abs((plan.levels.read_floor - plan.levels.floor).si(), 1.0, 1e-9));  // K
            CHECK(frame->baths().front() >= plan.levels.action_line);
            CHECK(plan.levels.action_line >= plan.levels.read_floor);
            for (const plan::FoodPlan& food : plan.foods) {
                CHECK_FALSE(food.standard.finish.has_value());
                for (std::size_t b = 1; b < 3; ++b) {
                    const auto cooler = plan::safe_hold(plan, food, units::millimetres(20), frame->baths()[b - 1]);
                    const auto hotter = plan::safe_hold(plan, food, units::millimetres(20), frame->baths()[b]);
                    REQUIRE(cooler.has_value());
                    REQUIRE(hotter.has_value());
                    CHECK(*hotter <= *cooler);
                }
            }
        }
    }
}

namespace {

/// A plain balance of heat, drawn anew: of 100 cooks who pour so many litres at a reading, how many come to the mark.
/// Densities 0.955 and 0.98, the wall of the box counted as `wall` of the water, a lid off for 0.5 to 3 min at 2 kW/m2.
double share_that_reach(double litres, double water, double reads, double mark, double boiling, bool full,
                        double wall) {
    constexpr int cooks = 4000;
    std::mt19937_64 dice(7);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    std::normal_distribution<double> normal(0.0, 1.0 / 1.645);  // 5 and 95 % at the ends
    const double area = std::pow(water * 1.5e-3, 2.0 / 3.0);    // m2
    int there = 0;
    for (int cook = 0; cook < cooks; ++cook) {
        const double hot = litres * (1.0 + 0.05 * normal(dice)) * 0.955;
        const double off = normal(dice);  // K, of the thermometer
        const double cooled = 1.0 + 4.0 * share(dice);
        const double open = 60.0 * (0.5 + 2.5 * share(dice));
        const double before = water * 0.98 * (1.0 + wall);
        const double bath = reads - off - 2000.0 * area * open / (before * 4180.0);
        const double left = (full ? before - hot * 0.98 / 0.955 : before);
        const double mixed = (hot * (boiling - cooled) + left * bath) / (hot + left);
        there += mixed + off >= mark ? 1 : 0;
    }
    return static_cast<double>(there) / cooks;
}

}  // namespace

TEST_CASE(
    "the ladder brings each box to its mark in 95 of 100, is rounded up by no more than a step, ends at the floor") {
    card::ClassWish metric = wish();
    metric.units = units::System::metric;
    const auto frame = frame_of(metric);
    const card::Deck deck = card::class_deck(*frame, english(), "TEST-TEST", {"ladder"});
    REQUIRE(deck.cards.size() == 1);
    CHECK(deck.cards.front().number == 4);
    const auto ladders = all_of<card::Ladder>(deck.cards.front());
    REQUIRE(ladders.size() == 2);
    const double mark = frame->plan().levels.mark.celsius();
    const double boiling = frame->boiling().celsius();
    for (std::size_t l = 0; l < 2; ++l) {
        const bool full = l == 1;
        REQUIRE(ladders[l].rungs.size() == frame->rungs().size());
        CHECK(has(ladders[l].floor_action, "Limits"));
        for (std::size_t r = 0; r < ladders[l].rungs.size(); ++r) {
            const double reads = frame->rungs()[r].celsius();
            CAPTURE(reads);
            CAPTURE(full);
            CHECK(reads >= frame->plan().levels.read_floor.celsius());
            for (std::size_t c = 0; c < card::common_litres().size(); ++c) {
                const double water = units::in_litres(card::common_litres()[c]);
                const double litres = std::stod(ladders[l].rungs[r].amounts[c]);
                CAPTURE(water);
                CAPTURE(litres);
                // The wall of the box counts as 2 to 10 % of its water.
                CHECK(share_that_reach(litres, water, reads, mark, boiling, full, 0.02) >= 0.94);
                CHECK(share_that_reach(litres - 0.5, water, reads, mark, boiling, full, 0.10) < 0.96);
                if (r > 0) {
                    CHECK(litres >= std::stod(ladders[l].rungs[r - 1].amounts[c]));
                }
            }
        }
    }
}

TEST_CASE("parts to mix likely come out at the bath, and water that boils cooler asks for more") {
    card::ClassWish high = wish();
    high.altitude = units::metres(2500);
    const auto low_frame = frame_of(wish());
    const auto high_frame = frame_of(high);
    for (const units::Temperature bath : low_frame->baths()) {
        for (const bool ice : {false, true}) {
            const auto low = card::class_mix(*low_frame, bath, ice);
            const auto up = card::class_mix(*high_frame, bath, ice);
            REQUIRE(low.has_value());
            REQUIRE(up.has_value());
            CHECK(low->low < bath);
            CHECK(low->high > bath);
            CHECK(up->parts > low->parts);
            // By hand: boiling water 3 K cooler, cold water of 10 or about 0 to 2 C, equal densities within 4 %.
            const double cold = ice ? 1.0 : 10.0;
            const double plain = (bath.celsius() - cold) / (97.0 - bath.celsius());
            CHECK(low->parts > plain);
            CHECK(low->parts < plain * 1.25);
        }
    }
}

TEST_CASE("the Limits card of a class has the action table of its rules") {
    const auto limits = [](facts::Ruleset rules) {
        const auto frame = frame_of(wish(rules));
        const card::Deck deck = card::class_deck(*frame, english(), "TEST-TEST", {"limits"});
        return joined(texts_of(deck.cards.front()));
    };
    for (const facts::Ruleset rules : {support::ruleset("us"), support::ruleset("au-nz"), support::ruleset("ca")}) {
        const std::string text = limits(rules);
        CHECK(has(text, "2 h to 4 h"));
        CHECK(has(text, "over 4 h | Throw it away."));
    }
    const std::string uk = limits(support::ruleset("uk"));
    CHECK(has(uk, "once, under 2 h"));
    CHECK(has(uk, "again, or 2 h and more | Throw it away."));
    CHECK_FALSE(has(uk, "to 4 h"));
    CHECK(has(limits(support::ruleset("us")), "Minced, rolled, stuffed, tenderised"));
    // As readings of a thermometer that may be 1 K off: 54.4, 57.2 and 60 C.
    CHECK(has(limits(support::ruleset("us")), "red meat 56 °C, fish 59 °C, poultry 61 °C"));
}
