// SPDX-License-Identifier: MIT
#include "answer/spread/draw.hpp"

#include <boost/math/distributions/normal.hpp>
#include <boost/random/sobol.hpp>
#include <boost/random/uniform_01.hpp>

#include <algorithm>
#include <cmath>
#include <random>

namespace holdwater::answer {
namespace {

/// Double precision is plenty here; by default the library works in long double.
using Plain = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

/// How many half bands a share of a normal distribution lies from its middle.
double half_bands(double share) {
    const boost::math::normal_distribution<double, Plain> unit;
    static const double ninety_five = quantile(unit, 0.95);
    return quantile(unit, share) / ninety_five;
}

}  // namespace

double value_at(const facts::Spread& spread, double share) {
    const double middle = (spread.low + spread.high) / 2.0;
    const double half = (spread.high - spread.low) / 2.0;
    switch (spread.shape) {
        case facts::SpreadShape::uniform:
            return spread.low + (spread.high - spread.low) * share;
        case facts::SpreadShape::triangular:
            return share < 0.5 ? spread.low + half * std::sqrt(2.0 * share)
                               : spread.high - half * std::sqrt(2.0 * (1.0 - share));
        case facts::SpreadShape::normal:
            return middle + half * half_bands(share);
        case facts::SpreadShape::lognormal: {
            const double middle_log = (std::log(spread.low) + std::log(spread.high)) / 2.0;
            const double half_log = (std::log(spread.high) - std::log(spread.low)) / 2.0;
            return std::exp(middle_log + half_log * half_bands(share));
        }
    }
    return middle;
}

double place_at(const facts::Spread& spread, double share) {
    const bool log = spread.shape == facts::SpreadShape::lognormal;
    const auto scale = [log](double value) { return log ? std::log(value) : value; };
    const double middle = (scale(spread.low) + scale(spread.high)) / 2.0;
    const double half = (scale(spread.high) - scale(spread.low)) / 2.0;
    return (scale(value_at(spread, share)) - middle) / half;
}

std::vector<std::vector<double>> even_shares(std::size_t dimensions, std::size_t points, std::size_t shifts) {
    // Half a grid step inward, so that no draw is exactly 0 or 1, where a normal has no value.
    constexpr double edge = 0.5 / 65536.0;
    boost::random::uniform_01<double> uniform;
    std::mt19937_64 dice;  // its default seed: the standard fixes what it gives
    std::vector<std::vector<double>> rows;
    rows.reserve(points * shifts);
    for (std::size_t shift = 0; shift < shifts; ++shift) {
        std::vector<double> step(dimensions, 0.0);
        for (double& s : step) {
            s = shift == 0 ? 0.0 : std::ldexp(static_cast<double>(dice() >> 11U), -53);
        }
        boost::random::sobol sequence(dimensions);
        // The first point of the sequence is the corner of all zeros; it and its echo at 1/2 are skipped.
        sequence.discard(dimensions);
        for (std::size_t i = 0; i < points; ++i) {
            std::vector<double> row(dimensions);
            for (std::size_t d = 0; d < dimensions; ++d) {
                const double moved = uniform(sequence) + step[d];
                row[d] = std::clamp(moved < 1.0 ? moved : moved - 1.0, edge, 1.0 - edge);
            }
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

}  // namespace holdwater::answer
