// SPDX-License-Identifier: MIT
#include "plan/search/ensemble.hpp"

#include "facts/facts.hpp"
#include "plan/search/food_store.hpp"

#include <algorithm>
#include <numeric>

namespace holdwater::plan {

double allowed_failures() {
    return 1.0 - facts::facts().value("quantile.cautious");
}

Draw full_draw() {
    const facts::Facts& facts = facts::facts();
    return {static_cast<std::size_t>(facts.value("scenario.points")),
            static_cast<std::size_t>(facts.value("scenario.shifts"))};
}

Ensemble::Ensemble(const Setup& setup, Draw draw, double allowed)
    : setup_(&setup), draw_(draw), allowed_(allowed), scenarios_(draw_scenarios(draw.points, draw.shifts)) {
    drawn_as_.resize(scenarios_.size());
    std::iota(drawn_as_.begin(), drawn_as_.end(), std::size_t{0});
    for (const FoodSetup& food : setup.foods) {
        foods_.push_back(foods_of(food, draw, scenarios_));
    }
}

std::vector<heat::FoodInBath> Ensemble::foods(std::size_t i) const {
    std::vector<heat::FoodInBath> all;
    all.reserve(foods_.size());
    for (const auto& food : foods_) {
        all.push_back((*food)[drawn_as_[i]]);
    }
    return all;
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

Ensemble Ensemble::only(const std::vector<std::size_t>& kept) const {
    Ensemble part = *this;
    part.scenarios_.clear();
    part.drawn_as_.clear();
    for (const std::size_t i : kept) {
        part.scenarios_.push_back(scenarios_[i]);
        part.drawn_as_.push_back(drawn_as_[i]);
    }
    part.draw_ = {kept.size(), 1};
    return part;
}

}  // namespace holdwater::plan
