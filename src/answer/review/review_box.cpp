// SPDX-License-Identifier: MIT
#include "answer/gauge/box_loss.hpp"
#include "answer/hold/piece.hpp"
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

double BoxCooling::after(double bath, double from, double to) const {
    const double outside = air_likely.at(Duration{(from + to) / 2.0}).celsius();
    return bath > outside ? outside + (bath - outside) * std::exp(-likely * (to - from)) : bath;
}

problem::Result<BoxCooling> cooling_of(const trip::Trip& trip, const trip::Box& box, const trip::Log& log) {
    const units::HeatCapacity liner = heat::liner_of(box.inside);
    const auto loss = loss_of(box, liner);
    if (!loss) {
        return loss.problems();
    }
    const facts::Facts& facts = facts::facts();
    const auto capacity_of = [&](double share) {
        return box.water.si() * share * heat::water_density(box_at).si() * heat::water_specific_heat().si() +
               liner.si();
    };
    const facts::Spread& litres = facts.spread("litres");
    double food = 0.0;  // J/K; once it is warm it holds the bath up
    for (const trip::Food& one : trip.foods) {
        const Piece piece = piece_of(one);
        food += piece.mass.si() * properties_of(piece, heat::Bound::likely).specific_heat.si();
    }
    const double wind = heat::wind_position(trip.weather.wind);
    const facts::Spread& gust = facts.spread("wind");
    BoxCooling box_cooling;
    box_cooling.likely = loss->likely.si() * heat::wind_factor(wind) / capacity_of(1.0);
    box_cooling.slow =
        loss->low.si() * heat::wind_factor(std::max(wind + gust.low, 0.0)) / (capacity_of(litres.high) + food);
    WorstBox& worst = box_cooling.worst;
    worst.heat.loss = loss->high * heat::wind_factor(std::min(wind + gust.high, 2.0));
    worst.heat.liner = liner;
    worst.heat.open_surface = units::Area{box.inside[0].si() * box.inside[1].si()};
    worst.water = box.water * litres.low;

    const std::optional<units::LocalTime> zero = began(trip, log);
    const History logged = logged_air(log);
    const units::TemperatureDifference colder = units::kelvins(facts.spread("outside").low);
    const units::TemperatureDifference warmer = units::kelvins(facts.spread("outside").high);
    const Duration end = log.rows.back().at;
    for (Duration t{0};; t = std::min(t + units::minutes(15), end)) {
        const Temperature expected = forecast(trip, zero, t);
        const Temperature read = logged.empty() ? expected : logged.at(t);
        box_cooling.air_likely.add(t, read);
        // One reading by day says nothing about the night: at the ends the forecast counts as well.
        worst.air.add(t, std::min(read, expected + colder));
        box_cooling.air_high.add(t, std::max(read, expected + warmer));
        if (!(t < end)) {
            break;
        }
    }
    return box_cooling;
}

}  // namespace holdwater::answer
