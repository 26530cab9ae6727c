// SPDX-License-Identifier: MIT
// How long until hot water burns: from the published table only. The damage integral is a check of that table.
#pragma once

#include "units/history.hpp"
#include "units/quantity.hpp"

#include <optional>

namespace holdwater::safety {

struct BurnTimes {
    std::optional<units::Duration> second;  // adult, second degree
    std::optional<units::Duration> third;   // adult, third degree
    std::optional<units::Duration> infant;  // severe
};

/// Times for skin in water. Between two rows the hotter row's, shorter time counts; above the last row its time.
/// Below the first row nothing: no published time, which is not a promise of no harm. A second-degree burn never comes
/// later than a third-degree one, nor a child's later than an adult's.
BurnTimes burn_times(units::Temperature water);

/// Damage integral [1]: integral of p exp(-activation / T) dt, T in K, over the time above `from`. 0.53 first degree,
/// 1 second degree. Source: henriques-1947, with its own pair of constants. Valid for the basal layer, 44 to about 70
/// C. Outside: below `from` nothing counts.
double burn_damage(const units::History& basal_layer, units::Temperature from);
/// The same from the temperature of the facts on.
double burn_damage(const units::History& basal_layer);

}  // namespace holdwater::safety
