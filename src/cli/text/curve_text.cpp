// SPDX-License-Identifier: MIT
#include "cli/text/plan_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace holdwater::cli {
namespace {

constexpr int chart_rows = 16;
constexpr int chart_columns = 72;

}  // namespace

std::string curve_text(const plan::Plan& plan) {
    const std::size_t count = plan.bath_curve.size();
    units::Temperature top = plan.levels.floor;
    for (const auto& bath : plan.bath_curve) {
        top = std::max(top, bath.high);
    }
    const double high = std::ceil(top.celsius() / 5.0) * 5.0;
    const double low = 0.0;
    const auto row_of = [&](units::Temperature t) {
        const double share = (high - t.celsius()) / (high - low);
        return std::clamp(static_cast<int>(std::lround(share * (chart_rows - 1))), 0, chart_rows - 1);
    };
    std::vector<std::vector<std::string>> grid(chart_rows, std::vector<std::string>(chart_columns, " "));
    const auto put = [&](int row, int column, const char* mark) {
        grid[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] = mark;
    };
    for (int column = 0; column < chart_columns; ++column) {
        const auto i = static_cast<std::size_t>(
            std::lround(static_cast<double>(column) * static_cast<double>(count - 1) / (chart_columns - 1)));
        put(row_of(plan.levels.floor), column, "┄");
        for (int row = row_of(plan.bath_curve[i].high); row <= row_of(plan.bath_curve[i].low); ++row) {
            put(row, column, "░");
        }
        put(row_of(plan.core_curve[i].likely), column, "·");
        put(row_of(plan.bath_curve[i].likely), column, "█");
    }
    std::string out;
    for (int row = 0; row < chart_rows; ++row) {
        const double celsius = high - (high - low) * row / (chart_rows - 1);
        out += row % 3 == 0 ? fmt::format("{:4.0f} C ", celsius) : "       ";
        for (const std::string& cell : grid[static_cast<std::size_t>(row)]) {
            out += cell;
        }
        out += "\n";
    }
    out += fmt::format("       {}{:>{}}\n", plan.trip->from.clock_24(), plan.trip->serve.clock_24(), chart_columns - 5);
    out += "       █ bath, likely  ░ 90 of 100 scenarios  · core  ┄ floor\n";
    return out;
}

}  // namespace holdwater::cli
