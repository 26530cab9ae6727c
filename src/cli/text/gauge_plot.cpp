// SPDX-License-Identifier: MIT
#include "cli/text/gauge_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace holdwater::cli {
namespace {

constexpr int plot_rows = 9;
constexpr int plot_columns = 62;

class Plot {
  public:
    Plot()
        : cells_(static_cast<std::size_t>(plot_rows),
                 std::vector<std::string>(static_cast<std::size_t>(plot_columns), " ")) {}
    std::string& cell(int row, int column) {
        return cells_[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)];
    }
    void line(int row, const char* mark) {
        for (int column = 0; column < plot_columns; ++column) {
            cell(row, column) = mark;
        }
    }
    std::string row_text(int row) const {
        std::string text;
        for (const std::string& one : cells_[static_cast<std::size_t>(row)]) {
            text += one;
        }
        return text;
    }

  private:
    std::vector<std::vector<std::string>> cells_;
};

}  // namespace

std::string residual_plot(const answer::Gauge& gauge, units::TemperatureDifference reading_error) {
    double range = reading_error.si();
    bool left_out = false;
    for (const answer::GaugedReading& reading : gauge.readings) {
        if (reading.used) {
            range = std::max(range, std::abs((reading.bath - reading.fitted).si()));
        }
        left_out = left_out || !reading.used;
    }
    range *= 1.25;  // air beyond the outermost
    const double from = units::in_hours(gauge.readings.front().at);
    const double to = units::in_hours(gauge.readings.back().at);
    const auto row_of = [&](double kelvin) {
        const double row = 0.5 * (plot_rows - 1) * (1.0 - kelvin / range);
        return static_cast<int>(std::lround(std::clamp(row, 0.0, static_cast<double>(plot_rows - 1))));
    };
    Plot plot;
    plot.line(row_of(0.0), "─");
    plot.line(row_of(reading_error.si()), "┄");
    plot.line(row_of(-reading_error.si()), "┄");
    // The readings that count are drawn last: where many share a cell, they show.
    for (const bool used : {false, true}) {
        for (const answer::GaugedReading& reading : gauge.readings) {
            if (reading.used == used) {
                const double share = (units::in_hours(reading.at) - from) / std::max(to - from, 1e-9);
                plot.cell(row_of((reading.bath - reading.fitted).si()),
                          static_cast<int>(std::lround(share * (plot_columns - 1)))) = used ? "●" : "×";
            }
        }
    }
    std::string out = "Readings less the fitted line, K:\n";
    for (int row = 0; row < plot_rows; ++row) {
        const double kelvin = range * (1.0 - 2.0 * row / (plot_rows - 1));
        const std::string label =
            row % 4 == 0 ? fmt::format("{:+7.2f} ", kelvin == 0.0 ? 0.0 : kelvin) : std::string(8, ' ');
        out += label + "│" + plot.row_text(row) + "\n";
    }
    const std::string first = fmt::format("{:.4g} h", from);
    out += fmt::format("         {}{:>{}}\n", first, fmt::format("{:.4g} h", to),
                       plot_columns - static_cast<int>(first.size()));
    out += fmt::format("         ● reading{}  ┄ its error, {:g} K\n",
                       left_out ? "  × left out (at the edge: further off)" : "", reading_error.si());
    return out;
}

}  // namespace holdwater::cli
