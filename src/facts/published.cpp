// SPDX-License-Identifier: MIT
#include "facts/published.hpp"

#include "facts/facts.hpp"

#include <cmath>

namespace holdwater::facts {
namespace {

/// A table in °F that is read in °C, to one decimal, comes out this far off at the most.
constexpr double lost_in_a_decimal = 0.05;  // K
constexpr double same = 1e-6;               // K

double off(units::Temperature limit, const PrintedPair& pair) {
    return std::abs((limit - units::fahrenheit(pair.fahrenheit)).si());
}

}  // namespace

const PrintedPair* printed_pair(units::Temperature limit) {
    for (const PrintedPair& pair : facts().printed_pairs()) {
        if (std::abs(limit.celsius() - pair.celsius) < same || off(limit, pair) < lost_in_a_decimal) {
            return &pair;
        }
    }
    return nullptr;
}

units::Amount published(units::Temperature limit, units::System system, units::Toward otherwise) {
    if (const PrintedPair* pair = printed_pair(limit)) {
        const bool exact = std::abs(limit.celsius() - pair->celsius) < same || off(limit, *pair) < same;
        const double celsius = exact ? pair->celsius : limit.celsius();
        const double step = exact && pair->celsius == std::round(pair->celsius) ? 1.0 : 0.1;
        return units::in_order(system, units::figure(celsius, step, units::Toward::nearest, "°C"),
                               units::figure(pair->fahrenheit, 1.0, units::Toward::nearest, "°F"));
    }
    const bool us = units::first_of(system) == units::System::us;
    const units::Temperature whole = us ? units::fahrenheit(units::round_to(limit.fahrenheit(), 1.0, otherwise))
                                        : units::celsius(units::round_to(limit.celsius(), 1.0, otherwise));
    return units::amount(whole, system, {1.0, otherwise});
}

}  // namespace holdwater::facts
