// SPDX-License-Identifier: MIT
// How the top-ups of one recipe are spread over a trip: each as late as the scenarios allow. Inside plan/search only.
#pragma once

#include "plan/search/deadlines.hpp"
#include "plan/search/schedule.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace holdwater::plan {

/// K by which the core passes target and tolerance in all but `allowed` of the scenarios; negative is room.
double excess_of(const std::vector<Simulation>& runs, double allowed);

/// Top-ups for which somebody must wake.
std::size_t wakes(const Schedule& schedule);

/// First what holds, then what reaches its mark, then fewer empty top-ups, then the lesser burden.
bool better(const Schedule& a, const Schedule& b);

/// What a schedule must be better than to be of any use. All that is compared only rises while a schedule grows, so
/// that one that has come too far can be given up.
struct ToBeat {
    const Schedule* best = nullptr;  // one that holds
    Wanted wanted;

    static ToBeat of(const std::optional<Schedule>& best, const Wanted& wanted);
    /// No better than the best, however it goes on.
    bool worse(const Schedule& so_far) const;
};

/// The best that a recipe allows; nothing where that is worse than what it must beat.
struct Spread {
    std::optional<Schedule> schedule;
    bool whole = true;  // it hangs on nothing that was to beat: nowhere was it given up on the way
};

/// Of a fill that was lived through already, with the least strict share of late scenarios per top-up with which the
/// whole trip keeps its promise.
Spread best_spread(const Ensemble& ensemble, const Filled& start, const Recipe& recipe, const ToBeat& to_beat);

}  // namespace holdwater::plan
