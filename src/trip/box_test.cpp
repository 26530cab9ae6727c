// SPDX-License-Identifier: MIT
#include "trip/box_test.hpp"

#include "trip/ranges.hpp"
#include "units/parse.hpp"

#include <fmt/format.h>

namespace holdwater::trip {

std::optional<problem::Problem> short_test(units::Duration span) {
    if (span >= *units::parse<units::Duration>(ranges::short_test.low)) {
        return std::nullopt;
    }
    return problem::warning("test-short", fmt::format("{:.0f} min is a short test", units::in_minutes(span)),
                            fmt::format("a good one lasts {} or longer", ranges::short_test.example));
}

std::optional<problem::Problem> impossible_loss(units::HeatLoss loss) {
    const bool low = loss < *units::parse<units::HeatLoss>(ranges::loss.low);
    if (!low && loss <= *units::parse<units::HeatLoss>(ranges::loss.high)) {
        return std::nullopt;
    }
    const std::string what =
        low ? fmt::format("a loss of {:.2g} W/K is less than any box has: the bath hardly cooled", loss.si())
            : fmt::format("a loss of {:.3g} W/K is more than any box has", loss.si());
    return problem::error("loss-out-of-range", what,
                          fmt::format("from {} to {}; {}", ranges::loss.low, ranges::loss.high,
                                      low ? "let the box stand for longer"
                                          : "was the lid open, the first reading taken before the bath had settled, "
                                            "or the water measured wrong?"));
}

}  // namespace holdwater::trip
