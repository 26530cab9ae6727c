// SPDX-License-Identifier: MIT
#include "card/shared/hold_steps.hpp"

#include "card/figures/places.hpp"

#include <optional>
#include <utility>
#include <vector>

namespace holdwater::card {
namespace {

Table hold_table(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food) {
    const plan::HoldTable& table = food.hold;
    const HoldPlaces first = hold_places(writer.plan, food);
    const words::Words& w = writer.words;
    Table drawn;
    // In both systems each figure would be too wide for a column: the second gets a column of thicknesses and the first
    // row of baths.
    const bool both = units::two(writer.system());
    const auto of_system = [&](bool second, const char* metric, const char* us) {
        return writer.us_first() != second ? us : metric;
    };
    drawn.column(of_system(false, "mm", "in"), Align::right);
    if (both) {
        drawn.column(of_system(true, "mm", "in"), Align::right);
    }
    std::vector<Text> second{"", ""};
    for (int bath = first.bath; bath < first.bath + static_cast<int>(table.baths.size()); ++bath) {
        drawn.column(writer.reads() ? on(of_system(false, "bath", "bath-us"), bath) : w.text("hold.hours"),
                     Align::right, true);
        if (both && writer.reads()) {
            second.push_back(on(of_system(true, "bath", "bath-us"), bath));
        }
    }
    if (both && writer.reads()) {
        drawn.rows.push_back(second);
    }
    int cell = first.cell;
    for (std::size_t i = 0; i < table.thicknesses.size(); ++i) {
        const int nth = first.row + static_cast<int>(i);
        std::vector<Text> row{on(of_system(false, "row", "row-in"), nth)};
        if (both) {
            row.push_back(on(of_system(true, "row", "row-in"), nth));
        }
        for (const std::optional<units::Duration>& time : table.cells[i]) {
            row.push_back(time ? on("cell", cell) : w.text("hold.never"));
            ++cell;
        }
        drawn.rows.push_back(std::move(row));
    }
    return drawn;
}

}  // namespace

Staircase hold_steps(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food) {
    Staircase stairs;
    stairs.table = hold_table(writer, on, food);
    stairs.bars.resize(stairs.table.rows.size() - food.hold.thicknesses.size());  // the second system's baths
    for (const units::Length thickness : food.hold.thicknesses) {
        stairs.bars.push_back(units::in_millimetres(thickness));
    }
    return stairs;
}

}  // namespace holdwater::card
