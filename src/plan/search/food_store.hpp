// SPDX-License-Identifier: MIT
// The foods of many scenarios as the bath meets them, worked out once: neither the start nor the box changes how a
// piece may turn out, and a search tries hundreds of these. Inside plan/ only.
#pragma once

#include "plan/search/ensemble.hpp"

#include <memory>
#include <vector>

namespace holdwater::plan {

/// A food of one setup in each of the scenarios that `draw` gives, and perhaps in others after them.
using FoodsInBath = std::shared_ptr<const std::vector<heat::FoodInBath>>;
FoodsInBath foods_of(const FoodSetup& food, const Draw& draw, const std::vector<Scenario>& scenarios);

}  // namespace holdwater::plan
