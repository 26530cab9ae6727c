// SPDX-License-Identifier: MIT
#include "plan/search/empty_acts.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::plan {
namespace {

constexpr double mark_step = 1.0;  // K, as cards print marks

bool good(const Ensemble& ensemble, const Tried& tried) {
    return holds_in(ensemble, tried.results) && empty_acts(ensemble, tried.results).empty();
}

}  // namespace

std::vector<std::size_t> empty_acts(const Ensemble& ensemble, const std::vector<ScenarioResult>& results) {
    std::size_t most = 0;
    for (const ScenarioResult& one : results) {
        most = std::max(most, one.boiling.size());
    }
    std::vector<std::size_t> empty;
    for (std::size_t k = 0; k < most; ++k) {
        std::vector<units::Volume> boiling;
        for (const ScenarioResult& one : results) {
            if (k < one.boiling.size()) {
                boiling.push_back(one.boiling[k]);
            }
        }
        if (!is_act(ensemble.interval(boiling).likely)) {
            empty.push_back(k);
        }
    }
    return empty;
}

Tried without_empty_acts(const Ensemble& ensemble, Tried tried) {
    const std::vector<std::size_t> empty = empty_acts(ensemble, tried.results);
    if (empty.empty() || !holds_in(ensemble, tried.results)) {
        return tried;
    }
    Schedule fewer = tried.schedule;
    for (auto k = empty.rbegin(); k != empty.rend(); ++k) {
        fewer.top_ups.erase(fewer.top_ups.begin() + static_cast<std::ptrdiff_t>(*k));
    }
    fewer = with_pours(ensemble, fewer);
    if (Tried left{fewer, simulate(ensemble, fewer)}; good(ensemble, left)) {
        return left;
    }
    Schedule hotter = tried.schedule;
    while (hotter.recipe.top_up_mark + units::kelvins(mark_step) <= hotter.recipe.reading) {
        hotter.recipe = marked_at(ensemble, hotter.recipe, hotter.recipe.top_up_mark + units::kelvins(mark_step));
        hotter = with_pours(ensemble, hotter);
        if (Tried poured{hotter, simulate(ensemble, hotter)}; good(ensemble, poured)) {
            return poured;
        }
    }
    return tried;
}

}  // namespace holdwater::plan
