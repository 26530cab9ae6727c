// SPDX-License-Identifier: MIT
#include "cli/text/gauge_text.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::cli {
namespace {

constexpr int line_points = 120;

/// The smallest of these steps that gives at most `most` labels.
double label_step(double span, std::initializer_list<double> steps, double most) {
    for (const double step : steps) {
        if (span / step <= most) {
            return step;
        }
    }
    return *(steps.end() - 1);
}

void put_labels(card::Curve& curve, double last) {
    double low = curve.floor;
    double high = curve.floor;
    for (const auto* points : {&curve.low, &curve.high, &curve.marks}) {
        for (const card::Curve::Point& point : *points) {
            low = std::min(low, point.y);
            high = std::max(high, point.y);
        }
    }
    const double degrees = label_step(high - low, {1.0, 2.0, 5.0, 10.0, 20.0}, 7.0);
    for (double y = std::floor(low / degrees) * degrees; y < high + degrees; y += degrees) {
        curve.y_labels.push_back({y, fmt::format("{:g}", y)});
    }
    const double hours = label_step(last, {0.25, 0.5, 1.0, 2.0, 4.0, 6.0, 12.0, 24.0}, 12.0);
    for (double x = 0.0; x < last + 0.999 * hours; x += hours) {
        curve.x_labels.push_back({x, fmt::format("{:g}", x)});
    }
}

}  // namespace

card::Card gauge_card(const answer::Gauge& gauge, const answer::GaugeQuestion& question,
                      const std::vector<trip::LogGap>& gaps) {
    card::Curve curve;
    const units::Duration last = gauge.readings[gauge.last_used()].at;
    const double slow = gauge.loss.low / gauge.loss.likely;
    const double fast = gauge.loss.high / gauge.loss.likely;
    for (int i = 0; i <= line_points; ++i) {
        const units::Duration at = gauge.from + (last - gauge.from) * (static_cast<double>(i) / line_points);
        const double x = units::in_hours(at);
        curve.likely.push_back({x, gauge.fitted_at(at).celsius()});
        curve.low.push_back({x, gauge.fitted_at(at, fast).celsius()});
        curve.high.push_back({x, gauge.fitted_at(at, slow).celsius()});
    }
    for (const answer::GaugedReading& reading : gauge.readings) {
        curve.marks.push_back({units::in_hours(reading.at), reading.bath.celsius()});
    }
    for (const trip::LogGap& gap : gaps) {
        curve.gaps.emplace_back(units::in_hours(gap.from), units::in_hours(gap.to));
    }
    curve.floor = gauge.floor.celsius();
    curve.floor_label = units::print(gauge.floor, units::System::both, {0.1, units::Toward::nearest}) + ": floor";
    curve.likely_label = "fit";
    curve.band_label = "90 in 100";
    curve.marks_label = "reading";
    curve.gaps_label = "no reading";
    curve.y_title = "bath, °C";
    curve.x_title = "hours";
    put_labels(curve, units::in_hours(gauge.readings.back().at));

    card::Card made;
    made.key = "gauge";
    made.name = "Gauge";
    made.question = "How well does the box hold heat?";
    made.blocks.add(curve);
    made.blocks.add(card::Note{
        fmt::format("*{:.2f} W/K* ({:.2f} to {:.2f}) with {} in air of {}, taken as still.", gauge.loss.likely.si(),
                    gauge.loss.low.si(), gauge.loss.high.si(), units::print(question.water, units::System::both),
                    units::print(gauge.outside, units::System::both, {0.1, units::Toward::nearest}))});
    made.cautions.push_back(
        {card::SignalWord::caution,
         "Holds for a closed lid and still air. A test shows the box, not that food in it is safe."});
    return made;
}

}  // namespace holdwater::cli
