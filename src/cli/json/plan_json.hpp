// SPDX-License-Identifier: MIT
// A plan, or its refusal, as JSON.
#pragma once

#include "card/figures/numbers.hpp"
#include "cli/json/json.hpp"
#include "plan/replan/replan.hpp"

#include <string>
#include <vector>

namespace holdwater::cli {

/// Schema 1 of the JSON contract.
Json plan_json(const plan::Plan& plan, const std::vector<card::CardNumber>& numbers, const std::string& stamp);
/// Why there is no plan. The verdict is "refused", or null where an input is wrong.
Json refusal_json(const trip::Trip& trip, const problem::Problems& problems);

/// What became of one box: its plan with the numbers of its cards, or what refused it.
struct BoxResult {
    const trip::Trip* trip = nullptr;
    const plan::Plan* plan = nullptr;  // null: refused
    std::vector<card::CardNumber> numbers;
    problem::Problems problems;
};

/// One box as it is; two in one object: `verdict` of the worse, then each as it would stand alone.
std::string boxes_json(const trip::Trip& trip, const std::vector<BoxResult>& boxes, const std::string& stamp);

/// A plan from here on: as a plan, with what was found (`from_here`) and by how much the meal is later.
std::string replan_json(const plan::Replanned& replanned, const BoxResult& box, const std::string& stamp);

}  // namespace holdwater::cli
