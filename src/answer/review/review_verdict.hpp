// SPDX-License-Identifier: MIT
// When a written core was done, what is missing, and the verdict with its reason. Inside answer/ only.
#pragma once

#include "answer/review/review.hpp"
#include "answer/review/review_clock.hpp"
#include "heat/body.hpp"

#include <optional>

namespace holdwater::answer {

struct Done {
    std::optional<units::Duration> come_up;
    std::optional<units::Duration> safe;  // on the clock of the log: kill met with the adaptation factor, and the core
                                          // stayed as warm and as long as the rules ask besides
    /// Safe, and nothing left of the C. perfringens that grew on the way (cautious); what is finished over the fire is
    /// ready for that when it is safe.
    std::optional<units::Duration> ready;
};
Done done_along(const units::History& core, const safety::Standard& standard);

/// The core stood at or above a level for a time on end.
bool stays_warm(const units::History& core, units::Temperature level, units::Duration how_long);

/// safety::judge_come_up; a core that has not arrived is refused only once it has been on the way for too long.
safety::ComeUpVerdict judge_rise(const units::History& core, std::optional<units::Duration> come_up);

struct Missing {
    std::optional<units::Duration> time;  // after the last row; nothing: never within the look-ahead
    bool credited = true;
};
/// `seen`: the cautious bath as the food sees it, going on beyond the last row as the last reading left it.
Missing missing_time(const heat::Modes& slow, units::Temperature start, const Course& course,
                     const units::History& seen, const safety::Standard& standard);

/// Sets verdict and reason from all else.
void judge(FoodReview& food, const trip::Trip& trip);

}  // namespace holdwater::answer
