// SPDX-License-Identifier: MIT
// From what holds in few scenarios to what holds in all that a plan promises by, and only just.
#include "plan/advice/mend.hpp"
#include "plan/search/work.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::plan {
namespace {

using trip::Trip;
using Kind = Lever::Kind;

constexpr int steps_further = 4;  // how far it is pulled on: no figure of any science

}  // namespace

/// What the few scenarios took for enough, pulled a little further until it is in many.
bool Solver::pull_further(Steps& steps) {
    for (int i = 0; i <= steps_further; ++i) {
        if (fully(steps)) {
            return true;
        }
        std::optional<std::size_t> cheapest;
        for (std::size_t lever = 0; lever < steps.size(); ++lever) {
            const bool can = steps[lever] > 0 && steps[lever] < levers_[lever].steps && levers_[lever].rises;
            if (can && (!cheapest || levers_[lever].a_step < levers_[*cheapest].a_step)) {
                cheapest = lever;
            }
        }
        if (!cheapest) {
            return false;
        }
        ++steps[*cheapest];
    }
    return false;
}

void Solver::settle_back(Steps& steps) {
    for (const std::size_t lever : dearest_first(steps)) {
        Steps without = steps;
        without[lever] = 0;
        if (levers_[lever].steps > 1 && !levers_[lever].rises && fully(without)) {
            steps = without;
            continue;
        }
        // In larger and larger strides as long as it holds, then in single ones to the very edge.
        for (int stride = 1; steps[lever] > 0 && !work_is_enough();) {
            Steps less = steps;
            less[lever] = std::max(0, steps[lever] - stride);
            if (fully(less)) {
                steps = less;
                stride *= 2;
            } else if (stride == 1) {
                break;
            } else {
                stride = 1;
            }
        }
    }
}

std::optional<Mend> Solver::settled(Steps steps) {
    if (!pull_further(steps)) {
        return std::nullopt;
    }
    // Without one change another may be needed less: not all of them only help. What was tried is known.
    for (Steps before; before != steps;) {
        before = steps;
        settle_back(steps);
    }
    for (const std::size_t lever : dearest_first(steps)) {
        Steps less = steps;
        for (--less[lever]; less[lever] >= 0 && !work_is_enough() && feasible_->thoroughly(changed_by(less));
             --less[lever]) {
            steps = less;
        }
    }
    Mend mend{changed_by(steps), {}, {}, cost(steps), levers_, steps};
    // Each in the words of what it does beyond those before it.
    Trip before = *trip_;
    for (std::size_t i = 0; i < levers_.size(); ++i) {
        if (steps[i] == 0) {
            continue;
        }
        Trip after = before;
        levers_[i].pull(after, steps[i]);
        Trip said = after;
        for (trip::Food& food : said.foods) {
            // What another change raises further is said there.
            const auto same = [&food](const trip::Food& f) { return f.name == food.name; };
            const auto last = std::find_if(mend.changed.foods.begin(), mend.changed.foods.end(), same);
            const auto first = std::find_if(before.foods.begin(), before.foods.end(), same);
            if (levers_[i].kind == Kind::lowest && last != mend.changed.foods.end() && last->target != food.target) {
                food.target = first->target;
            }
        }
        if (std::string words = levers_[i].words(before, said); !words.empty()) {
            mend.changes.push_back(std::move(words));
            mend.kinds.push_back(levers_[i].kind);
        }
        before = std::move(after);
    }
    return mend;
}

}  // namespace holdwater::plan
