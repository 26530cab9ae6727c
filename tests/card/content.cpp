// SPDX-License-Identifier: MIT
// What cards may say and must say, on the decks of ten trips: demos, finishes, eaters at risk, no thermometer.
#include "card/figures/numbers.hpp"
#include "card/texts.hpp"
#include "facts/facts.hpp"
#include "heat/level.hpp"
#include "support/files.hpp"
#include "support/finding.hpp"
#include "support/printed.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <variant>

using namespace holdwater;
using namespace holdwater::support;

namespace {

bool is_published(int celsius, int fahrenheit) {
    const auto pairs = facts::facts().printed_pairs();
    return std::any_of(pairs.begin(), pairs.end(),
                       [&](const auto& pair) { return pair.celsius == celsius && pair.fahrenheit == fahrenheit; });
}

/// The whole numbers of °C and °F side by side: one °F for each °C, on the safe side.
void check_pairs(const Dealt& dealt) {
    std::map<int, std::set<int>> of;
    for (const auto& [celsius, fahrenheit] : pairs_of(dealt.deck)) {
        CAPTURE(celsius);
        CAPTURE(fahrenheit);
        if (is_published(celsius, fahrenheit)) {
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
}

/// A pair is one figure in two units: it stands in the list of figures so, published or with a value that the first is
/// a rounding of. Whatever one acts on stands in both units, but where there is no thermometer to read.
void check_pairs_are_figures(const Dealt& dealt, const words::Words& words) {
    std::vector<card::CardNumber> degrees;
    for (const card::CardNumber& number : card::card_numbers({dealt.plan, words})) {
        if (number.unit == card::value_unit::celsius.printed) {
            degrees.push_back(number);
        }
    }
    for (const auto& [celsius, fahrenheit] : pairs_of(dealt.deck)) {
        CAPTURE(celsius);
        CAPTURE(fahrenheit);
        const auto listed = [&, c = celsius](const std::string& figure) {
            return std::any_of(degrees.begin(), degrees.end(), [&](const card::CardNumber& number) {
                return has(as_read(number.printed), figure) && std::abs(number.value - c) <= 1.0;
            });
        };
        const bool both = listed(fmt::format("{} °C", celsius)) && listed(fmt::format("{} °F", fahrenheit));
        CHECK((both || is_published(celsius, fahrenheit)));
    }
    std::size_t acted_on = 0;
    for (const card::CardNumber& number : degrees) {
        // A line of the timeline has room for the unit that comes first; the scale of Reading has both beside it.
        const bool condition = number.name.starts_with("ready_if") || number.name.starts_with("late_bath");
        const bool read = number.card != "touch" && !condition;
        if (dealt.trip.units == units::System::both && !number.detail && number.stands && read) {
            CAPTURE(number.card);
            CAPTURE(number.name);
            CAPTURE(number.printed);
            CHECK((has(number.printed, "°C") && has(number.printed, "°F")));
            ++acted_on;
        }
    }
    CHECK((dealt.trip.units != units::System::both || !dealt.reads() || acted_on > 0));
}

std::string hold_words(units::Duration hold) {
    return hold.si() < 120.0 ? std::to_string(static_cast<int>(hold.si())) + " s"
                             : std::to_string(static_cast<int>(hold.si() / 60.0)) + " min";
}

/// Without the one way in which such a food may be called ready: that it is so only by its centre, over the fire.
std::string without_condition(std::string text) {
    const std::string denied = "Ready only when each centre reads";
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
                    CHECK_FALSE(std::regex_search(without_condition(text), good));
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
    CHECK_FALSE(has(joined(texts_of(dealt.card("trouble"))), "bath back"));
    const bool all = std::all_of(dealt.plan.foods.begin(), dealt.plan.foods.end(),
                                 [](const plan::FoodPlan& food) { return food.standard.finish.has_value(); });
    if (all) {
        CHECK(std::none_of(dealt.deck.cards.begin(), dealt.deck.cards.end(),
                           [](const card::Card& card) { return card.key == "hold"; }));  // no hours: the fire decides
        for (const char* key : {"plan", "packing"}) {
            const std::string text = without_condition(joined(texts_of(dealt.card(key))));
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
            CHECK_FALSE(std::holds_alternative<card::Thermometer>(block));
            CHECK_FALSE(std::holds_alternative<card::Curve>(block));
        }
        CHECK(card.key != "reading");
    }
    // Whatever went wrong with the bath once food is in is thrown away, but for the one way out: a pour not much too
    // late, by the plan's own figure.
    const std::set<std::string> people{"Burn", "Headache", "Fire late"};
    int boiled = 0;
    int thrown = 0;
    for (const card::Block& block : dealt.card("trouble").blocks) {
        if (const auto* steps = std::get_if<card::Steps>(&block)) {
            for (const card::Step& row : steps->steps) {
                if (people.contains(row.when)) {
                    continue;
                }
                CAPTURE(row.when);
                const bool out = has(row.text, "boil the food hard");
                boiled += out ? 1 : 0;
                thrown += out ? 0 : 1;
                const std::string text = as_read(row.text);
                CHECK((out || has(text, "hrow it away")));
                CHECK((!out || has(text, "keep none")));
            }
        }
    }
    CHECK(boiled == (dealt.plan.late_pour ? 1 : 0));
    CHECK(thrown >= (dealt.plan.top_ups.empty() ? 3 : 5));  // no pour is late before the food is in
    const std::string top_up = joined(texts_of(dealt.card("plan")));
    for (const plan::TopUp& pour : dealt.plan.top_ups) {
        CHECK(has(top_up, pour.at.clock_24()));
    }
    const std::string all = joined(texts_of(dealt.deck));
    CHECK(has(joined(texts_of(dealt.card("packing"))), "Throw them away."));
    // Without wax of its own a trip reads of it on Touch alone.
    for (const card::Card& card : dealt.deck.cards) {
        CAPTURE(card.key);
        if (!dealt.trip.boxes.front().wax_tell_tale && card.key != "touch") {
            CHECK_FALSE(has(joined(texts_of(card)), "wax"));
        }
    }
    CHECK(has(joined(texts_of(dealt.card("trouble"))), "Wax") == dealt.trip.boxes.front().wax_tell_tale);
}

/// How strict an action is, by its words.
int strictness(const std::string& action) {
    return has(action, "throw") ? 3 : has(action, ", eat") ? 2 : has(action, "heat") ? 1 : 0;
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

/// The thermometer says of every reading below the floor and every time what the plan says of it, or something
/// stricter: rows and columns that say the same as a worse one are left out.
void check_fallen(const Dealt& dealt) {
    if (!dealt.reads()) {
        return;
    }
    const card::Thermometer::Section* found = nullptr;
    for (const card::Block& block : dealt.card("reading").blocks) {
        const auto* scale = std::get_if<card::Thermometer>(&block);
        if (scale != nullptr && !scale->sections.front().bar.empty()) {
            found = &scale->sections.front();
        }
    }
    REQUIRE(found != nullptr);
    const std::vector<std::string> heads{"under 2\u00A0h", "under 4\u00A0h", "longer, unknown"};
    const std::size_t columns = std::max<std::size_t>(found->heads.size(), 1);
    // The printed column that a time belongs to: the first that is not shorter; alone it stands for all.
    const auto column_of = [&](std::size_t time) {
        for (std::size_t c = 0; c + 1 < columns; ++c) {
            const auto place = std::find_if(heads.begin(), heads.end(), [&](const std::string& head) {
                return as_read(head) == as_read(found->heads[c]);
            });
            REQUIRE(place != heads.end());
            if (place - heads.begin() >= static_cast<std::ptrdiff_t>(time)) {
                return c;
            }
        }
        return columns - 1;
    };
    for (const plan::MorningRow& row : dealt.plan.night.morning) {
        const auto printed = std::find_if(found->rows.begin(), found->rows.end() - 1,
                                          [&](const auto& line) { return line.at <= row.reading.celsius() + 1e-9; });
        for (std::size_t time = 0; time < row.cells.size(); ++time) {
            CAPTURE(row.reading.celsius());
            CAPTURE(time);
            CHECK(strictness(printed->cells.at(column_of(time))) >= strictness(row.cells[time].action));
        }
        if (units::first_of(dealt.trip.units) == units::System::metric && printed != found->rows.end() - 1) {
            CHECK(std::stod(printed->reading) <= row.reading.celsius() + 1e-9);
        }
    }
    CHECK(has(found->rows.back().reading, "below"));
    for (const card::Text& cell : found->rows.back().cells) {
        CHECK(strictness(cell) == 3);
    }
    CHECK(has(joined(texts_of(dealt.card("reading"))), "each centre to"));
}

/// The thermometer goes down to the last reading above the floor, and no line pours more than fits.
void check_ladder(const Dealt& dealt) {
    if (!dealt.reads() || units::first_of(dealt.trip.units) == units::System::us) {
        return;  // the same rungs in other units
    }
    std::vector<std::vector<card::Text>> rungs;
    for (const card::Block& block : dealt.card("reading").blocks) {
        if (const auto* table = std::get_if<card::Table>(&block)) {
            rungs = table->rows;
        }
    }
    REQUIRE(!rungs.empty());
    // The last is for all that is colder, worked out at the last reading above the floor.
    const units::Temperature floor = dealt.plan.levels.read_floor;
    CHECK(dealt.plan.ladder.back().reading >= floor - units::kelvins(1e-9));
    CHECK(dealt.plan.ladder.back().reading < floor + units::kelvins(1));
    CHECK(rungs.back().front() == (rungs.size() > 1 ? "less" : "any"));
    double above = 1e9;
    for (const std::vector<card::Text>& rung : rungs) {
        CAPTURE(rung.front());
        REQUIRE(rung.size() == 3);
        if (&rung != &rungs.back()) {
            CHECK(std::stod(rung.front()) < above);
            above = std::stod(rung.front());
        }
        // The water down to its line, so much of it goes in below the highest level, or all that the pots give.
        const auto& inside = dealt.trip.boxes.front().inside;
        const double over = std::stod(rung[1]) * 1e-3 * inside[0].si() * inside[1].si() * 1e3;
        const trip::Fire& fire = dealt.trip.fire;
        const double pours = std::min(std::stod(rung[2]), units::in_litres(fire.pot * (fire.usable * fire.pots)));
        CHECK(pours <= over - 0.05 * units::in_litres(heat::room_in(inside)) / 0.95 + 1e-6);
    }
}

/// The first piece comes out when the plan says.
void check_sear(const Dealt& dealt) {
    if (dealt.plan.foods.size() != 1 || dealt.plan.around.sear.foods.empty()) {
        return;
    }
    std::string when;
    for (const card::Block& block : dealt.card("plan").blocks) {
        if (const auto* steps = std::get_if<card::Steps>(&block)) {
            for (const card::Step& step : steps->steps) {
                when = has(step.text, "First piece out") ? step.when : when;
            }
        }
    }
    const units::LocalTime latest = std::max(dealt.plan.around.sear.take_out, dealt.plan.foods.front().ready());
    if (dealt.trip.units != units::System::us) {
        CHECK(has(when, std::min(latest, dealt.trip.serve).clock_24()));
    }
}

void check_always(const Dealt& dealt) {
    const std::string all = joined(texts_of(dealt.deck));
    CHECK(has(all, "Leftovers"));
    CHECK(has(all, "under 5, 65 or over, pregnant, weak immune system"));
    CHECK(has(all, "Keep raw food off cooked food. Wash hands."));
    CHECK(has(all, "not bin bags"));
    CHECK(has(all, "string or tongs"));
    CHECK(has(all, dealt.plan.around.frost ? "not in frost" : "Back on ice"));
    CHECK(has(all, "Cool running water 20 min"));
    std::string cautions;
    for (const char* key : {"one", "night"}) {
        for (const card::Card& card : dealt.deck.cards) {
            if (card.key != key) {
                continue;
            }
            std::string caution;
            for (const card::Block& block : card.blocks) {
                if (const auto* one = std::get_if<card::Caution>(&block)) {
                    caution += one->text;
                }
            }
            for (const char* word : {"tent", "hut", "awning", "monoxide kills", "Headache"}) {
                CAPTURE(key);
                CHECK(has(caution, word));
            }
            cautions += caution;
        }
    }
    CHECK_FALSE(cautions.empty());
}

}  // namespace

TEST_CASE("on the cards of every trip: pairs agree, finishes are whole, clocks are enough, nothing is missing") {
    std::size_t finishes = 0;
    std::size_t by_clock = 0;
    std::size_t at_risk = 0;
    const auto words = words::Words::read(source_text("layouts/words/en.toml"), "en.toml").value();
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        const Dealt dealt(path);
        check_always(dealt);
        check_pairs(dealt);
        check_pairs_are_figures(dealt, words);
        check_finishes(dealt);
        check_fallen(dealt);
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
    const std::string trouble = joined(texts_of(dealt.card("trouble")));
    CHECK(has(trouble, "75 °C (167 °F) for 2 min"));
    CHECK_FALSE(has(trouble, "74 °C"));
    CHECK(has(joined(texts_of(dealt.card("one"))), "weak immune system): nothing from the box"));
    CHECK(has(joined(texts_of(dealt.card("reading"))), "75 °C (167 °F) for 2 min"));
    CHECK_FALSE(has(joined(texts_of(dealt.card("reading"))), "74 °C"));
}

namespace {

/// The foods of a trip with bars on Hold, each its own; what is finished over the fire leaves by Plan and has none.
std::size_t foods_with_bars(const Dealt& dealt) {
    std::vector<const plan::FoodPlan*> foods;
    for (const plan::FoodPlan& food : dealt.plan.foods) {
        if (!food.standard.finish) {
            foods.push_back(&food);
        }
    }
    const card::Card& hold = dealt.card("hold");
    std::size_t with_steps = 0;
    for (const card::Block& block : hold.blocks) {
        if (const auto* const stairs = std::get_if<card::Staircase>(&block)) {
            const plan::FoodPlan& food = *foods.at(with_steps++);
            REQUIRE(food.thickest.has_value());
            CHECK(has(stairs->title, food.food->name));
            CHECK(std::regex_search(as_read(stairs->too_thick), std::regex(R"(Over \d+ mm.*: cut it thinner\.)")));
            // A bar for each thickness of the table, with that in its row, and none beyond what is allowed.
            std::vector<double> bars;
            for (std::size_t i = 0; i < stairs->bars.size(); ++i) {
                if (stairs->bars[i] > 0.0) {
                    bars.push_back(stairs->bars[i]);
                    CHECK(has(stairs->table.rows.at(i).front(), std::to_string(std::lround(stairs->bars[i]))));
                }
            }
            REQUIRE(bars.size() == food.hold.thicknesses.size());
            for (std::size_t i = 0; i < bars.size(); ++i) {
                CHECK(std::abs(bars[i] - units::in_millimetres(food.hold.thicknesses[i])) < 1e-9);
            }
            CHECK(bars.back() <= units::in_millimetres(*food.thickest) + 1e-6);
            // Where not all bars have room, the last names the thickest that has a row.
            std::smatch number;
            REQUIRE(std::regex_search(stairs->longer, number, std::regex(R"(Over (\d+))")));
            CHECK(std::stod(number[1]) <= units::in_millimetres(*food.thickest) + 1e-6);
        }
    }
    CHECK(with_steps == foods.size());
    return with_steps;
}

}  // namespace

TEST_CASE("the Hold card tells each food its own thickest piece, and no food another's") {
    const Dealt minced("tests/card/trips/minced-two-foods.toml");
    CHECK(foods_with_bars(minced) == 1);
    CHECK(has(joined(texts_of(minced.card("hold"))), "minced beef rolls: no hours. It leaves by card 2, Plan"));
    CHECK(foods_with_bars(Dealt("tests/plan/trips/two-meals.toml")) == 2);
}

TEST_CASE("what-if questions stand on Trouble with what to do, then what it means if it was not done") {
    const Dealt dealt("tests/plan/trips/winter-high.toml");
    const std::string trouble = joined(texts_of(dealt.card("trouble")));
    CHECK(has(trouble, "What if"));
    CHECK(has(trouble, "storm: holds. Leave it "));
    CHECK(has(trouble, "wet wood: top up just before"));
    CHECK(has(trouble, "wet wood, no top-up before: centre to "));
    CHECK_FALSE(has(trouble, "storm, no top-up"));
    const Dealt without("layouts/trips/class-day.toml");
    CHECK_FALSE(has(joined(texts_of(without.deck)), "What if"));
}

TEST_CASE("a thickness in inches is never more than the millimetres whose hold time stands beside it") {
    int rows = 0;
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        const Dealt dealt(path);
        if (dealt.trip.units != units::System::both ||
            std::none_of(dealt.deck.cards.begin(), dealt.deck.cards.end(),
                         [](const card::Card& card) { return card.key == "hold"; })) {
            continue;  // nothing on it has a thickness to hold for
        }
        for (const card::Block& block : dealt.card("hold").blocks) {
            const auto* const stairs = std::get_if<card::Staircase>(&block);
            if (stairs == nullptr) {
                continue;
            }
            for (const auto& row : stairs->table.rows) {
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
