// SPDX-License-Identifier: MIT
// The Log and the Kitchen card: the plan's times and amounts on their safe side, and only what the trip asks for.
#include "card/figures/numbers.hpp"
#include "card/texts.hpp"
#include "support/finding.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <regex>
#include <variant>

using namespace holdwater;
using namespace holdwater::support;

namespace {

std::string text_of(const Dealt& dealt, const char* key) {
    return joined(texts_of(dealt.card(key)));
}

/// As the deck's system of units writes it.
std::string clock(const Dealt& dealt, units::LocalTime t) {
    return dealt.trip.units == units::System::us ? t.clock_12() : t.clock_24();
}

/// The number of the first match of a pattern with one.
double number_in(const std::string& text, const std::string& pattern) {
    std::smatch found;
    CAPTURE(text);
    CAPTURE(pattern);
    REQUIRE(std::regex_search(text, found, std::regex(pattern)));
    return std::stod(found[1]);
}

const card::WriteIn& grid_of(const card::Card& card) {
    return std::get<card::WriteIn>(card.blocks.front());
}

void check_log(const Dealt& dealt) {
    const card::WriteIn& grid = grid_of(dealt.card("log"));
    const auto rows_with = [&](const std::string& what) {
        return std::count_if(grid.first_column.begin(), grid.first_column.end(),
                             [&](const std::string& row) { return has(row, what); });
    };
    for (const plan::TopUp& top_up : dealt.plan.top_ups) {
        // A full box is swapped: as much out as in.
        const bool full = units::in_litres(top_up.boiling - top_up.out) < 1.0;
        CHECK(rows_with(clock(dealt, top_up.at) + (full ? " swap" : " top up")) == 1);
    }
    CHECK(rows_with(clock(dealt, dealt.plan.fill.food_in) + " food in") == 1);
    CHECK(rows_with("fire") == 1);
    CHECK(rows_with("filled") == 1);
    CHECK(rows_with(clock(dealt, dealt.trip.serve) + " eat") == 1);
    const auto cooked = std::count_if(dealt.plan.foods.begin(), dealt.plan.foods.end(),
                                      [](const plan::FoodPlan& food) { return !food.standard.kept_hot; });
    CHECK(rows_with("ready") + rows_with("centre") >= cooked);
    CHECK(grid.first_column.size() >= 11);
    const auto column = [&](const char* head) {
        return std::count(grid.heads.begin(), grid.heads.end(), std::string(head)) == 1;
    };
    CHECK(column("time"));
    CHECK(column(dealt.trip.units == units::System::us ? "quarts" : "litres"));
    // Two boxes a top-up: what was read only after it hides how far the bath had fallen.
    CHECK(column("before") == dealt.reads());
    CHECK(column("after") == dealt.reads());
    CHECK(column("wax") == (!dealt.reads() && dealt.trip.boxes.front().wax_tell_tale));
    const std::string text = text_of(dealt, "log");
    CHECK(has(text, "left over"));
    CHECK(has(text, "coldest") == dealt.reads());
}

/// Amounts are rounded up, what each eater has is rounded down.
void check_amounts(const Dealt& dealt, const std::string& text) {
    const plan::Provisions& around = dealt.plan.around;
    const double fetch = number_in(text, R"(Water\n(\d+) L)");
    CHECK(fetch >= units::in_litres(around.water.fetch) - 1e-9);
    CHECK(fetch < units::in_litres(around.water.fetch) + 1.0);
    const double boil = number_in(text, R"(Boil at most (\d+\.\d) L)");
    CHECK(boil >= units::in_litres(around.water.boil_most) - 1e-9);
    CHECK(boil < units::in_litres(around.water.boil_most) + 0.5);
    const double each = number_in(text, R"(Food: (?:only )?(\d+) g)");
    CHECK(each <= around.portions.each.low.si() * 1e3 + 1e-9);
    CHECK(each > around.portions.each.low.si() * 1e3 - 5.0);
    if (around.fuel) {
        const bool wood = around.fuel->fuel == facts::Fuel::wood;
        const double fuel = number_in(text, wood ? R"(Wood\n(\d+\.\d) kg)" : R"((?:Propane|Butane)\n(\d+) g)");
        CHECK(fuel * (wood ? 1.0 : 1e-3) >= around.fuel->mass.high.si() - 1e-9);
    }
    if (around.ice && around.ice->card.si() > 0.0) {
        CHECK(number_in(text, R"(Ice\n(\d+\.\d) kg)") >= around.ice->drained.high.si() - 1e-9);
    }
}

void check_kitchen(const Dealt& dealt) {
    const std::string text = text_of(dealt, "packing");
    CAPTURE(text);
    const plan::Provisions& around = dealt.plan.around;
    CHECK(has(text, "Keep raw food off cooked food. Wash hands. Food and waste far from animals."));
    if (dealt.trip.units != units::System::us) {
        check_amounts(dealt, text);
    }
    using Verdict = plan::Portions::Verdict;
    const bool enough = around.portions.verdict == Verdict::hearty || around.portions.verdict == Verdict::enough;
    CHECK(has(text, "Food: only") == !enough);
    int pieces = 0;
    for (const plan::FoodPlan& food : dealt.plan.foods) {
        pieces += food.food->pieces;
    }
    CHECK(has(text, "not bin bags: " + std::to_string(pieces) + "; in lake water " + std::to_string(2 * pieces)));
    // Only what the trip asks for.
    CHECK(has(text, "Ice") == dealt.trip.journey.has_value());
    for (const plan::SideStart& side : around.sides.list) {
        CHECK(has(text_of(dealt, "plan"), side.begin.clock_24() + " Put on " + side.name));
    }
    CHECK(has(text, "Thermometer") == dealt.reads());
    CHECK(has(text_of(dealt, "plan"), "Sear") == !around.sear.foods.empty());
}

void check_leftovers(const Dealt& dealt) {
    const std::string text = text_of(dealt, "packing");
    CAPTURE(text);
    if (!dealt.reads()) {
        CHECK(has(text, "Throw them away."));
        CHECK_FALSE(has(text, "ice slush"));
        return;
    }
    CHECK(has(text, "Into the cold within 1 h of leaving the bath."));
    CHECK(has(text, "in 2 h, "));
    CHECK(has(text, "in 6 h, else throw away."));
    CHECK(has(text, "no closed bag"));
    const bool uk = dealt.trip.rules == facts::from_name<facts::Ruleset>("uk");
    const bool rice = std::any_of(dealt.trip.foods.begin(), dealt.trip.foods.end(),
                                  [](const trip::Food& food) { return food.kind == "rice-cooked"; });
    CHECK(has(text, rice ? "Keep 1 day at" : uk ? "Keep 2 days at" : "Keep 3 days at"));
    CHECK(has(text, "Reheat once, to "));
    if (dealt.trip.units != units::System::both) {
        return;  // the same code writes one system or two
    }
    CHECK(has(text, "From the bath: 21 °C (70 °F) in 2 h, 5 °C (41 °F) in 6 h, else"));
    for (const answer::ThickestSlice& slice : dealt.plan.around.leftovers.slices) {
        if (slice.contact != facts::Contact::free) {
            continue;
        }
        const char* where = slice.medium == answer::Medium::slush        ? R"(at most: ice slush (\d+) mm)"
                            : slice.medium == answer::Medium::loose_snow ? R"(loose snow (\d+) mm)"
                                                                         : R"(air under -?\d+ °C \([^)]*\) (\d+) mm)";
        std::smatch found;
        const bool there = std::regex_search(text, found, std::regex(where));
        CHECK(there == slice.thickest.has_value());
        if (slice.medium == answer::Medium::still_air) {
            CHECK(has(text, "never in air") == !there);
        }
        if (there && slice.thickest) {
            CHECK(std::stod(found[1]) <= units::in_millimetres(*slice.thickest) + 1e-6);
        }
    }
}

}  // namespace

TEST_CASE("Log and Kitchen of every deck say what the plan says, no more and no less") {
    bool with_ice = false;
    bool without = false;
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        const Dealt dealt(path);
        check_log(dealt);
        check_kitchen(dealt);
        check_leftovers(dealt);
        (dealt.trip.journey ? with_ice : without) = true;
    }
    CHECK(with_ice);
    CHECK(without);
}

TEST_CASE("nothing is taken out for the sear before it is surely ready, and a tied roast asks for soaked string") {
    trip::Trip trip = demo_trip("frosty-weekend");
    trip.foods.front().cut = facts::Cut::tied;
    trip.serve = trip.from.after(units::hours(9));
    trip.sleep.reset();
    const Dealt dealt(trip);
    CHECK(has(text_of(dealt, "packing"), "String: soak it before you tie"));
    const std::string text = text_of(dealt, "plan");
    CAPTURE(text);
    std::smatch out;
    REQUIRE(std::regex_search(text, out, std::regex(R"((\d\d:\d\d) First piece out)")));
    const units::LocalTime latest = std::max(dealt.plan.around.sear.take_out, dealt.plan.foods.front().ready());
    CHECK(out[1] == std::min(latest, dealt.trip.serve).clock_24());
    CHECK_FALSE(has(text_of(Dealt("layouts/trips/class-day.toml"), "packing"), "String"));
}

TEST_CASE("ice slush between two half degrees proves no more of the thermometer than the plan was given") {
    trip::Trip trip = demo_trip("class-day");
    trip.foods.front().tolerance = units::kelvins(6);  // room for a poor thermometer
    for (const double error : {0.4, 0.5, 0.8, 1.3}) {
        CAPTURE(error);
        trip.boxes.front().thermometer = units::kelvins(error);
        trip.units = units::System::metric;
        const std::string text = text_of(Dealt(trip), "packing");
        std::smatch ends;
        REQUIRE(std::regex_search(text, ends, std::regex(R"(ice slush (-?[\d.]+) to ([\d.]+) °C)")));
        CHECK(std::stod(ends[1]) >= -error - 1e-9);
        CHECK(std::stod(ends[2]) <= error + 1e-9);
        CHECK(std::stod(ends[2]) > error - 0.5);
    }
}

TEST_CASE("every number of Touch and Kitchen that has a name stands on its card as printed") {
    const auto words =
        words::Words::read(file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/words/en.toml"), "en.toml");
    REQUIRE(words.ok());
    int seen = 0;
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        const Dealt dealt(path);
        for (const card::CardNumber& number : card::card_numbers({dealt.plan, *words})) {
            if (number.card != "touch" && number.card != "packing") {
                continue;
            }
            CAPTURE(number.name);
            CAPTURE(number.printed);
            std::string printed = number.printed;
            const bool band = number.name.rfind("stung_", 0) == 0;
            if (band) {  // "63–90": the unit stands above
                printed.erase(printed.find("\u00A0"));
            }
            for (std::size_t at = printed.find("\u00A0"); at != std::string::npos; at = printed.find("\u00A0")) {
                printed.replace(at, 2, " ");
            }
            CHECK(has(text_of(dealt, number.card.c_str()), printed));
            CHECK_FALSE(number.quantile.empty());
            CHECK_FALSE(number.rounding.empty());
            CHECK_FALSE(number.source.empty());
            ++seen;
        }
    }
    CHECK(seen >= 150);
}
