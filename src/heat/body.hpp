// SPDX-License-Identifier: MIT
// A piece of food as a set of decaying modes: the exact eigenfunction series of slab, round, block and ball.
#pragma once

#include "facts/names.hpp"
#include "heat/food_properties.hpp"
#include "problem/problem.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <vector>

namespace holdwater::heat {

/// One direction of a body: the series of theta = (T - bath)/(start - bath) for a step of the bath, for the radial
/// equation T'' + (b/r) T' = (1/alpha) dT/dt with -k T' = h (T - bath) at r = half; b = 0 slab, 1 cylinder, 2 ball,
/// fractions are rounded bodies between. Arrays run over the modes, rising zeta.
struct Series {
    std::vector<double> zeta;     // eigenvalues, dimensionless
    std::vector<double> centre;   // C_n: weight at r = 0; sums to 1
    std::vector<double> surface;  // weight at r = half
    std::vector<double> mean;     // weight in the volume mean; sums to 1
};

/// b in [0, 2]; biot = h half / k > 0; `terms` at least 1. Eigenvalues to 1e-12 relative.
/// Source: incropera-fhmt ch. 5, cengel-hmt ch. 4 (b = 0, 1, 2); Bessel form of order (b - 1)/2 between.
Series series(double b, double biot, int terms);

/// theta of one direction at a place r (0 centre or blocked face, 1 wetted face) and at a Fourier number
/// alpha t / half^2, with as many terms as the time asks for: what is left out stays under 1e-12 from Fo 1e-4 on, up to
/// the most terms below that. The product over directions is the theta of a whole body at any point.
double theta_at(double b, double biot, double fourier, double r);
double theta_mean(double b, double biot, double fourier);

struct Body {
    facts::Shape shape = facts::Shape::slab;
    units::Length thickness;              // the smallest way through; for round and ball the diameter
    std::optional<units::Length> width;   // block
    std::optional<units::Length> length;  // round, block; absent = so long that the ends do not matter
    facts::Contact contact = facts::Contact::free;
    double curvature = 0.0;  // slab only: b of its series, from 0 flat over 1 a long cylinder to 2 a ball
};

/// One decaying mode of a whole body.
struct Mode {
    double rate = 0.0;     // 1/s
    double core = 0.0;     // weight at the slowest point
    double surface = 0.0;  // weight at the middle of the nearest face
    double mean = 0.0;     // weight in the volume mean
};

/// All modes of a body that matter, slowest first. With x_n the excess of mode n (x_n' = -rate x_n + bath', started at
/// bath - food), core = bath - sum core_n x_n, and likewise surface and mean. What was cut off is carried so that
/// nothing jumps: the left-out mean weight follows the bath at once, the left-out core weight is one more fast mode.
struct Modes {
    std::vector<Mode> modes;
    double mean_at_once = 0.0;  // mean weight that follows the bath at once; sum of mean + this = 1
};

/// film: the effective film coefficient on every wetted face, bag included. Blocked faces per `contact`.
/// Errors: size-out-of-range (thickness 1 to 400 mm), dimension-missing (block without width or length).
problem::Result<Modes> modes_of(const Body& body, const FoodProperties& properties, units::FilmCoefficient film);

/// Film and bag in series [W/(m2 K)].
units::FilmCoefficient with_bag(units::FilmCoefficient film, units::ThermalResistance bag);

units::Volume volume_of(const Body& body);  // needs length (round), width and length (block, slab)

/// Dimensionless temperature (T - bath)/(start - bath) at a time after a step of the bath.
double core_at(const Modes& modes, units::Duration t);
double surface_at(const Modes& modes, units::Duration t);
double mean_at(const Modes& modes, units::Duration t);

}  // namespace holdwater::heat
