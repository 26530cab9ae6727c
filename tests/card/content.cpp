// SPDX-License-Identifier: MIT
// What cards may say and must say, on the decks of ten trips: demos, finishes, eaters at risk, no thermometer.
#include "card/texts.hpp"
#include "facts/facts.hpp"
#include "heat/level.hpp"
#include "support/finding.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <variant>

using namespace holdwater;
using namespace holdwater::support;

namespace {

/// The whole numbers of °C and °F side by side: one °F for each °C, on the safe side.
void check_pairs(const Dealt& dealt) {
    std::map<int, std::set<int>> of;
    for (const auto& [celsius, fahrenheit] : pairs_of(dealt.deck)) {
        CAPTURE(celsius);
        CAPTURE(fahrenheit);
        const auto pairs = facts::facts().printed_pairs();
        const bool published = std::any_of(pairs.begin(), pairs.end(), [&, c = celsius, f = fahrenheit](const auto& p) {
            return p.celsius == c && p.fahrenheit == f;
        });
        if (published) {
            continue;  // a published limit stands as it is published; what was worked out, below
        }
        of[celsius].insert(fahrenheit);
        const double exact = celsius * 1.8 + 32.0;
        // What is above blood heat must be reached: not under it. What is below is air, or is to be cooled under.
        const bool safe = celsius >= 40 ? fahrenheit >= exact - 1e-9 : fahrenheit <= exact + 1e-9;
        CHECK(safe);
        CHECK(std::abs(fahrenheit - exact) < 1.0);
    }
    for (const auto& [celsius, fahrenheit] : of) {
        CAPTURE(celsius);
        CHECK(fahrenheit.size() == 1);
    }
    if (dealt.trip.units == units::System::both && dealt.reads()) {
        CHECK(of.size() >= 8);
    }
}

std::string hold_words(units::Duration hold) {
    return hold.si() < 120.0 ? std::to_string(static_cast<int>(hold.si())) + " s"
                             : std::to_string(static_cast<int>(hold.si() / 60.0)) + " min";
}

/// Without the one way in which such a food may be called safe: that it is not, until the fire.
std::string without_not_safe(std::string text) {
    const std::string denied = "not safe until";
    for (std::size_t at = text.find(denied); at != std::string::npos; at = text.find(denied)) {
        text.erase(at, denied.size());
    }
    return text;
}

/// A food that needs the fire is never called ready or safe, and its finish names food, core and time.
void check_finishes(const Dealt& dealt) {
    const std::regex good(R"(\b(ready|safe|safety)\b)", std::regex::icase);
    bool any = false;
    for (const plan::FoodPlan& food : dealt.plan.foods) {
        if (!food.standard.finish) {
            continue;
        }
        any = true;
        const safety::Finish& finish = *food.standard.finish;
        bool step = false;
        for (const card::Card& card : dealt.deck.cards) {
            for (const std::string& text : texts_of(card)) {
                CAPTURE(text);
                if (has(text, food.food->name)) {
                    CHECK_FALSE(std::regex_search(without_not_safe(text), good));
                }
                const bool is_step = has(text, food.food->name) && has(text, "out of the bag");
                step = step || is_step;
                if (is_step) {
                    CHECK((has(text, "°C") || has(text, "°F")));
                    CHECK(has(text, "min"));
                }
                if (is_step && finish.hold.si() > 0) {
                    CHECK(has(text, "for " + hold_words(finish.hold)));
                }
            }
        }
        CHECK(step);
    }
    if (!any) {
        return;
    }
    for (const std::string& text : texts_of(dealt.card("plan"))) {
        CHECK(text != "ready");  // the span of the bar
    }
    CHECK_FALSE(has(joined(texts_of(dealt.card("limits"))), "bath back"));
    const bool all = std::all_of(dealt.plan.foods.begin(), dealt.plan.foods.end(),
                                 [](const plan::FoodPlan& food) { return food.standard.finish.has_value(); });
    if (all) {
        for (const char* key : {"plan", "hold"}) {
            const std::string text = without_not_safe(joined(texts_of(dealt.card(key))));
            CAPTURE(text);
            CHECK_FALSE(std::regex_search(text, good));
        }
    }
}

/// Nobody reads anything: clock, litres and wax alone, and what was late is thrown away.
void check_clock_only(const Dealt& dealt) {
    const std::regex reading(R"(\b(read|reads|reading|readings)\b)", std::regex::icase);
    for (const std::string& text : texts_of(dealt.deck)) {
        CAPTURE(text);
        CHECK_FALSE(std::regex_search(text, reading));
        CHECK_FALSE(has(text, "over the fire"));
        CHECK_FALSE(std::regex_search(text, std::regex(R"(\b0\.0 L)")));
    }
    for (const card::Card& card : dealt.deck.cards) {
        for (const card::Block& block : card.blocks) {
            CHECK_FALSE(std::holds_alternative<card::Ladder>(block));
            CHECK_FALSE(std::holds_alternative<card::Curve>(block));
            if (const auto* table = std::get_if<card::Table>(&block);
                card.key == "limits" && table != nullptr && table->columns.size() == 2) {
                int boiled = 0;
                for (const auto& row : table->rows) {
                    // The one way out: a pour not much too late, by the plan's own figure.
                    const bool out = has(row.back(), "hard boil");
                    boiled += out ? 1 : 0;
                    CHECK((out || has(row.back(), "Throw it away")));
                    CHECK((!out || has(row.back(), "keep none")));
                }
                CHECK(boiled == (dealt.plan.late_pour ? 1 : 0));
            }
        }
    }
    const std::string top_up = joined(texts_of(dealt.card("topup")));
    for (const plan::TopUp& pour : dealt.plan.top_ups) {
        CHECK(has(top_up, pour.at.clock_24()));
    }
    const std::string all = joined(texts_of(dealt.deck));
    CHECK(has(all, "Leftovers: throw away"));
    // Without wax of its own a trip reads of it on Touch alone.
    for (const card::Card& card : dealt.deck.cards) {
        CAPTURE(card.key);
        if (!dealt.trip.boxes.front().wax_tell_tale && card.key != "touch") {
            CHECK_FALSE(has(joined(texts_of(card)), "wax"));
        }
    }
    CHECK(has(joined(texts_of(dealt.card("limits"))), "wax") == dealt.trip.boxes.front().wax_tell_tale);
}

/// How strict an action is, by its words.
int strictness(const std::string& action) {
    return has(action, "bin") ? 3 : has(action, "now") ? 2 : has(action, "next") ? 1 : 0;
}

int strictness(safety::FallAction action) {
    switch (action) {
        case safety::FallAction::none:
            return 0;
        case safety::FallAction::finish_and_eat_next:
            return 1;
        case safety::FallAction::finish_and_eat_now:
            return 2;
        case safety::FallAction::throw_away:
            return 3;
    }
    return 3;
}

/// The table says of every reading and time what the plan says of it, or something stricter: rows and columns that say
/// the same as a worse one are left out.
void check_morning(const Dealt& dealt) {
    bool found = false;
    const auto& blocks = dealt.card("night").blocks;
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        const auto* table = std::get_if<card::Table>(&blocks[b]);
        if (table == nullptr || table->columns.front().head != "it reads") {
            continue;
        }
        found = true;
        REQUIRE(table->rows.size() >= 2);
        REQUIRE(table->columns.size() >= 2);
        const std::vector<std::string> heads{"up\u00A0to 2\u00A0h", "up\u00A0to 4\u00A0h", "longer"};
        // The printed column that a time belongs to: the first that is not shorter; alone it stands for all.
        const auto column_of = [&](std::size_t time) {
            for (std::size_t c = 1; c + 1 < table->columns.size(); ++c) {
                if (std::find(heads.begin(), heads.end(), table->columns[c].head) - heads.begin() >=
                    static_cast<std::ptrdiff_t>(time)) {
                    return c;
                }
            }
            return table->columns.size() - 1;
        };
        for (const plan::MorningRow& row : dealt.plan.night.morning) {
            const auto printed = std::find_if(table->rows.begin(), table->rows.end() - 1, [&](const auto& line) {
                return std::stod(line.front()) <= row.reading.celsius() + 1e-9;
            });
            for (std::size_t time = 0; time < row.cells.size(); ++time) {
                CAPTURE(row.reading.celsius());
                CAPTURE(time);
                CHECK(strictness((*printed)[column_of(time)]) >= strictness(row.cells[time].action));
            }
        }
        CHECK(has(table->rows.back().front(), "below"));
        for (std::size_t c = 1; c < table->columns.size(); ++c) {
            CHECK(strictness(table->rows.back()[c]) == 3);
        }
        const auto* note = std::get_if<card::Note>(&blocks.at(b + 1));
        REQUIRE(note != nullptr);
        CHECK(has(note->text, "first every core to"));
    }
    CHECK(found == dealt.reads());
}

/// The ladder goes down to the last reading that is not for card Limits, and no line pours more than fits.
void check_ladder(const Dealt& dealt) {
    bool found = false;
    for (const card::Block& block : dealt.card("topup").blocks) {
        const auto* ladder = std::get_if<card::Ladder>(&block);
        if (ladder == nullptr) {
            continue;
        }
        found = true;
        if (units::first_of(dealt.trip.units) == units::System::us) {
            continue;  // the same rungs in other units
        }
        REQUIRE_FALSE(ladder->rungs.empty());
        const double lowest = std::stod(ladder->rungs.back().reading);
        CHECK(lowest >= dealt.plan.levels.read_floor.celsius() - 1e-9);
        CHECK(lowest < dealt.plan.levels.read_floor.celsius() + 1.0);
        for (const card::Ladder::Rung& rung : ladder->rungs) {
            CAPTURE(rung.reading);
            REQUIRE(rung.amounts.size() == ladder->right_heads.size());
            // The water down to its line, so much of it goes in below the highest level, or all that the pots give.
            const auto& inside = dealt.trip.boxes.front().inside;
            const double over = std::stod(rung.amounts.front()) * 1e-3 * inside[0].si() * inside[1].si() * 1e3;
            const trip::Fire& fire = dealt.trip.fire;
            const double pours =
                std::min(std::stod(rung.amounts.back()), units::in_litres(fire.pot * (fire.usable * fire.pots)));
            CHECK(pours <= over - 0.05 * units::in_litres(heat::room_in(inside)) / 0.95 + 1e-6);
        }
    }
    CHECK(found == dealt.reads());
}

/// Plan and Kitchen take the first piece out at the same time.
void check_sear(const Dealt& dealt) {
    const auto time_of = [&](const char* card, const std::string& what) {
        for (const card::Block& block : dealt.card(card).blocks) {
            if (const auto* steps = std::get_if<card::Steps>(&block)) {
                for (const card::Step& step : steps->steps) {
                    if (has(step.text, what)) {
                        return step.when;
                    }
                }
            }
        }
        return std::string("never");
    };
    if (dealt.plan.foods.size() == 1) {
        CHECK(time_of("plan", "First piece out") == time_of("kitchen", "First piece"));
    }
}

void check_always(const Dealt& dealt) {
    const std::string all = joined(texts_of(dealt.deck));
    CHECK(has(all, "Leftovers:"));
    CHECK(has(all, "Under 5, 65 or over, pregnant, ill"));
    CHECK(has(all, "Raw touches nothing cooked. Wash hands."));
    CHECK(has(all, "not bin bags"));
    CHECK(has(all, "string or tongs"));
    CHECK(has(all, "back on ice"));
    CHECK(has(all, "Cool running water 20 min"));
    const std::string caution = dealt.card("night").cautions.front().text;
    for (const char* word : {"tent", "hut", "awning", "kill", "Headache"}) {
        CHECK(has(caution, word));
    }
}

}  // namespace

TEST_CASE("on the cards of every trip: pairs agree, finishes are whole, clocks are enough, nothing is missing") {
    std::size_t finishes = 0;
    std::size_t by_clock = 0;
    std::size_t at_risk = 0;
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        const Dealt dealt(path);
        check_always(dealt);
        check_pairs(dealt);
        check_finishes(dealt);
        check_morning(dealt);
        check_ladder(dealt);
        check_sear(dealt);
        if (!dealt.reads()) {
            check_clock_only(dealt);
            ++by_clock;
        }
        at_risk += dealt.trip.at_risk ? 1 : 0;
        finishes += static_cast<std::size_t>(
            std::count_if(dealt.plan.foods.begin(), dealt.plan.foods.end(),
                          [](const plan::FoodPlan& food) { return food.standard.finish.has_value(); }));
    }
    CHECK(by_clock >= 2);
    CHECK(finishes >= 3);
    CHECK(at_risk >= 1);
}

TEST_CASE("liver is heated through for its own time on every card, and is for nobody at risk") {
    const Dealt dealt("tests/card/trips/liver.toml");
    const std::string limits = joined(texts_of(dealt.card("limits")));
    CHECK(has(limits, "75 °C (167 °F) for 2 min"));
    CHECK_FALSE(has(limits, "74 °C"));
    CHECK(has(limits, "pregnant, ill: none"));
    CHECK(has(joined(texts_of(dealt.card("night"))), "75 °C (167 °F) for 2 min"));
}

TEST_CASE("the Hold card tells each food its own thickest piece, and no food another's") {
    const Dealt two("tests/card/trips/minced-two-foods.toml");
    REQUIRE(two.plan.foods.size() == 2);
    const card::Card& hold = two.card("hold");
    // The caution speaks for both, so it has no figure; each ruler ends where its own food is too thick.
    CHECK(std::none_of(hold.cautions.front().text.begin(), hold.cautions.front().text.end(),
                       [](char c) { return c >= '0' && c <= '9'; }));
    CHECK(has(hold.cautions.front().text, "Thicker than its own ruler: split it."));
    std::size_t ruled = 0;
    for (const card::Block& block : hold.blocks) {
        if (const auto* const ruler = std::get_if<card::Ruler>(&block)) {
            const plan::FoodPlan& food = two.plan.foods.at(ruled++);
            REQUIRE(food.thickest.has_value());
            CHECK(has(ruler->title, food.food->name));
            CHECK(ruler->too_thick_mm <= units::in_millimetres(*food.thickest) + 5.0 + 1e-6);  // a tick each 5 mm
        }
    }
    CHECK(ruled == 2);
    // One food alone: in the caution.
    const Dealt one("layouts/trips/trail-crew.toml");
    const std::string caution = one.card("hold").cautions.front().text;
    std::smatch number;
    REQUIRE(std::regex_search(caution, number, std::regex(R"(Over (\d+))")));
    CHECK(std::stod(number[1]) <= units::in_millimetres(*one.plan.foods.front().thickest) + 1e-6);
}

TEST_CASE("what-if questions stand on Night with what to do, on Limits with what it means if it was not done") {
    const Dealt dealt("tests/plan/trips/winter-high.toml");
    const std::string night = joined(texts_of(dealt.card("night")));
    const std::string limits = joined(texts_of(dealt.card("limits")));
    CHECK(has(night, "What if"));
    CHECK(has(night, "storm: holds. Leave it "));
    CHECK(has(night, "wet wood: top up just before"));
    CHECK(has(limits, "wet wood, no top-up before: core to "));
    CHECK_FALSE(has(limits, "storm"));
    const Dealt without("layouts/trips/class-day.toml");
    CHECK_FALSE(has(joined(texts_of(without.deck)), "What if"));
}

TEST_CASE("a thickness in inches is never more than the millimetres whose hold time stands beside it") {
    int rows = 0;
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        const Dealt dealt(path);
        if (dealt.trip.units != units::System::both) {
            continue;
        }
        for (const card::Block& block : dealt.card("hold").blocks) {
            const auto* table = std::get_if<card::Table>(&block);
            if (table == nullptr) {
                continue;
            }
            for (const auto& row : table->rows) {
                if (row.size() < 3 || row[0].empty()) {
                    continue;  // the row of Fahrenheit
                }
                double inches = 0.0;
                std::istringstream parts(std::regex_replace(row[1], std::regex("\u00A0"), " "));
                for (std::string part; parts >> part;) {
                    const auto slash = part.find('/');
                    inches += slash == std::string::npos
                                  ? std::stod(part)
                                  : std::stod(part.substr(0, slash)) / std::stod(part.substr(slash + 1));
                }
                CAPTURE(row[0]);
                CAPTURE(row[1]);
                CHECK(inches * 25.4 <= std::stod(row[0]) + 1e-9);
                CHECK(inches * 25.4 > std::stod(row[0]) - 3.3);
                ++rows;
            }
        }
    }
    CHECK(rows > 20);
}
