// SPDX-License-Identifier: MIT
#include "answer/gauge/box_loss.hpp"
#include "answer/review/review_bath.hpp"
#include "facts/facts.hpp"
#include "heat/water.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

History logged_air(const trip::Log& log) {
    History air;
    for (const trip::LogRow& row : log.rows) {
        if (row.outside) {
            air.add(row.at, *row.outside);
        }
    }
    return air;
}

// Water is weighed at a usual bath; its density changes by 1 % from 50 to 70 C.
constexpr Temperature box_at = units::celsius(60);

/// When the log began, by the trip's calendar; nothing for a log of minutes.
std::optional<units::LocalTime> began(const trip::Trip& trip, const trip::Log& log) {
    if (const auto* moment = std::get_if<units::LocalTime>(&log.zero)) {
        return *moment;
    }
    if (const auto* clock = std::get_if<units::ClockTime>(&log.zero)) {
        return units::next(*clock, trip.from);
    }
    return std::nullopt;
}

/// Air where nobody wrote it down: the forecast, or its coldest hour if it is not known when the log began.
Temperature forecast(const trip::Trip& trip, const std::optional<units::LocalTime>& zero, Duration at) {
    if (zero) {
        return trip.weather.air_at(zero->after(at));
    }
    Temperature coldest = trip.weather.air_at(trip.from);
    const Duration whole = trip.serve.since(trip.from);
    for (Duration t{0}; t <= whole; t += units::minutes(30)) {
        coldest = std::min(coldest, trip.weather.air_at(trip.from.after(t)));
    }
    return coldest;
}

}  // namespace

double BoxCooling::after(double bath, double from, double to, bool at_fast_end) const {
    const History& air = at_fast_end ? air_low : air_likely;
    const double outside = air.at(Duration{(from + to) / 2.0}).celsius();
    if (!(bath > outside)) {
        return bath;
    }
    return outside + (bath - outside) * std::exp(-(at_fast_end ? fast : likely) * (to - from));
}

problem::Result<BoxCooling> cooling_of(const trip::Trip& trip, const trip::Box& box, const trip::Log& log) {
    const units::HeatCapacity liner = heat::liner_of(box.inside);
    const auto loss = loss_of(box, liner);
    if (!loss) {
        return loss.problems();
    }
    const facts::Facts& facts = facts::facts();
    const double capacity =
        box.water.si() * heat::water_density(box_at).si() * heat::water_specific_heat().si() + liner.si();
    const double wind = heat::wind_position(trip.weather.wind);
    const facts::Spread& gust = facts.spread("wind");
    BoxCooling box_cooling;
    box_cooling.likely = loss->likely.si() * heat::wind_factor(wind) / capacity;
    box_cooling.fast = loss->high.si() * heat::wind_factor(std::min(wind + gust.high, 2.0)) / capacity;
    box_cooling.slow = loss->low.si() * heat::wind_factor(std::max(wind + gust.low, 0.0)) / capacity;

    const std::optional<units::LocalTime> zero = began(trip, log);
    const History logged = logged_air(log);
    const units::TemperatureDifference colder = units::kelvins(facts.spread("outside").low);
    const Duration end = log.rows.back().at;
    for (Duration t{0};; t = std::min(t + units::minutes(15), end)) {
        const Temperature expected = forecast(trip, zero, t);
        const Temperature read = logged.empty() ? expected : logged.at(t);
        // One reading by day says nothing about the night: at the low end the forecast counts as well.
        box_cooling.air_likely.add(t, read);
        box_cooling.air_low.add(t, std::min(read, expected + colder));
        if (!(t < end)) {
            break;
        }
    }
    return box_cooling;
}

}  // namespace holdwater::answer
