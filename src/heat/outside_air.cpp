// SPDX-License-Identifier: MIT
#include "heat/outside_air.hpp"

#include <algorithm>
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

double OutsideAir::value_at(double t) const {
    const Point& left = (*points_)[next_ == 0 ? 0 : next_ - 1];
    return next_ == 0 ? left.value : left.value + left.slope * (t - left.at);
}

double OutsideAir::mean(double from, double to) {
    const std::vector<Point>& points = *points_;
    if (next_ > 0 && from < points[next_ - 1].at) {
        next_ = 0;
    }
    while (next_ < points.size() && points[next_].at <= from) {
        ++next_;
    }
    if (next_ == points.size() || to <= points[next_].at) {
        return value_at(0.5 * (from + to)) + warmer_;  // on one segment
    }
    double start = from;
    double sum = 0.0;
    const std::size_t first = next_;
    while (start < to) {
        const bool inside = next_ < points.size() && points[next_].at < to;
        const double end = inside ? points[next_].at : to;
        if (end > start) {
            sum += 0.5 * (value_at(start) + value_at(end)) * (end - start);
        }
        start = end;
        if (inside) {
            ++next_;
        }
    }
    next_ = first;
    return (to > from ? sum / (to - from) : value_at(from)) + warmer_;
}

}  // namespace holdwater::heat
