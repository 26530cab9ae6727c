// SPDX-License-Identifier: MIT
#include "answer/gauge/box_loss.hpp"

#include "facts/facts.hpp"
#include "trip/box_test.hpp"

namespace holdwater::answer {

namespace {

/// An ordinary box of this size, by the area of its walls.
heat::BoxLoss untested(const std::array<units::Length, 3>& inside) {
    const double a = inside[0].si();
    const double b = inside[1].si();
    const double c = inside[2].si();
    const double walls = 2.0 * (a * b + b * c + c * a);  // m2
    const facts::Figure& ordinary = facts::facts().figure("box.untested");
    heat::BoxLoss loss;
    loss.likely = units::HeatLoss{ordinary.value * walls};
    loss.low = units::HeatLoss{ordinary.low * walls};
    loss.high = units::HeatLoss{ordinary.high * walls};
    return loss;
}

}  // namespace

problem::Result<heat::BoxLoss> loss_of(const trip::Box& box, units::HeatCapacity liner) {
    if (const auto* given = std::get_if<units::HeatLoss>(&box.test)) {
        const facts::Spread& spread = facts::facts().spread("box-loss");
        heat::BoxLoss loss;
        loss.likely = *given;
        loss.low = *given * spread.low;
        loss.high = *given * spread.high;
        return loss;
    }
    if (std::holds_alternative<trip::Untested>(box.test)) {
        return untested(box.inside);
    }
    heat::BoxTest test;
    for (const trip::BoxReading& reading : std::get<std::vector<trip::BoxReading>>(box.test)) {
        test.readings.push_back({reading.after, reading.bath});
    }
    test.water = box.test_water;
    test.outside = box.test_outside;
    test.liner = liner;
    test.reading_error = box.reading_error;
    auto loss = heat::loss_from(test);
    const auto impossible = loss ? trip::impossible_loss(loss->likely) : std::nullopt;
    if (loss && !impossible) {
        return loss;
    }
    problem::Problems placed = impossible ? problem::Problems{*impossible} : loss.problems();
    for (problem::Problem& p : placed) {
        p.place = box.place;
    }
    return placed;
}

}  // namespace holdwater::answer
