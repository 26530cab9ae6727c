// SPDX-License-Identifier: MIT
#include "agreement/said.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::support {
namespace {

/// Two printed figures are the same if they read the same; an unrounded one lies within its step of them.
bool agree(const Said& a, const Said& b) {
    const double step = std::max(a.step, b.step);
    const bool words = a.value == 0.0 && b.value == 0.0 && step == 0.0;
    return words ? a.says == b.says : std::abs(a.value - b.value) <= step + 1e-6;
}

}  // namespace

Said said_at(std::string what, std::string where, units::LocalTime from, units::LocalTime at) {
    // Clocks show whole minutes; none is later than the moment that it stands for.
    const double minutes =
        std::floor(static_cast<double>(at.seconds()) / 60.0) - std::floor(static_cast<double>(from.seconds()) / 60.0);
    return {std::move(what), std::move(where), at.iso(), 60.0 * minutes + 1e6, 0.0};
}

Said said_figure(std::string what, std::string where, double value, const std::string& unit, double step) {
    return {std::move(what), std::move(where), fmt::format("{:.4g} {}", value, unit), value, step};
}

Said said_word(std::string what, std::string where, std::string word) {
    return {std::move(what), std::move(where), std::move(word), 0.0, 0.0};
}

bool says_lines(const words::Words& words) {
    const auto first = words.find("plan.out-first");
    return first && first->find("{below}") != std::string::npos;
}

std::vector<Disagreement> disagreements(const AllSaid& all) {
    std::vector<Disagreement> found;
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t j = i + 1; j < all.size(); ++j) {
            if (all[i].what == all[j].what && !agree(all[i], all[j])) {
                found.push_back({all[i].what, all[i].where, all[j].where,
                                 fmt::format("{}: {} says {}, {} says {}", all[i].what, all[i].where, all[i].says,
                                             all[j].where, all[j].says)});
            }
        }
    }
    return found;
}

}  // namespace holdwater::support
