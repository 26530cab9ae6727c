// SPDX-License-Identifier: MIT
// Trips that must be refused, each with its limit; and advice that works when it is followed.
#include "plan/advice/mend.hpp"
#include "plan/advice/proof.hpp"
#include "support/efforts.hpp"
#include "support/problems.hpp"
#include "support/rulesets.hpp"
#include "support/trips.hpp"
#include "trip/read_trip.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

using namespace holdwater;

namespace {

bool advises(const problem::Problems& problems, const std::string& start) {
    return std::any_of(problems.begin(), problems.end(), [&](const problem::Problem& p) {
        return p.code == "mend" && p.message.find(start) != std::string::npos;
    });
}

/// Enough scenarios for what is far from any edge.
plan::Effort quick() {
    return support::effort_of({64, 1}, {256, 1});
}

}  // namespace

TEST_CASE("a serving time too early is refused; serving later, as advised, holds") {
    trip::Trip trip = support::demo_trip("paddling-day");
    trip.serve = trip.from.after(units::minutes(50));
    const auto plan = plan::make_plan(trip);
    REQUIRE_FALSE(plan.ok());
    const bool early = support::has_code(plan.problems(), "serve-too-early") ||
                       support::has_code(plan.problems(), "not-ready-in-time");
    CHECK(early);
    REQUIRE(advises(plan.problems(), "serve = "));
    for (const problem::Problem& p : plan.problems()) {
        const auto found = p.message.find("serve = ");
        if (p.code == "mend" && found != std::string::npos) {
            const std::string iso = p.message.substr(found + 8, 19);
            trip.serve = units::LocalTime::from_civil(std::stoi(iso.substr(0, 4)), std::stoi(iso.substr(5, 2)),
                                                      std::stoi(iso.substr(8, 2)), std::stoi(iso.substr(11, 2)),
                                                      std::stoi(iso.substr(14, 2)));
        }
    }
    CHECK(plan::make_plan(trip).ok());
}

namespace {

/// A trip that does not hold, and a word that some advice for it must hold; empty: whatever is advised.
struct Broken {
    const char* why;
    trip::Trip trip;
    const char* advice;
};

/// Short trips, of which one costs a tenth of a night's to plan; each sort of advice that is given is among them, and
/// some that holds in hardly more than 95 of 100 scenarios. One night, for top-ups and sleep.
std::vector<Broken> broken_trips() {
    std::vector<Broken> all;
    const auto add = [&](const char* why, const char* name, const char* advice, auto change) {
        trip::Trip trip = support::trip_at(name);
        change(trip);
        all.push_back({why, std::move(trip), advice});
    };
    const char* const crew = "tests/plan/trips/frosty-weekend.toml";
    const char* const paddling = "layouts/trips/paddling-day.toml";
    const char* const lesson = "layouts/trips/class-day.toml";
    add("too short", paddling, "serve = ", [](trip::Trip& t) { t.serve = t.from.after(units::minutes(100)); });
    add("too thick", paddling, "thickness = ", [](trip::Trip& t) {
        t.foods[0].thickness = t.foods[0].thickness * 3;
        t.foods[0].mass = t.foods[0].mass * 3;
        t.foods[0].pieces = 1;
    });
    add("one small pot", paddling, "pots = ", [](trip::Trip& t) {
        t.fire.pots = 1;
        t.fire.pot = units::litres(1);
    });
    add("a box that leaks heat", paddling, "loss = ", [](trip::Trip& t) { t.boxes[0].test = units::HeatLoss{9.0}; });
    add("a narrow tolerance", lesson,
        "tolerance = ", [](trip::Trip& t) { t.foods[0].tolerance = units::kelvins(0.5); });
    add("and over a night", crew, "tolerance = ", [](trip::Trip& t) { t.foods[0].tolerance = units::kelvins(1); });
    return all;
}

/// As many scenarios as any plan, and no more of it than whether it holds.
plan::Effort as_promised() {
    plan::Effort effort = support::full_effort();
    effort.choose = true;  // a mend may rest on a later fire
    effort.diagnose = false;
    effort.schedule_only = true;
    return effort;
}

bool holds(const trip::Trip& trip) {
    return plan::make_plan(trip, as_promised()).ok();
}

/// With the fire at the first moment. What a mend is measured by where nothing is chosen.
bool holds_to_the_letter(const trip::Trip& trip) {
    plan::Effort effort = as_promised();
    effort.choose = false;
    return plan::make_plan(trip, effort).ok();
}

bool names(const plan::Mend& mend, plan::Lever::Kind kind) {
    return std::find(mend.kinds.begin(), mend.kinds.end(), kind) != mend.kinds.end();
}

}  // namespace

TEST_CASE("every mend, applied, yields a plan that holds, in as many scenarios as any plan") {
    for (const Broken& broken : broken_trips()) {
        CAPTURE(std::string(broken.why));
        REQUIRE_FALSE(holds(broken.trip));
        plan::Feasible feasible;
        const std::optional<plan::Mend> mend = plan::mend_of(broken.trip, feasible);
        REQUIRE(mend.has_value());
        CAPTURE(mend->advice());
        CHECK(mend->advice().find(broken.advice) != std::string::npos);
        CHECK(mend->changes.size() <= 3);
        const auto plan = plan::make_plan(mend->changed, as_promised());
        REQUIRE(plan.ok());
        CHECK(plan->promise.share >= 0.95);
    }
}

TEST_CASE("a mend bends least: no change can be left out, and none can be a step smaller") {
    for (const Broken& broken : broken_trips()) {
        CAPTURE(std::string(broken.why));
        plan::Feasible feasible;
        const std::optional<plan::Mend> mend = plan::mend_of(broken.trip, feasible);
        REQUIRE(mend.has_value());
        CAPTURE(mend->advice());
        const plan::Steps steps = mend->steps;
        plan::Solver solver(broken.trip, mend->levers, feasible);
        REQUIRE(trip::canonical(solver.changed_by(steps)) == trip::canonical(mend->changed));
        int changes = 0;
        for (std::size_t i = 0; i < steps.size(); ++i) {
            if (steps[i] == 0) {
                continue;
            }
            ++changes;
            plan::Steps left_out = steps;
            left_out[i] = 0;
            CHECK_FALSE(holds_to_the_letter(solver.changed_by(left_out)));
            plan::Steps smaller = steps;
            smaller[i] -= 1;
            CHECK_FALSE(holds_to_the_letter(solver.changed_by(smaller)));
        }
        CHECK(changes == static_cast<int>(mend->changes.size()));
    }
}

TEST_CASE("a change changes something: what is there already is not offered") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.boxes[0].prewarmed = true;
    trip.foods[0].contact = facts::Contact::free;
    trip.foods[0].contact_given = true;
    for (const plan::Lever& lever : plan::levers_of(trip)) {
        CHECK(lever.kind != plan::Lever::Kind::prewarmed);
        CHECK(lever.kind != plan::Lever::Kind::free);
        CHECK(lever.cost(1) > 0.0);
        for (const int step : {1, lever.steps}) {
            CAPTURE(static_cast<int>(lever.kind));
            CAPTURE(step);
            trip::Trip changed = trip;
            lever.pull(changed, step);
            const bool of_pieces = lever.kind == plan::Lever::Kind::baths;  // of a single piece only once it is cut
            CHECK((of_pieces || trip::canonical(changed) != trip::canonical(trip)));
            CHECK((of_pieces || !lever.words(trip, changed).empty()));
        }
    }
}

TEST_CASE("refusals of the input have a way out too: target, thermometer, water, a food that no bath may cook") {
    struct Refused {
        const char* why;
        plan::Lever::Kind kind;
        std::function<void(trip::Trip&)> change;
    };
    using Kind = plan::Lever::Kind;
    const std::vector<Refused> all{
        {"target-too-low", Kind::lowest, [](trip::Trip& t) { t.foods[0].target = units::celsius(50); }},
        {"no-thermometer-refused", Kind::thermometer,
         [](trip::Trip& t) {
             t.boxes[0].thermometer.reset();
             t.at_risk = true;
             t.foods[0].target = units::celsius(63);
             t.foods[0].tolerance = units::kelvins(8);
         }},
        {"bath-overflows", Kind::less_water,
         [](trip::Trip& t) {
             const auto& inside = t.boxes[0].inside;
             t.boxes[0].water = units::Volume{inside[0].si() * inside[1].si() * inside[2].si()};
         }},
        {"no-rule", Kind::dropped,
         [](trip::Trip& t) {
             trip::Food onion = t.foods[0];
             onion.name = "onions";
             onion.kind = "onion";
             t.foods.push_back(onion);
         }},
        {"no-rule", Kind::keep_hot,
         [](trip::Trip& t) {
             t.foods.resize(1);
             t.foods[0].kind = "stew";
         }},
    };
    for (const Refused& one : all) {
        CAPTURE(std::string(one.why));
        trip::Trip trip = support::demo_trip("paddling-day");
        one.change(trip);
        REQUIRE_FALSE(holds(trip));
        plan::Feasible feasible;
        const std::optional<plan::Mend> mend = plan::mend_of(trip, feasible);
        REQUIRE(mend.has_value());
        CAPTURE(mend->advice());
        CHECK(names(*mend, one.kind));
        CHECK(holds(mend->changed));
        CHECK(mend->changed.rules == trip.rules);
        CHECK(mend->changed.at_risk == trip.at_risk);
    }
}

TEST_CASE("what Canada asks of poultry is finished over the fire, with its time before the meal") {
    trip::Trip trip = support::demo_trip("class-day");
    trip.rules = support::ruleset("ca");
    trip.foods[0].kind = "chicken-breast";
    trip.foods[0].target = units::celsius(66);
    // As it stands it is refused; that it may be finished over the fire is one change that helps.
    REQUIRE_FALSE(holds(trip));
    const std::vector<plan::Lever> levers = plan::levers_of(trip);
    CHECK(std::any_of(levers.begin(), levers.end(),
                      [](const plan::Lever& lever) { return lever.kind == plan::Lever::Kind::over_fire; }));
    trip.foods[0].over_fire = true;
    const auto plan = plan::make_plan(trip, as_promised());
    REQUIRE(plan.ok());
    REQUIRE(plan->foods[0].finishing.has_value());
    CHECK(plan->foods[0].standard.finish->core >= units::celsius(74));
    CHECK(plan->foods[0].finishing->takes > units::Duration{0});
    CHECK(plan->foods[0].leaves() < plan->foods[0].eaten);
}

TEST_CASE("where no change is enough a proof names what binds, with every change as far as it goes") {
    trip::Trip trip = support::demo_trip("paddling-day");
    trip.foods.resize(1);
    trip.foods[0].kind = "wild-boar";
    plan::Feasible feasible;
    CHECK_FALSE(plan::mend_of(trip, feasible).has_value());
    const problem::Problem proof = plan::proof_of_none(trip);
    CHECK((proof.code == "no-mend"));
    CHECK(proof.message.find("parasites") != std::string::npos);

    // Muddy shellfish high up: the water does not boil hot enough to finish them.
    trip::Trip high = support::demo_trip("paddling-day");
    high.foods.resize(1);
    high.foods[0].kind = "mussels";
    high.foods[0].target = units::celsius(66);
    high.altitude = units::metres(3600);
    CHECK_FALSE(plan::mend_of(high, feasible).has_value());
    CHECK(plan::proof_of_none(high).message.find("it must be finished over the fire to 90") != std::string::npos);
}

TEST_CASE("a wish that cannot be met bends by the least that works, and the plan says so; a strict trip is refused") {
    trip::Trip trip = support::demo_trip("class-day");
    trip.foods[0].tolerance = units::kelvins(0.5);
    REQUIRE_FALSE(holds(trip));
    plan::Effort effort = support::without_tables();
    effort.advise = true;
    effort.what_ifs = false;
    const auto plan = plan::make_plan(trip, effort);
    REQUIRE(plan.ok());
    REQUIRE(plan->bent.size() == 1);
    CHECK(plan->bent[0].asked_within == units::kelvins(0.5));
    CHECK(plan->bent[0].target == trip.foods[0].target);  // tolerance is bent first
    REQUIRE(support::has_code(plan->notes, "wish-bent"));
    CHECK(plan->notes.front().message.find(" inside instead of ") != std::string::npos);
    trip::Trip less = trip;
    less.foods[0].tolerance = plan->bent[0].within - units::kelvins(0.5);
    CHECK_FALSE(holds(less));

    trip.strict = true;
    const auto refused = plan::make_plan(trip, effort);
    REQUIRE_FALSE(refused.ok());
    CHECK(advises(refused.problems(), "tolerance = "));
}

TEST_CASE("a target of 50 C gets a clear no") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.foods.front().target = units::celsius(50);
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    CHECK(plan.problems().front().message.find("50") != std::string::npos);
    CHECK_FALSE(plan.problems().front().hint.empty());
}

TEST_CASE("thick minced meat is refused") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip::Food& food = trip.foods.front();
    food.cut = facts::Cut::minced;
    food.thickness = units::millimetres(150);
    CHECK_FALSE(plan::make_plan(trip, quick()).ok());
}

TEST_CASE("a box that leaks heat badly is refused") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.boxes.front().test = units::HeatLoss{9.0};
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    CHECK(support::has_code(plan.problems(), "bath-falls-too-fast"));
}

TEST_CASE("too few pots are refused") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.fire.pots = 1;
    trip.fire.pot = units::litres(1.5);
    CHECK_FALSE(plan::make_plan(trip, quick()).ok());
}

TEST_CASE("two boxes in one trip are refused, not ignored") {
    trip::Trip trip = support::demo_trip("paddling-day");
    trip.boxes.push_back(trip.boxes.front());
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    CHECK(support::has_code(plan.problems(), "two-boxes"));
}

TEST_CASE("a bath that does not fit its box is an error") {
    trip::Trip trip = support::demo_trip("paddling-day");
    const auto& inside = trip.boxes.front().inside;
    trip.boxes.front().water = units::Volume{inside[0].si() * inside[1].si() * inside[2].si()};
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    CHECK(support::has_code(plan.problems(), "bath-overflows"));
}

TEST_CASE("food that the water does not cover is an error, and enough water mends it") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.boxes.front().water = units::litres(8);
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    CHECK(support::has_code(plan.problems(), "food-not-covered"));
    CHECK(plan.problems().front().place.has_value());
}

TEST_CASE("a food lighter than the bath is named: it floats") {
    trip::Trip trip = support::demo_trip("class-day");
    const auto usual = plan::make_plan(trip, quick());
    REQUIRE(usual.ok());
    CHECK_FALSE(support::has_code(usual->notes, "food-floats"));
    trip.foods.front().composition = trip::GivenComposition{20, 8, 72, 0, 0, 0};
    const auto fat = plan::make_plan(trip, quick());
    REQUIRE(fat.ok());
    CHECK(support::has_code(fat->notes, "food-floats"));
}
