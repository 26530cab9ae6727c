// SPDX-License-Identifier: MIT
// A box of water with food in it, for tests only: the mixed bath's balance of heat and conduction in the food on a
// grid, solved by SUNDIALS CVODE. It shares no mathematics with src/heat. Of the program it takes the density and
// specific heat of water, and the figures of the facts for liner, wind, open lid and unstirred layer.
#pragma once

#include "facts/names.hpp"
#include "units/quantity.hpp"

#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace holdwater::support {

/// Pieces of one food, all alike.
struct ReplayFood {
    int b = 0;                          // 0 parallel faces, 1 around an axis, 2 around a point
    double half = 0.0;                  // m, from the core to the wetted face
    std::optional<double> half_length;  // m, of an axis with wetted ends
    double diffusivity = 0.0;           // m2/s
    double conductivity = 0.0;          // W/m/K
    double film = 0.0;                  // W/m2/K, bag included
    double capacity = 0.0;              // J/K, of all pieces
    double start = 0.0;                 // C
    double volume = 0.0;                // m3, of all pieces
};

/// What stays the same through one scenario.
struct ReplayWorld {
    std::array<double, 3> inside{};     // m
    double loss = 0.0;                  // W/K, wind included
    std::function<double(double)> air;  // C, by seconds
    double colder = 0.0;                // K, of the unstirred layer once it has built up
    std::vector<ReplayFood> foods;
};

/// Where a box stands at a moment; a copy of it may go another way.
struct ReplayState {
    double now = 0.0;      // s
    double water = 0.0;    // kg
    double stirred = 0.0;  // s, when last
    bool food_in = false;
    std::vector<double> values;  // nodes of all foods, then the bath [C]
};

/// What one moment looks like.
struct ReplayLook {
    double at = 0.0;            // s
    double bath = 0.0;          // C
    double seen = 0.0;          // C, by the food: through the layer
    std::vector<double> cores;  // C
};

class ReplayBox {
  public:
    /// Empty, its liner at this temperature.
    ReplayBox(const ReplayWorld& world, double liner_start);
    ~ReplayBox();
    ReplayBox(const ReplayBox&) = delete;
    ReplayBox& operator=(const ReplayBox&) = delete;

    /// Water of this temperature comes in, `out` of the bath first [m3]; then it is stirred.
    void pour(double out, double in, double temperature);
    /// The lid is open for so many seconds.
    void open_lid(double seconds);
    void put_food_in();
    void stir();

    /// To a moment, looking every `every` seconds and at the end; `look` returns false to stop there.
    void advance_to(double moment, double every, const std::function<bool(const ReplayLook&)>& look);

    const ReplayState& state() const { return state_; }
    void go_back_to(const ReplayState& state) { state_ = state; }
    double bath() const { return state_.values.back(); }
    double water_volume() const;  // m3
    /// Water and food, in the box now.
    double filled_volume() const;
    ReplayLook look() const;

  private:
    struct Solver;
    double capacity() const;  // J/K, of water and liner
    double layer(double at) const;

    const ReplayWorld* world_;
    double liner_ = 0.0;  // J/K
    ReplayState state_;
    std::unique_ptr<Solver> solver_;
};

/// J/K of the liner that warms with the water.
double liner_capacity(const std::array<double, 3>& inside);
/// J/m2/s that an open water surface gives off, by the table of the facts.
double open_surface(double water, double air);
/// How much more a box loses in wind; class 0 still, 1 breezy, 2 windy, and between.
double wind_share(double wind_class);

}  // namespace holdwater::support
