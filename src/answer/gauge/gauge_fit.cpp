// SPDX-License-Identifier: MIT
#include "answer/gauge/gauge_fit.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::answer {
namespace {

/// Calls visit(from, to) for each piece of [from, to] in which the air is linear.
template <class Visit>
void each_piece(const units::History& air, units::Duration from, units::Duration to, Visit visit) {
    units::Duration last = from;
    auto point = std::upper_bound(air.points.begin(), air.points.end(), from,
                                  [](units::Duration at, const units::History::Point& one) { return at < one.at; });
    for (; point != air.points.end() && point->at < to; ++point) {
        if (point->at > last) {
            visit(last, point->at);
            last = point->at;
        }
    }
    if (to > last) {
        visit(last, to);
    }
}

/// The air just before a moment: at a jump of the history, the value that the piece ends with.
units::Temperature before(const units::History& air, units::Duration at) {
    const auto point = std::lower_bound(air.points.begin(), air.points.end(), at,
                                        [](const units::History::Point& one, units::Duration t) { return one.at < t; });
    return point != air.points.end() && point->at == at ? point->value : air.at(at);
}

/// What the air has added until `at`, from what it had added at `from` [K].
double added_since(double added, const units::History& air, units::Temperature mean, units::Duration tau,
                   units::Duration from, units::Duration at) {
    each_piece(air, from, at, [&](units::Duration a, units::Duration b) {
        const double step = (b - a) / tau;
        const double first = (air.at(a) - mean).si();
        const double last = (before(air, b) - mean).si();
        const double kept = std::exp(-step);
        added = added * kept + last - first * kept + (last - first) / step * std::expm1(-step);
    });
    return added;
}

}  // namespace

units::Temperature mean_of(const units::History& air, units::Duration from, units::Duration to) {
    double area = 0.0;
    each_piece(air, from, to, [&](units::Duration a, units::Duration b) {
        area += 0.5 * (air.at(a).celsius() + before(air, b).celsius()) * (b - a).si();
    });
    return to > from ? units::celsius(area / (to - from).si()) : air.at(from);
}

units::TemperatureDifference added_by_air(const units::History& air, units::Temperature mean, units::Duration tau,
                                          units::Duration from, units::Duration at) {
    return units::kelvins(added_since(0.0, air, mean, tau, from, at));
}

problem::Result<CoolingFit> fit_cooling(std::span<const GaugeReading> stretch, const GaugeQuestion& question,
                                        units::HeatCapacity liner, units::Duration from) {
    // Returns loss [W/K] and line of a bath in changing air: the readings, less what the change of the air has added
    // to each, cool towards the mean air by the law of heat::loss_from; that share hangs on the time constant, which
    // is found by repetition (a contraction while the air changes by less than the bath stands above it).
    heat::BoxTest test;
    test.water = question.water;
    test.liner = liner;
    test.reading_error = question.reading_error;
    test.outside = mean_of(question.outside, stretch.front().at, stretch.back().at);
    for (const GaugeReading& reading : stretch) {
        test.readings.push_back({reading.at, reading.bath});
    }
    auto loss = heat::loss_from(test);
    constexpr int most_rounds = 60;
    const bool changing = question.outside.points.size() > 1;
    for (int round = 0; changing && loss.ok() && round < most_rounds; ++round) {
        const units::Duration tau = loss->time_constant;
        // On from reading to reading: from the start each time, a long log would take hours.
        double added = 0.0;
        units::Duration until = from;
        for (std::size_t i = 0; i < stretch.size(); ++i) {
            added = added_since(added, question.outside, test.outside, tau, until, stretch[i].at);
            until = std::max(until, stretch[i].at);
            test.readings[i].bath = stretch[i].bath - units::kelvins(added);
        }
        loss = heat::loss_from(test);
        if (loss.ok() && std::abs(loss->time_constant / tau - 1.0) < 1e-13) {
            break;
        }
    }
    if (!loss) {
        return loss.problems();
    }
    // The line at `from`: ln A = mean of ln(T - Ta) + (mean time - from)/tau; its error from that of each reading.
    const auto count = static_cast<double>(test.readings.size());
    double time = 0.0;
    double logs = 0.0;
    for (const heat::BathReading& reading : test.readings) {
        time += reading.after.si() / count;
        logs += std::log((reading.bath - test.outside).si()) / count;
    }
    const double above = std::exp(logs + (time - from.si()) / loss->time_constant.si());
    double spread = 0.0;
    for (const heat::BathReading& reading : test.readings) {
        spread += std::pow(reading.after.si() - time, 2);
    }
    double square = 0.0;
    for (const heat::BathReading& reading : test.readings) {
        const double weight = 1.0 / count + (from.si() - time) * (reading.after.si() - time) / spread;
        square += std::pow(weight * test.reading_error / (reading.bath - test.outside), 2);
    }
    return CoolingFit{*loss, test.outside, from, units::kelvins(above), units::kelvins(above * std::sqrt(square))};
}

}  // namespace holdwater::answer
