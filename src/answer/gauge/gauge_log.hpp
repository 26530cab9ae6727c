// SPDX-License-Identifier: MIT
// The log of a box test as the gauge wants it. A log that was kept in the other unit is recognised and named.
#pragma once

#include "answer/gauge/gauge.hpp"
#include "trip/read_log.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace holdwater::answer {

struct GaugeLog {
    std::vector<GaugeReading> readings;
    std::vector<GaugeTouch> touches;
    units::History outside;  // empty where the log has no such column
    std::vector<trip::LogGap> gaps;
};

/// Every fault with file:line:column. Besides those of trip::read_log: unit-fahrenheit (140 under bath_c),
/// unit-celsius (62 under bath_f).
problem::Result<GaugeLog> read_gauge_log(std::string_view text, const std::string& file_name);

}  // namespace holdwater::answer
