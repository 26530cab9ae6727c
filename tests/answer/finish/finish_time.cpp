// SPDX-License-Identifier: MIT
// How long a piece takes over the fire.
#include "answer/finish/finish_time.hpp"

#include "facts/facts.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace holdwater;
using support::near_rel;
using units::celsius;
using units::millimetres;

namespace {

answer::Piece piece_of(facts::Shape shape, double mm) {
    answer::Piece piece;
    piece.body.shape = shape;
    piece.body.thickness = millimetres(mm);
    piece.body.contact = facts::Contact::bottom;  // in the box; over the fire it lies free
    piece.composition = facts::facts().find_food("chicken-breast")->composition;
    piece.bag = units::ThermalResistance{facts::facts().value("bag.thick")};
    piece.start = celsius(5);
    piece.target = celsius(65);
    piece.mass = units::kilograms(0.2);
    return piece;
}

safety::Finish finish_at(double core, double hold_s = 0.0) {
    return {celsius(core), units::seconds(hold_s), "", ""};
}

std::optional<answer::FinishTime> time_of(const answer::Piece& piece, double core = 74.0, double from = 60.0,
                                          double boiling = 100.0, double hold_s = 0.0) {
    return answer::finish_time(piece, finish_at(core, hold_s), celsius(from), celsius(boiling));
}

/// Shells of equal thickness from the centre out, small explicit steps: another way to the same time [s]. `b`: 0 for a
/// slab, 1 for a long round.
double by_shells(const answer::Piece& piece, int b, double film, double around, double from, double core) {
    const heat::FoodProperties slow = answer::properties_of(piece, heat::Bound::slow);
    const double half = (piece.body.thickness + answer::thickness_error(piece.body.thickness)).si() / 2.0;
    const double k = slow.conductivity.si();
    const double heat = k / slow.diffusivity.si();  // J/m3/K
    constexpr int shells = 100;
    const double dr = half / shells;
    std::vector<double> t(shells, from);
    const auto face = [&](int i) { return b == 0 ? 1.0 : i * dr; };  // of the inner side of shell i, per radian
    const auto volume = [&](int i) { return b == 0 ? dr : ((i + 1) * (i + 1) - i * i) * dr * dr / 2.0; };
    const double dt = 0.2 * dr * dr * heat / k;
    double time = 0.0;
    while (t.front() < core) {
        std::vector<double> flow(shells + 1, 0.0);  // outward, W
        for (int i = 1; i < shells; ++i) {
            flow[i] = k * face(i) * (t[i - 1] - t[i]) / dr;
        }
        flow[shells] = face(shells) * (t[shells - 1] - around) / (1.0 / film + dr / 2.0 / k);
        for (int i = 0; i < shells; ++i) {
            t[i] += dt * (flow[i] - flow[i + 1]) / (heat * volume(i));
        }
        time += dt;
    }
    return time;
}

}  // namespace

TEST_CASE("slab and round in boiling water and pan: as by small shells") {
    for (const double mm : {20.0, 35.0, 60.0}) {
        INFO(mm, " mm");
        const answer::Piece slab = piece_of(facts::Shape::slab, mm);
        const auto time = time_of(slab);
        REQUIRE(time.has_value());
        CHECK(near_rel(time->simmering.si(), by_shells(slab, 0, 250, 95, 60, 74), 0.01));
        CHECK(time->pan.has_value() == (mm <= 40.0));
        if (time->pan) {
            CHECK(near_rel(time->pan->si(), by_shells(slab, 0, 125, 100, 60, 74), 0.01));
            CHECK(time->longest() == std::max(time->simmering, *time->pan));
        }
        const answer::Piece round = piece_of(facts::Shape::round, mm);
        const auto rolled = time_of(round);
        REQUIRE(rolled.has_value());
        CHECK(near_rel(rolled->simmering.si(), by_shells(round, 1, 250, 95, 60, 74), 0.01));
        CHECK_FALSE(rolled->pan.has_value());
    }
}

TEST_CASE("thicker, colder, hotter to reach, higher up: never sooner") {
    for (const facts::Shape shape : {facts::Shape::slab, facts::Shape::round, facts::Shape::ball}) {
        for (const double mm : {15.0, 30.0, 80.0}) {
            const answer::Piece piece = piece_of(shape, mm);
            const auto time = time_of(piece);
            REQUIRE(time.has_value());
            CHECK(time_of(piece_of(shape, mm + 5.0))->simmering > time->simmering);
            CHECK(time_of(piece, 75.0)->simmering > time->simmering);
            CHECK(time_of(piece, 74.0, 57.0)->simmering > time->simmering);
            CHECK(time_of(piece, 74.0, 60.0, 92.0)->simmering > time->simmering);
            CHECK(
                near_rel(time_of(piece, 74.0, 60.0, 100.0, 120.0)->simmering.si(), time->simmering.si() + 120.0, 1e-9));
        }
    }
}

TEST_CASE("where water boils too cool for the core there is no finish") {
    CHECK_FALSE(time_of(piece_of(facts::Shape::slab, 30.0), 75.0, 60.0, 75.5).has_value());
    CHECK(time_of(piece_of(facts::Shape::slab, 30.0), 75.0, 60.0, 84.0).has_value());
    CHECK_FALSE(time_of(piece_of(facts::Shape::slab, 20.0), 90.0, 60.0, 90.5).has_value());
}

TEST_CASE("where a gentle boil is hardly hotter than the core must get, the boil is hard, and no pan will do") {
    const answer::Piece mussels = piece_of(facts::Shape::slab, 20.0);
    const auto sea = time_of(mussels, 74.0, 60.0, 100.0);
    const auto hills = time_of(mussels, 90.0, 60.0, 95.0);
    REQUIRE((sea && hills));
    CHECK_FALSE(sea->hard_boil);
    CHECK(sea->pan.has_value());
    CHECK(hills->hard_boil);
    CHECK_FALSE(hills->pan.has_value());
    CHECK(near_rel(hills->simmering.si(), by_shells(mussels, 0, 250, 94, 60, 90), 0.01));
    CHECK(hills->longest() < units::hours(1));
}

TEST_CASE("a piece leaves the bath as cool as target and floors allow") {
    answer::Piece piece = piece_of(facts::Shape::slab, 30.0);
    safety::Standard standard;
    standard.cook_floor = celsius(60);
    standard.hold_floor = celsius(60);
    CHECK(answer::core_out_of_bath(piece, standard) == celsius(60));
    piece.target = celsius(58);
    CHECK(answer::core_out_of_bath(piece, standard) < celsius(58));
}
