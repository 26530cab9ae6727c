// SPDX-License-Identifier: MIT
#include "plan/advice/remedy.hpp"

#include "plan/advice/mend.hpp"
#include "plan/advice/proof.hpp"

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
    problems.push_back(mend ? problem::note("mend", "this would hold: " + mend->advice()) : proof_of_none(trip));
    return problems;
}

}  // namespace holdwater::plan
