// SPDX-License-Identifier: MIT
// A refusal names the limit that really binds: for each limit a trip for which it is the only one.
#include "plan/advice/binding.hpp"

#include "support/efforts.hpp"
#include "support/problems.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace holdwater;
using Limit = plan::Binding::Limit;

namespace {

std::vector<Limit> limits_of(const trip::Trip& trip) {
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    std::vector<Limit> limits;
    for (const plan::Binding& one : plan::bath_bound_by(*setup)) {
        limits.push_back(one.limit);
    }
    return limits;
}

/// The first refusal, with its hint.
struct Refused {
    std::string code;
    std::string message;
    std::string hint;
};

Refused refused(const trip::Trip& trip) {
    const auto plan = plan::make_plan(trip, support::effort_of({64, 1}, {256, 1}));
    REQUIRE_FALSE(plan.ok());
    const problem::Problem& first = plan.problems().front();
    return {std::string(first.code.text()), first.message, first.hint};
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a narrow tolerance is named with bath, core and the kelvins that are missing, not the box") {
    trip::Trip trip = support::demo_trip("class-day");
    trip.foods.front().tolerance = units::kelvins(1);
    const Refused refusal = refused(trip);
    CAPTURE(refusal.message);
    CAPTURE(refusal.hint);
    CHECK(refusal.code == "core-too-hot");
    CHECK(has(refusal.message, "the bath must stay over "));
    CHECK(has(refusal.message, "and the core of " + trip.foods.front().name + " under "));
    CHECK_FALSE(has(refusal.message, "too little at once"));
    // The kelvins that are told are enough, and one less is not.
    const auto at = refusal.hint.find("leave ");
    REQUIRE(at != std::string::npos);
    const int more = std::stoi(refusal.hint.substr(at + 6));
    CHECK(more >= 1);
    trip.foods.front().tolerance += units::kelvins(more);
    CHECK(plan::make_plan(trip, support::effort_of({64, 1}, {256, 1})).ok());
}

TEST_CASE("one small pot is named, in the singular") {
    trip::Trip trip = support::demo_trip("paddling-day");
    trip.fire.pots = 1;
    trip.fire.pot = units::litres(3);
    const std::vector<Limit> limits = limits_of(trip);
    CHECK(limits == std::vector<Limit>{Limit::pots});
    const Refused refusal = refused(trip);
    CAPTURE(refusal.message);
    CHECK(has(refusal.message, "1 pot of "));
    CHECK_FALSE(has(refusal.message, "1 pots"));
}
