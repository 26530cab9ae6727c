// SPDX-License-Identifier: MIT
#include "card/class/loss_finder.hpp"

#include "card/class/class_gauge.hpp"
#include "card/figures/rounding.hpp"
#include "facts/facts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::card {
namespace {

using units::Toward;

// The grid that the tables are printed for.
constexpr double air_grid[] = {0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0};                           // C
constexpr double hour_grid[] = {2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0, 14.0, 16.0};  // h
constexpr double litre_grid[] = {10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0};
constexpr int reading_count = 11;  // a kelvin apart
constexpr double poorest = 10.0;   // h: a box with a shorter time constant has an open lid or is none

}  // namespace

LossFinder::LossFinder() : start_(facts::facts().temperature("finder.start")) {
    const facts::Facts& facts = facts::facts();
    for (const double air : air_grid) {
        airs_.push_back(units::celsius(air));
    }
    for (const double hour : hour_grid) {
        hours_.push_back(units::hours(hour));
    }
    for (const double litre : litre_grid) {
        litres_.push_back(units::litres(litre));
    }
    for (int i = 0; i < reading_count; ++i) {
        readings_.push_back(start_ - facts.difference("box-test.weak-fall") - units::kelvins(i));
    }
    double slowest = 1.0;
    for (const units::Temperature air : airs_) {
        auto& table = cells_.emplace_back();
        for (const units::Temperature reading : readings_) {
            auto& row = table.emplace_back();
            for (const units::Duration after : hours_) {
                const answer::Gauge made = gauge_of({litres_.front(), air, reading, after}, start_);
                row.push_back(1.0 / made.loss.time_constant.si());
                slowest = std::min(slowest, row.back());
            }
        }
    }
    for (const units::Volume water : litres_) {
        const answer::Gauge made = gauge_of({water, airs_.front(), readings_.front(), hours_.front()}, start_);
        capacities_.push_back(made.loss.likely.si() * made.loss.time_constant.si());
    }
    const double step = facts.value("finder.line");
    const double fastest = 1.0 / units::hours(poorest).si();
    for (double rate = slowest * step; rates_.empty() || rates_.back() < fastest; rate *= step) {
        rates_.push_back(rate);
    }
}

std::optional<int> LossFinder::line(std::size_t air, std::size_t reading, std::size_t hour) const {
    const double rate = cells_.at(air).at(reading).at(hour);
    const auto found = std::lower_bound(rates_.begin(), rates_.end(), rate);
    if (found == rates_.end()) {
        return std::nullopt;
    }
    return static_cast<int>(found - rates_.begin()) + 1;
}

units::HeatLoss LossFinder::loss(int line, std::size_t litre) const {
    const double loss = rates_.at(static_cast<std::size_t>(line - 1)) * capacities_.at(litre);
    return units::HeatLoss{units::round_to(loss, facts::facts().value("finder.loss-step"), Toward::up)};
}

units::Figure loss_figure(units::HeatLoss loss) {
    return units::decimal(loss.si(), 2);
}

std::vector<Table> finder_tables(const LossFinder& finder, units::System system, const words::Words& words) {
    std::vector<Table> tables;
    for (std::size_t a = 0; a < finder.airs().size(); ++a) {
        Table table;
        table.title =
            words.text("class-sheets.finder-air", {{"air", degrees(finder.airs()[a], system, Toward::nearest)}});
        table.column(words.text("class-sheets.finder-reads"), Align::left, true);
        for (const units::Duration after : finder.hours()) {
            table.column(units::print(after), Align::right);
        }
        for (std::size_t r = 0; r < finder.readings().size(); ++r) {
            // Rounded up, so that one who reads that figure in the second system finds no smaller fall.
            std::vector<Text> row{words.written(degrees(finder.readings()[r], system, Toward::up))};
            for (std::size_t h = 0; h < finder.hours().size(); ++h) {
                const auto line = finder.line(a, r, h);
                row.push_back(line ? fmt::format("{}", *line) : words.text("class-sheets.finder-poor"));
            }
            table.rows.push_back(std::move(row));
        }
        tables.push_back(std::move(table));
    }
    Table losses;
    losses.title = words.text("class-sheets.finder-losses");
    losses.column(words.text("class-sheets.finder-line"), Align::right, true);
    for (const units::Volume water : finder.litres()) {
        losses.column(words.written(units::amount(water, units::first_of(system), {1.0, Toward::down})), Align::right);
    }
    for (int line = 1; line <= finder.lines(); ++line) {
        std::vector<Text> row{fmt::format("{}", line)};
        for (std::size_t v = 0; v < finder.litres().size(); ++v) {
            row.push_back(words.written(loss_figure(finder.loss(line, v))));
        }
        losses.rows.push_back(std::move(row));
    }
    tables.push_back(std::move(losses));
    return tables;
}

}  // namespace holdwater::card
