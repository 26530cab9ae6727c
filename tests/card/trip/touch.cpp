// SPDX-License-Identifier: MIT
// The Touch card: parts that agree with the Fill card, bands of the hand, and nothing that invites a longer dip.
#include "answer/water/mix.hpp"
#include "card/texts.hpp"
#include "safety/burn.hpp"
#include "safety/sting.hpp"
#include "support/finding.hpp"
#include "support/printed.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <regex>
#include <variant>

using namespace holdwater;
using namespace holdwater::support;
using safety::DipRow;
using safety::HandState;
using safety::Stirring;

namespace {

const card::KeyNumber& key_of(const card::Card& card) {
    return std::get<card::KeyNumber>(card.blocks.front());
}

const card::Bands& dip_picture(const card::Card& card) {
    const auto found = std::find_if(card.blocks.begin(), card.blocks.end(), [](const card::Block& block) {
        return std::holds_alternative<card::Bands>(block);
    });
    REQUIRE(found != card.blocks.end());
    return std::get<card::Bands>(*found);
}

/// "63–90" as two numbers.
std::pair<double, double> ends_of(const std::string& span) {
    const auto dash = span.find("–");
    REQUIRE(dash != std::string::npos);
    return {std::stod(span.substr(0, dash)), std::stod(span.substr(dash + std::string("–").size()))};
}

constexpr DipRow rows[] = {DipRow::at_once, DipRow::by_one, DipRow::by_two, DipRow::not_by_two};

void check_ratio(const Dealt& dealt) {
    const card::KeyNumber& key = key_of(dealt.card("touch"));
    const plan::Fill& fill = dealt.plan.fill;
    // Litres, so that nobody multiplies; never less than the plan pours, by more than a printed step never more.
    const bool us = units::first_of(dealt.trip.units) == units::System::us;
    const double litre = us ? 0.946352946 : 1.0;
    const double poured = std::stod(key.value) * litre;
    CHECK(poured >= units::in_litres(fill.boiled) - 0.051 * litre);
    CHECK(poured < units::in_litres(fill.boiled) + 0.5 * litre);
    const double printed = poured / units::in_litres(fill.cold);
    if (!dealt.reads()) {
        // The recipe of the Fill card, to the letter.
        const card::KeyNumber& litres = key_of(dealt.card("fill"));
        CHECK(key.value + key.unit == litres.value + litres.unit);
        CHECK(has(litres.aside, key.aside.substr(key.aside.find("into"), 10)));
    }
    // More boiling than a mix without box and wait would take.
    const answer::MixQuestion question{fill.reading, dealt.plan.levels.boiling, dealt.trip.fire.cold_water,
                                       answer::Measure::volume};
    const auto plain = answer::mix(question);
    REQUIRE(plain.ok());
    CHECK(printed > plain->hot_parts);
}

void check_words(const Dealt& dealt) {
    const std::string text = joined(texts_of(dealt.card("touch")));
    CAPTURE(text);
    CHECK(has(text, "The hand is no thermometer."));
    for (const char* never : {"Cold", "numb", "child's", "alcohol", "never past a count of two"}) {
        CHECK(has(text, never));
    }
    CHECK(has(text, "No sting by two: treat it as too cool"));
    CHECK(has(text, "not proven hot enough"));
    CHECK(has(text, "Under 5, 65 or over, pregnant, weak immune system: not"));
    // First parts, then wax, last the hand.
    CHECK(text.find("Boiling, by measure") < text.find("Beeswax in a sealed bag"));
    CHECK(text.find("Beeswax in a sealed bag") < text.find("The hand is no thermometer"));
    // No count and no seconds above two, as a figure or in words.
    CHECK_FALSE(
        std::regex_search(text, std::regex(R"(\b(three|four|five|six|seven|eight|nine|ten)\b)", std::regex::icase)));
    // But for the published burn times below the scale.
    std::string but_burns;
    const card::Bands& picture = dip_picture(dealt.card("touch"));
    for (const std::string& line : texts_of(dealt.card("touch"))) {
        const bool burn =
            std::any_of(picture.below.begin(), picture.below.end(),
                        [&line](const card::Bands::Mark& mark) { return support::as_read(mark.label) == line; });
        but_burns += burn ? "" : line + "\n";
    }
    static const std::regex seconds(R"((\d+(\.\d+)?) s\b)");
    for (std::sregex_iterator it(but_burns.begin(), but_burns.end(), seconds); it != std::sregex_iterator{}; ++it) {
        CHECK(std::stod((*it)[1]) <= 2.0);
    }
    static const std::regex counts(R"(count of (\w+))");
    for (std::sregex_iterator it(text.begin(), text.end(), counts); it != std::sregex_iterator{}; ++it) {
        CHECK((*it)[1] == "two");
    }
}

}  // namespace

TEST_CASE("Touch begins with the litres of the plan's own fill, and is careful in every deck") {
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        const Dealt dealt(path);
        check_ratio(dealt);
        check_words(dealt);
    }
}

TEST_CASE("the rows of Touch are the bands of warm hands, rounded outwards, with the burn of their hot end") {
    const Dealt dealt("tests/plan/trips/frosty-weekend.toml");
    const card::Bands& picture = dip_picture(dealt.card("touch"));
    REQUIRE(picture.bars.size() == 4);
    const std::string text = joined(texts_of(dealt.card("touch")));
    for (std::size_t i = 0; i < 4; ++i) {
        CAPTURE(i);
        const auto band = safety::bath_band(rows[i], HandState::warm, Stirring::stirred);
        REQUIRE(band.has_value());
        const auto [low, high] = ends_of(picture.bars[i].span);
        CHECK(low <= band->p5.celsius());
        CHECK(low > band->p5.celsius() - 1.0);
        CHECK(high >= band->p95.celsius());
        CHECK(high < band->p95.celsius() + 1.0);
        // Drawn from end to end, on the scale of floor and fill.
        CHECK(std::abs(picture.bars[i].low - band->p5.celsius()) < 1e-5);
        CHECK(std::abs(picture.bars[i].high - band->p95.celsius()) < 1e-5);
        const auto burn = safety::burn_times(band->p95).second;
        REQUIRE(burn.has_value());
    }
    // Below the scale, at round degrees, how soon that burns: the published time, from where it stays the same once.
    REQUIRE(picture.below.size() >= 2);
    for (const card::Bands::Mark& mark : picture.below) {
        const auto burn = safety::burn_times(units::celsius(mark.at)).second;
        REQUIRE(burn.has_value());
        CHECK(support::as_read(mark.label) == std::to_string(std::lround(burn->si())) + " s");
    }
    const auto hottest = safety::bath_band(rows[0], HandState::warm, Stirring::stirred);
    CHECK(support::as_read(picture.below.back().label) ==
          std::to_string(std::lround(safety::burn_times(hottest->p95).second->si())) + " s");
    CHECK(picture.bars.back().label == "not by two");
    REQUIRE(picture.marks.size() == 2);
    CHECK(std::abs(picture.marks[0].at - dealt.plan.levels.read_floor.celsius()) < 1e-9);
    CHECK(std::abs(picture.marks[1].at - dealt.plan.fill.reading.celsius()) < 1e-9);
    // What `touch --sting` says of a sting in the middle of a row lies within that row.
    for (const auto& [sting, row] : {std::pair{1.25, 1}, std::pair{1.75, 2}}) {
        const auto band = safety::bath_band(units::seconds(sting), HandState::warm, Stirring::stirred);
        REQUIRE(band.has_value());
        const auto [low, high] = ends_of(picture.bars[static_cast<std::size_t>(row)].span);
        CHECK(band->p5.celsius() > low - 1.0);
        CHECK(band->p50.celsius() > low);
        CHECK(band->p50.celsius() < high);
        CHECK(band->p95.celsius() < high + 1.0);
    }
}

TEST_CASE("Touch asks for clear wax with poultry and fish, and names what pours by the clock need") {
    const Dealt chicken("layouts/trips/paddling-day.toml");
    CHECK(has(joined(texts_of(chicken.card("touch"))), "Poultry, fish: only with wax that stays clear"));
    CHECK(has(joined(texts_of(chicken.card("touch"))), "Clear all through: the bath reached 65 °C (149 °F)."));
    const Dealt pork("tests/plan/trips/frosty-weekend.toml");
    const std::string text = joined(texts_of(pork.card("touch")));
    CHECK_FALSE(has(text, "Poultry"));
    // Nobody reads how much is needed then: what 95 of 100 scenarios need at the most, of any top-up.
    std::smatch litres;
    REQUIRE(std::regex_search(text, litres,
                              std::regex(R"(Top up by card \d+, Plan: scoop to \d+ mm.*?, pour (\d+\.\d) L)")));
    REQUIRE_FALSE(pork.plan.top_ups.empty());
    for (const plan::TopUp& top_up : pork.plan.top_ups) {
        CHECK(std::stod(litres[1]) >= units::in_litres(top_up.boiling_most) - 1e-9);
        CHECK(std::stod(litres[1]) >= units::in_litres(top_up.boiling) - 1e-9);
    }
    const Dealt clock("tests/card/trips/no-thermometer-beef.toml");
    CHECK_FALSE(has(joined(texts_of(clock.card("touch"))), "scoop to"));
}
