// SPDX-License-Identifier: MIT
// The full bands of a dip of the hand: on no card, since nobody should act on them.
#include "card/basis/basis_parts.hpp"
#include "safety/burn.hpp"
#include "safety/sting.hpp"
#include "units/print.hpp"

#include <utility>

namespace holdwater::card {
namespace {

using safety::HandState;
using safety::Stirring;
using units::Toward;

constexpr int percents[] = {5, 50, 95};

/// Seconds to a tenth below ten, whole above, minutes from two on; towards the side that tells the most of how little a
/// sting says.
Text seconds(const words::Words& w, const std::optional<units::Duration>& t, Toward toward, const Text& never) {
    if (!t) {
        return never;
    }
    if (*t >= units::minutes(2)) {
        return units::print(*t, toward);
    }
    const double step = t->si() < 10.0 ? 0.1 : 1.0;
    return w.written(units::figure(t->si(), step, toward));
}

void add_sting(const words::Words& w, std::vector<Text>& row, units::Temperature bath, HandState hand) {
    const Text never = w.text("basis.never");
    const safety::StingBand band = safety::sting_band(bath, hand, Stirring::stirred);
    row.push_back(seconds(w, band.p5, Toward::down, never));
    row.push_back(seconds(w, band.p50, Toward::nearest, never));
    row.push_back(seconds(w, band.p95, Toward::up, never));
}

Table sting_table(const trip::Trip& trip, const words::Words& w) {
    constexpr double coolest = 45.0;  // a grid to read from, C
    constexpr double hottest = 80.0;
    constexpr double step = 5.0;
    Table table;
    table.title = w.text("basis.hand-sting-title");
    table.column(w.text("basis.hand-bath"), Align::left, true);
    for (const char* key : {"basis.hand-warm", "basis.hand-cold"}) {
        for (const int percent : percents) {
            table.column(w.text(key, {{"percent", percent}}), Align::right);
        }
    }
    for (const char* key : {"basis.hand-second", "basis.hand-third", "basis.hand-infant"}) {
        table.column(w.text(key));
    }
    for (double t = coolest; t <= hottest; t += step) {
        const units::Temperature bath = units::celsius(t);
        std::vector<Text> row{w.written(units::amount(bath, trip.units))};
        add_sting(w, row, bath, HandState::warm);
        add_sting(w, row, bath, HandState::cold);
        const safety::BurnTimes burn = safety::burn_times(bath);
        for (const auto& time : {burn.second, burn.third, burn.infant}) {
            row.push_back(seconds(w, time, Toward::down, "–"));  // no published time is no promise
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

Table dip_table(const trip::Trip& trip, const words::Words& w) {
    const safety::Prior prior = safety::usual_prior();
    // Narrow columns: the units stand in the title, "63 (145)" in the cells.
    const auto degrees = [&](units::Temperature t, Toward toward) {
        return w.written(units::amount(t, trip.units, {1.0, toward}).without_units());
    };
    const bool us_first = units::first_of(trip.units) == units::System::us;
    const char* unit = units::two(trip.units) ? (us_first ? "°F (°C)" : "°C (°F)") : us_first ? "°F" : "°C";
    Table table;
    table.title = w.text(
        "basis.hand-dip-title",
        {{"unit", unit}, {"low", degrees(prior.low, Toward::nearest)}, {"high", degrees(prior.high, Toward::nearest)}});
    table.column(w.text("basis.hand-row"), Align::left, true);
    for (const char* key : {"basis.hand-warm", "basis.hand-cold"}) {
        for (const int percent : percents) {
            table.column(w.text(key, {{"percent", percent}}), Align::right);
        }
    }
    using safety::DipRow;
    constexpr std::pair<const char*, DipRow> rows[] = {{"basis.hand-at-once", DipRow::at_once},
                                                       {"basis.hand-by-one", DipRow::by_one},
                                                       {"basis.hand-by-two", DipRow::by_two},
                                                       {"basis.hand-not", DipRow::not_by_two}};
    for (const auto& [key, dip] : rows) {
        std::vector<Text> row{w.text(key)};
        for (const HandState hand : {HandState::warm, HandState::cold}) {
            const auto band = safety::bath_band(dip, hand, Stirring::stirred);
            row.push_back(band ? degrees(band->p5, Toward::down) : w.text("basis.never"));
            row.push_back(band ? degrees(band->p50, Toward::nearest) : w.text("basis.never"));
            row.push_back(band ? degrees(band->p95, Toward::up) : w.text("basis.never"));
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

}  // namespace

std::vector<Table> hand_tables(const trip::Trip& trip, const words::Words& words) {
    return {sting_table(trip, words), dip_table(trip, words)};
}

}  // namespace holdwater::card
