// SPDX-License-Identifier: MIT
#include "heat/food_properties.hpp"

#include <algorithm>
#include <array>

namespace holdwater::heat {
namespace {

/// value(t) = a + b t + c t2, t in C.
struct Quadratic {
    double a = 0.0;
    double b = 0.0;
    double c = 0.0;
    double at(double t) const { return a + t * (b + t * c); }
};

struct Component {
    Quadratic conductivity;   // W/(m K)
    Quadratic density;        // kg/m3
    Quadratic specific_heat;  // kJ/(kg K)
};

// Properties of the pure components, t in C, from -40 to 150 C (water from 0 C).
// Source: choi-okos-1986, component equations, also printed in ashrae-foods-2006 Table 1. Two copies disagree in two
// places: the constant of water's specific heat is taken as 4.1762 (steam tables agree; one copy prints 4.1289), the
// slope of fat's conductivity as -2.7604e-4 (ten times that would make it negative at 65 C).
// In the order of facts::Composition: water, protein, fat, carbohydrate, fibre, ash.
constexpr std::array<Component, 6> components = {{
    {{0.57109, 1.7625e-3, -6.7036e-6}, {997.18, 3.1439e-3, -3.7574e-3}, {4.1762, -9.0864e-5, 5.4731e-6}},
    {{0.17881, 1.1958e-3, -2.7178e-6}, {1329.9, -0.51840, 0.0}, {2.0082, 1.2089e-3, -1.3129e-6}},
    {{0.18071, -2.7604e-4, -1.7749e-7}, {925.59, -0.41757, 0.0}, {1.9842, 1.4733e-3, -4.8008e-6}},
    {{0.20141, 1.3874e-3, -4.3312e-6}, {1599.1, -0.31046, 0.0}, {1.5488, 1.9625e-3, -5.9399e-6}},
    {{0.18331, 1.2497e-3, -3.1683e-6}, {1311.5, -0.36589, 0.0}, {1.8459, 1.8306e-3, -4.6509e-6}},
    {{0.32962, 1.4011e-3, -2.9069e-6}, {2423.8, -0.28063, 0.0}, {1.0926, 1.8896e-3, -3.6817e-6}},
}};

std::array<double, 6> mass_fractions(const facts::Composition& c) {
    std::array<double, 6> parts = {c.water, c.protein, c.fat, c.carbohydrate, c.fibre, c.ash};
    double sum = 0.0;
    for (const double part : parts) {
        sum += part;
    }
    for (double& part : parts) {
        part /= sum;
    }
    return parts;
}

}  // namespace

FoodProperties properties_from(const facts::Composition& composition, units::Temperature at, MixingRule rule) {
    // Returns rho = 1 / sum(x / rho_i) [kg/m3], cp = sum(x cp_i) [J/(kg K)], k = sum(v k_i) (parallel) or
    // 1 / sum(v / k_i) (series) [W/(m K)], alpha = k / (rho cp) [m2/s]; x mass fractions, v volume fractions
    // (x / rho_i) / sum(x / rho_i).
    // Source: choi-okos-1986, mixing rules; the series rule from memory. Valid -5 to 100 C; outside it the value at the
    // nearer end is taken.
    const double t = std::clamp(at.celsius(), -5.0, 100.0);
    const auto x = mass_fractions(composition);
    double volume = 0.0;  // of 1 kg
    double specific_heat = 0.0;
    double parallel = 0.0;
    double series = 0.0;
    for (std::size_t i = 0; i < components.size(); ++i) {
        const double share = x[i] / components[i].density.at(t);
        const double k = components[i].conductivity.at(t);
        volume += share;
        specific_heat += x[i] * components[i].specific_heat.at(t) * 1e3;
        parallel += share * k;
        series += share / k;
    }
    const double density = 1.0 / volume;
    const double conductivity = rule == MixingRule::parallel ? parallel / volume : volume / series;
    return {units::Conductivity{conductivity}, units::Diffusivity{conductivity / (density * specific_heat)},
            units::Density{density}, units::SpecificHeat{specific_heat}};
}

FoodProperties reading_of(const facts::Composition& composition, units::Temperature at, Bound reading) {
    // The parallel rule is the upper bound that follows from the composition; what was measured in meat and fish lies
    // up to 14 % below it, and planning values of the literature a quarter below. The readings are shares of it.
    const facts::Spread& spread = facts::facts().spread("diffusivity");
    const double share = reading == Bound::slow   ? spread.low
                         : reading == Bound::fast ? spread.high
                                                  : facts::facts().value("diffusivity.likely");
    const FoodProperties bound = properties_from(composition, at, MixingRule::parallel);
    return with_diffusivity(bound, bound.diffusivity * share);
}

FoodProperties with_diffusivity(FoodProperties properties, units::Diffusivity diffusivity) {
    properties.diffusivity = diffusivity;
    properties.conductivity =
        units::Conductivity{diffusivity.si() * properties.density.si() * properties.specific_heat.si()};
    return properties;
}

}  // namespace holdwater::heat
