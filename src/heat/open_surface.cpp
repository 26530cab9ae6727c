// SPDX-License-Identifier: MIT
#include "facts/kept.hpp"
#include "heat/box.hpp"

#include <algorithm>
#include <array>

namespace holdwater::heat {
namespace {

struct Row {
    double water;        // C
    double evaporation;  // W/m2
    double radiation;    // W/m2, to air at the table's temperature
};

/// The table of open-tank-table from facts lid.*, once; its first row is water as cool as the table's air.
const std::array<Row, 12>& table() {
    return facts::kept([](const facts::Facts& facts) {
        constexpr std::array<const char*, 11> names = {"43.3", "48.9", "54.4", "60.0", "65.6", "71.1",
                                                       "76.7", "82.2", "87.8", "93.3", "98.9"};
        constexpr std::array<double, 11> water = {43.3, 48.9, 54.4, 60.0, 65.6, 71.1, 76.7, 82.2, 87.8, 93.3, 98.9};
        std::array<Row, 12> result{};
        result[0] = {facts.value("lid.table-air"), 0.0, 0.0};
        for (std::size_t i = 0; i < names.size(); ++i) {
            const std::string name = names[i];
            result[i + 1] = {water[i], facts.value("lid.evaporation." + name), facts.value("lid.radiation." + name)};
        }
        return result;
    });
}

}  // namespace

double open_surface_loss(units::Temperature water, units::Temperature air) {
    // Returns q [W/m2] = evaporation(T) + radiation(T) (T - Ta) / (T - T_table), linear between rows.
    // Source: open-tank-table, read in a copy, which calls its numbers rough; 15.6 C still air. Valid 43.3 to 98.9 C
    // water; from the first row down to the table's air both fall linearly to nothing, above the last row the last two
    // rows go on. Never negative.
    const auto& rows = table();
    const double t = water.celsius();
    std::size_t i = 1;
    while (i + 1 < rows.size() && t > rows[i].water) {
        ++i;
    }
    const Row& low = rows[i - 1];
    const Row& high = rows[i];
    const double share = (t - low.water) / (high.water - low.water);
    const double evaporation = std::max(0.0, low.evaporation + share * (high.evaporation - low.evaporation));
    // The radiation column is 10 to 14 W/m2/K over the table's air, nearly in proportion: a coefficient to any air.
    const auto coefficient = [&](const Row& row) { return row.radiation / (row.water - rows[0].water); };
    const double low_film = i == 1 ? coefficient(high) : coefficient(low);
    const double film = low_film + std::clamp(share, 0.0, 1.0) * (coefficient(high) - low_film);
    return evaporation + film * std::max(0.0, t - air.celsius());
}

}  // namespace holdwater::heat
