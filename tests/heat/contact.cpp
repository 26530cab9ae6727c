// SPDX-License-Identifier: MIT
// A round or ball lying on the floor stands for itself as the brick around it. Here the round and the ball with a
// blocked sector are solved by themselves, on a polar grid, and must be faster than the program says.
#include "heat/body.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

using namespace holdwater;

namespace {

/// Slowest decay rate times R^2/alpha of a long round (b = 1) or a ball (b = 2) whose surface gives no heat within 45
/// degrees of the contact: finite volumes in r and angle, inverse iteration, each solve by over-relaxation.
double slowest(int b, double biot) {
    constexpr int rings = 24;
    constexpr int sectors = 36;
    constexpr double pi = std::numbers::pi;
    const double dr = 1.0 / rings;
    const double da = pi / sectors;
    struct Cell {
        double volume = 0, out = 0, in = 0, next = 0, last = 0, sum = 0, value = 1, old = 1;
    };
    std::vector<Cell> cells(static_cast<std::size_t>(rings * sectors));
    const auto at = [&](int i, int j) -> Cell& { return cells[static_cast<std::size_t>(i * sectors + j)]; };
    for (int i = 0; i < rings; ++i) {
        for (int j = 0; j < sectors; ++j) {
            Cell& c = at(i, j);
            const double opening = b == 2 ? std::cos(j * da) - std::cos((j + 1) * da) : da;
            const double outer = opening * std::pow((i + 1) * dr, b);
            const double middle = (i + 0.5) * dr;
            c.volume = opening * (std::pow((i + 1) * dr, b + 1) - std::pow(i * dr, b + 1)) / (b + 1);
            const bool face = i == rings - 1;
            const bool blocked = (j + 0.5) * da < pi / 4;
            c.out = face ? 0.0 : outer / dr;
            c.in = i == 0 ? 0.0 : opening * std::pow(i * dr, b) / dr;
            const auto side = [&](int k) { return (b == 2 ? std::sin(k * da) * middle : 1.0) * dr / (middle * da); };
            c.next = j == sectors - 1 ? 0.0 : side(j + 1);
            c.last = j == 0 ? 0.0 : side(j);
            c.sum = c.out + c.in + c.next + c.last + (face && !blocked ? outer / (dr / 2 + 1 / biot) : 0.0);
        }
    }
    double rate = 0.0;
    for (int power = 0; power < 8; ++power) {
        for (Cell& c : cells) {
            c.old = c.value;
            c.value = rate > 0.0 ? c.value / rate : c.value;
        }
        for (int sweep = 0; sweep < 3000; ++sweep) {
            double change = 0.0;
            for (int i = 0; i < rings; ++i) {
                for (int j = 0; j < sectors; ++j) {
                    Cell& c = at(i, j);
                    double flow = c.volume * c.old;
                    flow += i + 1 < rings ? c.out * at(i + 1, j).value : 0.0;
                    flow += i > 0 ? c.in * at(i - 1, j).value : 0.0;
                    flow += j + 1 < sectors ? c.next * at(i, j + 1).value : 0.0;
                    flow += j > 0 ? c.last * at(i, j - 1).value : 0.0;
                    const double step = flow / c.sum - c.value;
                    c.value += 1.7 * step;
                    change = std::max(change, std::abs(step / c.value));
                }
            }
            if (change < 1e-7) {
                break;
            }
        }
        double both = 0.0;
        double old = 0.0;
        double largest = 0.0;
        for (const Cell& c : cells) {
            both += c.volume * c.old * c.value;
            old += c.volume * c.old * c.old;
            largest = std::max(largest, c.value);
        }
        rate = old / both;
        for (Cell& c : cells) {
            c.value /= largest;
        }
    }
    return rate;
}

}  // namespace

TEST_CASE("a round or ball on the floor is no slower than the brick that stands for it") {
    const heat::FoodProperties meat{units::Conductivity{0.5}, units::Diffusivity{1.3e-7}, units::Density{1050},
                                    units::SpecificHeat{3516}};
    for (const int b : {1, 2}) {
        for (const double biot : {3.0, 12.0, 50.0}) {
            CAPTURE(b);
            CAPTURE(biot);
            constexpr double radius = 0.03;
            heat::Body body;
            body.shape = b == 1 ? facts::Shape::round : facts::Shape::ball;
            body.thickness = units::metres(2 * radius);
            const units::FilmCoefficient film{biot * 0.5 / radius};
            const auto rate = [&](facts::Contact contact) {
                body.contact = contact;
                const auto modes = heat::modes_of(body, meat, film);
                REQUIRE(modes.ok());
                return modes->modes.front().rate * radius * radius / 1.3e-7;
            };
            const double sector = slowest(b, biot);
            const double free = rate(facts::Contact::free);
            CHECK(rate(facts::Contact::bottom) < sector);
            CHECK(sector < free);
            // The figures that body.cpp names.
            CHECK(free / sector > (b == 1 ? 1.60 : 1.32));
            CHECK(free / sector < (b == 1 ? 1.85 : 1.50));
        }
    }
}
