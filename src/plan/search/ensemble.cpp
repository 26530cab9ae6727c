// SPDX-License-Identifier: MIT
#include "plan/search/ensemble.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "facts/facts.hpp"
#include "plan/search/parallel.hpp"

namespace holdwater::plan {

double allowed_failures() { return 1.0 - facts::facts().value("quantile.cautious"); }

Draw full_draw() {
    const facts::Facts& facts = facts::facts();
    return {static_cast<std::size_t>(facts.value("scenario.points")),
            static_cast<std::size_t>(facts.value("scenario.shifts"))};
}

Ensemble::Ensemble(const Setup& setup, Draw draw, double allowed)
    : setup_(&setup), draw_(draw), allowed_(allowed), scenarios_(draw_scenarios(draw.points, draw.shifts)) {
    foods_.resize(scenarios_.size());
    for_each_index(scenarios_.size(), [&](std::size_t i) {
        for (const FoodSetup& food : setup.foods) {
            foods_[i].push_back(food_in(food, scenarios_[i]));
        }
    });
}

double quantile_low(std::vector<double> values, double share) {
    const auto index = static_cast<std::ptrdiff_t>(std::floor(share * static_cast<double>(values.size() - 1)));
    std::nth_element(values.begin(), values.begin() + index, values.end());
    return values[static_cast<std::size_t>(index)];
}

double quantile_high(std::vector<double> values, double share) {
    const auto index = static_cast<std::ptrdiff_t>(std::ceil(share * static_cast<double>(values.size() - 1)));
    std::nth_element(values.begin(), values.begin() + index, values.end());
    return values[static_cast<std::size_t>(index)];
}

Band Ensemble::band(const std::vector<double>& values) const {
    const double tail = allowed_failures();
    const auto of = [tail](const std::vector<double>& some) {
        return Band{quantile_low(some, tail), quantile_high(some, 0.5), quantile_high(some, 1.0 - tail)};
    };
    Band band = of(values);
    if (draw_.shifts < 2 || values.size() != size()) {
        return band;
    }
    Band least = band;
    Band most = band;
    for (std::size_t shift = 0; shift < draw_.shifts; ++shift) {
        const auto from = values.begin() + static_cast<std::ptrdiff_t>(shift * draw_.points);
        const Band one = of({from, from + static_cast<std::ptrdiff_t>(draw_.points)});
        least = {std::min(least.low, one.low), std::min(least.likely, one.likely), std::min(least.high, one.high)};
        most = {std::max(most.low, one.low), std::max(most.likely, one.likely), std::max(most.high, one.high)};
    }
    band.error = std::max({most.low - least.low, most.likely - least.likely, most.high - least.high}) / 2.0;
    return band;
}

std::pair<double, double> Ensemble::share(const std::vector<double>& values) const {
    const auto mean = [&](std::size_t from, std::size_t count) {
        const auto begin = values.begin() + static_cast<std::ptrdiff_t>(from);
        return std::accumulate(begin, begin + static_cast<std::ptrdiff_t>(count), 0.0) / static_cast<double>(count);
    };
    double least = mean(0, draw_.points);
    double most = least;
    for (std::size_t shift = 1; shift < draw_.shifts; ++shift) {
        const double one = mean(shift * draw_.points, draw_.points);
        least = std::min(least, one);
        most = std::max(most, one);
    }
    return {mean(0, values.size()), (most - least) / 2.0};
}

}  // namespace holdwater::plan
