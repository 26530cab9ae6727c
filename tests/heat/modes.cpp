// SPDX-License-Identifier: MIT
// The few modes of a body against the whole series, and their sums.
#include "heat/modes.hpp"

#include "support/near.hpp"
#include "support/pieces.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace holdwater;
using heat::Direction;
using support::meat;
using support::near_abs;

namespace {

const std::vector<std::vector<Direction>> bodies = {
    {{0, 0.005}},
    {{0, 0.0125}},
    {{0, 0.05}},
    {{0.28, 0.025}},
    {{1, 0.0425}, {0, 0.15}},
    {{1, 0.07}, {0, 0.1}},
    {{0, 0.03}, {0, 0.05}, {0, 0.1}},
    {{0, 0.03}, {0, 0.03}, {0, 0.03}},
    {{0, 0.05}, {0, 0.03}, {0, 0.05}},
    {{2, 0.04}},
};

struct Exact {
    double core = 1.0;
    double mean = 1.0;
};

Exact exact(const std::vector<Direction>& body, double film, double t) {
    Exact result;
    for (const Direction& d : body) {
        const double biot = film * d.half / 0.48;
        const double fourier = 1.3e-7 * t / (d.half * d.half);
        result.core *= heat::theta_at(d.b, biot, fourier, 0.0);
        result.mean *= heat::theta_mean(d.b, biot, fourier);
    }
    return result;
}

}  // namespace

TEST_CASE("few modes follow the whole series") {
    for (const double film : {60.0, 95.0, 300.0, 500.0, 1100.0}) {
        for (std::size_t i = 0; i < bodies.size(); ++i) {
            const heat::Modes m = heat::product_of(bodies[i], meat, units::FilmCoefficient{film});
            const double life = 1.0 / m.modes.front().rate;
            for (double share = 0.001; share < 6.0; share *= 1.2) {
                const double t = share * life;
                CAPTURE(film);
                CAPTURE(i);
                CAPTURE(t);
                const Exact e = exact(bodies[i], film, t);
                const double core = heat::core_at(m, units::Duration{t});
                CHECK(near_abs(core, e.core, t < 60 ? 0.06 : 0.02));
                if (share > 0.15) {
                    CHECK(near_abs(core, e.core, 0.003));
                }
                if (t > 60) {
                    CHECK(near_abs(heat::mean_at(m, units::Duration{t}), e.mean, 0.003));
                }
            }
        }
    }
}

TEST_CASE("weights sum to one, the slowest mode comes first, modes are few") {
    for (const double film : {95.0, 500.0}) {
        for (std::size_t i = 0; i < bodies.size(); ++i) {
            CAPTURE(film);
            CAPTURE(i);
            const heat::Modes m = heat::product_of(bodies[i], meat, units::FilmCoefficient{film});
            double core = 0.0;
            double mean = m.mean_at_once;
            for (std::size_t n = 0; n < m.modes.size(); ++n) {
                core += m.modes[n].core;
                mean += m.modes[n].mean;
                CHECK(m.modes[n].mean >= 0.0);
                if (n > 0) {
                    CHECK(m.modes[n].rate >= m.modes[n - 1].rate);
                }
            }
            CHECK(near_abs(core, 1.0, 1e-12));
            CHECK(near_abs(mean, 1.0, 1e-12));
            CHECK(m.mean_at_once >= 0.0);
            CHECK(m.mean_at_once < 0.05);
            CHECK(m.modes.size() <= 56);
        }
    }
}
