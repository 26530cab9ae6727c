// SPDX-License-Identifier: MIT
#include "heat/outside_air.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace holdwater::heat {

OutsideAir::OutsideAir(units::History history) : history_(std::move(history)) {
    if (history_.empty()) {
        throw std::invalid_argument("outside air: a history needs at least one point");
    }
}

double OutsideAir::value_at(double t) const {
    const auto& points = history_.points;
    if (next_ == 0) {
        return points.front().value.celsius();
    }
    const auto& left = points[next_ - 1];
    if (next_ == points.size()) {
        return left.value.celsius();
    }
    const auto& right = points[next_];
    const double share = (t - left.at.si()) / (right.at - left.at).si();
    return left.value.celsius() + share * (right.value - left.value).si();
}

double OutsideAir::mean(double from, double to) {
    const auto& points = history_.points;
    if (next_ > 0 && from < points[next_ - 1].at.si()) {
        next_ = 0;
    }
    while (next_ < points.size() && points[next_].at.si() <= from) {
        ++next_;
    }
    if (next_ == points.size() || to <= points[next_].at.si()) {
        return value_at(0.5 * (from + to));  // on one segment
    }
    double start = from;
    double sum = 0.0;
    const std::size_t first = next_;
    while (start < to) {
        const bool inside = next_ < points.size() && points[next_].at.si() < to;
        const double end = inside ? points[next_].at.si() : to;
        if (end > start) {
            sum += 0.5 * (value_at(start) + value_at(end)) * (end - start);
        }
        start = end;
        if (inside) {
            ++next_;
        }
    }
    next_ = first;
    return to > from ? sum / (to - from) : value_at(from);
}

}  // namespace holdwater::heat
