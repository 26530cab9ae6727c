// SPDX-License-Identifier: MIT
// Laws of hold times: what makes it harder for the heat never makes the time shorter.
#include "answer/hold/hold_time.hpp"

#include "heat/driven.hpp"
#include "safety/clocks.hpp"
#include "safety/kill.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

namespace {

answer::Piece piece_of(facts::Shape shape, double mm) {
    answer::Piece piece;
    piece.body.shape = shape;
    piece.body.thickness = units::millimetres(mm);
    if (shape == facts::Shape::block) {
        piece.body.width = units::millimetres(120);
    }
    if (shape != facts::Shape::ball && shape != facts::Shape::slab) {
        piece.body.length = units::millimetres(200);
    }
    piece.composition = facts::facts().find_food("pork-loin")->composition;
    piece.bag = units::ThermalResistance{facts::facts().value("bag.thin")};
    piece.start = units::celsius(4);
    piece.target = units::celsius(62);
    return piece;
}

safety::Standard standard() {
    safety::Request request = safety::request_for(*facts::facts().find_food("pork-loin"));
    request.target = units::celsius(63);
    return safety::standard_for(request).value();
}

double seconds(const std::optional<units::Duration>& time) {
    return time ? time->si() : 1e12;
}

double cautious(const answer::Piece& piece, double reading, double thermometer = 1.0) {
    const auto times = answer::HoldTimes::of(piece, standard(), units::kelvins(thermometer));
    REQUIRE(times.ok());
    return seconds(times->at(units::celsius(reading)).cautious);
}

}  // namespace

TEST_CASE("thicker, cooler or less surely read is never sooner") {
    using facts::Shape;
    for (const Shape shape : {Shape::slab, Shape::round, Shape::block, Shape::ball}) {
        for (double mm = 20; mm <= 80; mm += 20) {
            for (double reading = 57; reading <= 66; reading += 3) {
                CAPTURE(static_cast<int>(shape));
                CAPTURE(mm);
                CAPTURE(reading);
                const double here = cautious(piece_of(shape, mm), reading);
                CHECK(cautious(piece_of(shape, mm + 5), reading) >= here);
                CHECK(cautious(piece_of(shape, mm), reading + 1) <= here);
                // The error goes both ways, and 256 drawn pieces are not all: a hundredth is their sampling error.
                CHECK(cautious(piece_of(shape, mm), reading, 1.5) >= 0.99 * here);
            }
        }
    }
}

TEST_CASE("more faces in the water are never later: slab, block, ball of one thickness") {
    for (double mm = 20; mm <= 80; mm += 20) {
        for (double reading = 58; reading <= 66; reading += 4) {
            CAPTURE(mm);
            CAPTURE(reading);
            const double slab = cautious(piece_of(facts::Shape::slab, mm), reading);
            const double block = cautious(piece_of(facts::Shape::block, mm), reading);
            const double ball = cautious(piece_of(facts::Shape::ball, mm), reading);
            CHECK(block <= slab);
            CHECK(ball <= block);
        }
    }
}

TEST_CASE("likely is never after cautious, and only what comes up in time is allowed") {
    for (double mm = 10; mm <= 150; mm += 10) {
        const auto times = answer::HoldTimes::of(piece_of(facts::Shape::slab, mm), standard(), units::kelvins(1));
        REQUIRE(times.ok());
        for (double reading = 50; reading <= 70; reading += 2) {
            const answer::HoldTime time = times->at(units::celsius(reading));
            CHECK(seconds(time.likely) <= seconds(time.cautious));
            if (time.allowed) {
                CHECK(safety::judge_come_up(time.come_up) != safety::ComeUpVerdict::refused);
                CHECK(*time.allowed == *time.cautious);
            }
        }
        CHECK_FALSE(times->at(units::celsius(54)).cautious.has_value());
    }
}

TEST_CASE("the thickest allowed piece is allowed, one millimetre more is not") {
    for (double reading = 58; reading <= 66; reading += 4) {
        answer::Piece piece = piece_of(facts::Shape::slab, 30);
        const auto most = answer::thickest_allowed(piece, standard(), units::kelvins(1), units::celsius(reading));
        REQUIRE(most.has_value());
        for (const double more : {0.0, 1.0}) {
            piece.body.thickness = *most + units::millimetres(more);
            const auto times = answer::HoldTimes::of(piece, standard(), units::kelvins(1));
            CHECK(times->at(units::celsius(reading)).allowed.has_value() == (more == 0.0));
        }
    }
}

TEST_CASE("time below the column, added as often as the card says, is always enough") {
    // Dips that the rule was not made from, under the engine for a bath that changes (heat/driven).
    for (const double mm : {30.0, 60.0, 85.0}) {
        for (const double reading : {60.0, 63.0}) {
            const answer::Piece piece = piece_of(facts::Shape::round, mm);
            const auto times = answer::HoldTimes::of(piece, standard(), units::kelvins(1));
            REQUIRE(times.ok());
            const units::Temperature floor = units::celsius(57);
            const auto hold = times->at(units::celsius(reading)).cautious;
            const auto factor = times->dip_factor(units::celsius(reading), floor);
            REQUIRE(hold.has_value());
            REQUIRE(factor.has_value());
            CAPTURE(mm);
            CAPTURE(reading);
            CAPTURE(*factor);
            CHECK(*factor <= 6);
            for (const double begun : {0.1, 0.45, 0.8}) {
                for (const double hours : {0.75, 1.5, 3.0}) {
                    // One cautious piece: slow, thick, cold; the bath as read but for half the usual layer.
                    const auto slow = answer::varied(piece, {0.8, -0.8, -0.5, units::kelvins(-1)});
                    REQUIRE(slow.ok());
                    const units::TemperatureDifference colder = units::kelvins(1.0);
                    const units::Duration from = *hold * begun;
                    const units::Duration dip = units::hours(hours);
                    units::History bath;
                    bath.add(units::Duration{0}, units::celsius(reading) - colder);
                    bath.add(from, units::celsius(reading) - colder);
                    bath.add(from, floor - colder);
                    bath.add(from + dip, floor - colder);
                    bath.add(from + dip, units::celsius(reading) - colder);
                    const units::Duration end = *hold + dip * *factor;
                    const auto core = heat::driven(slow->modes, slow->start, bath, units::Duration{0}, end).core;
                    const double asked = safety::adaptation_factor(safety::come_up(core));
                    CHECK(safety::kill_fraction(*standard().kill, core) >= asked);
                }
            }
        }
    }
}
