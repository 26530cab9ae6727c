// SPDX-License-Identifier: MIT
#include "units/history.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::units {
namespace {

/// The part of the segment a -> b that lies inside [from, to]; false if none does.
bool clip(History::Point& a, History::Point& b, Duration from, Duration to) {
    if (b.at < from || a.at > to) {
        return false;
    }
    const History::Point first = a;
    const History::Point last = b;
    const auto value_at = [&](Duration t) {
        const double span = (last.at - first.at).si();
        const double share = span > 0 ? (t - first.at).si() / span : 1.0;
        return first.value + (last.value - first.value) * share;
    };
    if (a.at < from) {
        a = {from, value_at(from)};
    }
    if (b.at > to) {
        b = {to, value_at(to)};
    }
    return true;
}

}  // namespace

Temperature History::at(Duration t) const {
    const auto after = std::upper_bound(points.begin(), points.end(), t,
                                        [](Duration moment, const Point& p) { return moment < p.at; });
    if (after == points.begin()) {
        return points.front().value;
    }
    const Point& left = *(after - 1);
    if (after == points.end()) {
        return left.value;
    }
    const double span = (after->at - left.at).si();
    return left.value + (after->value - left.value) * ((t - left.at).si() / span);
}

Temperature History::highest() const {
    return std::max_element(points.begin(), points.end(),
                            [](const Point& a, const Point& b) { return a.value < b.value; })
        ->value;
}

Temperature History::lowest(Duration from, Duration to) const {
    Temperature lowest = std::min(at(from), at(to));
    for (const Point& p : points) {
        if (p.at >= from && p.at <= to) {
            lowest = std::min(lowest, p.value);
        }
    }
    return lowest;
}

std::optional<Duration> History::first_at_or_above(Temperature level, Duration from) const {
    if (points.empty()) {
        return std::nullopt;
    }
    if (at(from) >= level) {
        return from;
    }
    for (std::size_t i = 1; i < points.size(); ++i) {
        Point a = points[i - 1];
        Point b = points[i];
        if (b.at < from || b.value < level) {
            continue;
        }
        clip(a, b, from, b.at);
        const double rise = (b.value - a.value).si();
        const double share = rise > 0 ? (level - a.value).si() / rise : 1.0;
        return a.at + (b.at - a.at) * std::clamp(share, 0.0, 1.0);
    }
    return std::nullopt;
}

Duration History::time_below(Temperature level, Duration from, Duration to) const {
    Duration total{0};
    for (std::size_t i = 1; i < points.size(); ++i) {
        Point a = points[i - 1];
        Point b = points[i];
        if (!clip(a, b, from, to)) {
            continue;
        }
        const Duration span = b.at - a.at;
        const double low = (level - a.value).si();
        const double high = (level - b.value).si();
        if (low > 0 && high > 0) {
            total += span;
        } else if (low > 0 || high > 0) {
            total += span * (std::max(low, high) / (std::abs(low) + std::abs(high)));
        }
    }
    return total;
}

}  // namespace holdwater::units
