// SPDX-License-Identifier: MIT
// What is kept of the fingertip model is what the model gives.
#include "facts/facts.hpp"
#include "safety/sting.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using safety::DipRow;
using safety::HandState;
using safety::Stirring;
using support::near_abs;

TEST_CASE("the kept bands of a dip are those of the model") {
    for (const DipRow row : {DipRow::at_once, DipRow::by_one, DipRow::by_two, DipRow::not_by_two}) {
        const safety::BathBand kept = safety::dip_band(row);
        const auto made = safety::bath_band(row, HandState::warm, Stirring::stirred);
        REQUIRE(made);
        CHECK(near_abs(kept.p5.celsius(), made->p5.celsius(), 1e-5));
        CHECK(near_abs(kept.p50.celsius(), made->p50.celsius(), 1e-5));
        CHECK(near_abs(kept.p95.celsius(), made->p95.celsius(), 1e-5));
    }
}

TEST_CASE("how much later a cold hand is stung is what the model gives") {
    const units::Temperature bath = facts::facts().temperature("touch.example");
    const auto slow = [&](HandState hand) { return *safety::sting_band(bath, hand, Stirring::stirred).p95; };
    CHECK(near_abs(facts::facts().value("touch.cold-hand"), slow(HandState::cold) / slow(HandState::warm), 1e-5));
}
