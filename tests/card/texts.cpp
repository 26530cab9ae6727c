// SPDX-License-Identifier: MIT
#include "card/texts.hpp"

#include "plan/advice/remedy.hpp"
#include "plan/choose/start.hpp"
#include "support/borrowed.hpp"
#include "support/few_ways.hpp"
#include "support/printed.hpp"
#include "support/trips.hpp"
#include "trip/read_trip.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <regex>
#include <variant>

namespace holdwater::support {
namespace {

/// Words do not depend on how many scenarios were drawn, nor on how many ways hold times were worked out from.
plan::Plan plan_of(const trip::Trip& trip) {
    const facts::FactsInForce few_ways(facts_of_few_ways());
    plan::Effort quick;
    quick.search = {64, 1};
    quick.promise = {256, 1};
    quick.advise = false;
    quick.choose = false;
    auto plan = plan::make_plan(support::borrowed(trip), quick);
    CAPTURE(trip.name);
    REQUIRE(plan.ok());
    return std::move(plan).value();
}

card::Deck deck_of(const plan::Plan& plan) {
    const std::string name = plan.trip->language + ".toml";
    const auto words = words::Words::read(source_text("layouts/words/" + name), name);
    REQUIRE(words.ok());
    return card::trip_deck(plan, *words, "TEST-TEST");
}

/// With its fire lit when it says: the plan then rests on this very trip, whose units and language may change.
trip::Trip lit(trip::Trip trip) {
    return trip.light_fire ? plan::lit_at(trip, *trip.light_fire) : trip;
}

}  // namespace

Planned::Planned(trip::Trip one) : trip(lit(std::move(one))), plan(plan_of(trip)) {}

namespace {

std::shared_ptr<Planned> planned(const trip::Trip& trip) {
    static std::map<std::string, std::shared_ptr<Planned>> kept;
    trip::Trip plain = trip;
    plain.units = units::System::both;
    plain.language = "en";
    std::shared_ptr<Planned>& here = kept[trip::canonical(plain)];
    if (here && here.use_count() > 1) {
        return std::make_shared<Planned>(trip);
    }
    if (!here) {
        here = std::make_shared<Planned>(trip);
    }
    here->trip.units = trip.units;
    here->trip.language = trip.language;
    return here;
}

}  // namespace

Dealt::Dealt(const std::string& path) : Dealt(trip_at(path)) {}

Dealt::Dealt(const trip::Trip& one)
    : planned_(planned(one)), trip(planned_->trip), plan(planned_->plan), deck(deck_of(plan)) {}

void Dealt::deal(units::System system, const std::string& language) {
    planned_->trip.units = system;
    planned_->trip.language = language;
    deck = deck_of(plan);
}

const card::Card& Dealt::card(const std::string& key) const {
    const auto found =
        std::find_if(deck.cards.begin(), deck.cards.end(), [&](const card::Card& one) { return one.key == key; });
    REQUIRE(found != deck.cards.end());
    return *found;
}

std::vector<std::string> other_languages() {
    std::vector<std::string> found;
    const std::filesystem::path words = std::filesystem::path(HOLDWATER_SOURCE_DIR) / "layouts/words";
    for (const auto& entry : std::filesystem::directory_iterator(words)) {
        if (entry.path().stem() != "en") {
            found.push_back(entry.path().stem().string());
        }
    }
    REQUIRE(!found.empty());
    return found;
}

std::vector<std::string> trip_paths() {
    std::vector<std::string> paths{"tests/plan/trips/frosty-weekend.toml"};
    for (const char* demo : {"trail-crew", "hut-night", "paddling-day", "class-day"}) {
        paths.push_back(std::string("layouts/trips/") + demo + ".toml");
    }
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(HOLDWATER_SOURCE_DIR) + "/tests/card/trips")) {
        paths.push_back("tests/card/trips/" + entry.path().filename().string());
    }
    std::sort(paths.begin(), paths.end());
    REQUIRE(paths.size() >= 10);
    return paths;
}

std::vector<std::pair<int, int>> pairs_of(const card::Deck& deck) {
    std::vector<std::pair<int, int>> pairs;
    static const std::regex pair(R"((?:^|[^-.\d])(-?\d+) °C \((-?\d+) °F)");
    const std::string all = joined(texts_of(deck));
    for (std::sregex_iterator it(all.begin(), all.end(), pair); it != std::sregex_iterator{}; ++it) {
        pairs.emplace_back(std::stoi((*it)[1]), std::stoi((*it)[2]));
    }
    static const std::regex celsius(R"(^(-?\d+) °C$)");
    static const std::regex fahrenheit(R"(^(-?\d+) °F$)");
    for (const card::Card& card : deck.cards) {
        for (const card::Block& block : card.blocks) {
            const auto* table = std::get_if<card::Table>(&block);
            for (std::size_t c = 0; table != nullptr && !table->rows.empty() && c < table->columns.size(); ++c) {
                std::smatch head;
                std::smatch below;
                const std::string first = as_read(table->columns[c].head);
                const std::string second = c < table->rows.front().size() ? as_read(table->rows.front()[c]) : "";
                if (std::regex_match(first, head, celsius) && std::regex_match(second, below, fahrenheit)) {
                    pairs.emplace_back(std::stoi(head[1]), std::stoi(below[1]));
                }
            }
        }
    }
    return pairs;
}

}  // namespace holdwater::support
