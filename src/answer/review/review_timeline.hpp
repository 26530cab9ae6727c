// SPDX-License-Identifier: MIT
// What was seen on the way through a log, in time order. Inside answer/ only.
#pragma once

#include "answer/review/review.hpp"
#include "answer/review/review_bath.hpp"

#include <vector>

namespace holdwater::answer {

std::vector<Noticed> timeline_of(const trip::Log& log, const Review& review, const BathPaths& paths,
                                 units::System system);

}  // namespace holdwater::answer
