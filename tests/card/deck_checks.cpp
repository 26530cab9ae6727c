// SPDX-License-Identifier: MIT
#include "card/deck_checks.hpp"

#include "card/word_count.hpp"
#include "support/card_texts.hpp"
#include "support/printed.hpp"
#include "support/printed_plan.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <variant>

namespace holdwater::support {

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

void check_references(const card::Deck& deck, const std::string& card_word) {
    const std::regex reference("\\b" + card_word + R"( (\d+), (\S+))");
    int found = 0;
    for (const std::string& raw : texts_of(deck)) {
        const std::string text = as_read(raw);
        for (std::sregex_iterator it(text.begin(), text.end(), reference); it != std::sregex_iterator{}; ++it) {
            CAPTURE(text);
            const int number = std::stoi((*it)[1]);
            const auto card = std::find_if(deck.cards.begin(), deck.cards.end(),
                                           [&](const card::Card& one) { return one.number == number; });
            REQUIRE(card != deck.cards.end());
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

void check_acts(const plan::Plan& planned, const card::Deck& deck) {
    std::string plan;
    for (const card::Block& block : card_named(deck, "plan").blocks) {
        if (const auto* steps = std::get_if<card::Steps>(&block)) {
            for (const card::Step& step : steps->steps) {
                plan += as_read(step.when + " " + step.text) + "\n";
            }
        }
    }
    const auto clock = [&](units::LocalTime at) {
        return units::first_of(planned.trip->units) == units::System::us ? at.clock_12() : at.clock_24();
    };
    CAPTURE(plan);
    const auto line = [&](units::LocalTime at, const std::string& what) {
        CAPTURE(what);
        const std::regex row(clock(at) + R"([^\n]*)" + what);
        CHECK(std::regex_search(plan, row));
    };
    line(planned.fill.light_fire, "Light the fire");
    line(planned.fill.food_in, plan::all_in_at_once(planned) ? "Put the food in" : " in");
    for (const plan::TopUp& top_up : planned.top_ups) {
        line(top_up.light_fire, "Light the fire");
        line(top_up.at, "Top up");
    }
    for (const plan::SideStart& side : planned.around.sides.list) {
        line(side.begin, "Put on");
    }
    for (const plan::FoodPlan& food : planned.foods) {
        if (food.finishing) {
            line(food.leaves(), "out of the bag");
        }
    }
    line(planned.trip->serve, "Eat");
    if (planned.waits_until > planned.trip->serve) {
        CHECK(std::regex_search(plan, std::regex("Guests late[^\\n]*until " + clock(planned.waits_until))));
    }
}

void check_names(const card::Deck& deck, const std::string& language) {
    const std::regex& others = other_names(language);
    for (const card::Card& card : deck.cards) {
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

}  // namespace holdwater::support
