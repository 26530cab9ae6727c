// SPDX-License-Identifier: MIT
// What every deck must keep to, whatever its trip: few faces, few words a face, one name for one thing, each warning
// once a card, every act on Plan, and no card that refers to one which the deck has not.
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

/// Cards whose act needs a caution, and how often each caution stands on one.
void check_warnings(const card::Card& card) {
    std::map<std::string, int> times;
    int blocks = 0;
    for (const card::Block& block : card.blocks) {
        if (const auto* one = std::get_if<card::Caution>(&block)) {
            ++times[one->text];
            ++blocks;
        }
    }
    CAPTURE(card.key);
    CHECK(card.cautions.empty());  // those stand on every face
    CHECK(blocks <= 1);
    for (const auto& [text, count] : times) {
        CHECK(count == 1);
    }
    CHECK(card.harmless == (blocks == 0));
}

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

/// "card 4, Reading" names a card of this deck by its number; `card` in the language of the deck.
void check_references(const Dealt& dealt, const std::string& card_word) {
    const std::regex reference("\\b" + card_word + R"( (\d+), (\S+))");
    int found = 0;
    for (const std::string& raw : texts_of(dealt.deck)) {
        const std::string text = as_read(raw);
        for (std::sregex_iterator it(text.begin(), text.end(), reference); it != std::sregex_iterator{}; ++it) {
            CAPTURE(text);
            const int number = std::stoi((*it)[1]);
            const auto card = std::find_if(dealt.deck.cards.begin(), dealt.deck.cards.end(),
                                           [&](const card::Card& one) { return one.number == number; });
            REQUIRE(card != dealt.deck.cards.end());
            std::string name = (*it)[2];
            while (std::string(".,:?;)").find(name.back()) != std::string::npos) {
                name.pop_back();
            }
            CHECK(card->name.starts_with(name));
            ++found;
        }
        // Nor is a card named without its number.
        CHECK_FALSE(std::regex_search(text, std::regex("\\b" + card_word + " [A-Z]")));
    }
    CHECK(found >= 4);
}

/// Every act has its time on Plan.
void check_acts(const Dealt& dealt) {
    std::string plan;
    for (const card::Block& block : dealt.card("plan").blocks) {
        if (const auto* steps = std::get_if<card::Steps>(&block)) {
            for (const card::Step& step : steps->steps) {
                plan += as_read(step.when + " " + step.text) + "\n";
            }
        }
    }
    const auto clock = [&](units::LocalTime at) {
        return units::first_of(dealt.trip.units) == units::System::us ? at.clock_12() : at.clock_24();
    };
    CAPTURE(plan);
    const auto line = [&](units::LocalTime at, const std::string& what) {
        CAPTURE(what);
        const std::regex row(clock(at) + R"([^\n]*)" + what);
        CHECK(std::regex_search(plan, row));
    };
    line(dealt.plan.fill.light_fire, "Light the fire");
    line(dealt.plan.fill.food_in, plan::all_in_at_once(dealt.plan) ? "Put the food in" : " in");
    for (const plan::TopUp& top_up : dealt.plan.top_ups) {
        line(top_up.light_fire, "Light the fire");
        line(top_up.at, "Top up");
    }
    for (const plan::SideStart& side : dealt.plan.around.sides.list) {
        line(side.begin, "Put on");
    }
    for (const plan::FoodPlan& food : dealt.plan.foods) {
        if (food.finishing) {
            line(food.leaves(), "out of the bag");
        }
    }
    line(dealt.trip.serve, "Eat");
    if (dealt.plan.waits_until > dealt.trip.serve) {
        CHECK(std::regex_search(plan, std::regex("Guests late[^\\n]*until " + clock(dealt.plan.waits_until))));
    }
}

/// What has one name is not called by another, in the language of the deck.
void check_names(const Dealt& dealt, const std::string& language) {
    const std::regex& others = other_names(language);
    for (const card::Card& card : dealt.deck.cards) {
        for (const std::string& raw : texts_of(card)) {
            const std::string text = as_read(raw);
            CAPTURE(card.key);
            CAPTURE(text);
            std::smatch found;
            const bool other = std::regex_search(text, found, others);
            CHECK_MESSAGE(!other, (other ? found.str() : ""));
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
        check_references(dealt, "card");
        check_acts(dealt);
        check_names(dealt, "en");
        for (const auto& [language, card_word] : {std::pair{"es", "tarjeta"}, std::pair{"fr", "carte"}}) {
            CAPTURE(std::string(language));
            dealt.deal(dealt.trip.units, language);
            check_references(dealt, card_word);
            check_names(dealt, language);
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
