// SPDX-License-Identifier: MIT
#include "heat/outside_air.hpp"

#include <algorithm>
#include <limits>
#include <stdexcept>

namespace holdwater::heat {

OutsideAir::OutsideAir(const units::History& history) {
    if (history.empty()) {
        throw std::invalid_argument("outside air: a history needs at least one point");
    }
    std::vector<Point> points;
    points.reserve(history.points.size());
    for (std::size_t i = 0; i < history.points.size(); ++i) {
        const units::History::Point& here = history.points[i];
        double slope = 0.0;
        if (i + 1 < history.points.size() && history.points[i + 1].at > here.at) {
            const units::History::Point& next = history.points[i + 1];
            slope = (next.value - here.value).si() / (next.at - here.at).si();
        }
        points.push_back({here.at.si(), here.value.celsius(), slope});
    }
    points_ = std::make_shared<const std::vector<Point>>(std::move(points));
    take_segment(0);
}

OutsideAir OutsideAir::warmer_by(double kelvins) const {
    OutsideAir other = *this;
    other.warmer_ += kelvins;
    return other;
}

double OutsideAir::at(double moment) const {
    const auto after = std::upper_bound(points_->begin(), points_->end(), moment,
                                        [](double t, const Point& point) { return t < point.at; });
    if (after == points_->begin()) {
        return after->value + warmer_;
    }
    const Point& left = *(after - 1);
    return left.value + left.slope * (moment - left.at) + warmer_;
}

void OutsideAir::take_segment(std::size_t next) {
    constexpr double ever = std::numeric_limits<double>::infinity();
    const std::vector<Point>& points = *points_;
    here_ = points[next == 0 ? 0 : next - 1];
    if (next == 0) {
        here_.slope = 0.0;  // as at the first point
    }
    since_ = next == 0 ? -ever : here_.at;
    until_ = next == points.size() ? ever : points[next].at;
}

double OutsideAir::mean_over(double from, double to) {
    const std::vector<Point>& points = *points_;
    const auto next_after = [&points](double moment) {
        // Forecasts come at even moments: then the place is known at once.
        if (points.size() > 1 && moment >= points.front().at && moment < points.back().at) {
            const double place = (moment - points.front().at) / (points[1].at - points.front().at);
            const std::size_t here =
                place < static_cast<double>(points.size() - 1) ? static_cast<std::size_t>(place) : 0;
            if (points[here].at <= moment && moment < points[here + 1].at) {
                return here + 1;
            }
        }
        const auto after = std::upper_bound(points.begin(), points.end(), moment,
                                            [](double t, const Point& point) { return t < point.at; });
        return static_cast<std::size_t>(after - points.begin());
    };
    std::size_t next = next_after(from);
    take_segment(next);
    if (to <= until_) {
        return value_at(0.5 * (from + to)) + warmer_;
    }
    double start = from;
    double sum = 0.0;
    while (start < to) {
        const double end = std::min(until_, to);
        if (end > start) {
            sum += 0.5 * (value_at(start) + value_at(end)) * (end - start);
        }
        start = end;
        if (start < to) {
            take_segment(++next);
        }
    }
    return sum / (to - from) + warmer_;
}

}  // namespace holdwater::heat
