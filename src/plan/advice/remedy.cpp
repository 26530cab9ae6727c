// SPDX-License-Identifier: MIT
#include "plan/advice/remedy.hpp"

#include "plan/advice/mend.hpp"
#include "plan/advice/proof.hpp"
#include "plan/search/work.hpp"

#include <algorithm>
#include <array>

namespace holdwater::plan {
namespace {

/// Wrong input that a change of the plan mends: what does not fit into the box.
bool can_be_mended(const problem::Problem& one) {
    constexpr std::array<problem::Code, 2> of_the_box{"bath-overflows", "food-not-covered"};
    return one.severity != problem::Severity::error || one.code.whose() == problem::Whose::plan ||
           std::find(of_the_box.begin(), of_the_box.end(), one.code) != of_the_box.end();
}

}  // namespace

problem::Problems with_advice(const trip::Trip& trip, problem::Problems problems, Feasible& feasible) {
    if (!std::all_of(problems.begin(), problems.end(), can_be_mended)) {
        return problems;
    }
    const std::optional<Mend> mend = mend_of(trip, feasible);
    if (!mend) {
        problems.push_back(proof_of_none(trip));
        return problems;
    }
    problems.push_back(problem::note("mend", "this would hold: " + mend->advice()));
    if (work_is_enough()) {
        problems.push_back(problem::note("mend", stopped_before_the_least));
    }
    return problems;
}

}  // namespace holdwater::plan
