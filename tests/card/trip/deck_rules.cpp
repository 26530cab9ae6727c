// SPDX-License-Identifier: MIT
// What every deck must keep to, whatever its trip: few faces, few words a face, one name for one thing, each warning
// once a card, every act on Plan, and no card that refers to one which the deck has not.
#include "card/deck_checks.hpp"
#include "card/texts.hpp"
#include "card/word_count.hpp"
#include "layout/layout.hpp"
#include "support/faces.hpp"
#include "support/finding.hpp"
#include "support/printed.hpp"
#include "support/typeface.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <variant>
#include <vector>

using namespace holdwater;
using namespace holdwater::support;

namespace {

/// Where somebody is scalded, breathes fumes or eats what is unsafe a box says so. Without one are only Plan and Log,
/// which are read and written, and those whose own rows say in bold or on black what is thrown away or not cooked.
void check_where_warned(const Dealt& dealt) {
    const std::set<std::string> no_act{"plan", "log"};
    const std::set<std::string> rows{"reading", "hold", "trouble"};
    for (const card::Card& card : dealt.deck.cards) {
        CAPTURE(card.key);
        std::string box;
        for (const card::Block& block : card.blocks) {
            if (const auto* one = std::get_if<card::Caution>(&block)) {
                box = as_read(one->text);
            }
        }
        CHECK(box.empty() == (no_act.contains(card.key) || rows.contains(card.key)));
        const bool cooked = std::any_of(dealt.plan.foods.begin(), dealt.plan.foods.end(),
                                        [](const plan::FoodPlan& food) { return !food.standard.kept_hot; });
        if (rows.contains(card.key) && cooked) {
            CHECK(std::regex_search(as_read(joined(texts_of(card))), std::regex("[Tt]hrow|[Cc]ut|[Ss]plit|too thick")));
        }
        if (card.key == "one" || card.key == "fill") {
            CHECK(has(box, "scalding water"));
        }
        if (card.key == "one") {
            CHECK(has(box, "Carbon monoxide"));
        }
    }
}

}  // namespace

TEST_CASE("every deck has each warning once a card, every act on Plan, and no reference to a card that it has not") {
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        Dealt dealt(path);
        for (const card::Card& card : dealt.deck.cards) {
            check_warnings(card);
        }
        check_where_warned(dealt);
        check_references(dealt.deck, "card");
        check_acts(dealt.plan, dealt.deck);
        check_names(dealt.deck, "en");
        for (const auto& [language, card_word] : {std::pair{"es", "tarjeta"}, std::pair{"fr", "carte"}}) {
            CAPTURE(std::string(language));
            dealt.deal(dealt.trip.units, language);
            check_references(dealt.deck, card_word);
            check_names(dealt.deck, language);
            for (const card::Card& card : dealt.deck.cards) {
                check_warnings(card);
            }
        }
    }
}

namespace {

/// The coldest row of the thermometer on a card; nothing where it has none.
const card::Thermometer::Row* coldest_row(const card::Deck& deck, const std::string& key) {
    const card::Thermometer::Row* coldest = nullptr;
    for (const card::Card& card : deck.cards) {
        for (const card::Block& block : card.blocks) {
            const auto* const scale = std::get_if<card::Thermometer>(&block);
            if (card.key == key && scale != nullptr && !scale->sections.back().rows.empty()) {
                coldest = &scale->sections.back().rows.back();
            }
        }
    }
    return coldest;
}

}  // namespace

TEST_CASE("Trip throws food away below the same reading as Reading") {
    int compared = 0;
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        const Dealt dealt(path);
        const auto* const one = coldest_row(dealt.deck, "one");
        const auto* const reading = coldest_row(dealt.deck, "reading");
        CHECK((one == nullptr) == (reading == nullptr));
        if (one != nullptr && reading != nullptr) {
            CHECK(as_read(one->reading).substr(0, 11) == as_read(reading->reading).substr(0, 11));  // "below 52 °C"
            CHECK(as_read(one->cells.front()) == as_read(reading->cells.back()));
            ++compared;
        }
    }
    CHECK(compared >= 5);
}

TEST_CASE("a deck has 14 hand faces at most, and few faces have over 80 words and numbers") {
    for (const char* path :
         {"tests/plan/trips/frosty-weekend.toml", "layouts/trips/trail-crew.toml", "layouts/trips/hut-night.toml",
          "layouts/trips/paddling-day.toml", "layouts/trips/class-day.toml"}) {
        CAPTURE(path);
        const Dealt dealt(path);
        const auto cards = layout::lay_out(dealt.deck, format("hand"), real_measure());
        REQUIRE(cards.ok());
        std::size_t faces = 0;
        std::size_t full = 0;
        std::string all;
        for (const layout::CardFaces& card : *cards) {
            for (const layout::Page& face : card.faces) {
                ++faces;
                const std::size_t words = words_on(face);
                all += face.name + " " + std::to_string(words) + ", ";
                CAPTURE(face.name);
                CHECK(words <= 110);
                full += words > 80 ? 1 : 0;
            }
        }
        MESSAGE(std::string(path) << ": " << faces << " faces, " << full << " over 80: " << all);
        // A night of several top-ups has a day of two faces.
        CHECK(faces <= (dealt.plan.top_ups.size() > 1 ? 15u : 14u));
        CHECK(full <= 6);  // to come down, never up
    }
}
