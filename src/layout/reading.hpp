// SPDX-License-Identifier: MIT
// The reading order: rows and cells in a fragment, groups on a page, and figures described in words.
#pragma once

#include "card/content.hpp"
#include "layout/block/fragment.hpp"

#include <cstddef>
#include <string>

namespace holdwater::layout {

/// The items from `first` on stand in this row, or in this cell of their row.
void set_row(std::vector<Item>& items, std::size_t first, std::size_t row);
void set_cell(std::vector<Item>& items, std::size_t first, std::size_t cell);

/// A new last group of the page; what it returns is its place among them.
int add_group(Page& page, const Group& group);

/// Puts items on a page as members of a group: all of a figure's, of any other only the texts.
void put_in_group(Page& page, int group, const std::vector<Item>& items, Millimetres dx, Millimetres dy);

/// Puts a fragment on a page as its next group.
void put_group(Page& page, const Fragment& part, Millimetres dx, Millimetres dy);

/// Puts a whole page, grown by `factor` first, on another, whose reading order it continues.
void put_page(Page& onto, const Page& part, Millimetres dx, Millimetres dy, double factor = 1.0);

/// What a figure shows, in the words that stand on it.
std::string described(const card::Ruler& ruler, Millimetres end);
std::string described(const card::Curve& curve);
std::string described(const card::DayBar& bar);
std::string described(const card::Drawings& drawings);
std::string described(const card::Staircase& stairs);
std::string described(const card::Bands& bands);

}  // namespace holdwater::layout
