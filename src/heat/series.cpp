// SPDX-License-Identifier: MIT
// Eigenvalues and weights of one direction, for every radial exponent b from slab to ball.
#include "heat/body.hpp"

#include <boost/math/special_functions/bessel.hpp>
#include <boost/math/special_functions/gamma.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace holdwater::heat {
namespace {

constexpr double pi = std::numbers::pi;

/// Bessel functions in double throughout: the last digit that long double would give is not needed, its time is.
using Plain = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
double bessel(int order, double x) {
    return boost::math::cyl_bessel_j(order, x, Plain());
}
double bessel(double order, double x) {
    return boost::math::cyl_bessel_j(order, x, Plain());
}

/// The position factor R(r), R(0) = 1, of T'' + (b/r) T' = -zeta^2 T, seen at r = 1.
struct Edge {
    double value = 0.0;  // R(1)
    double slope = 0.0;  // -R'(1)
};

Edge slab_edge(double zeta) {
    return {std::cos(zeta), zeta * std::sin(zeta)};
}

Edge cylinder_edge(double zeta) {
    return {bessel(0, zeta), zeta * bessel(1, zeta)};
}

Edge ball_edge(double zeta) {
    constexpr double small = 0.3;
    if (zeta < small) {
        // sin z / z - cos z cancels here; its power series, the left-out term below 1e-15 relative.
        const double q = zeta * zeta;
        return {std::sin(zeta) / zeta, q / 3.0 * (1.0 - q / 10.0 * (1.0 - q / 28.0 * (1.0 - q / 54.0)))};
    }
    return {std::sin(zeta) / zeta, std::sin(zeta) / zeta - std::cos(zeta)};
}

/// R(r) = Gamma(nu + 1) (2 / (zeta r))^nu J_nu(zeta r), nu = (b - 1)/2; slab, cylinder and ball are special cases.
Edge rounded_edge(double nu, double zeta) {
    const double scale = boost::math::tgamma(nu + 1.0) * std::pow(2.0 / zeta, nu);
    return {scale * bessel(nu, zeta), scale * zeta * bessel(nu + 1.0, zeta)};
}

Edge edge_at(double b, double zeta) {
    if (b == 0.0) {
        return slab_edge(zeta);
    }
    if (b == 1.0) {
        return cylinder_edge(zeta);
    }
    if (b == 2.0) {
        return ball_edge(zeta);
    }
    return rounded_edge((b - 1.0) / 2.0, zeta);
}

/// The n-th positive zero of R(1), n from 1: between two of them lies exactly one eigenvalue.
double zero_of_edge(double b, int n) {
    if (b == 0.0) {
        return (n - 0.5) * pi;
    }
    if (b == 2.0) {
        return n * pi;
    }
    if (b == 1.0) {
        // McMahon's expansion, then Newton with J0' = -J1.
        const double beta = (n - 0.25) * pi;
        double zero = beta + 1.0 / (8.0 * beta) - 124.0 / (1536.0 * beta * beta * beta);
        for (int i = 0; i < 2; ++i) {
            zero += bessel(0, zero) / bessel(1, zero);
        }
        return zero;
    }
    return boost::math::cyl_bessel_j_zero((b - 1.0) / 2.0, n);
}

/// Root of F = -R'(1) - Bi R(1) between `low` and `high`, by Newton kept inside the bracket by bisection.
double eigenvalue(double b, double biot, double low, double high, double guess) {
    const bool rises = low == 0.0 || edge_at(b, low).slope < 0.0;
    double zeta = std::clamp(guess, low + 1e-3 * (high - low), high - 1e-12 * high);
    constexpr int most = 200;  // bisection alone would need about 50
    for (int i = 0; i < most; ++i) {
        const Edge edge = edge_at(b, zeta);
        const double f = edge.slope - biot * edge.value;
        if (f == 0.0) {
            return zeta;
        }
        ((f > 0.0) == rises ? high : low) = zeta;
        const double derivative = (biot + 1.0 - b) * edge.slope / zeta + zeta * edge.value;
        double next = zeta - f / derivative;
        // Newton doubles the digits: after a step this small the next one would be below rounding.
        if (std::abs(next - zeta) <= 1e-9 * zeta) {
            return next;
        }
        if (!(next > low && next < high)) {
            next = 0.5 * (low + high);
        }
        zeta = next;
    }
    return zeta;
}

/// Terms after which exp(-zeta^2 Fo) is below 1e-13: one eigenvalue lies in each stretch of about pi.
int terms_for(double fourier) {
    constexpr double most = 180.0;
    return 2 + static_cast<int>(std::min(most, std::sqrt(30.0 / std::max(fourier, 1e-12)) / pi));
}

}  // namespace

Series series(double b, double biot, int terms) {
    // Eigenvalues: -R'(1) = Bi R(1). Weights for a step of the bath, from the integrals over r^b dr of R and R^2
    // (Sturm-Liouville; both have closed forms at the eigenvalues), with N = zeta^2 + Bi^2 + (1 - b) Bi:
    // centre 2 Bi / (R(1) N), surface 2 Bi / N, mean (b + 1) 2 Bi^2 / (zeta^2 N).
    // Source: incropera-fhmt ch. 5, cengel-hmt ch. 4 for b = 0, 1, 2, of which these are one form. Valid for b in [0,
    // 2], Bi > 0; anything else is a fault of the caller.
    if (!(b >= 0.0 && b <= 2.0 && biot > 0.0 && terms >= 1)) {
        throw std::invalid_argument("series: b outside [0, 2], biot not positive or no terms");
    }
    Series result;
    const auto count = static_cast<std::size_t>(terms);
    for (auto* column : {&result.zeta, &result.centre, &result.surface, &result.mean}) {
        column->reserve(count);
    }
    double low = 0.0;
    for (int n = 1; n <= terms; ++n) {
        const double high = zero_of_edge(b, n);
        // First guess: of the first eigenvalue the bound from small and large Bi together, of the others the distance
        // from the zero as a slab has it.
        const double guess =
            n == 1 ? 1.0 / std::sqrt(1.0 / ((b + 1.0) * biot) + 1.0 / (high * high)) : high - std::atan2(high, biot);
        const double zeta = eigenvalue(b, biot, low, high, guess);
        const Edge edge = edge_at(b, zeta);
        const double at_edge = zeta > biot ? edge.value : edge.slope / biot;
        const double norm = zeta * zeta + biot * biot + (1.0 - b) * biot;
        result.zeta.push_back(zeta);
        result.centre.push_back(2.0 * biot / (at_edge * norm));
        result.surface.push_back(2.0 * biot / norm);
        result.mean.push_back((b + 1.0) * 2.0 * biot * biot / (zeta * zeta * norm));
        low = high;
    }
    return result;
}

double theta_at(double b, double biot, double fourier, double r) {
    const Series s = series(b, biot, terms_for(fourier));
    double sum = 0.0;
    for (std::size_t n = 0; n < s.zeta.size(); ++n) {
        const double place = r > 0.0 ? edge_at(b, s.zeta[n] * r).value : 1.0;
        sum += s.centre[n] * place * std::exp(-s.zeta[n] * s.zeta[n] * fourier);
    }
    return sum;
}

double theta_mean(double b, double biot, double fourier) {
    const Series s = series(b, biot, terms_for(fourier));
    double sum = 0.0;
    for (std::size_t n = 0; n < s.zeta.size(); ++n) {
        sum += s.mean[n] * std::exp(-s.zeta[n] * s.zeta[n] * fourier);
    }
    return sum;
}

}  // namespace holdwater::heat
