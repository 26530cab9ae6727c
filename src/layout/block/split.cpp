// SPDX-License-Identifier: MIT
#include "layout/block/split.hpp"

#include <cstddef>
#include <optional>
#include <tuple>

namespace holdwater::layout {

namespace {

template <class T>
std::pair<std::vector<T>, std::vector<T>> cut(const std::vector<T>& all, std::size_t rows) {
    const auto middle = all.begin() + static_cast<std::ptrdiff_t>(rows);
    return {{all.begin(), middle}, {middle, all.end()}};
}

}  // namespace

std::size_t rows_of(const card::Block& block) {
    if (const auto* table = std::get_if<card::Table>(&block)) {
        return table->rows.size();
    }
    if (const auto* steps = std::get_if<card::Steps>(&block)) {
        return steps->steps.size();
    }
    if (const auto* grid = std::get_if<card::WriteIn>(&block)) {
        return grid->first_column.size();
    }
    if (const auto* thermometer = std::get_if<card::Thermometer>(&block)) {
        return thermometer->sections.size() == 1 ? thermometer->sections.front().rows.size()
                                                 : thermometer->sections.size();
    }
    return 0;
}

std::pair<Piece, Piece> split_after(const Piece& piece, std::size_t rows) {
    std::pair<Piece, Piece> parts{piece, piece};
    if (const auto* table = std::get_if<card::Table>(&piece.block)) {
        auto& first = std::get<card::Table>(parts.first.block);
        auto& second = std::get<card::Table>(parts.second.block);
        std::tie(first.rows, second.rows) = cut(table->rows, rows);
        if (const auto marked = table->marked_row) {
            first.marked_row = *marked < rows ? marked : std::nullopt;
            second.marked_row = *marked < rows ? std::nullopt : std::optional<std::size_t>(*marked - rows);
        }
    } else if (const auto* steps = std::get_if<card::Steps>(&piece.block)) {
        std::tie(std::get<card::Steps>(parts.first.block).steps, std::get<card::Steps>(parts.second.block).steps) =
            cut(steps->steps, rows);
        parts.second.first_number = piece.first_number + static_cast<int>(rows);
    } else if (const auto* grid = std::get_if<card::WriteIn>(&piece.block)) {
        std::tie(std::get<card::WriteIn>(parts.first.block).first_column,
                 std::get<card::WriteIn>(parts.second.block).first_column) = cut(grid->first_column, rows);
    } else if (const auto* thermometer = std::get_if<card::Thermometer>(&piece.block)) {
        auto& first = std::get<card::Thermometer>(parts.first.block).sections;
        auto& second = std::get<card::Thermometer>(parts.second.block).sections;
        if (thermometer->sections.size() == 1) {
            std::tie(first.front().rows, second.front().rows) = cut(thermometer->sections.front().rows, rows);
        } else {
            std::tie(first, second) = cut(thermometer->sections, rows);
        }
    }
    return parts;
}

}  // namespace holdwater::layout
