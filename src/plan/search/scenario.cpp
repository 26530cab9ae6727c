// SPDX-License-Identifier: MIT
#include "plan/search/scenario.hpp"

#include "facts/facts.hpp"

#include <boost/math/distributions/normal.hpp>
#include <boost/random/sobol.hpp>
#include <boost/random/uniform_01.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

namespace holdwater::plan {
namespace {

constexpr std::size_t dimensions = 13;

/// Double precision is plenty here; by default the library works in long double.
using Plain = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

/// How many half bands a share of a normal distribution lies from its middle.
double half_bands(double share) {
    const boost::math::normal_distribution<double, Plain> unit;
    static const double ninety_five = quantile(unit, 0.95);
    return quantile(unit, share) / ninety_five;
}

/// Value of a spread at a share 0 to 1 of its distribution. Normal and lognormal spreads give their 5 and 95 % points
/// as low and high; uniform ones their ends; triangular ones peak in the middle.
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

/// Place between the ends of a spread, -1 at low and 1 at high; on the logarithm for a lognormal one.
double place_at(const facts::Spread& spread, double share) {
    const bool log = spread.shape == facts::SpreadShape::lognormal;
    const auto scale = [log](double value) { return log ? std::log(value) : value; };
    const double middle = (scale(spread.low) + scale(spread.high)) / 2.0;
    const double half = (scale(spread.high) - scale(spread.low)) / 2.0;
    return (scale(value_at(spread, share)) - middle) / half;
}

/// The spread of each dimension, looked up once for all scenarios; the lateness of top-ups, which late_of spreads, has
/// none here.
std::array<const facts::Spread*, dimensions> spreads() {
    constexpr std::array<const char*, dimensions> keys{
        "thickness", "diffusivity",  "film",        "start", "box-loss", "outside",  "wind",
        "litres",    "boil.cooling", "thermometer", nullptr, "lid.open", "unstirred"};
    std::array<const facts::Spread*, dimensions> found{};
    for (std::size_t i = 0; i < dimensions; ++i) {
        found[i] = keys[i] != nullptr ? &facts::facts().spread(keys[i]) : nullptr;
    }
    return found;
}

Scenario scenario_at(const std::array<const facts::Spread*, dimensions>& all, const std::vector<double>& share) {
    const auto value = [&](std::size_t i) { return value_at(*all[i], share[i]); };
    const auto place = [&](std::size_t i) { return place_at(*all[i], share[i]); };
    Scenario s;
    s.thickness = place(0);
    s.diffusivity = place(1);
    s.film = place(2);
    s.start = value(3);
    s.loss = place(4);
    s.outside = value(5);
    s.wind = value(6);
    s.litres = value(7);
    s.boiling_cooled = value(8);
    s.reading = place(9);
    s.late = share[10];
    s.lid = value(11) * 60.0;
    s.colder = std::max(0.0, value(12));
    return s;
}

}  // namespace

Scenario likely_scenario() {
    return scenario_at(spreads(), std::vector<double>(dimensions, 0.5));
}

std::vector<Scenario> draw_scenarios(std::size_t points, std::size_t shifts) {
    // Half a grid step inward, so that no draw is exactly 0 or 1, where a normal has no value.
    constexpr double edge = 0.5 / 65536.0;
    boost::random::uniform_01<double> uniform;
    std::mt19937_64 dice;  // its default seed: the standard fixes what it gives
    const auto all = spreads();
    std::vector<Scenario> scenarios;
    scenarios.reserve(points * shifts);
    for (std::size_t shift = 0; shift < shifts; ++shift) {
        std::vector<double> step(dimensions, 0.0);
        for (double& s : step) {
            s = shift == 0 ? 0.0 : std::ldexp(static_cast<double>(dice() >> 11U), -53);
        }
        boost::random::sobol sequence(dimensions);
        // The first point of the sequence is the corner of all zeros; it and its echo at 1/2 are skipped.
        sequence.discard(dimensions);
        std::vector<double> share(dimensions);
        for (std::size_t i = 0; i < points; ++i) {
            for (std::size_t d = 0; d < dimensions; ++d) {
                const double moved = uniform(sequence) + step[d];
                share[d] = std::clamp(moved < 1.0 ? moved : moved - 1.0, edge, 1.0 - edge);
            }
            scenarios.push_back(scenario_at(all, share));
        }
    }
    return scenarios;
}

double late_of(const Scenario& scenario, std::size_t top_up) {
    // Steps of the golden ratio keep the lateness of successive top-ups evenly spread (Weyl sequence).
    constexpr double golden = 0.6180339887498949;
    const double share = std::fmod(scenario.late + golden * static_cast<double>(top_up), 1.0);
    return value_at(facts::facts().spread("top-up.late"), share) * 60.0;
}

}  // namespace holdwater::plan
