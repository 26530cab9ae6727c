// SPDX-License-Identifier: MIT
// Every figure that a card prints is in the list of figures, as it is printed there: what `plan --json` gives out.
#include "card/shared/numbers.hpp"
#include "card/texts.hpp"
#include "support/files.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <regex>
#include <set>
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
    for (const card::CardNumber& number : card::card_numbers({dealt.plan, words})) {
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
    for (const card::Card& card : dealt.deck.cards) {
        for (const std::string& text : support::texts_of(card)) {
            for (const std::string& figure : figures_of(text)) {
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
            for (const std::string language : {"en", "es"}) {
                dealt.deal(system, language);
                const auto words =
                    words::Words::read(support::source_text("layouts/words/" + language + ".toml"), language + ".toml");
                REQUIRE(words.ok());
                check_deck(dealt, *words);
            }
        }
    }
}
