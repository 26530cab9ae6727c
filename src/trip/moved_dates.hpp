// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

namespace holdwater::trip {

/// A trip file with every date and time moved by so many days; clocks, remarks and all else stay.
std::string moved_dates(std::string_view text, int days);

}  // namespace holdwater::trip
