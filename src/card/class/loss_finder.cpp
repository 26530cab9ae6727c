// SPDX-License-Identifier: MIT
#include "card/class/loss_finder.hpp"

#include "card/class/class_gauge.hpp"
#include "card/figures/rounding.hpp"
#include "facts/facts.hpp"

#include <fmt/format.h>

#include <cmath>

namespace holdwater::card {
namespace {

using units::Toward;

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

units::Figure loss_figure(units::HeatLoss loss) {
    return units::decimal(loss.si(), 2);
}

Table finder_table(const LossFinder& finder, units::System system, const words::Words& words) {
    Table table;
    table.title = words.text("class-sheets.finder-table");
    table.column(words.text("class-sheets.finder-reads"), Align::left, true);
    for (const units::Temperature air : finder.airs()) {
        // Rounded down, so that one whose air is that in the second system finds no smaller fall.
        table.column(words.written(units::amount(air, system, {1.0, Toward::down})), Align::right);
    }
    for (std::size_t r = 0; r < finder.readings().size(); ++r) {
        // Rounded up, so that one who reads that figure in the second system finds no smaller fall.
        std::vector<Text> row{words.written(degrees(finder.readings()[r], system, Toward::up))};
        for (std::size_t a = 0; a < finder.airs().size(); ++a) {
            row.push_back(fmt::format("{}", finder.fall_number(a, r)));
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

}  // namespace holdwater::card
