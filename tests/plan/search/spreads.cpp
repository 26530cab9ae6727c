// SPDX-License-Identifier: MIT
// Laws of what is not known: a wider spread, any of them, never loosens what a card says; and the widths do work.
#include "facts/read_facts.hpp"
#include "plan/advice/remedy.hpp"
#include "plan/result/hold_table.hpp"
#include "plan/result/night.hpp"
#include "plan/result/summary.hpp"
#include "plan/search/schedule.hpp"
#include "support/borrowed.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

using namespace holdwater;

namespace {

/// The facts with these spreads widened about their middle by a factor; what cannot be negative stays so.
facts::Facts widened(const std::vector<std::string>& keys, double factor) {
    std::vector<std::string> texts;
    std::vector<facts::Document> documents;
    for (const facts::Document& document : facts::embedded_documents()) {
        std::string text(document.text);
        for (const std::string& key : keys) {
            const auto at = text.find("[[spread]]\nkey = \"" + key + "\"");
            if (at == std::string::npos) {
                continue;
            }
            const auto low_at = text.find("\nlow = ", at);
            const auto end = text.find("\nunit", low_at);
            const facts::Spread& spread = facts::facts().spread(key);
            const bool log = spread.shape == facts::SpreadShape::lognormal;
            const auto scale = [log](double x) { return log ? std::log(x) : x; };
            const auto back = [log](double x) { return log ? std::exp(x) : x; };
            const double middle = (scale(spread.low) + scale(spread.high)) / 2;
            const double half = (scale(spread.high) - scale(spread.low)) / 2 * factor;
            double low = back(middle - half);
            if (spread.low >= 0.0) {
                low = std::max(low, 0.0);
            }
            const auto number = [](double x) {
                std::string digits(32, '\0');
                digits.resize(static_cast<std::size_t>(std::snprintf(digits.data(), digits.size(), "%.9e", x)));
                return digits;
            };
            text.replace(low_at, end - low_at, "\nlow = " + number(low) + "\nhigh = " + number(back(middle + half)));
        }
        texts.push_back(std::move(text));
        documents.push_back({document.name, {}});
    }
    for (std::size_t i = 0; i < texts.size(); ++i) {
        documents[i].text = texts[i];
    }
    auto read = facts::read_facts(documents);
    REQUIRE(read.ok());
    return std::move(read).value();
}

/// What the cards say of one fixed schedule, under the facts in force.
struct Said {
    double holds, ready, peak, come_up, alone, waits, hold, litres;
    std::vector<double> below;  // of the morning rows
};

Said said_of(const trip::Trip& trip, const plan::Schedule& schedule) {
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const plan::Ensemble ensemble(*setup, {1024, 1});
    const auto results = plan::simulate(ensemble, schedule);
    const plan::FoodPlan food = plan::food_plan(ensemble, results, 0);
    std::vector<double> holds;
    std::vector<units::Volume> litres;
    for (const plan::ScenarioResult& one : results) {
        holds.push_back(one.failed ? 0.0 : 1.0);
        litres.push_back(one.boiling.empty() ? units::Volume{0} : one.boiling.front());
    }
    const plan::LeftBoxes boxes(ensemble, schedule);
    const plan::Night night = plan::night_of(ensemble, schedule, boxes);
    plan::Plan plan;
    plan.trip = support::borrowed(trip);
    const auto hold = plan::safe_hold(plan, food, food.food->thickness, food.food->target + units::kelvins(4));
    REQUIRE(hold.has_value());
    const units::Duration long_after = units::hours(1000);  // what never comes about is later than all that does
    Said said{ensemble.share(holds).first,
              food.ready_late.value_or(trip.serve.after(long_after)).since(trip.from).si(),
              food.core_peak.high.celsius(),
              food.come_up.high.value_or(long_after).si(),
              boxes.after_reading(schedule.recipe.top_up_mark).si(),
              plan::may_wait(boxes).si(),
              hold->si(),
              ensemble.interval(litres).high.si(),
              {}};
    for (const plan::MorningRow& row : night.morning) {
        for (const plan::MorningRow::Cell& cell : row.cells) {
            said.below.push_back(cell.below.si());
        }
    }
    return said;
}

plan::Schedule schedule_of(const trip::Trip& trip) {
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const plan::Ensemble ensemble(*setup, {128, 1});
    return plan::make_schedule(ensemble).value();
}

constexpr double minute = 60.0;

/// Nothing is looser by more than a rounding step of its card.
void check_not_looser(const Said& before, const Said& after) {
    CHECK(after.holds <= before.holds + 0.01);
    CHECK(after.ready >= before.ready - 5 * minute);
    CHECK(after.peak >= before.peak - 0.3);
    CHECK(after.come_up >= before.come_up - 5 * minute);
    CHECK(after.alone <= before.alone + 5 * minute);
    CHECK(after.waits <= before.waits + 15 * minute);
    CHECK(after.hold >= before.hold - minute);
    CHECK(after.litres >= before.litres - 0.5e-3);
    REQUIRE(after.below.size() == before.below.size());
    for (std::size_t i = 0; i < after.below.size(); ++i) {
        CHECK(after.below[i] >= before.below[i] - 5 * minute);
    }
}

}  // namespace

TEST_CASE("a wider spread, any of them, never loosens a card by more than a rounding step") {
    for (const char* name : {"frosty-weekend", "paddling-day"}) {
        CAPTURE(name);
        const trip::Trip trip = support::demo_trip(name);
        const plan::Schedule schedule = schedule_of(trip);
        const Said before = said_of(trip, schedule);
        for (const facts::Spread& spread : facts::facts().spreads()) {
            CAPTURE(spread.key);
            const facts::Facts wide = widened({spread.key}, 1.5);
            const facts::FactsInForce in_force(wide);
            check_not_looser(before, said_of(trip, schedule));
        }
    }
}

TEST_CASE("all spreads wider together tighten what the cards say, strictly") {
    const trip::Trip trip = support::demo_trip("frosty-weekend");
    const plan::Schedule schedule = schedule_of(trip);
    const Said before = said_of(trip, schedule);
    std::vector<std::string> keys;
    for (const facts::Spread& spread : facts::facts().spreads()) {
        keys.push_back(spread.key);
    }
    const facts::Facts wide = widened(keys, 1.5);
    const facts::FactsInForce in_force(wide);
    const Said after = said_of(trip, schedule);
    check_not_looser(before, after);
    CHECK(after.holds < before.holds);
    CHECK(after.ready > before.ready);
    CHECK(after.peak > before.peak);
    CHECK(after.alone < before.alone);
    CHECK(after.hold > before.hold);
}

TEST_CASE("each spread that scenarios draw from does something: none is read and forgotten") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    const plan::Schedule schedule = schedule_of(trip);
    const auto peak_and_fall = [&] {
        const auto setup = plan::set_up(trip);
        REQUIRE(setup.ok());
        const plan::Ensemble ensemble(*setup, {64, 1});
        double sum = 0.0;
        for (const plan::ScenarioResult& one : plan::simulate(ensemble, schedule)) {
            sum += one.foods[0].peak.celsius() + one.at_end.celsius();
        }
        return sum;
    };
    const double before = peak_and_fall();
    for (const facts::Spread& spread : facts::facts().spreads()) {
        CAPTURE(spread.key);
        // thickness: a thin part of the spread hides behind its least width; box-loss behind what the box test shows;
        // the thermometer's width is the trip's own.
        if (spread.key == "thickness" || spread.key == "thickness.least" || spread.key == "box-loss" ||
            spread.key == "thermometer") {
            continue;
        }
        const facts::Facts wide = widened({spread.key}, 3.0);
        const facts::FactsInForce in_force(wide);
        CHECK(std::abs(peak_and_fall() - before) > 1e-6);
    }
}
