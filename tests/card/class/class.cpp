// SPDX-License-Identifier: MIT
// The class deck: its numbers are the engine's, rounded to the safe side.
#include "card/class/class_deck.hpp"
#include "card/class/class_frames.hpp"
#include "card/figures/class_figures.hpp"
#include "card/texts.hpp"
#include "plan/result/hold_table.hpp"
#include "support/faces.hpp"
#include "support/few_ways.hpp"
#include "support/finding.hpp"
#include "support/near.hpp"
#include "support/printed.hpp"
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

TEST_CASE("every time on a class Hold card is the cautious hold of the engine, rounded up to five minutes") {
    const facts::FactsInForce few_ways(facts_of_few_ways());
    for (const facts::Ruleset rules : rulesets()) {
        card::ClassWish metric = wish(rules);
        metric.units = units::System::metric;
        const auto frame = frame_of(metric);
        const card::Deck deck = card::class_deck(*frame, english(), "TEST-TEST");
        REQUIRE(frame->baths().size() == 3);
        for (std::size_t f = 0; f < frame->plan().foods.size(); ++f) {
            const plan::FoodPlan& food = frame->plan().foods[f];
            const card::Card& hold = deck.cards[f];
            CHECK(hold.key == "hold");
            CHECK(hold.number == static_cast<int>(f) + 1);
            const auto check = [&](const std::string& text, double mm, std::size_t bath) {
                CAPTURE(mm);
                CAPTURE(bath);
                const auto engine = plan::safe_hold(frame->plan(), food, units::millimetres(mm), frame->baths()[bath]);
                REQUIRE(engine.has_value());
                CHECK(minutes_of(text) >= units::in_minutes(*engine) - 1e-9);
                CHECK(minutes_of(text) < units::in_minutes(*engine) + 5.0);
            };
            const auto stairs = all_of<card::Staircase>(hold);
            REQUIRE(stairs.size() == 1);
            const card::Table& table = stairs.front().table;
            CHECK(table.rows.size() >= 4);
            CHECK(table.rows.size() <= 6);
            REQUIRE(stairs.front().bars.size() == table.rows.size());
            int times = 0;
            for (std::size_t r = 0; r < table.rows.size(); ++r) {
                const auto& row = table.rows[r];
                REQUIRE(row.size() == 4);
                CHECK(std::stod(row[0]) == stairs.front().bars[r]);  // a bar as long as its row says
                for (std::size_t bath = 0; bath < 3; ++bath) {
                    const double mm = std::stod(row[0]);
                    if (row[bath + 1] == "no") {
                        // Too thick for this bath, whatever the time; a thicker row and a cooler bath all the more.
                        CHECK_FALSE(plan::safe_hold(frame->plan(), food, units::millimetres(mm), frame->baths()[bath])
                                        .has_value());
                        continue;
                    }
                    check(row[bath + 1], mm, bath);
                    ++times;
                }
            }
            CHECK(times >= 6);
            // Behind the last bar a piece is cut, whether a thicker one would do or not.
            CHECK(has(stairs.front().too_thick, "cut"));
            CHECK(has(stairs.front().longer, table.rows.back()[0]));
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
    "the litres bring each box to its mark in 95 of 100, are rounded up by no more than a step, end at the floor") {
    card::ClassWish metric = wish();
    metric.units = units::System::metric;
    const auto frame = frame_of(metric);
    const double mark = frame->plan().levels.mark.celsius();
    const double boiling = frame->boiling().celsius();
    for (const bool full : {false, true}) {
        CAPTURE(full);
        const card::Deck deck = card::class_deck(*frame, english(), "TEST-TEST", {full ? "full" : "reading"});
        REQUIRE(deck.cards.size() == 1);
        const auto scales = all_of<card::Thermometer>(deck.cards.front());
        REQUIRE(scales.size() == (full ? 1 : 2));
        CHECK(near_abs(scales.front().floor, frame->plan().levels.read_floor.celsius(), 1e-9));
        const card::Thermometer::Section& section = scales.front().sections.front();
        REQUIRE(section.rows.size() == frame->rungs().size());
        CHECK(section.rows.back().at >= frame->plan().levels.read_floor.celsius() - 1e-9);
        CHECK(section.rows.back().at < frame->plan().levels.read_floor.celsius() + 1.0);
        for (std::size_t r = 0; r < section.rows.size(); ++r) {
            const double reads = frame->rungs()[r].celsius();
            CAPTURE(reads);
            CHECK(near_abs(section.rows[r].at, reads, 1e-9));
            CHECK(near_abs(std::stod(section.rows[r].reading), reads, 1e-9));
            REQUIRE(section.rows[r].cells.size() == card::common_litres().size());
            for (std::size_t c = 0; c < card::common_litres().size(); ++c) {
                const double water = units::in_litres(card::common_litres()[c]);
                CHECK(near_abs(std::stod(section.heads[c]), water, 1e-9));
                const auto figure = [&](std::size_t row) { return std::stod(section.rows[row].cells[c].substr(1)); };
                const double litres = figure(r);
                CAPTURE(water);
                CAPTURE(litres);
                // The wall of the box counts as 2 to 10 % of its water.
                CHECK(share_that_reach(litres, water, reads, mark, boiling, full, 0.02) >= 0.94);
                CHECK(share_that_reach(litres - 0.5, water, reads, mark, boiling, full, 0.10) < 0.96);
                if (r > 0) {
                    CHECK(litres >= figure(r - 1));
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

TEST_CASE("below the floor a class does what its rules say, by time and by reading") {
    const auto text_of = [](facts::Ruleset rules, const char* card) {
        const auto frame = frame_of(wish(rules));
        const card::Deck deck = card::class_deck(*frame, english(), "TEST-TEST", {card});
        return joined(texts_of(deck.cards.front()));
    };
    for (const facts::Ruleset rules : {support::ruleset("us"), support::ruleset("au-nz"), support::ruleset("ca")}) {
        const std::string text = text_of(rules, "reading");
        CHECK(has(text, "up to 2 h | 2 h to 4 h | over 4 h"));
        CHECK(has(text, "next meal | now | throw it away"));
    }
    const std::string uk = text_of(support::ruleset("uk"), "reading");
    CHECK(has(uk, "once, under 2 h | again, or 2 h and more"));
    CHECK(has(uk, "throw it away"));
    CHECK_FALSE(has(uk, "to 4 h"));
    CHECK(has(text_of(support::ruleset("us"), "trouble"), "Or rolled, stuffed, tenderised"));
    // As readings of a thermometer that may be 1 K off: 54.4, 57.2 and 60 C.
    CHECK(has(text_of(support::ruleset("us"), "trouble"), "Red meat 56 °C, fish 59 °C, poultry 61 °C"));
}

TEST_CASE("a bath so cold that germs are sooner than the clock has its own row, with its time rounded down") {
    const auto frame = frame_of(wish());
    const card::Deck deck = card::class_deck(*frame, english(), "TEST-TEST", {"reading"});
    const auto scales = all_of<card::Thermometer>(deck.cards.front());
    REQUIRE(scales.size() == 2);
    const auto& rows = scales.back().sections.front().rows;
    const auto& cold = frame->plan().cold_baths;
    REQUIRE_FALSE(cold.empty());
    REQUIRE(rows.size() == cold.size() + 1);
    for (std::size_t i = 0; i < cold.size(); ++i) {
        const card::Thermometer::Row& row = rows[i + 1];
        REQUIRE(row.cells.size() == 1);
        const std::string text = as_read(row.cells.front());
        CAPTURE(text);
        std::smatch parts;
        REQUIRE(std::regex_match(text, parts, std::regex(R"((.*): next meal; over: throw it away)")));
        CHECK(minutes_of(parts[1]) <= units::in_minutes(cold[i].longest) + 1e-9);
        CHECK(minutes_of(parts[1]) > units::in_minutes(cold[i].longest) - 5.0);
        const double below = std::stod(as_read(row.reading).substr(std::string("below ").size()));
        CHECK(below >= cold[i].lowest.celsius() + 1.0 - 1e-9);  // read 1 K too high
        CHECK(row.at <= rows[i].at + 1e-9);
    }
}
