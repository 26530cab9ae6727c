// SPDX-License-Identifier: MIT
// One truth: what cards, terminal, JSON, `hold`, `review` and the class deck say of random trips is the same. A small
// draw here; HOLDWATER_AGREEMENT=300 in the environment asks for more and prints what was found,
// HOLDWATER_AGREEMENT_FROM for other trips.
#include "agreement/said.hpp"
#include "plan/advice/remedy.hpp"
#include "support/files.hpp"
#include "support/random_trips.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <optional>
#include <regex>
#include <string>
#include <utility>
#include <vector>

using namespace holdwater;

namespace {

int from_environment(const char* name, int otherwise) {
    const char* given = std::getenv(name);
    return given == nullptr ? otherwise : std::stoi(given);
}

/// A disagreement that is known and not yet mended, and a trip that shows it. The test fails when that trip no longer
/// does: then the line goes.
struct Known {
    const char* what;  // without the numbers and names in it
    const char* first;
    const char* second;
    const char* trip;  // the number of a random one, or a path
    const char* why;
};
const std::vector<Known>& known_disagreements() {
    static const std::vector<Known> all{};
    return all;
}

/// "top-up 2 in" and "top-up 1 in" are the same kind of thing.
std::string kind_of(std::string what) {
    for (const char* of_food : {"ready", "ready if", "to the fire"}) {
        if (what.starts_with(std::string(of_food) + ": ")) {
            return of_food;
        }
    }
    static const std::regex name(R"((:.*)? \(\d+\) on its card$)");
    what = std::regex_replace(what, name, " on its card");
    static const std::regex numbers(R"(-?\d+([.,/ ]\d+)*( ?°?[CF])?)");
    return std::regex_replace(what, numbers, "#");
}

bool is(const Known& known, const support::Disagreement& found) {
    return kind_of(found.what) == known.what && found.first == known.first && found.second == known.second;
}

const words::Words& words_of(const std::string& language) {
    static std::map<std::string, words::Words> read;
    const auto found = read.find(language);
    if (found != read.end()) {
        return found->second;
    }
    const std::string name = language + ".toml";
    return read.emplace(language, words::Words::read(support::source_text("layouts/words/" + name), name).value())
        .first->second;
}

/// Nothing where the trip cannot be planned. Counts rows by place.
std::optional<std::vector<support::Disagreement>> found_on(const trip::Trip& trip, std::map<std::string, int>& places) {
    // Words and figures do not depend on how many scenarios were drawn; whether a trip at the edge holds does.
    plan::Effort quick;
    quick.search = {64, 1};
    quick.promise = {256, 1};
    quick.advise = false;
    quick.ways = false;
    const auto plan = plan::make_plan(trip, quick);
    if (!plan) {
        return std::nullopt;
    }
    const support::Case one{*plan->trip, *plan, words_of(trip.language)};
    support::AllSaid all;
    for (const auto say : {support::say_cards, support::say_terminal, support::say_json, support::say_card_numbers,
                           support::say_decisions, support::say_hold, support::say_review, support::say_class}) {
        say(one, all);
    }
    for (const support::Said& row : all) {
        ++places[row.where];
    }
    return support::disagreements(all);
}

/// What was found on some trips, by kind, with the first that shows it.
class Findings {
  public:
    void take(const std::string& name, const std::vector<support::Disagreement>& found) {
        ++held_;
        for (const support::Disagreement& one : found) {
            auto& [count, example] = kinds_[kind_of(one.what) + " | " + one.first + " | " + one.second];
            ++count;
            example = example.empty() ? name + ": " + one.text : example;
            const auto& known = known_disagreements();
            CHECK_MESSAGE(std::any_of(known.begin(), known.end(), [&](const Known& k) { return is(k, one); }),
                          one.text);
        }
    }
    int held() const { return held_; }
    std::string text() const {
        std::string text = fmt::format("{} plans, disagreements by kind with the first that shows them\n", held_);
        for (const auto& [kind, figures] : kinds_) {
            text += fmt::format("  {:4} x {}\n         {}\n", figures.first, kind, figures.second);
        }
        return text;
    }

  private:
    int held_ = 0;
    std::map<std::string, std::pair<int, std::string>> kinds_;
};

}  // namespace

TEST_CASE("rows that say the same agree, and others do not") {
    using support::said_at;
    using support::said_figure;
    using support::said_word;
    const units::LocalTime noon(43200);
    CHECK(support::disagreements({said_figure("a", "x", 11.5, "L"), said_figure("a", "y", 11.5, "L")}).empty());
    CHECK(support::disagreements({said_figure("a", "x", 11.5, "L"), said_figure("a", "y", 12.0, "L")}).size() == 1);
    CHECK(support::disagreements({said_figure("a", "x", 11.5, "L"), said_figure("a", "json", 11.9, "L", 0.5)}).empty());
    CHECK(support::disagreements({said_figure("a", "x", 11.5, "L"), said_figure("b", "y", 12.0, "L")}).empty());
    CHECK(support::disagreements({said_word("a", "x", "eat"), said_word("a", "y", "throw away")}).size() == 1);
    CHECK(
        support::disagreements({said_at("a", "x", noon, noon), said_at("a", "y", noon, noon.after(units::seconds(59)))})
            .empty());
    CHECK(
        support::disagreements({said_at("a", "x", noon, noon), said_at("a", "y", noon, noon.after(units::seconds(60)))})
            .size() == 1);
    CHECK(kind_of("top-up 2 in") == kind_of("top-up 13 in"));
}

TEST_CASE("everything that is said of a random trip is said alike everywhere") {
    const int wanted = from_environment("HOLDWATER_AGREEMENT", 12);
    // A short draw begins with one that has a Night card: they are one in ten.
    const int usual = wanted > 12 ? 1 : 181;
    const auto from = static_cast<std::uint64_t>(from_environment("HOLDWATER_AGREEMENT_FROM", usual));
    Findings findings;
    std::map<std::string, int> places;
    for (std::uint64_t number = from; findings.held() < wanted; ++number) {
        REQUIRE(number < from + 20 * static_cast<std::uint64_t>(wanted));
        CAPTURE(number);
        if (const auto found = found_on(support::random_trip(number), places)) {
            findings.take(std::to_string(number), *found);
        }
    }
    // Nothing agrees by being silent.
    for (const char* place :
         {"card plan", "card fill", "card reading", "card night", "card trouble", "card one", "card log", "card hold",
          "terminal", "json", "json numbers", "hold json", "hold engine", "review", "class reading"}) {
        CAPTURE(place);
        CHECK(places[place] >= findings.held() / 4);
    }
    std::string rows;
    for (const auto& [place, count] : places) {
        rows += fmt::format("  {:5} rows of {}\n", count, place);
    }
    MESSAGE(findings.text() << rows);
}

TEST_CASE("everything that is said of a trip of this tree is said alike everywhere, in either language and system") {
    std::vector<std::string> paths{"tests/plan/trips/frosty-weekend.toml",
                                   "tests/card/trips/no-thermometer-chicken.toml",
                                   "tests/plan/trips/no-thermometer.toml"};
    if (std::getenv("HOLDWATER_AGREEMENT") != nullptr) {
        for (const char* more : {"layouts/trips/paddling-day.toml", "layouts/trips/class-day.toml",
                                 "layouts/trips/template.toml", "tests/agreement/trips/ready-in-minutes.toml",
                                 "tests/card/trips/at-risk-beef.toml", "tests/card/trips/liver.toml",
                                 "tests/card/trips/minced-two-foods.toml", "tests/card/trips/no-thermometer-beef.toml",
                                 "tests/card/trips/stuffed-chicken.toml", "tests/card/trips/uk-pork.toml"}) {
            paths.emplace_back(more);
        }
    }
    Findings findings;
    std::map<std::string, int> places;
    for (const std::string& path : paths) {
        trip::Trip trip = support::trip_at(path);
        for (const auto& [system, language] :
             {std::pair{units::System::metric, "en"}, {units::System::us_first, "es"}}) {
            trip.units = system;
            trip.language = language;
            CAPTURE(path);
            CAPTURE(std::string(language));
            const auto found = found_on(trip, places);
            REQUIRE(found.has_value());
            findings.take(path.substr(path.rfind('/') + 1) + " " + language, *found);
        }
    }
    CHECK(places["card reading"] > 0);
    MESSAGE(findings.text());
}

TEST_CASE("every disagreement that is listed as known is still there") {
    std::map<std::string, std::vector<support::Disagreement>> kept;
    for (const Known& known : known_disagreements()) {
        CAPTURE(std::string(known.what));
        CAPTURE(std::string(known.first));
        CAPTURE(std::string(known.second));
        CAPTURE(std::string(known.trip));
        const std::string name = known.trip;
        auto found = kept.find(name);
        if (found == kept.end()) {
            std::map<std::string, int> places;
            const bool random = name.find('/') == std::string::npos;
            const auto fresh =
                found_on(random ? support::random_trip(std::stoull(name)) : support::trip_at(name), places);
            CHECK_MESSAGE(fresh.has_value(), "no plan: show it on another trip");
            found = kept.emplace(name, fresh.value_or(std::vector<support::Disagreement>{})).first;
        }
        CHECK_MESSAGE(std::any_of(found->second.begin(), found->second.end(),
                                  [&](const support::Disagreement& one) { return is(known, one); }),
                      "mended: take it off the list");
    }
}
