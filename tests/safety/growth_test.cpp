// SPDX-License-Identifier: MIT
// Growth over a straight stretch of temperature, against a numerical integral of the rate.
#include "safety/growth.hpp"

#include "facts/facts.hpp"
#include "support/near.hpp"

#include <boost/math/quadrature/gauss.hpp>
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace holdwater;
using support::near_rel;

namespace {

/// The mean rate from one temperature to another, in slices of a kelvin that end where the model does.
double mean_by_quadrature(const facts::GrowthModel& model, double from, double to) {
    const auto rate = [&](double t) { return safety::growth_rate(model, units::celsius(t)); };
    const double low = std::max(std::min(from, to), model.lowest.celsius());
    const double high = std::min(std::max(from, to), model.highest.celsius());
    const int slices = std::max(1, static_cast<int>(std::ceil(high - low)));
    double sum = 0.0;
    for (int i = 0; i < slices; ++i) {
        const double a = low + (high - low) * i / slices;
        const double b = low + (high - low) * (i + 1) / slices;
        sum += boost::math::quadrature::gauss<double, 15>::integrate(rate, a, b);
    }
    return sum / std::abs(to - from);
}

}  // namespace

TEST_CASE("growth over a stretch of temperature is the integral of its rate") {
    for (const char* food : {"beef", "pork", "chicken"}) {
        const facts::GrowthModel& model = facts::facts().growth(food);
        for (const double from : {5.0, 10.5, 20.0, 33.3, 45.0, 51.0}) {
            for (const double step : {-30.0, -3.0, -0.1, -1e-3, -2e-4, 1e-4, 1e-2, 0.5, 4.0, 60.0}) {
                const double to = from + step;
                const double hours = 0.75;
                const double grown =
                    safety::growth_between(model, units::celsius(from), units::celsius(to), units::hours(hours));
                CAPTURE(food);
                CAPTURE(from);
                CAPTURE(to);
                const bool outside = std::max(from, to) <= model.lowest.celsius();
                CHECK(near_rel(1.0 + grown, 1.0 + (outside ? 0.0 : hours * mean_by_quadrature(model, from, to)), 1e-9));
            }
        }
    }
}
