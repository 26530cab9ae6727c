// SPDX-License-Identifier: MIT
#include "card/class/loss_finder.hpp"

#include "card/class/class_gauge.hpp"
#include "facts/facts.hpp"

#include <cmath>
#include <utility>

namespace holdwater::card {
namespace {

// The grid that the table is printed for.
constexpr double air_grid[] = {0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0};  // C
constexpr int reading_count = 11;                                        // a kelvin apart
constexpr double thousand = 1000.0;

}  // namespace

LossFinder::LossFinder() : start_(facts::facts().temperature("finder.start")) {
    for (const double air : air_grid) {
        airs_.push_back(units::celsius(air));
    }
    for (int i = 0; i < reading_count; ++i) {
        readings_.push_back(start_ - facts::facts().difference("box-test.weak-fall") - units::kelvins(i));
    }
}

units::Duration LossFinder::shortest() {
    return units::hours(2);
}
units::Duration LossFinder::longest() {
    return units::hours(16);
}
units::Volume LossFinder::least() {
    return units::litres(8);
}
units::Volume LossFinder::most() {
    return units::litres(70);
}

double LossFinder::fall(units::Temperature air, units::Temperature reading) const {
    return thousand * std::log((start_ - air) / (reading - air));
}

int LossFinder::fall_number(std::size_t air, std::size_t reading) const {
    return static_cast<int>(std::ceil(fall(airs_.at(air), readings_.at(reading)) - 1e-9));
}

units::HeatCapacity LossFinder::capacity(units::Volume water) const {
    const answer::Gauge made = gauge_of({water, airs_.front(), readings_.front(), shortest()}, start_);
    return units::HeatCapacity{made.loss.likely.si() * made.loss.time_constant.si()};
}

units::HeatLoss LossFinder::loss(double fall, units::Duration after, units::Volume water) const {
    return units::HeatLoss{fall / thousand * capacity(water).si() / after.si()};
}

Table finder_table(const LossFinder& finder, const CardFigures& on, const words::Words& words) {
    Table table;
    table.title = words.text("class-sheets.finder-table");
    table.column(words.text("class-sheets.finder-reads"), Align::left, true);
    const int columns = static_cast<int>(finder.airs().size());
    for (int air = 1; air <= columns; ++air) {
        table.column(on("air", air), Align::right);
    }
    for (int row = 0; row < static_cast<int>(finder.readings().size()); ++row) {
        std::vector<Text> cells{on("reading", row + 1)};
        for (int air = 1; air <= columns; ++air) {
            cells.push_back(on("fall", row * columns + air));
        }
        table.rows.push_back(std::move(cells));
    }
    return table;
}

}  // namespace holdwater::card
