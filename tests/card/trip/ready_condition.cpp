// SPDX-License-Identifier: MIT
// "Ready if never under that" and "should read that" stand on one card: whoever reads what is to be expected finds the
// condition kept. Random trips that the rule before this law sent to the Hold card; HOLDWATER_READY_TRIPS=200 in the
// environment asks for so many more, HOLDWATER_READY_FROM for others.
#include "card/trip/deck.hpp"
#include "plan/advice/remedy.hpp"
#include "support/efforts.hpp"
#include "support/few_ways.hpp"
#include "support/files.hpp"
#include "support/printed_plan.hpp"
#include "support/random_trips.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <string>

using namespace holdwater;

namespace {

int from_environment(const char* name, int otherwise) {
    const char* given = std::getenv(name);
    return given == nullptr ? otherwise : std::stoi(given);
}

/// Hold has a column for that condition, and in it just the ready time, and nothing sooner for a thicker piece.
void check_hold(const plan::FoodPlan& food, double ready_if, units::LocalTime ready) {
    const plan::HoldTable& table = food.hold;
    const auto column = std::find_if(table.baths.begin(), table.baths.end(), [&](units::Temperature bath) {
        return std::abs(bath.celsius() - ready_if) < 0.51;  // printed in whole degrees of either system
    });
    if (ready_if < table.baths.front().celsius()) {
        return;
    }
    REQUIRE(column != table.baths.end());
    const auto& time = table.cells[table.own][static_cast<std::size_t>(column - table.baths.begin())];
    REQUIRE(time.has_value());
    CHECK(food.in.after(*time) <= ready.after(units::minutes(1)));
    for (std::size_t row = table.own; row < table.cells.size(); ++row) {
        const auto& thicker = table.cells[row][static_cast<std::size_t>(column - table.baths.begin())];
        CHECK((!thicker || food.in.after(*thicker) >= ready.after(-units::minutes(1))));
    }
}

/// How many readings the cards of a trip expect before a food is ready by them, each held against the condition of
/// that food; nothing where the trip cannot be planned as it is.
std::optional<int> check_deck(int number) {
    trip::Trip trip = support::random_trip(static_cast<std::uint64_t>(number));
    trip.language = "en";
    trip.what_ifs.clear();
    const facts::FactsInForce few(support::facts_of_few_ways());
    plan::Effort effort = support::effort_of({64, 1}, {256, 1});
    effort.for_cards = true;
    const auto plan = plan::make_plan(trip, effort);
    if (!plan || !trip.boxes.front().thermometer) {
        return std::nullopt;
    }
    CAPTURE(number);
    static const auto words = words::Words::read(support::source_text("layouts/words/en.toml"), "en.toml").value();
    const auto cards = support::read_deck(card::trip_deck(*plan, words, "TEST-TEST"), words, trip);
    int expected = 0;
    for (std::size_t f = 0; f < cards.foods.size(); ++f) {
        const support::PrintedFood& food = cards.foods[f];
        const std::string name = food.name;
        CAPTURE(name);
        if (!food.ready || !food.ready_if) {
            continue;
        }
        const units::LocalTime in = plan->foods[f].in;
        check_hold(plan->foods[f], *food.ready_if, *food.ready);
        // As printed, and as it is to be read in half of all ways.
        const auto check = [&](units::LocalTime at, double reads, units::Temperature likely) {
            if (at >= in && at < *food.ready) {
                const std::string moment = at.clock_24();
                CAPTURE(moment);
                CHECK(*food.ready_if <= reads + 1e-6);
                CHECK(*food.ready_if <= likely.celsius() + 1e-6);
                ++expected;
            }
        };
        for (std::size_t k = 0; k < cards.top_ups.size(); ++k) {
            REQUIRE(cards.top_ups[k].reads.has_value());
            check(cards.top_ups[k].at, *cards.top_ups[k].reads, plan->top_ups[k].reading.likely);
        }
        if (cards.after_food) {
            check(*cards.after_food_at, cards.after_food->first, plan->fill.after_food.likely);
        }
    }
    return expected;
}

}  // namespace

TEST_CASE("what the cards expect to be read never breaks their condition of ready") {
    for (const int number : {120, 128, 165, 191, 302}) {
        CAPTURE(number);
        const auto expected = check_deck(number);
        REQUIRE(expected.has_value());
        CHECK(*expected > 0);  // else this trip shows nothing any more
    }
    const int from = from_environment("HOLDWATER_READY_FROM", 1);
    int planned = 0;
    int expected = 0;
    for (int i = 0; i < from_environment("HOLDWATER_READY_TRIPS", 20); ++i) {
        if (const auto one = check_deck(from + i)) {
            ++planned;
            expected += *one;
        }
    }
    if (std::getenv("HOLDWATER_READY_TRIPS") != nullptr) {
        MESSAGE(planned << " decks, " << expected << " readings that they expect before a food is ready");
    }
}
