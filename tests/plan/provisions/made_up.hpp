// SPDX-License-Identifier: MIT
// Small trips and plans of which every number is known, so that what lies around the box can be reckoned by hand.
#pragma once

#include "plan/result/plan.hpp"
#include "support/borrowed.hpp"
#include "support/trips.hpp"

namespace holdwater::support {

/// The noon of a made-up day, and minutes after it.
inline units::LocalTime noon(int minutes_later = 0) {
    return units::LocalTime::from_civil(2027, 6, 12, 12, 0).after(units::minutes(minutes_later));
}

/// Fire from noon, serving six hours later; two pots of 8 L.
inline trip::Trip afternoon() {
    trip::Trip trip = demo_trip("class-day");
    trip.from = noon();
    trip.serve = noon(360);
    trip.sides.clear();
    trip.fire.pots = 2;
    trip.fire.pot = units::litres(8);
    trip.fire.usable = 0.8;
    trip.fire.boils_in = units::minutes(20);
    return trip;
}

/// 10 L cold and two pots boiling at first, one top-up of `boiling` L at most that is poured at `at` minutes.
inline plan::Plan simple_plan(const trip::Trip& trip, double boiling, int at) {
    plan::Plan plan;
    plan.trip = support::borrowed(trip);
    plan.fill.light_fire = trip.from;
    plan.levels.boiling = units::celsius(99);
    plan.fill.cold = units::litres(10);
    plan.fill.boiled = units::litres(12);
    plan.fill.pours.push_back({noon(20), units::litres(12), units::litres(12), 2, 2});
    plan::TopUp top_up;
    top_up.at = noon(at);
    top_up.light_fire = noon(at - 20);
    top_up.boiling = units::litres(boiling * 0.8);
    top_up.boiling_most = units::litres(boiling);
    plan.top_ups.push_back(top_up);
    return plan;
}

}  // namespace holdwater::support
