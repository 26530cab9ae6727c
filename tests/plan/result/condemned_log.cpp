// SPDX-License-Identifier: MIT
// A plan that holds in 95 of 100 scenarios, and whose log must be thrown away all the same, since its thermometer
// leaves room for a bath in which the piece comes up too slowly: refused, for that reason, and planned with a better
// one.
#include "plan/advice/remedy.hpp"
#include "support/efforts.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace holdwater;

namespace {

/// The night roast so thick and so gently done, read to so many kelvin.
problem::Result<plan::Plan> roast(double millimetres, double target, double tolerance, double error) {
    trip::Trip trip = support::demo_trip("hut-night");
    trip.what_ifs.clear();
    trip.sides.clear();
    trip.foods.resize(1);
    trip.foods.front().thickness = units::millimetres(millimetres);
    trip.foods.front().target = units::celsius(target);
    trip.foods.front().tolerance = units::kelvins(tolerance);
    trip.boxes.front().thermometer = units::kelvins(error);
    return plan::make_plan(trip, support::effort_of({64, 1}, {128, 1}));
}

}  // namespace

TEST_CASE("what its own log would condemn is refused for that, and holds with a thermometer that says more") {
    struct Case {
        double millimetres;
        double target;
        double tolerance;
        double error;
    };
    for (const Case& one : {Case{80, 57, 4, 1.5}, Case{80, 58, 3, 1.5}, Case{100, 58, 5, 2}}) {
        CAPTURE(one.millimetres);
        CAPTURE(one.error);
        const auto refused = roast(one.millimetres, one.target, one.tolerance, one.error);
        REQUIRE_FALSE(refused.ok());
        for (const problem::Problem& other : refused.problems()) {
            CHECK(other.code == refused.problems().front().code);  // nothing else is against it
        }
        CHECK((refused.problems().front().code == problem::Code("come-up-too-slow")));
        CHECK(refused.problems().front().message.find("by what is read") != std::string::npos);
        CHECK(roast(one.millimetres, one.target, one.tolerance, 0.3).ok());
    }
}
