// SPDX-License-Identifier: MIT
#include "heat/body.hpp"

#include "heat/modes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace holdwater::heat {
namespace {

struct Limits {
    double smallest;
    double largest;
};

std::optional<problem::Problem> check(const char* what, units::Length size, Limits limits) {
    if (size.si() >= limits.smallest && size.si() <= limits.largest) {
        return std::nullopt;
    }
    return problem::error("size-out-of-range",
                          fmt::format("a {} of {:.1f} mm cannot be worked with", what, units::in_millimetres(size)),
                          fmt::format("between {:.0f} and {:.0f} mm", limits.smallest * 1e3, limits.largest * 1e3));
}

problem::Problems faults_of(const Body& body) {
    constexpr Limits thickness = {0.001, 0.4};
    constexpr Limits others = {0.001, 2.0};
    problem::Problems faults;
    const auto add = [&](std::optional<problem::Problem> fault) {
        if (fault) {
            faults.push_back(std::move(*fault));
        }
    };
    add(check("thickness", body.thickness, thickness));
    const bool needs_both = body.shape == facts::Shape::block;
    if (body.width) {
        add(check("width", *body.width, others));
    } else if (needs_both) {
        faults.push_back(problem::error("dimension-missing", "a block needs its width", "width = \"80 mm\""));
    }
    if (body.length) {
        add(check("length", *body.length, others));
    } else if (needs_both) {
        faults.push_back(problem::error("dimension-missing", "a block needs its length", "length = \"150 mm\""));
    }
    return faults;
}

/// A slab between two wetted faces, or with one face blocked: then its half is the whole thickness.
Direction flat(double thickness, bool blocked) {
    return {0.0, blocked ? thickness : thickness / 2.0};
}

/// The directions whose product is the body.
///
/// A blocked face: slab and block lose one face of the thickness, so the slowest point is that face; a curved slab
/// loses its curvature with it, since the water beside it no longer reaches half of the surface (judgement).
/// A round or ball on the floor, or stacked, touches in a line or a point, and the water in the wedges beside it stands
/// still: judgement takes the brick that encloses it, with the face of the contact blocked. A body inside another whose
/// faces are wetted as well warms faster than it, so this errs to the slow side: a long round takes about 1.9 times as
/// long as a free one. Solving the plane round with a quarter of its surface blocked gives 1.6 to 1.85 times (ball
/// with a cap of 45 degrees blocked: 1.3 to 1.5; tests/heat/contact.cpp).
/// A stacked piece is one half of a pair, free outside, so its blocked face is the plane between the two.
std::vector<Direction> directions_of(const Body& body) {
    const double thickness = body.thickness.si();
    const bool blocked = body.contact != facts::Contact::free;
    std::vector<Direction> directions;
    switch (body.shape) {
        case facts::Shape::slab:
            directions.push_back({blocked ? 0.0 : body.curvature, blocked ? thickness : thickness / 2.0});
            break;
        case facts::Shape::block:
            directions = {flat(thickness, blocked), flat(body.width->si(), false), flat(body.length->si(), false)};
            break;
        case facts::Shape::round:
            if (blocked) {
                directions = {flat(thickness, true), flat(thickness, false)};
            } else {
                directions = {{1.0, thickness / 2.0}};
            }
            if (body.length) {
                directions.push_back(flat(body.length->si(), false));
            }
            break;
        case facts::Shape::ball:
            if (blocked) {
                directions = {flat(thickness, true), flat(thickness, false), flat(thickness, false)};
            } else {
                directions = {{2.0, thickness / 2.0}};
            }
            break;
    }
    return directions;
}

}  // namespace

problem::Result<Modes> modes_of(const Body& body, const FoodProperties& properties, units::FilmCoefficient film) {
    const problem::Problems faults = faults_of(body);
    if (!faults.empty()) {
        return faults;
    }
    return product_of(directions_of(body), properties, film);
}

units::FilmCoefficient with_bag(units::FilmCoefficient film, units::ThermalResistance bag) {
    return units::FilmCoefficient{1.0 / (1.0 / film.si() + bag.si())};
}

units::Volume volume_of(const Body& body) {
    const double t = body.thickness.si();
    switch (body.shape) {
        case facts::Shape::slab:
        case facts::Shape::block:
            return units::Volume{t * body.width.value().si() * body.length.value().si()};
        case facts::Shape::round:
            return units::Volume{std::numbers::pi / 4.0 * t * t * body.length.value().si()};
        case facts::Shape::ball:
            break;
    }
    return units::Volume{std::numbers::pi / 6.0 * t * t * t};
}

double core_at(const Modes& modes, units::Duration t) {
    double sum = 0.0;
    for (const Mode& mode : modes.modes) {
        sum += mode.core * std::exp(-mode.rate * t.si());
    }
    return sum;
}

double surface_at(const Modes& modes, units::Duration t) {
    double sum = 0.0;
    for (const Mode& mode : modes.modes) {
        sum += mode.surface * std::exp(-mode.rate * t.si());
    }
    return sum;
}

double mean_at(const Modes& modes, units::Duration t) {
    double sum = 0.0;
    for (const Mode& mode : modes.modes) {
        sum += mode.mean * std::exp(-mode.rate * t.si());
    }
    return sum;
}

}  // namespace holdwater::heat
