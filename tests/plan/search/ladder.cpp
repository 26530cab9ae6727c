// SPDX-License-Identifier: MIT
// The ladder against the boxes it is for: from each of its lines the bath reaches the mark, never stands too high, and
// the timeline says the same litres.
#include "plan/search/ladder.hpp"

#include "plan/advice/remedy.hpp"
#include "plan/search/scenario_result.hpp"
#include "support/efforts.hpp"
#include "support/near.hpp"
#include "support/random_trips.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>

using namespace holdwater;
using units::Volume;

namespace {

double share_of(std::size_t count, std::size_t all) {
    return static_cast<double>(count) / static_cast<double>(all);
}

/// Every line tried in every scenario on a box that stands as it does two hours after the fill and after one top-up.
void check_lines(const plan::Ensemble& ensemble, const plan::Schedule& schedule) {
    const plan::Setup& setup = ensemble.setup();
    for (const plan::LadderRung& rung : schedule.recipe.ladder) {
        CAPTURE(rung.reading.celsius());
        if (rung.pour > setup.batch) {
            continue;  // the pots must boil twice for it, and the card says what they give
        }
        for (const bool again : {false, true}) {
            std::size_t short_of = 0;
            std::size_t high = 0;
            for (std::size_t i = 0; i < ensemble.size(); ++i) {
                plan::Simulation box = ensemble.start(i, false);
                box.fill(schedule.recipe);
                box.advance_to(box.food_in() + units::hours(2));
                for (int pour = 0; pour <= (again ? 1 : 0); ++pour) {
                    box.set_reading(rung.reading);
                    box.top_up(schedule.recipe);
                }
                short_of += box.shown() < schedule.recipe.top_up_mark - units::kelvins(0.1) ? 1 : 0;
                high += box.bath().water() + setup.food_volume > setup.most + units::litres(0.05) ? 1 : 0;
                CHECK(box.shown() < schedule.recipe.top_up_mark + units::kelvins(0.1));  // stopped there
            }
            CHECK(share_of(short_of, ensemble.size()) <= plan::allowed_failures() + 0.005);
            CHECK(share_of(high, ensemble.size()) <= plan::allowed_failures());
        }
    }
}

/// Neither the fill nor a top-up stands over the highest level, and no pot is missing, in 95 of 100.
void check_levels(const plan::Ensemble& ensemble, const plan::Schedule& schedule) {
    const plan::Setup& setup = ensemble.setup();
    std::size_t high = 0;
    std::size_t missing = 0;
    for (std::size_t i = 0; i < ensemble.size(); ++i) {
        plan::Simulation box = ensemble.start(i, false);
        box.fill(schedule.recipe);
        const bool full = box.bath().water() + setup.food_volume > setup.most + units::litres(0.05);
        const plan::Simulation run = plan::replay(ensemble, schedule, i, false);
        high += full || run.spilled() > units::litres(0.05) ? 1 : 0;
        missing += run.fill_pours() > static_cast<std::size_t>(schedule.recipe.pours) ? 1 : 0;
    }
    CHECK(share_of(high, ensemble.size()) <= plan::allowed_failures());
    CHECK(share_of(missing, ensemble.size()) <= plan::allowed_failures() + 0.01);
}

}  // namespace

TEST_CASE("law: each line of the ladder reaches the mark in 95 of 100, and nothing runs over") {
    int seen = 0;
    const auto look = [&](const trip::Trip& trip) {
        const auto setup = plan::set_up(trip);
        const auto schedule =
            setup ? plan::make_schedule(plan::Ensemble(*setup, {64, 1})) : std::optional<plan::Schedule>{};
        if (!schedule || !setup->box->thermometer || !plan::holds(*schedule)) {
            return;
        }
        ++seen;
        const plan::Ensemble ensemble(*setup, {256, 1});
        check_lines(ensemble, *schedule);
        check_levels(ensemble, *schedule);
    };
    for (const char* name : {"frosty-weekend", "paddling-day"}) {
        CAPTURE(name);
        look(support::demo_trip(name));
    }
    CHECK(seen == 2);
    const char* const more = std::getenv("HOLDWATER_RANDOM_LADDERS");
    for (int number = 1; number <= (more != nullptr ? std::atoi(more) : 8); ++number) {
        CAPTURE(number);
        look(support::random_trip(static_cast<std::uint64_t>(number)));
    }
    CHECK(seen >= 3);
}

TEST_CASE("a box loaded to its rim says how high the water may stand before the food goes in") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    // As much water as just fits beside the food.
    trip.boxes[0].water = units::litres(std::floor(units::in_litres(setup->most - setup->food_volume)));
    const auto plan = plan::make_plan(trip, support::effort_of({64, 1}, {512, 1}));
    REQUIRE(plan.ok());
    REQUIRE(plan->fill.below_rim.has_value());
    const auto& inside = trip.boxes[0].inside;
    const double stands = (inside[2] - *plan->fill.below_rim).si() * inside[0].si() * inside[1].si();
    CHECK(stands + setup->food_volume.si() <= setup->most.si() + 1e-9);
    CHECK(stands + setup->food_volume.si() > setup->most.si() - 2.0e-3);
}

TEST_CASE("timeline and ladder have one figure for one reading, and its line on the wall") {
    for (const char* name : {"frosty-weekend", "paddling-day"}) {
        CAPTURE(name);
        const plan::Plan& plan = support::demo_plan(name);
        REQUIRE_FALSE(plan.top_ups.empty());
        const Volume batch = plan.trip->fire.pot * (plan.trip->fire.usable * plan.trip->fire.pots);
        const auto setup = plan::set_up(*plan.trip);
        for (const plan::TopUp& top_up : plan.top_ups) {
            // A reading between two lines goes by the colder; at a line itself the search may have seen it as colder.
            const Volume here = std::min(batch, plan::by_ladder(plan.ladder, top_up.reading.likely));
            const Volume colder =
                std::min(batch, plan::by_ladder(plan.ladder, top_up.reading.likely - units::kelvins(0.3)));
            CHECK((top_up.boiling == here || top_up.boiling == colder));
            if (top_up.below_rim) {
                CHECK(*top_up.below_rim == plan::below_rim(*setup, top_up.boiling));
            }
        }
    }
}

TEST_CASE("where the pots fall short too often, one more is planned, with its time") {
    const plan::Plan& plan = support::demo_plan("paddling-day");
    // Two rounds leave the fill short in 40 of 100 there.
    CHECK(plan.fill.pours.size() == 3);
    CHECK(plan.fill.food_in >= plan.fill.pours.back().at);
    CHECK(plan.fill.boiled_most > plan.fill.boiled);
    CHECK(plan.around.water.boil_most >= plan.fill.boiled_most);
}
