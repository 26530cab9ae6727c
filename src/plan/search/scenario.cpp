// SPDX-License-Identifier: MIT
#include "plan/search/scenario.hpp"

#include "answer/spread/draw.hpp"
#include "facts/facts.hpp"
#include "facts/kept.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <mutex>
#include <utility>

namespace holdwater::plan {
namespace {

constexpr std::size_t dimensions = 13;

using answer::place_at;
using answer::value_at;

/// The spread of each dimension, looked up once for all scenarios; the lateness of top-ups, which late_of spreads, has
/// none here.
std::array<const facts::Spread*, dimensions> spreads() {
    constexpr std::array<const char*, dimensions> keys{
        "thickness", "diffusivity",  "film",        "start", "box-loss", "outside",  "wind",
        "litres",    "boil.cooling", "thermometer", nullptr, "lid.open", "unstirred"};
    std::array<const facts::Spread*, dimensions> found{};
    for (std::size_t i = 0; i < dimensions; ++i) {
        found[i] = keys[i] != nullptr ? &facts::facts().spread(keys[i]) : nullptr;
    }
    return found;
}

Scenario scenario_at(const std::array<const facts::Spread*, dimensions>& all, const std::vector<double>& share) {
    const auto value = [&](std::size_t i) { return value_at(*all[i], share[i]); };
    const auto place = [&](std::size_t i) { return place_at(*all[i], share[i]); };
    Scenario s;
    s.thickness = place(0);
    s.diffusivity = place(1);
    s.film = place(2);
    s.start = value(3);
    s.loss = place(4);
    s.outside = value(5);
    s.wind = value(6);
    s.litres = value(7);
    s.boiling_cooled = value(8);
    s.reading = place(9);
    s.late = share[10];
    s.lid = value(11) * 60.0;
    s.colder = std::max(0.0, value(12));
    return s;
}

}  // namespace

Scenario likely_scenario() {
    return facts::kept(
        [](const facts::Facts&) { return scenario_at(spreads(), std::vector<double>(dimensions, 0.5)); });
}

namespace {

std::vector<Scenario> drawn(std::size_t points, std::size_t shifts) {
    const auto all = spreads();
    std::vector<Scenario> scenarios;
    scenarios.reserve(points * shifts);
    for (const std::vector<double>& shares : answer::even_shares(dimensions, points, shifts)) {
        scenarios.push_back(scenario_at(all, shares));
    }
    return scenarios;
}

}  // namespace

std::vector<Scenario> draw_scenarios(std::size_t points, std::size_t shifts) {
    // To draw as many as a plan promises by takes as long as to live a quarter of them, and every try asks for them.
    using Draws = std::map<std::pair<std::size_t, std::size_t>, std::vector<Scenario>>;
    static std::mutex mutex;
    static Draws known;
    static std::uint64_t known_in = 0;  // generation of the facts
    constexpr std::size_t most = 16;    // draws: tests ask for many
    const std::scoped_lock lock(mutex);
    if (known_in != facts::facts_generation() || known.size() > most) {
        known.clear();
        known_in = facts::facts_generation();
    }
    const auto [draw, is_new] = known.try_emplace({points, shifts});
    if (is_new) {
        draw->second = drawn(points, shifts);
    }
    return draw->second;
}

double late_of(const Scenario& scenario, std::size_t top_up) {
    // Steps of the golden ratio keep the lateness of successive top-ups evenly spread (Weyl sequence).
    constexpr double golden = 0.6180339887498949;
    const double share = std::fmod(scenario.late + golden * static_cast<double>(top_up), 1.0);
    const facts::Spread& spread = facts::kept([](const facts::Facts& facts) { return facts.spread("top-up.late"); });
    return value_at(spread, share) * 60.0;
}

}  // namespace holdwater::plan
