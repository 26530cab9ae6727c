// SPDX-License-Identifier: MIT
// What a plan settles around the box, for a terminal.
#pragma once

#include "plan/result/plan.hpp"

#include <string>

namespace holdwater::cli {

/// Short lines, one heading a part, numbers rounded to the safe side. Warnings are printed elsewhere.
std::string around_text(const plan::Plan& plan);

}  // namespace holdwater::cli
