// SPDX-License-Identifier: MIT
// A refusal names the limit that really binds: for each limit a trip for which it is the one, and its words.
#include "plan/advice/binding.hpp"

#include "support/efforts.hpp"
#include "support/problems.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

using namespace holdwater;
using Limit = plan::Binding::Limit;
using units::kelvins;
using units::litres;
using units::minutes;

namespace {

constexpr const char* lesson = "layouts/trips/class-day.toml";
constexpr const char* paddling = "layouts/trips/paddling-day.toml";
constexpr const char* poor_box = "tests/plan/trips/poor-box.toml";

plan::Effort quick() {
    return support::effort_of({64, 1}, {256, 1});
}

trip::Trip changed(const char* path, const std::function<void(trip::Trip&)>& change) {
    trip::Trip trip = support::trip_at(path);
    change(trip);
    return trip;
}

std::vector<Limit> limits(const std::vector<plan::Binding>& bound) {
    std::vector<Limit> all;
    for (const plan::Binding& one : bound) {
        all.push_back(one.limit);
    }
    return all;
}

const problem::Problem& with_code(const problem::Problems& problems, std::string_view code) {
    const auto found = std::find_if(problems.begin(), problems.end(),
                                    [&](const problem::Problem& one) { return one.code.text() == code; });
    REQUIRE(found != problems.end());
    return *found;
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("room between bath and core: named with both figures and the kelvins that are missing, not box or pots") {
    const trip::Trip trip = changed(lesson, [](trip::Trip& t) { t.foods[0].tolerance = kelvins(1); });
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const std::vector<plan::Binding> bound = plan::ready_bound_by(*setup);
    // More time alone would do as well; neither pots nor fire nor box would.
    const std::vector<Limit> found = limits(bound);
    REQUIRE_FALSE(found.empty());
    CHECK(found.front() == Limit::room);
    for (const Limit innocent : {Limit::pots, Limit::fire, Limit::box}) {
        CHECK(std::find(found.begin(), found.end(), innocent) == found.end());
    }
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    const problem::Problem& refusal = plan.problems().front();
    CAPTURE(refusal.message);
    CHECK(has(refusal.message, "the bath must stay over 59.8"));
    CHECK(has(refusal.message, "and the core of " + trip.foods[0].name + " under 65.0"));
    CHECK_FALSE(has(refusal.message, "pot"));
    CHECK_FALSE(has(refusal.message, "the box"));
    const int more = static_cast<int>(bound.front().more.si());
    CHECK(has(refusal.hint, "leave " + std::to_string(more) + " K more"));
    // So much is enough.
    trip::Trip mended = trip;
    mended.foods[0].tolerance += kelvins(more);
    CHECK(plan::make_plan(mended, quick()).ok());
}

TEST_CASE("a bath that cannot be held for want of room is not laid to the box or the pots") {
    const trip::Trip trip = changed(paddling, [](trip::Trip& t) { t.foods[0].tolerance = kelvins(0.2); });
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const std::vector<Limit> found = limits(plan::bath_bound_by(*setup));
    CHECK(found == std::vector<Limit>{Limit::room, Limit::thermometer});
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    const std::string& said = plan.problems().front().message;
    CAPTURE(said);
    CHECK(has(said, "the bath cannot be held: the bath must stay over 62.6"));
    CHECK_FALSE(has(said, "pot"));
    CHECK_FALSE(has(said, "the box"));
}

TEST_CASE("the thermometer: its error lies on the bath that must be read") {
    const trip::Trip trip = changed(lesson, [](trip::Trip& t) {
        t.boxes[0].thermometer = kelvins(5);
        t.foods[0].tolerance = kelvins(2);
    });
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    REQUIRE(limits(plan::bath_bound_by(*setup)) == std::vector<Limit>{Limit::thermometer});
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    const problem::Problem& refusal = plan.problems().front();
    CAPTURE(refusal.message);
    CHECK(has(refusal.message, "the thermometer may be 5.0\u00A0K off, so that the bath must read 62.2"));
    CHECK_FALSE(has(refusal.message, "the box"));
    CHECK(has(refusal.hint, "a thermometer with less error"));
}

TEST_CASE("the box: named with its loss, and none of the pots") {
    const trip::Trip trip = changed(poor_box, [](trip::Trip& t) { t.boxes[0].test = units::HeatLoss{10.0}; });
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    REQUIRE(limits(plan::bath_bound_by(*setup)) == std::vector<Limit>{Limit::box});
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    const problem::Problem& refusal = plan.problems().front();
    CHECK(support::has_code(plan.problems(), "bath-falls-too-fast"));
    CHECK(has(refusal.message, "the box loses too much heat, 10.00 W/K"));
    CHECK_FALSE(has(refusal.message, "pot"));
}

TEST_CASE("the pots, one of them: in the singular, and not the water that boils where it boils") {
    const trip::Trip trip = changed(poor_box, [](trip::Trip& t) {
        t.fire.pots = 1;
        t.fire.pot = litres(1);
    });
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    REQUIRE(limits(plan::fill_bound_by(*setup)) == std::vector<Limit>{Limit::pots});
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    const problem::Problem& refusal = with_code(plan.problems(), "fill-impossible");
    CAPTURE(refusal.message);
    CHECK(has(refusal.message, "1 pot of 1.0\u00A0L gives too little at once"));
    CHECK_FALSE(has(refusal.message, "1 pots"));
    CHECK(has(refusal.hint, "more or larger pots"));
}

TEST_CASE("the time: food that would be ready later") {
    const trip::Trip trip = changed(lesson, [](trip::Trip& t) { t.serve = t.from.after(minutes(100)); });
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const std::vector<Limit> bound = limits(plan::ready_bound_by(*setup));
    CHECK(std::find(bound.begin(), bound.end(), Limit::time) != bound.end());
    CHECK(std::find(bound.begin(), bound.end(), Limit::box) == bound.end());
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    const problem::Problem& refusal = with_code(plan.problems(), "not-ready-in-time");
    CAPTURE(refusal.message);
    CHECK(has(refusal.message, "from the first fire to the meal it has only 1\u00A0h\u00A040"));
    CHECK(has(refusal.hint, "serve later"));
}

TEST_CASE("the fire: pots that boil too slowly are named with their time, and no lack of room") {
    const trip::Trip trip = changed(poor_box, [](trip::Trip& t) { t.fire.boils_in = minutes(90); });
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const std::vector<Limit> bound = limits(plan::bath_bound_by(*setup));
    CHECK(std::find(bound.begin(), bound.end(), Limit::fire) != bound.end());
    CHECK(std::find(bound.begin(), bound.end(), Limit::room) == bound.end());
    const auto plan = plan::make_plan(trip, quick());
    REQUIRE_FALSE(plan.ok());
    CHECK(has(plan.problems().front().message, "2 pots of 7.0\u00A0L are too slow to boil, 1\u00A0h\u00A030"));
}

TEST_CASE("sleep is a wish: it is never what binds") {
    const auto message = [](const std::optional<trip::Sleep>& sleep) {
        const trip::Trip trip = changed(paddling, [&](trip::Trip& t) {
            t.boxes[0].thermometer = kelvins(5);
            t.foods[0].target = units::celsius(64);
            t.foods[0].tolerance = kelvins(3);
            t.sleep = sleep;
        });
        const auto plan = plan::make_plan(trip, quick());
        REQUIRE_FALSE(plan.ok());
        return plan.problems().front().message;
    };
    const std::string awake = message(std::nullopt);
    CHECK(has(awake, "the thermometer may be 5.0\u00A0K off"));
    CHECK(message(trip::Sleep{{0}, {86340}}) == awake);
}

TEST_CASE("where nobody wants to know, nothing is diagnosed and nothing is blamed") {
    plan::Effort effort = quick();
    effort.diagnose = false;
    const trip::Trip trip = changed(poor_box, [](trip::Trip& t) { t.boxes[0].test = units::HeatLoss{10.0}; });
    const auto plan = plan::make_plan(trip, effort);
    REQUIRE_FALSE(plan.ok());
    CHECK(has(plan.problems().front().message, "not with a box of 10.00 W/K and 2 pots of 7.0\u00A0L that boil in 20"));
}
