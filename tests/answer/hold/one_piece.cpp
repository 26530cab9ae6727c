// SPDX-License-Identifier: MIT
// One piece in a steady bath: the moments it names are those of the series, and they move the right way.
#include "answer/hold/one_piece.hpp"

#include "heat/body.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using namespace holdwater::support;
using units::celsius;

namespace {

heat::FoodProperties meat(double diffusivity = 1.3e-7) {
    heat::FoodProperties p;
    p.conductivity = units::Conductivity{0.48};
    p.diffusivity = units::Diffusivity{diffusivity};
    return p;
}

heat::Body slab(double millimetres) {
    heat::Body body;
    body.thickness = units::millimetres(millimetres);
    return body;
}

answer::PieceQuestion question(double millimetres, double bath, double target, double start = 5.0) {
    return {slab(millimetres), celsius(bath), celsius(start), celsius(target), std::nullopt};
}

answer::PieceTimes times(const answer::PieceQuestion& q, double film = 95.0, const answer::KillRule& rule = {}) {
    const auto result = answer::times_of(q, meat(), units::FilmCoefficient{film}, rule);
    REQUIRE(result.ok());
    return *result;
}

const answer::KillFigures salmonella{units::minutes(4.68), celsius(60), units::kelvins(6.45), 7.0};

}  // namespace

TEST_CASE("the core is at the target at the moment named, warming and cooling") {
    for (const double millimetres : {2.0, 12.0, 40.0, 90.0, 250.0}) {
        for (const double target : {12.0, 30.0, 54.4, 59.0, 59.9}) {
            CAPTURE(millimetres);
            CAPTURE(target);
            const auto q = question(millimetres, 60, target);
            const auto modes = heat::modes_of(q.body, meat(), units::FilmCoefficient{95}).value();
            const auto warm = answer::moment_at(modes, q.start, q.bath, q.target);
            REQUIRE(warm.has_value());
            const double wanted = (target - 60.0) / (5.0 - 60.0);
            CHECK(near_rel(heat::core_at(modes, *warm), wanted, 1e-7));
            // Cooling by the same share takes the same time.
            const auto cool = answer::moment_at(modes, celsius(60), celsius(5), celsius(5.0 + 60.0 - target));
            REQUIRE(cool.has_value());
            CHECK(near_rel(cool->si(), warm->si(), 1e-7));
        }
    }
}

TEST_CASE("never and at once") {
    const auto modes = heat::modes_of(slab(30), meat(), units::FilmCoefficient{95}).value();
    CHECK_FALSE(answer::moment_at(modes, celsius(5), celsius(60), celsius(60)).has_value());
    CHECK_FALSE(answer::moment_at(modes, celsius(5), celsius(60), celsius(61)).has_value());
    CHECK_FALSE(answer::moment_at(modes, celsius(60), celsius(1), celsius(0.5)).has_value());
    CHECK(answer::moment_at(modes, celsius(5), celsius(60), celsius(5))->si() == 0.0);
    CHECK(answer::moment_at(modes, celsius(5), celsius(60), celsius(-2))->si() == 0.0);
    CHECK(answer::moment_at(modes, celsius(60), celsius(1), celsius(70))->si() == 0.0);
    CHECK(answer::moment_at(modes, celsius(20), celsius(20), celsius(20))->si() == 0.0);
    CHECK_FALSE(answer::moment_at(modes, celsius(20), celsius(20), celsius(21)).has_value());
}

TEST_CASE("come-up runs from 10 C, or from the start if that is warmer, and never ends in a bath too cool") {
    const auto cold = times(question(50, 60, 59));
    const auto modes = heat::modes_of(slab(50), meat(), units::FilmCoefficient{95}).value();
    const double from = answer::moment_at(modes, celsius(5), celsius(60), celsius(10))->si();
    const double to = answer::moment_at(modes, celsius(5), celsius(60), celsius(54.4))->si();
    CHECK(near_abs(cold.come_up->si(), to - from, 1e-6));
    const auto warm = times(question(50, 60, 59, 20));
    const auto there = answer::moment_at(modes, celsius(20), celsius(60), celsius(54.4));
    CHECK(near_abs(warm.come_up->si(), there->si(), 1e-6));
    CHECK_FALSE(times(question(50, 54.4, 53)).come_up.has_value());
    CHECK_FALSE(times(question(50, 1, 2, 30)).come_up.has_value());
    CHECK(times(question(50, 20, 30, 60)).come_up->si() == 0.0);
}

TEST_CASE("kill by given figures is the integral of the rate along the core, by a plain fine sum") {
    for (const double millimetres : {3.0, 20.0, 60.0}) {
        for (const double bath : {56.0, 60.0, 66.0}) {
            CAPTURE(millimetres);
            CAPTURE(bath);
            const auto q = question(millimetres, bath, bath - 0.5);
            const auto modes = heat::modes_of(q.body, meat(), units::FilmCoefficient{95}).value();
            const auto killed = answer::moment_killed(modes, q.start, q.bath, salmonella);
            REQUIRE(killed.has_value());
            constexpr int steps = 200000;
            const double dt = killed->si() / steps;
            double sum = 0.0;
            for (int i = 0; i < steps; ++i) {
                const double core = bath + heat::core_at(modes, units::Duration{(i + 0.5) * dt}) * (5.0 - bath);
                sum += dt * std::pow(10.0, (core - 60.0) / 6.45) / (4.68 * 60.0);
            }
            CHECK(near_rel(sum, 7.0, 5e-4));
        }
    }
}

TEST_CASE("kill by given figures knows no floor, but a horizon") {
    CHECK(times(question(20, 50, 49), 95.0, salmonella).kill.has_value());
    CHECK_FALSE(times(question(20, 30, 29), 95.0, salmonella).kill.has_value());
}

TEST_CASE("temperatures at a time lie between start and bath, core last; at time 0 all are the start") {
    auto q = question(50, 60, 59);
    q.at = units::Duration{0};
    const auto first = times(q);
    CHECK(first.core->celsius() == 5.0);
    CHECK(first.surface->celsius() == 5.0);
    CHECK(first.mean->celsius() == 5.0);
    for (const double t : {60.0, 600.0, 3600.0, 36000.0}) {
        q.at = units::Duration{t};
        const auto then = times(q);
        CHECK(*then.core <= *then.mean);
        CHECK(*then.mean <= *then.surface);
        CHECK(*then.surface <= celsius(60));
        CHECK(*then.core >= celsius(4.5));
    }
    q.at.reset();
    CHECK_FALSE(times(q).core.has_value());
}

TEST_CASE("thicker is never faster, hotter never kills later, a better film is never slower, the floor never faster") {
    double thinner = 0.0;
    for (double millimetres = 5.0; millimetres <= 120.0; millimetres += 5.0) {
        const double now = times(question(millimetres, 60, 59)).reach->si();
        CHECK(now > thinner);
        thinner = now;
        const double by_better_film = times(question(millimetres, 60, 59), 300.0).reach->si();
        CHECK(by_better_film < now);
        auto on_floor = question(millimetres, 60, 59);
        on_floor.body.contact = facts::Contact::bottom;
        CHECK(times(on_floor).reach->si() > now);
        double cooler = 1e12;
        for (double bath = 55.0; bath <= 75.0; bath += 2.5) {
            const auto killed = times(question(millimetres, bath, bath - 0.5), 95.0, salmonella).kill;
            REQUIRE(killed.has_value());
            CHECK(killed->si() < cooler);
            cooler = killed->si();
        }
    }
}

TEST_CASE("sizes out of range are refused") {
    const auto result = answer::times_of(question(500, 60, 59), meat(), units::FilmCoefficient{95}, {});
    REQUIRE_FALSE(result.ok());
    CHECK(result.problems().front().code == problem::Code("size-out-of-range"));
}

TEST_CASE("a core never quite reaches its bath: rows at exactly the bath are never credited, one below are") {
    safety::Standard standard;
    facts::KillStandard rows{"row", "", "", {{celsius(60), units::minutes(1)}}, false, "", facts::Provenance::computed};
    standard.kill = &rows;
    standard.core_at_least = celsius(0);
    CHECK_FALSE(times(question(5, 60, 59), 95.0, standard).kill.has_value());
    CHECK(times(question(5, 60.1, 59), 95.0, standard).kill.has_value());
    // A core asked for no more than the floor of the bath may stay half a kelvin short, any other must arrive.
    rows.rows.front().core = celsius(50);
    standard.core_at_least = celsius(60);
    standard.cook_floor = celsius(60);
    const auto at_floor = times(question(5, 60, 59.5), 95.0, standard);
    REQUIRE(at_floor.safe.has_value());
    CHECK(near_rel(at_floor.safe->si(), at_floor.reach->si(), 1e-2));
    standard.cook_floor = celsius(57);
    CHECK_FALSE(times(question(5, 60, 59.5), 95.0, standard).safe.has_value());
}
