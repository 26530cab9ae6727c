// SPDX-License-Identifier: MIT
// Skin as layers that water heats from the outside and blood cools from the inside.
#pragma once

#include "units/quantity.hpp"

#include <optional>
#include <vector>

namespace holdwater::safety {

inline constexpr double metres_per_micrometre = 1e-6;

struct SkinLayer {
    units::Length thickness;
    units::Conductivity conductivity;
    units::Density density;
    units::SpecificHeat specific_heat;
    double perfusion = 0.0;  // volume of blood per volume and time, 1/s
};

struct Skin {
    std::vector<SkinLayer> layers;  // from the outside; no heat passes the inner end
    double blood_heat = 0.0;        // density x specific heat of blood, J/(m3 K)
};

/// Skin of the facts; with another thickness of the outermost layer, for a calloused hand.
Skin typical_skin();
Skin typical_skin(units::Length epidermis);

/// How far skin has gone from its start towards the water, at every depth and moment, after water touched it at once.
/// Blood comes in at the start temperature, so the share does not depend on either temperature.
/// Share [0 to 1]: (T - start)/(water - start). Equation: rho c dT/dt = d/dx(k dT/dx) + w rho_b c_b (start - T), film
/// at x = 0, no heat at the inner end. Source: bioheat form and layers of jiang-2002. Valid for still blood flow (no
/// widening of vessels by heat). Solved by finite volumes and an L-stable second-order step, steps growing with time.
class SkinResponse {
  public:
    SkinResponse(const Skin& skin, units::FilmCoefficient film, units::Duration until);

    /// Outside its depths and times: the nearest value.
    double at(units::Length depth, units::Duration t) const;
    /// First moment at which a share is reached at a depth; nothing if not until the end.
    std::optional<units::Duration> reaches(units::Length depth, double share) const;

    /// Moments of the solution; the same for all responses with the same end.
    const std::vector<double>& seconds() const { return seconds_; }
    /// The share at one of those moments.
    double at_moment(units::Length depth, std::size_t moment) const;

  private:
    std::vector<double> depths_;              // m, cell centres, as deep as anything looks
    std::vector<double> seconds_;             // s
    std::vector<std::vector<double>> share_;  // by moment, by depth
};

}  // namespace holdwater::safety
