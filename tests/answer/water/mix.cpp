// SPDX-License-Identifier: MIT
// Mixing by the energy balance against the worked table of the hand reference, and what comes out when pouring errs.
#include "answer/water/mix.hpp"

#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <vector>

using namespace holdwater;
using namespace holdwater::support;
using units::celsius;

namespace {

struct Row {
    double target;  // C
    double altitude;
    double slush;  // kg of boiling water to 1 kg of ice water at 0 C
    double snow;   // kg of boiling water to 1 kg of melting ice at 0 C
};

// Computed in the project's own hand reference, part D1, with c 4.19 kJ/kg/K, L 333.5 kJ/kg and boiling points 100.0,
// 93.4 and 86.7 C (an independent hand calculation of the same balance; no publication).
constexpr Row table[] = {
    {50, 0, 1.00, 2.59},    {50, 2000, 1.15, 2.99}, {50, 4000, 1.36, 3.53}, {55, 0, 1.22, 2.99},
    {55, 2000, 1.43, 3.51}, {55, 4000, 1.74, 4.25}, {57, 0, 1.33, 3.18},    {57, 2000, 1.57, 3.76},
    {57, 4000, 1.92, 4.60}, {60, 0, 1.50, 3.49},    {60, 2000, 1.80, 4.18}, {60, 4000, 2.25, 5.23},
    {63, 0, 1.70, 3.85},    {63, 2000, 2.07, 4.70}, {63, 4000, 2.66, 6.02}, {65, 0, 1.86, 4.13},
    {65, 2000, 2.29, 5.10}, {65, 4000, 3.00, 6.67}, {70, 0, 2.33, 4.99},    {70, 2000, 3.00, 6.40},
    {70, 4000, 4.20, 8.97},
};

answer::MixQuestion question(double target, double altitude, std::variant<units::Temperature, answer::Frozen> cold,
                             answer::Measure by = answer::Measure::mass) {
    return {celsius(target), heat::boiling_point_at(units::metres(altitude)).value(), cold, by};
}

answer::MixAnswer mixed(const answer::MixQuestion& q) {
    const auto answer = answer::mix(q);
    REQUIRE(answer.ok());
    return *answer;
}

}  // namespace

TEST_CASE("parts of boiling water to ice water and to melting ice, every row of the worked table") {
    for (const Row& row : table) {
        CAPTURE(row.target);
        CAPTURE(row.altitude);
        const double boiling = heat::boiling_point_at(units::metres(row.altitude)).value().celsius();
        // Half a last digit, and the boiling point that the table rounds (0.1 K) through d ratio = ratio dT / (Tb - T).
        const auto tolerance = [&](double ratio) { return 0.005 + ratio * 0.1 / (boiling - row.target); };
        CHECK(near_abs(mixed(question(row.target, row.altitude, answer::Frozen::slush)).hot_parts, row.slush,
                       tolerance(row.slush)));
        CHECK(near_abs(mixed(question(row.target, row.altitude, answer::Frozen::snow)).hot_parts, row.snow,
                       tolerance(row.snow)));
    }
}

TEST_CASE("by volume about 4 per cent more boiling water, as it is lighter") {
    for (const Row& row : table) {
        const double mass = mixed(question(row.target, row.altitude, answer::Frozen::slush)).hot_parts;
        const double volume =
            mixed(question(row.target, row.altitude, answer::Frozen::slush, answer::Measure::volume)).hot_parts;
        CHECK(near_abs(volume / mass, 1.04, 0.01));
    }
}

TEST_CASE("the parts give the target back, cold water too") {
    for (const double target : {30.0, 54.4, 60.0, 72.0}) {
        for (const double cold : {0.0, 2.0, 15.0, 25.0}) {
            for (const auto by : {answer::Measure::mass, answer::Measure::volume}) {
                const auto q = question(target, 1850, celsius(cold), by);
                const auto a = mixed(q);
                CHECK(near_abs(a.mixed.result.celsius(), target, 1e-9));
                CHECK(near_abs(answer::mixed_temperature(q, a.hot_parts).celsius(), target, 1e-9));
                CHECK(a.mixed.low < a.mixed.result);
                CHECK(a.mixed.result < a.mixed.high);
            }
        }
    }
}

TEST_CASE("the likely middle has cooled, and the band holds the middle nine tenths of what independent errors give") {
    // A plain sum over drawn errors, worked out here apart from the program: both pours 5 % off at their 5 and 95 %
    // points, 1 to 5 K lost on the way, weather, cold water 2 K off, a wall of 0 to 10 % at 20 C or a warmed one.
    for (const double target : {40.0, 54.4, 60.0, 72.0}) {
        for (const bool cold_wall : {false, true}) {
            const auto q = question(target, 0, celsius(4));
            const auto a = mixed(q);
            std::mt19937 engine(7);
            const auto flat = [&] { return static_cast<double>(engine()) / 4294967296.0; };
            const auto normal = [&] {
                double sum = -6.0;
                for (int i = 0; i < 12; ++i) {
                    sum += flat();
                }
                return sum;
            };
            std::vector<double> drawn;
            for (int i = 0; i < 20000; ++i) {
                const double hot = a.hot_parts * (1.0 + 0.05 / 1.645 * normal());
                const double cold = 1.0 + 0.05 / 1.645 * normal();
                const double boiling = q.boiling.celsius() - 1.0 - 4.0 * flat() + 0.8 * (2.0 * flat() - 1.0);
                const double water = (hot * boiling + cold * (4.0 + 4.0 * flat() - 2.0)) / (hot + cold);
                const double wall = cold_wall ? 0.1 * flat() : 0.0;
                drawn.push_back((water + wall * 20.0) / (1.0 + wall));
            }
            std::sort(drawn.begin(), drawn.end());
            CAPTURE(target);
            CHECK(a.mixed.low.celsius() < drawn[1000]);
            CHECK(a.mixed.high.celsius() > drawn[19000]);
            CHECK(a.mixed.low.celsius() > drawn[1000] - 4.0);
            if (!cold_wall) {
                CHECK(near_abs(a.mixed.likely.celsius(), drawn[10000], 0.1));
            }
        }
    }
}

TEST_CASE("nothing comes out above the boiling point or as ice") {
    const auto hot = mixed(question(99.9, 5, celsius(2)));
    CHECK(hot.mixed.high == heat::boiling_point_at(units::metres(5)).value());
    CHECK(hot.mixed.likely < hot.mixed.result);
    const auto cold = mixed(question(1, 5, celsius(0)));
    CHECK(cold.mixed.low == celsius(0));
    CHECK(mixed(question(1, 5, answer::Frozen::slush)).mixed.low >= celsius(0));
}

TEST_CASE("the sensitivities at 60 C are those of the reference") {
    const auto q = question(60, 0, answer::Frozen::slush);
    const auto a = mixed(q);
    // Hand reference D1, sensitivities at 60 C, sea level, 1.5 to 1: ratio 5 % 1.2 K, boiling water really 97 C -1.8,
    // cold water at 5 C +2.
    CHECK(near_abs((answer::mixed_temperature(q, 1.05 * a.hot_parts) - a.mixed.result).si(), 1.2, 0.05));
    auto tepid = q;
    tepid.boiling = celsius(97);
    CHECK(near_abs((answer::mixed_temperature(tepid, a.hot_parts) - a.mixed.result).si(), -1.8, 0.05));
    tepid = q;
    tepid.cold = celsius(5);
    CHECK(near_abs((answer::mixed_temperature(tepid, a.hot_parts) - a.mixed.result).si(), 2.0, 0.05));
}

TEST_CASE("plain parts come close and are small") {
    for (double target = 45.0; target <= 75.0; target += 1.0) {
        for (const double altitude : {0.0, 1850.0, 3500.0}) {
            const auto q = question(target, altitude, celsius(4), answer::Measure::volume);
            const auto parts = mixed(q).simple;
            CAPTURE(target);
            CHECK(parts.hot >= 1);
            CHECK(parts.cold >= 1);
            CHECK(std::min(parts.hot, parts.cold) <= 10);
            CHECK(near_abs(parts.mixed.result.celsius(), target, 1.2));
            CHECK(near_abs(answer::mixed_temperature(q, static_cast<double>(parts.hot) / parts.cold).celsius(),
                           parts.mixed.result.celsius(), 1e-9));
        }
    }
}

TEST_CASE("what cannot be mixed is refused with the range") {
    const auto code = [](const answer::MixQuestion& q) {
        const auto answer = answer::mix(q);
        return answer ? std::string_view() : answer.problems().front().code.text();
    };
    CHECK(code(question(90, 4000, answer::Frozen::slush)) == "mix-out-of-reach");
    CHECK(code(question(5, 0, celsius(10))) == "mix-out-of-reach");
    CHECK(code(question(60, 0, answer::Frozen::snow, answer::Measure::volume)) == "mix-snow-by-volume");
    CHECK(answer::mix(question(90, 4000, answer::Frozen::snow, answer::Measure::volume)).problems().size() == 2);
    CHECK(answer::mix(question(90, 4000, answer::Frozen::slush)).problems().front().hint.find("86.6") !=
          std::string::npos);
}

TEST_CASE("a hair from boiling or from the cold water the plain parts still lie on the right side") {
    for (const double hair : {1e-3, 1e-6, 1e-9, 1e-12}) {
        CAPTURE(hair);
        auto hot = question(60, 0, celsius(4), answer::Measure::volume);
        hot.target = hot.boiling - units::kelvins(hair);
        auto cold = hot;
        cold.target = celsius(4 + hair);
        const auto much = answer::mix(hot);
        const auto little = answer::mix(cold);
        REQUIRE(much.ok());
        REQUIRE(little.ok());
        CHECK(much->simple.hot >= 1000 * much->simple.cold);
        CHECK(little->simple.cold >= 1000 * little->simple.hot);
    }
}
