// SPDX-License-Identifier: MIT
// The skin model and the population of hands: what must hold besides the published tables.
#include "safety/sting.hpp"

#include "facts/facts.hpp"
#include "safety/burn.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using namespace holdwater::safety;
using support::near_abs;
using support::near_rel;
using units::celsius;
using units::seconds;

namespace {

constexpr double micrometre = 1e-6;

}  // namespace

TEST_CASE("one layer without blood follows the half-space with a film") {
    // Share = erfc(x / (2 sqrt(a t))) - exp(h x / k + h^2 a t / k^2) erfc(x / (2 sqrt(a t)) + h sqrt(a t) / k), valid
    // while the inner end is out of reach (incropera-fhmt ch. 5, from memory).
    Skin slab;
    slab.layers = {
        {units::millimetres(20), units::Conductivity{0.4}, units::Density{1100}, units::SpecificHeat{3500}, 0}};
    const double h = 2000;
    const SkinResponse response{slab, units::FilmCoefficient{h}, seconds(60)};
    const double a = 0.4 / (1100 * 3500.0);
    for (const double x : {50e-6, 200e-6, 1000e-6}) {
        for (const double t : {0.3, 1.0, 5.0, 60.0}) {
            const double eta = x / (2 * std::sqrt(a * t));
            const double exact = std::erfc(eta) - std::exp(h * x / 0.4 + h * h * a * t / 0.16) *
                                                      std::erfc(eta + h * std::sqrt(a * t) / 0.4);
            INFO("x ", x, " m, t ", t, " s");
            CHECK(near_abs(response.at(units::metres(x), seconds(t)), exact, 5e-4));
        }
    }
}

TEST_CASE("blood holds the skin back, and the steady state is that of the equation") {
    // One perfused layer, far inner end: steady share = exp(-m x) / (1 + k m / h), m^2 = w rho_b c_b / k.
    Skin slab;
    slab.layers = {
        {units::millimetres(40), units::Conductivity{0.4}, units::Density{1100}, units::SpecificHeat{3500}, 0.00125}};
    slab.blood_heat = 1060.0 * 3770.0;
    const SkinResponse response{slab, units::FilmCoefficient{1000}, seconds(20000)};
    const double m = std::sqrt(0.00125 * 1060.0 * 3770.0 / 0.4);
    for (const double x : {50e-6, 200e-6, 1500e-6}) {
        CHECK(near_abs(response.at(units::metres(x), seconds(20000)), std::exp(-m * x) / (1 + 0.4 * m / 1000), 1e-3));
    }
}

TEST_CASE("a share is found at the moment at which it is reached") {
    const SkinResponse response{typical_skin(), units::FilmCoefficient{2500}, seconds(100)};
    for (const double share : {0.1, 0.3, 0.6}) {
        const auto t = response.reaches(units::metres(200 * micrometre), share);
        REQUIRE(t.has_value());
        CHECK(near_abs(response.at(units::metres(200 * micrometre), *t), share, 1e-9));
    }
    CHECK_FALSE(response.reaches(units::metres(200 * micrometre), 1.0).has_value());
    CHECK(response.reaches(units::metres(200 * micrometre), 0.0) == seconds(0));
}

TEST_CASE("hotter water never stings later, a colder hand never sooner, still water never sooner") {
    for (const Stirring stirring : {Stirring::stirred, Stirring::still}) {
        for (const HandState hand : {HandState::warm, HandState::cold}) {
            double before = 1e9;
            for (double c = 46.0; c <= 90.0; c += 2.0) {
                INFO(c, " C");
                const StingBand band = sting_band(celsius(c), hand, stirring);
                REQUIRE(band.p50.has_value());
                CHECK(*band.p5 <= *band.p50);
                CHECK(band.p50->si() <= before);
                before = band.p50->si();
                if (band.p95) {
                    CHECK(*band.p50 <= *band.p95);
                } else {
                    CHECK(band.never > 0.04);
                }
            }
        }
    }
    for (double c = 46.0; c <= 90.0; c += 4.0) {
        const auto warm = sting_band(celsius(c), HandState::warm, Stirring::stirred);
        CHECK(*warm.p50 <= *sting_band(celsius(c), HandState::cold, Stirring::stirred).p50);
        CHECK(*warm.p50 <= *sting_band(celsius(c), HandState::warm, Stirring::still).p50);
    }
}

TEST_CASE("comfortable water stings nobody in a dip") {
    for (const double c : {30.0, 38.0, 40.0}) {
        const StingBand band = sting_band(celsius(c), HandState::warm, Stirring::stirred);
        CHECK_FALSE(band.p50.has_value());
        CHECK((!band.p5 || *band.p5 > seconds(2)));
    }
}

TEST_CASE("a later sting speaks for a cooler bath, a cold hand for a hotter one than a warm hand") {
    const Prior prior = usual_prior();
    double before = 100.0;
    for (const double t : {0.8, 1.2, 1.7, 2.5, 4.0, 8.0, 20.0}) {
        const auto warm = bath_band(seconds(t * 0.9), seconds(t * 1.1), HandState::warm, Stirring::stirred, prior);
        const auto cold = bath_band(seconds(t * 0.9), seconds(t * 1.1), HandState::cold, Stirring::stirred, prior);
        REQUIRE(warm.has_value());
        REQUIRE(cold.has_value());
        INFO(t, " s");
        CHECK(warm->p50.celsius() < before);
        before = warm->p50.celsius();
        // A cold hand reads low: the same sting comes from hotter water.
        CHECK(cold->p50 > warm->p50);
        CHECK(warm->p5 < warm->p50);
        CHECK(warm->p50 < warm->p95);
    }
}

TEST_CASE("the four rows of a dip overlap what cooks say of them, and none proves a cooking temperature") {
    // Common practice, no source: comfortable water is about 38 to 43 C, water borne for a count of one or two about 60
    // to 66 C, water that hurts at once above about 71 C.
    const auto row = [](DipRow which) { return *bath_band(which, HandState::warm, Stirring::stirred); };
    CHECK(row(DipRow::at_once).p95 > celsius(71));
    CHECK(row(DipRow::by_one).p5 < celsius(66));
    CHECK(row(DipRow::by_one).p95 > celsius(60));
    CHECK(row(DipRow::by_two).p5 < celsius(66));
    CHECK(row(DipRow::by_two).p95 > celsius(60));
    CHECK(row(DipRow::not_by_two).p5 < celsius(43));
    CHECK(row(DipRow::not_by_two).p95 > celsius(50));
    for (const DipRow which : {DipRow::by_one, DipRow::by_two, DipRow::not_by_two}) {
        CHECK(row(which).p5 < celsius(60));
    }
    CHECK(row(DipRow::at_once).p50 > row(DipRow::by_one).p50);
    CHECK(row(DipRow::by_one).p50 > row(DipRow::by_two).p50);
    CHECK(row(DipRow::by_two).p50 > row(DipRow::not_by_two).p50);
}

TEST_CASE("in hot water the sting comes too late to warn") {
    // At 60 C and above, one warm hand in twenty is stung only when the table already has a burn.
    for (const double c : {60.0, 65.0, 70.0}) {
        const StingBand band = sting_band(celsius(c), HandState::warm, Stirring::stirred);
        REQUIRE(band.p95.has_value());
        CHECK(*band.p95 >= *burn_times(celsius(c)).second * 0.95);
    }
}

TEST_CASE("a stated sting time gives a band around the same bath as its window, and nonsense gives none") {
    const auto band = bath_band(seconds(2), HandState::warm, Stirring::stirred);
    REQUIRE(band.has_value());
    const auto window = bath_band(seconds(1.6), seconds(2.4), HandState::warm, Stirring::stirred, usual_prior());
    CHECK(near_rel(band->p50.celsius(), window->p50.celsius(), 1e-9));
    CHECK_FALSE(bath_band(seconds(-5), HandState::warm, Stirring::stirred).has_value());
}
