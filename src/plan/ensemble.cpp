// SPDX-License-Identifier: MIT
#include "plan/ensemble.hpp"

#include <algorithm>
#include <cmath>

#include "facts/facts.hpp"

namespace holdwater::plan {

double allowed_failures() { return 1.0 - facts::facts().value("quantile.cautious"); }

Ensemble::Ensemble(const Setup& setup, std::size_t count) : setup_(&setup), scenarios_(draw_scenarios(count)) {
    foods_.reserve(count);
    for (const Scenario& scenario : scenarios_) {
        std::vector<heat::FoodInBath> foods;
        for (const FoodSetup& food : setup.foods) {
            foods.push_back(food_in(food, scenario));
        }
        foods_.push_back(std::move(foods));
    }
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

Band band_of(const std::vector<double>& values) {
    return {quantile_low(values, 0.05), quantile_high(values, 0.5), quantile_high(values, 0.95)};
}

}  // namespace holdwater::plan
