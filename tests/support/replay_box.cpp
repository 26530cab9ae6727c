// SPDX-License-Identifier: MIT
#include "support/replay_box.hpp"

#include "facts/facts.hpp"
#include "heat/water.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <stdexcept>
#include <string>
#include <sunlinsol/sunlinsol_band.h>
#include <sunmatrix/sunmatrix_band.h>

namespace holdwater::support {
namespace {

constexpr std::size_t nodes_across = 33;
constexpr std::size_t nodes_along = 9;
constexpr double relative_tolerance = 1e-6;
constexpr double absolute_tolerance = 1e-4;  // K

double density(double celsius) {
    return heat::water_density(units::celsius(celsius)).si();
}
double water_cp() {
    return heat::water_specific_heat().si();
}

/// Control volumes of one direction, closer to one another near the face.
struct Line {
    std::vector<double> down, up;  // 1/s, exchange with the node before and after
    std::vector<double> share;     // of the volume
    double face = 0.0;             // 1/s, exchange of the last node with the bath
};

Line line_of(int b, double half, std::size_t n, const ReplayFood& food) {
    Line line{std::vector<double>(n, 0.0), std::vector<double>(n, 0.0), std::vector<double>(n, 1.0), 0.0};
    if (n == 1) {
        return line;  // no direction at all
    }
    const auto area = [b](double r) { return b == 0 ? 1.0 : b == 1 ? r : r * r; };
    const auto volume = [b](double r) { return b == 0 ? r : b == 1 ? r * r / 2.0 : r * r * r / 3.0; };
    const auto place = [&](std::size_t i) {
        const double u = static_cast<double>(i) / static_cast<double>(n - 1);
        return half * u * (1.6 - 0.6 * u);
    };
    double inner = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        const double outer = i + 1 < n ? (place(i) + place(i + 1)) / 2.0 : half;
        const double size = volume(outer) - volume(inner);
        line.share[i] = size / volume(half);
        line.down[i] = i > 0 ? food.diffusivity * area(inner) / (place(i) - place(i - 1)) / size : 0.0;
        line.up[i] = i + 1 < n ? food.diffusivity * area(outer) / (place(i + 1) - place(i)) / size : 0.0;
        if (i + 1 == n) {
            line.face = food.film * food.diffusivity / food.conductivity * area(half) / size;
        }
        inner = outer;
    }
    return line;
}

/// A food on its grid: across fastest changing last, along first.
struct Grid {
    Line across, along;
    std::size_t first = 0;  // its core, in the values of the box
    std::size_t nodes() const { return across.share.size() * along.share.size(); }
};

void check(int flag, const char* what) {
    if (flag < 0) {
        throw std::runtime_error(fmt::format("{} failed with {}", what, flag));
    }
}

}  // namespace

struct ReplayBox::Solver {
    const ReplayWorld& world;
    std::vector<Grid> grids;
    std::size_t nodes = 0;
    std::size_t band = 1;
    double bath_capacity = 1.0;
    double stirred = 0.0;
    double ramp = 1.0;
    bool food_in = false;

    SUNContext context = nullptr;
    N_Vector y = nullptr;
    SUNMatrix matrix = nullptr;
    SUNLinearSolver linear = nullptr;
    void* cvode = nullptr;

    explicit Solver(const ReplayWorld& w) : world(w) {
        ramp = facts::facts().duration("unstirred.ramp").si();
        for (const ReplayFood& food : world.foods) {
            Grid grid;
            grid.across = line_of(food.b, food.half, nodes_across, food);
            grid.along = food.half_length ? line_of(0, *food.half_length, nodes_along, food) : line_of(0, 1.0, 1, food);
            grid.first = nodes;
            nodes += grid.nodes();
            band = std::max(band, grid.along.share.size());
            grids.push_back(std::move(grid));
        }
        check(SUNContext_Create(nullptr, &context), "SUNContext_Create");
        const auto size = static_cast<sunindextype>(nodes + 1);
        const auto width = static_cast<sunindextype>(band);
        y = N_VNew_Serial(size, context);
        matrix = SUNBandMatrix(size, width, width, context);
        linear = SUNLinSol_Band(y, matrix, context);
        cvode = CVodeCreate(CV_BDF, context);
        N_VConst(0.0, y);
        check(CVodeInit(cvode, rates, 0.0, y), "CVodeInit");
        check(CVodeSStolerances(cvode, relative_tolerance, absolute_tolerance), "CVodeSStolerances");
        check(CVodeSetUserData(cvode, this), "CVodeSetUserData");
        check(CVodeSetLinearSolver(cvode, linear, matrix), "CVodeSetLinearSolver");
        check(CVodeSetJacFn(cvode, jacobian), "CVodeSetJacFn");
        check(CVodeSetMaxNumSteps(cvode, 100000), "CVodeSetMaxNumSteps");
    }
    ~Solver() {
        CVodeFree(&cvode);
        SUNLinSolFree(linear);
        SUNMatDestroy(matrix);
        N_VDestroy(y);
        SUNContext_Free(&context);
    }
    Solver(const Solver&) = delete;
    Solver& operator=(const Solver&) = delete;

    double layer(double at) const { return world.colder * std::clamp((at - stirred) / ramp, 0.0, 1.0); }

    static int rates(realtype t, N_Vector now, N_Vector change, void* data) {
        const Solver& s = *static_cast<const Solver*>(data);
        const double* v = N_VGetArrayPointer(now);
        double* d = N_VGetArrayPointer(change);
        const double bath = v[s.nodes];
        const double seen = bath - s.layer(t);
        double heat = s.world.loss * (bath - s.world.air(t));  // W out of the bath
        for (std::size_t f = 0; f < s.grids.size(); ++f) {
            const Grid& g = s.grids[f];
            const std::size_t across = g.across.share.size();
            const std::size_t along = g.along.share.size();
            double uptake = 0.0;
            for (std::size_t i = 0; i < across; ++i) {
                for (std::size_t j = 0; j < along; ++j) {
                    const std::size_t k = g.first + i * along + j;
                    double rate = 0.0;
                    if (s.food_in) {
                        rate += i > 0 ? g.across.down[i] * (v[k - along] - v[k]) : 0.0;
                        rate += i + 1 < across ? g.across.up[i] * (v[k + along] - v[k]) : 0.0;
                        rate += j > 0 ? g.along.down[j] * (v[k - 1] - v[k]) : 0.0;
                        rate += j + 1 < along ? g.along.up[j] * (v[k + 1] - v[k]) : 0.0;
                        double film = i + 1 == across ? g.across.face * (seen - v[k]) : 0.0;
                        film += j + 1 == along ? g.along.face * (seen - v[k]) : 0.0;
                        uptake += g.across.share[i] * g.along.share[j] * film;
                        rate += film;
                    }
                    d[k] = rate;
                }
            }
            heat += s.world.foods[f].capacity * uptake;
        }
        d[s.nodes] = -heat / s.bath_capacity;
        return 0;
    }

    /// Without what bath and food do to one another, which lies outside the band: that is weak, and only slows the
    /// iteration down; the rates above have it.
    static int jacobian(realtype, N_Vector, N_Vector, SUNMatrix m, void* data, N_Vector, N_Vector, N_Vector) {
        const Solver& s = *static_cast<const Solver*>(data);
        SUNMatZero(m);
        const auto at = [m](std::size_t row, std::size_t column) -> double& {
            return SM_ELEMENT_B(m, static_cast<sunindextype>(row), static_cast<sunindextype>(column));
        };
        for (const Grid& g : s.grids) {
            const std::size_t across = g.across.share.size();
            const std::size_t along = g.along.share.size();
            for (std::size_t i = 0; s.food_in && i < across; ++i) {
                for (std::size_t j = 0; j < along; ++j) {
                    const std::size_t k = g.first + i * along + j;
                    double sum = 0.0;
                    const auto neighbour = [&](std::size_t other, double exchange) {
                        at(k, other) += exchange;
                        sum += exchange;
                    };
                    if (i > 0) {
                        neighbour(k - along, g.across.down[i]);
                    }
                    if (i + 1 < across) {
                        neighbour(k + along, g.across.up[i]);
                    } else {
                        sum += g.across.face;
                    }
                    if (j > 0) {
                        neighbour(k - 1, g.along.down[j]);
                    }
                    if (j + 1 < along) {
                        neighbour(k + 1, g.along.up[j]);
                    } else {
                        sum += g.along.face;
                    }
                    at(k, k) -= sum;
                }
            }
        }
        at(s.nodes, s.nodes) = -s.world.loss / s.bath_capacity;
        return 0;
    }
};

ReplayBox::ReplayBox(const ReplayWorld& world, double liner_start)
    : world_(&world), solver_(std::make_unique<Solver>(world)) {
    liner_ = liner_capacity(world.inside);
    state_.values.assign(solver_->nodes + 1, 0.0);
    for (std::size_t f = 0; f < world.foods.size(); ++f) {
        const Grid& grid = solver_->grids[f];
        std::fill_n(state_.values.begin() + static_cast<std::ptrdiff_t>(grid.first), grid.nodes(),
                    world.foods[f].start);
    }
    state_.values.back() = liner_start;
}

ReplayBox::~ReplayBox() = default;

double ReplayBox::capacity() const {
    return state_.water * water_cp() + liner_;
}

double ReplayBox::layer(double at) const {
    const double ramp = facts::facts().duration("unstirred.ramp").si();
    return world_->colder * std::clamp((at - state_.stirred) / ramp, 0.0, 1.0);
}

void ReplayBox::pour(double out, double in, double temperature) {
    double& bath = state_.values.back();
    state_.water -= std::min(state_.water, out * density(bath));
    const double added = in * density(temperature);
    const double before = capacity();
    state_.water += added;
    bath = (before * bath + added * water_cp() * temperature) / capacity();
    stir();
}

void ReplayBox::open_lid(double seconds) {
    double& bath = state_.values.back();
    const double area = world_->inside[0] * world_->inside[1];
    bath -= open_surface(bath, world_->air(state_.now)) * area * seconds / capacity();
}

void ReplayBox::put_food_in() {
    state_.food_in = true;
    stir();
}

void ReplayBox::stir() {
    state_.stirred = state_.now;
}

double ReplayBox::water_volume() const {
    return state_.water / density(bath());
}

double ReplayBox::filled_volume() const {
    double volume = water_volume();
    for (const ReplayFood& food : world_->foods) {
        volume += state_.food_in ? food.volume : 0.0;
    }
    return volume;
}

ReplayLook ReplayBox::look() const {
    ReplayLook look{state_.now, bath(), bath() - layer(state_.now), {}};
    for (const Grid& grid : solver_->grids) {
        look.cores.push_back(state_.values[grid.first]);
    }
    return look;
}

void ReplayBox::advance_to(double moment, double every, const std::function<bool(const ReplayLook&)>& look) {
    if (!(moment > state_.now)) {
        return;
    }
    Solver& s = *solver_;
    s.bath_capacity = capacity();
    s.stirred = state_.stirred;
    s.food_in = state_.food_in;
    double* values = N_VGetArrayPointer(s.y);
    std::copy(state_.values.begin(), state_.values.end(), values);
    check(CVodeReInit(s.cvode, state_.now, s.y), "CVodeReInit");
    check(CVodeSetStopTime(s.cvode, moment), "CVodeSetStopTime");
    while (state_.now < moment) {
        double next = std::min(moment, (std::floor(state_.now / every + 1e-9) + 1.0) * every);
        next = moment - next < 1e-3 ? moment : next;
        realtype reached = state_.now;
        check(CVode(s.cvode, next, s.y, &reached, CV_NORMAL), "CVode");
        state_.now = next;
        std::copy_n(values, state_.values.size(), state_.values.begin());
        if (!look(this->look())) {
            return;
        }
    }
}

double liner_capacity(const std::array<double, 3>& inside) {
    const auto& [a, b, c] = inside;
    return 2.0 * (a * b + b * c + c * a) * (facts::facts().value("liner.shell") + facts::facts().value("liner.foam"));
}

double open_surface(double water, double air) {
    const facts::Facts& facts = facts::facts();
    static constexpr double rows[] = {43.3, 48.9, 54.4, 60.0, 65.6, 71.1, 76.7, 82.2, 87.8, 93.3, 98.9};
    const double t = std::clamp(water, rows[0], 98.9);
    std::size_t i = 0;
    while (i + 2 < std::size(rows) && t > rows[i + 1]) {
        ++i;
    }
    const auto by_row = [&](const char* column, std::size_t row) {
        return facts.value(fmt::format("lid.{}.{:.1f}", column, rows[row]));
    };
    const double share = (t - rows[i]) / (rows[i + 1] - rows[i]);
    // Below the table both fall to nothing at its air.
    const double cool =
        std::clamp((water - facts.value("lid.table-air")) / (t - facts.value("lid.table-air")), 0.0, 1.0);
    const double evaporation = cool * std::lerp(by_row("evaporation", i), by_row("evaporation", i + 1), share);
    const double radiation = std::lerp(by_row("radiation", i), by_row("radiation", i + 1), share);
    return evaporation + radiation * std::max(0.0, water - air) / (t - facts.value("lid.table-air"));
}

double wind_share(double wind_class) {
    const double at[] = {1.0, facts::facts().value("wind.breezy"), facts::facts().value("wind.windy")};
    const double place = std::clamp(wind_class, 0.0, 2.0);
    return place < 1.0 ? std::lerp(at[0], at[1], place) : std::lerp(at[1], at[2], place - 1.0);
}

}  // namespace holdwater::support
