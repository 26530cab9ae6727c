// SPDX-License-Identifier: MIT
// Several different foods in one bath, put in and taken out at different times, against plain finite differences in
// which nothing is shared with src/heat but the water's figures. Two boxes are two baths that know nothing of each
// other.
#include "heat/bath.hpp"
#include "heat/water.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <optional>
#include <vector>

using namespace holdwater;
using support::near_abs;
using support::near_rel;
using units::celsius;
using units::hours;
using units::kelvins;
using units::litres;
using units::millimetres;
using units::seconds;

namespace {

struct Slab {
    double thickness;  // m, both faces wet
    double diffusivity;
    double conductivity;
    double film;
    double capacity;  // J/K
    double start;     // C
    double in;        // h
    double out;       // h
};

constexpr Slab slabs[] = {{0.030, 1.25e-7, 0.46, 200, 6000, 4, 0.0, 3.0},
                          {0.055, 1.10e-7, 0.42, 95, 9500, 8, 1.0, 7.0},
                          {0.018, 1.40e-7, 0.52, 400, 2500, -1, 4.0, 5.5}};
constexpr double bath_start = 66;
constexpr double water_litres = 24;
constexpr double liner = 4000;
constexpr double loss = 1.1;
constexpr double outside = 2;

/// Half a slab in `nodes` cells of equal width, explicit Euler in small steps.
class Grid {
  public:
    explicit Grid(const Slab& slab) : slab_(slab), t_(nodes, slab.start) {}

    /// Moves on by dt [s] in a bath [C]; returns the heat taken [J].
    double step(double bath, double dt) {
        const double dx = 0.5 * slab_.thickness / nodes;
        const double rho_c = slab_.conductivity / slab_.diffusivity;
        const double edge = 1.0 / (1.0 / slab_.film + 0.5 * dx / slab_.conductivity);
        std::vector<double> flux(nodes + 1, 0.0);  // towards the core, W/m2; none through the middle
        for (std::size_t i = 1; i < nodes; ++i) {
            flux[i] = slab_.conductivity * (t_[i] - t_[i - 1]) / dx;
        }
        flux[nodes] = edge * (bath - t_[nodes - 1]);
        for (std::size_t i = 0; i < nodes; ++i) {
            t_[i] += dt / (rho_c * dx) * (flux[i + 1] - flux[i]);
        }
        // Area from the capacity: C = rho c A L of the half slab stands for both faces together.
        return flux[nodes] * dt * slab_.capacity / (rho_c * 0.5 * slab_.thickness);
    }
    double core() const { return t_[0] - (t_[1] - t_[0]) / 8.0; }  // parabola through the middle

  private:
    static constexpr std::size_t nodes = 24;
    Slab slab_;
    std::vector<double> t_;
};

}  // namespace

TEST_CASE("three foods in and out at their own times agree with finite differences") {
    units::History air;
    air.add(seconds(0), celsius(outside));
    heat::Bath bath({units::HeatLoss{loss}, units::HeatCapacity{liner}, units::Area{0.1}}, litres(water_litres),
                    celsius(bath_start), air);
    const double capacity = bath.capacity().si();

    std::vector<std::optional<Grid>> grids(3);
    std::vector<std::optional<std::size_t>> index(3);
    double t = bath_start;
    const double dt = 0.25;
    for (int quarter = 0; quarter <= 28; ++quarter) {
        const double now = 0.25 * quarter;
        for (std::size_t i = 0; i < 3; ++i) {
            const Slab& s = slabs[i];
            if (s.in == now) {
                grids[i].emplace(s);
                heat::Body body;
                body.shape = facts::Shape::slab;
                body.thickness = units::metres(s.thickness);
                const heat::FoodProperties p{units::Conductivity{s.conductivity}, units::Diffusivity{s.diffusivity},
                                             units::Density{1000},
                                             units::SpecificHeat{s.conductivity / s.diffusivity / 1000}};
                auto modes = heat::modes_of(body, p, units::FilmCoefficient{s.film});
                REQUIRE(modes.ok());
                index[i] = bath.put_in(
                    {std::move(modes).value(), units::HeatCapacity{s.capacity}, celsius(s.start), kelvins(0)});
            }
            if (s.out == now) {
                bath.take_out(*index[i]);
            }
        }
        for (double moment = 0.0; moment < 900.0; moment += dt) {
            double taken = loss * (t - outside) * dt;
            for (std::size_t i = 0; i < 3; ++i) {
                if (grids[i] && now < slabs[i].out) {
                    taken += grids[i]->step(t, dt);
                }
            }
            t -= taken / capacity;
        }
        bath.advance_to(hours(now + 0.25));
        CAPTURE(now);
        CHECK(near_abs(bath.temperature().celsius(), t, 0.03));
        for (std::size_t i = 0; i < 3; ++i) {
            if (grids[i] && now < slabs[i].out) {
                CAPTURE(i);
                CHECK(near_abs(bath.core(*index[i]).celsius(), grids[i]->core(), 0.05));
            }
        }
    }
}

TEST_CASE("one food in two halves of it is the same as the whole") {
    units::History air;
    air.add(seconds(0), celsius(outside));
    heat::Body body;
    body.shape = facts::Shape::round;
    body.thickness = millimetres(70);
    body.length = millimetres(200);
    const heat::FoodProperties p{units::Conductivity{0.46}, units::Diffusivity{1.25e-7}, units::Density{1050},
                                 units::SpecificHeat{3505}};
    const auto modes = heat::modes_of(body, p, units::FilmCoefficient{250});
    REQUIRE(modes.ok());
    const auto run = [&](int parts) {
        heat::Bath bath({units::HeatLoss{loss}, units::HeatCapacity{liner}, units::Area{0.1}}, litres(water_litres),
                        celsius(bath_start), air);
        for (int i = 0; i < parts; ++i) {
            bath.put_in({*modes, units::HeatCapacity{9000.0 / parts}, celsius(4), kelvins(0)});
        }
        bath.advance_to(hours(5));
        return std::pair{bath.temperature().celsius(), bath.core(0).celsius()};
    };
    const auto whole = run(1);
    const auto halves = run(2);
    CHECK(near_rel(whole.first, halves.first, 1e-12));
    CHECK(near_rel(whole.second, halves.second, 1e-12));
}

TEST_CASE("two boxes are two baths: what happens in one leaves the other alone") {
    units::History air;
    air.add(seconds(0), celsius(outside));
    const auto box = [&] {
        return heat::Bath({units::HeatLoss{loss}, units::HeatCapacity{liner}, units::Area{0.1}}, litres(water_litres),
                          celsius(bath_start), air);
    };
    heat::Bath alone = box();
    heat::Bath first = box();
    heat::Bath second = box();
    alone.advance_to(hours(3));
    first.advance_to(hours(1));
    second.pour(litres(3), litres(3), celsius(95));
    second.open_lid(units::minutes(4));
    second.advance_to(hours(2));
    first.advance_to(hours(3));
    CHECK(near_rel(first.temperature().celsius(), alone.temperature().celsius(), 1e-6));  // steps restart at 1 h
    CHECK(second.temperature() > first.temperature());
}
