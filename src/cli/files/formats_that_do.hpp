// SPDX-License-Identifier: MIT
// Which of the formats that are offered print something: named where the one that was asked for does not.
#pragma once

#include "cli/files/printing.hpp"

#include <array>
#include <functional>
#include <string_view>

namespace holdwater::cli {

inline constexpr std::array<std::string_view, 4> offered_formats{"hand", "pocket", "wallet", "large"};

/// Before anything is planned: an error where no card of this format has room on the sheet with faces and backs printed
/// so, with the formats that have; nothing where it has.
problem::Problems paper_faults(const PrintingOptions& options);

/// What `lay_out` found wrong with a deck in the format that was asked for: where another format prints it, an error of
/// the input, nothing-fits, that names all that do; else what was found, which is our own fault.
/// `lays_out`: whether the deck is laid out in a format.
problem::Problems with_formats_that_do(const problem::Problems& found, const PrintingOptions& options,
                                       const std::function<bool(const layout::Format&)>& lays_out);

}  // namespace holdwater::cli
