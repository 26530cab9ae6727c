// SPDX-License-Identifier: MIT
// How decks are printed: the options that every command with cards has.
#pragma once

#include "cli/files/printing.hpp"
#include "cli/line/options.hpp"

#include <string>
#include <vector>

namespace holdwater::cli {

/// `cards`: the names that --only takes.
std::vector<OptionRow> printing_rows(const std::vector<std::string>& cards);
PrintingOptions read_printing(Options& options);

/// The same without --only, for a command that prints one card.
std::vector<OptionRow> printing_rows_of_one();
PrintingOptions read_printing_of_one(Options& options);

}  // namespace holdwater::cli
