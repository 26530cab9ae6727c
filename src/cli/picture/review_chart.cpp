// SPDX-License-Identifier: MIT
#include "cli/text/review_text.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::cli {
namespace {

constexpr int review_points = 240;

void put_labels(card::Curve& curve, const trip::Log& log, units::Duration from, units::Duration to) {
    double low = curve.floor;
    double high = curve.floor;
    for (const auto* points : {&curve.low, &curve.likely, &curve.second, &curve.marks}) {
        for (const card::Curve::Point& point : *points) {
            low = std::min(low, point.y);
            high = std::max(high, point.y);
        }
    }
    constexpr double step = 10.0;
    for (double y = std::floor(low / step) * step; y < high + step; y += step) {
        curve.y_labels.push_back({y, fmt::format("{:g}", y)});
    }
    // As few whole hours as leave room for a clock time at each.
    const double span = units::in_hours(to - from);
    double hours = 1.0;
    for (const double each : {2.0, 3.0, 6.0, 12.0, 24.0}) {
        hours = span / hours > 6.0 ? each : hours;
    }
    for (double h = 0.0; h <= span; h += hours) {
        const units::Duration at = from + units::hours(h);
        const bool minutes = std::holds_alternative<std::monostate>(log.zero);
        curve.x_labels.push_back({h, minutes ? fmt::format("{:g}", units::in_hours(at)) : answer::watch(log, at)});
    }
}

}  // namespace

card::Card review_card(const trip::Trip& trip, const trip::Log& log, const answer::Review& review) {
    const answer::FoodReview& food = review.foods[review.worst];
    const units::Duration from = review.bath_likely.points.front().at;
    const units::Duration to = review.bath_likely.points.back().at;
    const auto hours_of = [&](units::Duration at) { return units::in_hours(at - from); };
    card::Curve curve;
    for (int i = 0; i <= review_points; ++i) {
        const units::Duration at = from + (to - from) * (static_cast<double>(i) / review_points);
        const double likely = review.bath_likely.at(at).celsius();
        curve.likely.push_back({hours_of(at), likely});
        curve.high.push_back({hours_of(at), likely});
        curve.low.push_back({hours_of(at), std::min(likely, review.bath_cautious.at(at).celsius())});
        if (at >= food.in && at <= food.out) {
            curve.second.push_back({hours_of(at), food.core_cautious.at(at).celsius()});
        }
    }
    for (const trip::LogRow& row : log.rows) {
        if (row.bath) {
            curve.marks.push_back({hours_of(row.at), row.bath->celsius()});
        }
    }
    for (const trip::LogGap& gap : log.gaps) {
        curve.gaps.emplace_back(hours_of(gap.from), hours_of(gap.to));
    }
    const units::Temperature floor = std::max(food.standard.cook_floor, food.standard.hold_floor);
    curve.floor = floor.celsius();
    // The axis carries one system: so does the floor's label.
    const units::System axis = units::first_of(trip.units);
    curve.floor_label = "floor " + units::print(floor, axis, {0.1, units::Toward::up});
    curve.likely_label = "bath";
    curve.band_label = "down to";
    curve.second_label = "core, at the least";
    curve.marks_label = "reading";
    curve.gaps_label = "no reading";
    curve.y_title = "°C";
    curve.x_title = std::holds_alternative<std::monostate>(log.zero) ? "hours" : "time";
    put_labels(curve, log, from, to);

    card::Card made;
    made.key = "review";
    made.name = "Review";
    made.question = "What does the log mean?";
    made.blocks.add(curve);
    made.blocks.add(card::Note{fmt::format(
        "*{}*: {}. Below the floor for up to {}.", food.food->name, verdict_phrase(food.verdict),
        food.fall.below_floor.si() > 0 ? units::print(food.fall.below_floor, units::Toward::up) : "0 min")});
    made.cautions.push_back({card::SignalWord::warning,
                             "Heat does not undo toxin. When in doubt, throw it out. Local food-safety rules have the "
                             "last word."});
    return made;
}

}  // namespace holdwater::cli
