// SPDX-License-Identifier: MIT
// Answers to the [[what_if]] questions of a trip.
#pragma once

#include "plan/result/plan.hpp"

#include <string>

namespace holdwater::cli {

/// One line an answer; empty if the trip asks nothing.
std::string what_if_text(const plan::Plan& plan);

}  // namespace holdwater::cli
