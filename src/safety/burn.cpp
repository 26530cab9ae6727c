// SPDX-License-Identifier: MIT
#include "safety/burn.hpp"

#include "facts/facts.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::safety {
namespace {

using Column = std::optional<units::Duration> facts::BurnRow::*;

/// The time of the nearest row that is at least as hot and has one; that of the hottest such row above all of them.
std::optional<units::Duration> from_column(units::Temperature water, Column column) {
    std::optional<units::Duration> last;
    for (const facts::BurnRow& row : facts::facts().burns()) {
        if (row.*column) {
            last = row.*column;
            if (row.water >= water) {
                return last;
            }
        }
    }
    return last;
}

std::optional<units::Duration> shorter(std::optional<units::Duration> a, std::optional<units::Duration> b) {
    return a && b ? std::min(*a, *b) : (a ? a : b);
}

}  // namespace

BurnTimes burn_times(units::Temperature water) {
    if (!(water >= facts::facts().burns().front().water)) {
        return {};
    }
    BurnTimes times;
    times.third = from_column(water, &facts::BurnRow::third_degree);
    times.second = shorter(from_column(water, &facts::BurnRow::second_degree), times.third);
    times.infant = shorter(from_column(water, &facts::BurnRow::infant), times.second);
    return times;
}

double burn_damage(const units::History& basal_layer, units::Temperature from) {
    const facts::Facts& facts = facts::facts();
    const double p = facts.value("burn.damage.p");
    const double activation = facts.value("burn.damage.activation");
    const auto rate = [&](double celsius) {
        const units::Temperature t = units::celsius(celsius);
        return t >= from ? p * std::exp(-activation / t.kelvin()) : 0.0;
    };
    double damage = 0.0;
    for (std::size_t i = 1; i < basal_layer.points.size(); ++i) {
        const units::History::Point& a = basal_layer.points[i - 1];
        const units::History::Point& b = basal_layer.points[i];
        // Simpson's rule on pieces short enough that the rate, which doubles every K, changes little.
        const double rise = std::abs((b.value - a.value).si());
        const int pieces = std::max(1, static_cast<int>(std::ceil(rise * 10.0)));
        const double span = (b.at - a.at).si() / pieces;
        const double begin = a.value.celsius();
        const double slope = (b.value - a.value).si() / pieces;
        for (int k = 0; k < pieces; ++k) {
            const double left = begin + slope * k;
            damage += span / 6.0 * (rate(left) + 4.0 * rate(left + slope / 2.0) + rate(left + slope));
        }
    }
    return damage;
}

double burn_damage(const units::History& basal_layer) {
    return burn_damage(basal_layer, facts::facts().temperature("burn.damage.from"));
}

}  // namespace holdwater::safety
