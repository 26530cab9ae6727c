// SPDX-License-Identifier: MIT
// Every figure that a card prints is in the list of figures, as it is printed there, and every figure that is said to
// stand on a card stands there: what `plan --json` gives out.
#include "card/figures/maker.hpp"
#include "card/figures/numbers.hpp"
#include "card/texts.hpp"
#include "support/files.hpp"
#include "support/finding.hpp"
#include "support/printed.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <map>
#include <regex>
#include <set>
#include <stdexcept>
#include <string>

using namespace holdwater;
using support::Dealt;

namespace {

/// The figures of a text, each with the unit behind it: "57 °C", "4.0 L", "16:00", "8 h", "45".
std::set<std::string> figures_of(std::string text) {
    for (std::size_t at = text.find("\u00A0"); at != std::string::npos; at = text.find("\u00A0")) {
        text.replace(at, 2, " ");
    }
    static const std::regex one(
        R"((?:\d+ )?\d+/\d|\d+:\d\d|-?\d+(?:[.,]\d+)?(?: ?(?:°C|°F|mm|min|cm|in|kg|lb|oz|qt|gal|W/K|h|s|g|L|K|m)\b)?)");
    std::set<std::string> found;
    for (std::sregex_iterator it(text.begin(), text.end(), one), end; it != end; ++it) {
        found.insert(it->str());
    }
    return found;
}

/// A figure alone: the unit may stand at the head of its column.
std::string bare(const std::string& figure) {
    return figure.substr(0, figure.find_first_of(" °chmsgLKWqloik"));
}

/// Figures that belong to the wording itself: "under 5, 65 or over".
std::set<std::string> figures_of_words(const words::Words& words) {
    std::set<std::string> all;
    for (const auto& [key, wording] : words.all()) {
        for (const auto& [form, text] : wording.forms) {
            all.merge(figures_of(text));
        }
    }
    return all;
}

void check_deck(const Dealt& dealt, const words::Words& words) {
    std::map<std::string, std::set<std::string>> listed;
    std::map<std::string, std::string> texts;
    for (const card::Card& card : dealt.deck.cards) {
        texts[card.key] = support::joined(support::texts_of(card));
    }
    for (const card::CardNumber& number : card::card_numbers({dealt.plan, words})) {
        CAPTURE(number.card);
        CAPTURE(number.name);
        CAPTURE(number.printed);
        CHECK((!number.stands || support::has(texts.at(number.card), support::as_read(number.printed))));
        std::set<std::string>& here = listed[number.card];
        for (const std::string& figure : figures_of(number.printed)) {
            here.insert(figure);
            here.insert(bare(figure));
        }
    }
    const std::set<std::string> in_words = figures_of_words(words);
    std::string names = dealt.trip.name;
    for (const trip::Food& food : dealt.trip.foods) {
        names += " " + food.name;
    }
    for (const trip::Side& side : dealt.trip.sides) {
        names += " " + side.name;
    }
    for (const trip::WhatIf& what : dealt.trip.what_ifs) {
        names += " " + what.name;
    }
    const std::set<std::string> in_names = figures_of(names);
    // Where cards name each other: "card 4, Reading".
    const auto numbers_of_cards_out = [&](std::string text) {
        for (const card::Card& card : dealt.deck.cards) {
            const std::string ref = words.text("deck.ref", {{"number", card.number}, {"name", card.name}});
            for (std::size_t at = text.find(ref); at != std::string::npos; at = text.find(ref)) {
                text.erase(at, ref.size());
            }
        }
        return text;
    };
    for (const card::Card& card : dealt.deck.cards) {
        for (const std::string& text : support::texts_of(card)) {
            for (const std::string& figure : figures_of(numbers_of_cards_out(text))) {
                CAPTURE(card.key);
                CAPTURE(text);
                CAPTURE(figure);
                CHECK((listed[card.key].contains(figure) || listed[card.key].contains(bare(figure)) ||
                       in_words.contains(figure) || in_names.contains(figure)));
            }
        }
    }
}

}  // namespace

TEST_CASE("every figure on a card is in the list of figures, as it is printed") {
    for (const std::string& path : support::trip_paths()) {
        CAPTURE(path);
        Dealt dealt(path);
        for (const units::System system : {units::System::metric, units::System::us, units::System::both}) {
            for (const std::string language : {"en", "es", "fr"}) {
                dealt.deal(system, language);
                const auto words =
                    words::Words::read(support::source_text("layouts/words/" + language + ".toml"), language + ".toml");
                REQUIRE(words.ok());
                check_deck(dealt, *words);
            }
        }
    }
}

TEST_CASE("a figure that nobody made is an internal error that names it, never an empty text") {
    const Dealt dealt("tests/card/trips/uk-pork.toml");
    card::FigureList list = card::trip_figures({dealt.plan, words::Words::model()});
    const card::CardFigures night = list.on("night");
    CHECK_FALSE(night("longest-alone").empty());
    CHECK_THROWS_WITH_AS(night("longest-alon"), "no figure night.longest-alon", std::logic_error);
    CHECK_THROWS_WITH_AS(night("leave", 99), "no figure night.leave_99", std::logic_error);
    CHECK_THROWS_WITH_AS(list.of("plan").full("ready", card::Which(std::nullopt, "nobody")),
                         "no figure plan.ready: nobody", std::logic_error);
    CHECK_THROWS_AS(night.key("label", "read-floor"), std::logic_error);
    CHECK_THROWS_AS(night.count("nothing"), std::logic_error);
    CHECK_THROWS_AS(night.brief("reads"), std::logic_error);
    // One key with two units asks in which.
    REQUIRE_FALSE(dealt.plan.top_ups.empty());
    CHECK_THROWS_AS(list.of("night")("pour", 1), std::logic_error);
    CHECK_FALSE(list.of("night")("pour", card::Which(1).in(card::value_unit::litres)).empty());
    // And no figure is made a second time.
    const card::FigureMaker maker(list, "night");
    CHECK_THROWS_AS(maker.span("longest-alone", units::hours(1), "1 h", {"share-95", "minute", ""}), std::logic_error);
}

TEST_CASE("a line of the ladder is said to be enough in 95 of 100, as it is worked out") {
    const Dealt dealt("tests/plan/trips/frosty-weekend.toml");
    int lines = 0;
    for (const card::CardNumber& number : card::card_numbers({dealt.plan, words::Words::model()})) {
        if (number.card == "reading" && number.name.starts_with("pour") && number.name.ends_with("_l")) {
            CAPTURE(number.name);
            CHECK(number.quantile == "95 of 100 scenarios");
            ++lines;
        }
    }
    CHECK(lines >= std::min(3, static_cast<int>(dealt.plan.ladder.size())));
}

TEST_CASE("a figure stands on a card by being taken for it, as it is printed there") {
    Dealt dealt("tests/card/trips/uk-pork.toml");
    dealt.deal(units::System::both, "en");
    card::FigureList list({dealt.plan, words::Words::model()});
    const card::FigureMaker maker(list, "somewhere");
    const card::FigureMaker::How how{"rule", "up-degree", "some rule"};
    const auto made = [&](const char* key, double celsius) {
        maker.degrees(key, units::celsius(celsius), maker.safe().at_least(units::celsius(celsius)), how);
    };
    made("full", 60.2);
    made("short", 61.2);
    made("looked-at", 62.2);
    made("elsewhere", 63.2);
    const card::CardFigures on = list.on("somewhere");
    CHECK(on("full") == "61\u00A0°C (142\u00A0°F)");
    CHECK(on.brief("short") == "62\u00A0°C");
    CHECK(on.look_at("looked-at").number.value == 62.2);
    CHECK(list.of("somewhere").full("elsewhere") == "64\u00A0°C (148\u00A0°F)");
    std::string standing;
    for (const card::CardNumber& number : list.numbers()) {
        standing += number.name + "=" + number.printed + ";";
    }
    CHECK(standing == "full_c=61\u00A0°C (142\u00A0°F);short_short_c=62\u00A0°C;");
}
