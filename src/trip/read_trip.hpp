// SPDX-License-Identifier: MIT
// Trip file text -> Trip, or every fault in it at once, each with file:line:column and what would be right.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "problem/problem.hpp"
#include "trip/trip.hpp"

namespace holdwater::trip {

/// Gives the text of a file named in the trip file (a box log), relative to the trip file; wired to the disk in cli/.
using FileReader = std::function<problem::Result<std::string>(const std::string& name)>;

/// file_name is only used in messages. Warnings come with a good value.
problem::Result<Trip> read_trip(std::string_view text, const std::string& file_name, const FileReader& read_file);

/// The trip in one fixed spelling, SI units, every default written out: two files that mean the same give the same text.
std::string canonical(const Trip& trip);

}  // namespace holdwater::trip
