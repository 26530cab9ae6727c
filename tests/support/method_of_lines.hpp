// SPDX-License-Identifier: MIT
// A second way to the same answer, for tests only: food and bath as one system of ordinary differential equations on a
// grid (method of lines), solved by SUNDIALS CVODE. It shares no mathematics with src/heat: no modes, no product of
// directions, no step of its own. Only the density and specific heat of water are the program's.
#pragma once

#include <vector>

namespace holdwater::support {

/// One direction of the grid: parallel faces (b 0) or around an axis (b 1), from the core to the wetted face.
struct Axis {
    int b = 0;
    double half = 0.0;  // m
    int nodes = 0;
};

struct LinesPour {
    double at = 0.0;       // s
    double removed = 0.0;  // m3 at bath temperature
    double added = 0.0;    // m3 at `poured`
    double poured = 0.0;   // C
};

struct LinesCase {
    std::vector<Axis> axes;    // one to three
    double diffusivity = 0.0;  // m2/s
    double conductivity = 0.0;
    double film = 0.0;
    double food_capacity = 0.0;    // J/K
    double food_start = 0.0;       // C
    double water = 0.0;            // m3 at bath_start
    double liner = 0.0;            // J/K
    double loss = 0.0;             // W/K
    double bath_start = 0.0;       // C
    double outside_start = 0.0;    // C, drifting in proportion to time
    double outside_slope = 0.0;    // K/s
    std::vector<LinesPour> pours;  // rising times
    double relative_tolerance = 1e-6;
    double absolute_tolerance = 1e-6;  // K
    bool preconditioned = true;        // two and three directions: one tridiagonal solve a direction
};

struct LinesState {
    double bath = 0.0;
    double core = 0.0;
    double heat = 0.0;  // J into the food, integrated over its surface
};

/// The state at each of the moments [s], rising. Throws std::runtime_error where CVODE gives up.
std::vector<LinesState> run_lines(const LinesCase& input, const std::vector<double>& moments);

}  // namespace holdwater::support
