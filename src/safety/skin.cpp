// SPDX-License-Identifier: MIT
#include "safety/skin.hpp"

#include "facts/facts.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace holdwater::safety {
namespace {

// Grid: fine enough that halving every one of these changes no sting or burn time by 1 %.
constexpr double first_cell = 4e-6;      // m
constexpr double cell_growth = 1.07;     // of each cell over the one outside it
constexpr double first_step = 5e-4;      // s
constexpr double step_per_time = 0.015;  // longest step as a share of the time passed
constexpr double deepest_kept = 2e-3;    // m

SkinLayer layer_of(const std::string& name) {
    const facts::Facts& facts = facts::facts();
    const std::string prefix = "skin." + name + ".";
    return {units::metres(facts.value(prefix + "thickness") * metres_per_micrometre),
            units::Conductivity{facts.value(prefix + "conductivity")}, units::Density{facts.value(prefix + "density")},
            units::SpecificHeat{facts.value(prefix + "specific-heat")}, facts.value(prefix + "perfusion")};
}

/// dT/dt = A T + b as three diagonals, with b only at the outermost cell.
struct Discrete {
    std::vector<double> centre;
    std::vector<double> outer;     // A[i][i-1]
    std::vector<double> diagonal;  // A[i][i]
    std::vector<double> inner;     // A[i][i+1]
    double drive = 0.0;
};

Discrete discretise(const Skin& skin, double film) {
    struct Cell {
        double width;
        const SkinLayer* layer;
    };
    std::vector<Cell> cells;
    double width = first_cell;
    for (const SkinLayer& layer : skin.layers) {
        double left = layer.thickness.si();
        while (left > 0.0) {
            // The last two cells of a layer share what is left, so that none is a sliver.
            const double here = left > 2.0 * width ? width : (left > width ? left / 2.0 : left);
            cells.push_back({here, &layer});
            left -= here;
            if (left < first_cell * 1e-6) {
                left = 0.0;
            }
            width = std::max(first_cell, here) * cell_growth;
        }
    }
    const std::size_t count = cells.size();
    Discrete discrete{std::vector<double>(count), std::vector<double>(count), std::vector<double>(count),
                      std::vector<double>(count), 0.0};
    const auto half = [&cells](std::size_t i) { return cells[i].width / 2.0 / cells[i].layer->conductivity.si(); };
    double depth = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        const SkinLayer& layer = *cells[i].layer;
        const double heat = layer.density.si() * layer.specific_heat.si();
        const double capacity = heat * cells[i].width;
        const double outside = 1.0 / (i == 0 ? 1.0 / film + half(0) : half(i - 1) + half(i));
        const double inside = i + 1 < count ? 1.0 / (half(i) + half(i + 1)) : 0.0;
        discrete.centre[i] = depth + cells[i].width / 2.0;
        depth += cells[i].width;
        discrete.outer[i] = i == 0 ? 0.0 : outside / capacity;
        discrete.inner[i] = inside / capacity;
        discrete.diagonal[i] = -(outside + inside) / capacity - layer.perfusion * skin.blood_heat / heat;
        if (i == 0) {
            discrete.drive = outside / capacity;
        }
    }
    return discrete;
}

std::vector<double> rate_of(const Discrete& a, const std::vector<double>& u) {
    const std::size_t count = u.size();
    std::vector<double> rate(count);
    for (std::size_t i = 0; i < count; ++i) {
        rate[i] = a.diagonal[i] * u[i] + (i > 0 ? a.outer[i] * u[i - 1] : a.drive) +
                  (i + 1 < count ? a.inner[i] * u[i + 1] : 0.0);
    }
    return rate;
}

/// Solves (1 - s A) x = r in place.
void solve(const Discrete& a, double s, std::vector<double>& r) {
    const std::size_t count = r.size();
    std::vector<double> upper(count);
    double pivot = 1.0 - s * a.diagonal[0];
    for (std::size_t i = 0; i < count; ++i) {
        if (i > 0) {
            pivot = 1.0 - s * a.diagonal[i] + s * a.outer[i] * upper[i - 1];
            r[i] += s * a.outer[i] * r[i - 1];
        }
        upper[i] = -s * a.inner[i] / pivot;
        r[i] /= pivot;
    }
    for (std::size_t i = count - 1; i > 0; --i) {
        r[i - 1] -= upper[i - 1] * r[i];
    }
}

/// One step of the two-stage singly diagonal implicit Runge-Kutta rule with gamma = 1 - 1/sqrt(2): second order,
/// L-stable.
void step(const Discrete& a, double dt, std::vector<double>& u) {
    const double gamma = 1.0 - std::sqrt(0.5);
    std::vector<double> k1 = rate_of(a, u);
    solve(a, gamma * dt, k1);
    std::vector<double> between = u;
    for (std::size_t i = 0; i < u.size(); ++i) {
        between[i] += (1.0 - gamma) * dt * k1[i];
    }
    std::vector<double> k2 = rate_of(a, between);
    solve(a, gamma * dt, k2);
    for (std::size_t i = 0; i < u.size(); ++i) {
        u[i] += dt * ((1.0 - gamma) * k1[i] + gamma * k2[i]);
    }
}

}  // namespace

Skin typical_skin() {
    return typical_skin(layer_of("epidermis").thickness);
}

Skin typical_skin(units::Length epidermis) {
    const facts::Facts& facts = facts::facts();
    Skin skin;
    skin.layers = {layer_of("epidermis"), layer_of("dermis"), layer_of("subcutis")};
    skin.layers.front().thickness = epidermis;
    skin.blood_heat = facts.value("skin.blood.density") * facts.value("skin.blood.specific-heat");
    return skin;
}

SkinResponse::SkinResponse(const Skin& skin, units::FilmCoefficient film, units::Duration until) {
    const Discrete discrete = discretise(skin, film.si());
    std::size_t kept = 0;
    while (kept < discrete.centre.size() && (kept < 2 || discrete.centre[kept - 1] < deepest_kept)) {
        depths_.push_back(discrete.centre[kept++]);
    }
    std::vector<double> u(discrete.centre.size(), 0.0);
    const auto keep = [&](double t) {
        seconds_.push_back(t);
        share_.emplace_back(u.begin(), u.begin() + static_cast<std::ptrdiff_t>(kept));
    };
    keep(0.0);
    for (double t = 0.0; t < until.si();) {
        const double dt = std::max(first_step, step_per_time * t);
        step(discrete, dt, u);
        t += dt;
        keep(t);
    }
}

double SkinResponse::at_moment(units::Length depth, std::size_t moment) const {
    const std::vector<double>& row = share_[moment];
    const double x = std::clamp(depth.si(), depths_.front(), depths_.back());
    const auto right = static_cast<std::size_t>(
        std::max<std::ptrdiff_t>(1, std::lower_bound(depths_.begin(), depths_.end(), x) - depths_.begin()));
    const double part = (x - depths_[right - 1]) / (depths_[right] - depths_[right - 1]);
    return row[right - 1] + (row[right] - row[right - 1]) * part;
}

double SkinResponse::at(units::Length depth, units::Duration t) const {
    const double moment = std::clamp(t.si(), seconds_.front(), seconds_.back());
    const auto right = static_cast<std::size_t>(
        std::max<std::ptrdiff_t>(1, std::lower_bound(seconds_.begin(), seconds_.end(), moment) - seconds_.begin()));
    const double part = (moment - seconds_[right - 1]) / (seconds_[right] - seconds_[right - 1]);
    const double before = at_moment(depth, right - 1);
    return before + (at_moment(depth, right) - before) * part;
}

std::optional<units::Duration> SkinResponse::reaches(units::Length depth, double share) const {
    std::size_t low = 0;
    std::size_t high = seconds_.size() - 1;
    if (at_moment(depth, low) >= share) {
        return units::seconds(seconds_[low]);
    }
    if (!(at_moment(depth, high) >= share)) {
        return std::nullopt;
    }
    while (high - low > 1) {
        const std::size_t middle = (low + high) / 2;
        (at_moment(depth, middle) >= share ? high : low) = middle;
    }
    const double before = at_moment(depth, low);
    const double part = (share - before) / (at_moment(depth, high) - before);
    return units::seconds(seconds_[low] + (seconds_[high] - seconds_[low]) * part);
}

}  // namespace holdwater::safety
