// SPDX-License-Identifier: MIT
// Boxes and fires that are kept: what a trip file takes by `use = "blue"` instead of writing it again.
#pragma once

#include "trip/read_trip.hpp"
#include "trip/report.hpp"

#include <toml++/toml.h>

namespace holdwater::trip {

/// Puts what kits say into the [[box]] and [fire] tables that use one, as if it stood there; what stands there wins.
/// Keys that came from a kit keep their place in its file, and its log is looked up beside it. Faults: word-unknown,
/// those of TOML, and tables that no kit has.
void put_in_kits(toml::table& trip, const KitReader& read_kit, Report& report);

/// Letters, digits, "-" and "_", since a kit's name is that of a file; at most 40 of them.
bool is_kit_name(std::string_view name);

/// "blue.toml" of that name, in a folder of kits.
std::string kit_file(std::string_view name);

}  // namespace holdwater::trip
