// SPDX-License-Identifier: MIT
#include "card/class/class_gauge.hpp"

#include "facts/facts.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace holdwater::card {

FoundLoss found_loss(const LossFinder& finder, const ClassBox& box) {
    const auto& airs = finder.airs();
    const auto& readings = finder.readings();
    const auto warmer = std::lower_bound(airs.begin(), airs.end(), box.air);
    const auto colder =
        std::find_if(readings.begin(), readings.end(), [&](units::Temperature t) { return t <= box.reading; });
    if (warmer == airs.end() || colder == readings.end()) {
        throw std::logic_error("box of the exercises is not in the table");
    }
    FoundLoss found;
    found.air = static_cast<std::size_t>(warmer - airs.begin());
    found.reading = static_cast<std::size_t>(colder - readings.begin());
    found.number = finder.fall_number(found.air, found.reading);
    const double exact = finder.loss(found.number, box.after, box.water).si();
    found.loss = units::HeatLoss{units::round_to(exact, facts::facts().value("finder.loss-step"), units::Toward::up)};
    return found;
}

answer::Gauge gauge_of(const ClassBox& box, units::Temperature start) {
    answer::GaugeQuestion question;
    question.readings = {{units::Duration{0}, start, "", {}}, {box.after, box.reading, "", {}}};
    question.outside.add(units::Duration{0}, box.air);
    question.water = box.water;
    question.reading_error = facts::facts().difference("gauge.reading-error");
    question.floor = box.reading;
    auto made = answer::gauge(question);
    if (!made) {
        throw std::logic_error("box test: " + made.problems().front().message);
    }
    return std::move(made).value();
}

units::Duration time_alone(const ClassFrame& frame, const ClassBox& box, units::Temperature start,
                           units::Temperature air) {
    const answer::Gauge made = gauge_of(box, start);
    const units::Duration fast = made.loss.time_constant * (made.loss.likely / made.loss.high);
    const units::Temperature from = frame.plan().levels.mark - frame.wish().thermometer;
    return answer::time_above(from, frame.plan().levels.floor, air, fast).value_or(units::Duration{0});
}

units::History slow_fall(const ClassFrame& frame, const ClassBox& box, units::Temperature start,
                         units::Temperature reading, units::Temperature air) {
    const answer::Gauge made = gauge_of(box, start);
    const units::Duration slow = made.loss.time_constant * (made.loss.likely / made.loss.low);
    const units::Temperature floor = frame.plan().levels.floor;
    const units::Temperature end = reading - frame.wish().thermometer;
    const units::Duration whole = answer::time_above(floor, end, air, slow).value_or(units::Duration{0});
    constexpr int points = 64;
    units::History bath;
    for (int i = 0; i <= points; ++i) {
        const units::Duration at = whole * (static_cast<double>(i) / points);
        bath.add(at, air + (floor - air) * std::exp(-(at / slow)));
    }
    return bath;
}

ClassBox class_box() {
    return {units::litres(28), units::celsius(8), units::celsius(59), units::hours(5)};
}

ClassMorning class_morning(const ClassFrame& frame) {
    const facts::Facts& facts = facts::facts();
    ClassMorning morning;
    morning.air = units::celsius(0);  // made up, as the box
    morning.reading = units::celsius(std::ceil(frame.plan().levels.read_floor.celsius())) -
                      units::kelvins(2);  // made up: a little under the floor
    const units::History bath =
        slow_fall(frame, class_box(), facts.temperature("finder.start"), morning.reading, morning.air);
    morning.below = bath.points.back().at;
    const safety::Fall fall = safety::worst_fall(bath, morning.below, {&facts.growth(frame.kind().growth)});
    morning.action = safety::decide(fall, safety::fall_rules(frame.wish().rules, frame.plan().trip->at_risk)).action;
    return morning;
}

}  // namespace holdwater::card
