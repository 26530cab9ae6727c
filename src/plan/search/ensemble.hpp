// SPDX-License-Identifier: MIT
// Many scenarios of one trip at once, and quantiles over them.
#pragma once

#include "plan/result/plan.hpp"
#include "plan/search/simulation.hpp"

#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace holdwater::plan {

/// Share of the scenarios that a promise may fail in: promises hold in 95 of 100, jointly over the trip.
double allowed_failures();

/// How many scenarios: points of a low-discrepancy set, and how many random shifts of that set.
struct Draw {
    std::size_t points = 0;
    std::size_t shifts = 1;
};

/// What a plan promises by: facts scenario.points and scenario.shifts.
Draw full_draw();

class Ensemble {
  public:
    /// `allowed` less than allowed_failures() is stricter: for a search with few scenarios whose find is to hold in
    /// many. The outer quantiles of an interval lie so far out, too.
    Ensemble(const Setup& setup, Draw draw, double allowed = allowed_failures());

    /// The same with these scenarios alone, in one set. At least one.
    Ensemble only(const std::vector<std::size_t>& kept) const;

    std::size_t size() const { return scenarios_.size(); }
    std::size_t points() const { return draw_.points; }
    const Setup& setup() const { return *setup_; }
    double allowed() const { return allowed_; }
    const Scenario& scenario(std::size_t i) const { return scenarios_[i]; }
    Simulation start(std::size_t i, bool recording) const { return {*setup_, scenarios_[i], foods(i), recording}; }
    std::vector<heat::FoodInBath> foods(std::size_t i) const;

    /// 5 %, 50 % and 95 % (or stricter, see above) of one value a scenario. With several shifts, and a value of every
    /// scenario, its error is that of one set of points: half of how far the quantiles of the single shifts lie apart,
    /// the widest of the three.
    template <class Q>
    units::Interval<Q> interval(const std::vector<Q>& values) const;

    /// Mean of one value a scenario, and its error in the same sense.
    std::pair<double, double> share(const std::vector<double>& values) const;

  private:
    const Setup* setup_;
    Draw draw_;
    double allowed_;
    std::vector<Scenario> scenarios_;                                          // shift by shift
    std::vector<std::size_t> drawn_as_;                                        // their places in foods_
    std::vector<std::shared_ptr<const std::vector<heat::FoodInBath>>> foods_;  // of each food, all scenarios drawn
};

/// True if a comes before b; what never comes about comes last.
template <class Q>
bool is_before(const Q& a, const Q& b) {
    return a < b;
}
template <class Q>
bool is_before(const std::optional<Q>& a, const std::optional<Q>& b) {
    return a && (!b || *a < *b);
}

/// The value that a share of the values lies below, 0 to 1; takes the next value outward, never one between.
template <class Q>
Q quantile_at(std::vector<Q> values, double place) {
    const auto index = static_cast<std::ptrdiff_t>(place);
    std::nth_element(values.begin(), values.begin() + index, values.end(),
                     [](const Q& a, const Q& b) { return is_before(a, b); });
    return values[static_cast<std::size_t>(index)];
}
template <class Q>
Q quantile_low(std::vector<Q> values, double share) {
    const double place = std::floor(share * static_cast<double>(values.size() - 1));
    return quantile_at(std::move(values), place);
}
template <class Q>
Q quantile_high(std::vector<Q> values, double share) {
    const double place = std::ceil(share * static_cast<double>(values.size() - 1));
    return quantile_at(std::move(values), place);
}

/// How far two quantiles lie apart; nothing where one of them never comes about.
template <class Q>
typename units::DifferenceOf<Q>::type apart(const Q& a, const Q& b) {
    return b - a;
}
template <class Q>
typename units::DifferenceOf<Q>::type apart(const std::optional<Q>& a, const std::optional<Q>& b) {
    return a && b ? *b - *a : typename units::DifferenceOf<Q>::type{};
}

template <class Q>
units::Interval<Q> Ensemble::interval(const std::vector<Q>& values) const {
    const double tail = allowed_;
    const auto of = [tail](const std::vector<Q>& some) {
        return units::Interval<Q>{quantile_low(some, tail), quantile_high(some, 0.5), quantile_high(some, 1.0 - tail)};
    };
    units::Interval<Q> interval = of(values);
    if (draw_.shifts < 2 || values.size() != size()) {
        return interval;
    }
    units::Interval<Q> least = interval;
    units::Interval<Q> most = interval;
    for (std::size_t shift = 0; shift < draw_.shifts; ++shift) {
        const auto from = values.begin() + static_cast<std::ptrdiff_t>(shift * draw_.points);
        const units::Interval<Q> one = of({from, from + static_cast<std::ptrdiff_t>(draw_.points)});
        for (Q units::Interval<Q>::*end :
             {&units::Interval<Q>::low, &units::Interval<Q>::likely, &units::Interval<Q>::high}) {
            least.*end = is_before(one.*end, least.*end) ? one.*end : least.*end;
            most.*end = is_before(most.*end, one.*end) ? one.*end : most.*end;
        }
    }
    interval.error =
        std::max({apart(least.low, most.low), apart(least.likely, most.likely), apart(least.high, most.high)}) / 2.0;
    return interval;
}

}  // namespace holdwater::plan
