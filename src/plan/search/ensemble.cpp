// SPDX-License-Identifier: MIT
#include "plan/search/ensemble.hpp"

#include "facts/facts.hpp"
#include "plan/search/parallel.hpp"

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
    foods_.resize(scenarios_.size());
    each_side_by_side(scenarios_.size(), [&](const std::vector<std::size_t>& group) {
        for (const FoodSetup& food : setup.foods) {
            std::vector<Scenario> some;
            for (const std::size_t i : group) {
                some.push_back(scenarios_[i]);
            }
            std::vector<heat::FoodInBath> in = foods_in(food, some);
            for (std::size_t k = 0; k < group.size(); ++k) {
                foods_[group[k]].push_back(std::move(in[k]));
            }
        }
    });
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
    part.foods_.clear();
    for (const std::size_t i : kept) {
        part.scenarios_.push_back(scenarios_[i]);
        part.foods_.push_back(foods_[i]);
    }
    part.draw_ = {kept.size(), 1};
    return part;
}

}  // namespace holdwater::plan
