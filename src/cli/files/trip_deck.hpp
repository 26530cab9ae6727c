// SPDX-License-Identifier: MIT
// From a trip file to the files of its deck.
#pragma once

#include "cli/exit.hpp"
#include "cli/files/printing.hpp"

#include <string>

namespace holdwater::cli {

/// Plans the trip of that file and writes its deck, one for all its boxes; names the files on standard output, and says
/// there why there is none. Earlier files of a deck that no longer holds are renamed.
Exit print_trip_deck(const std::string& trip_path, const PrintingOptions& to);

}  // namespace holdwater::cli
