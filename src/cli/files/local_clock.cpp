// SPDX-License-Identifier: MIT
#include "cli/files/local_clock.hpp"

#include "units/plain_number.hpp"

#include <cstdint>
#include <cstdlib>
#include <ctime>

namespace holdwater::cli {

units::LocalTime clock_now() {
    if (const char* const fixed = std::getenv("SOURCE_DATE_EPOCH")) {
        if (const auto seconds = units::plain_number(fixed)) {
            return units::LocalTime(static_cast<std::int64_t>(*seconds));
        }
    }
    const std::time_t now = std::time(nullptr);
    std::tm civil{};
    if (::localtime_r(&now, &civil) == nullptr) {
        return units::LocalTime(static_cast<std::int64_t>(now));
    }
    return units::LocalTime::from_civil(civil.tm_year + 1900, civil.tm_mon + 1, civil.tm_mday, civil.tm_hour,
                                        civil.tm_min, civil.tm_sec);
}

}  // namespace holdwater::cli
