// SPDX-License-Identifier: MIT
// Lines for a terminal of 96 columns.
#pragma once

#include <string>
#include <string_view>

namespace holdwater::cli {

constexpr std::size_t terminal_columns = 96;

/// The words of `text` in lines of at most so many columns, each behind `indent` spaces and ended by a line feed. A
/// word longer than a line stands alone. Continuation bytes of UTF-8 take no column.
std::string wrap(std::string_view text, std::size_t indent = 0, std::size_t most = terminal_columns);

/// The same text with common spaces for no-break ones, as a terminal wants it.
std::string plain_spaces(std::string text);

}  // namespace holdwater::cli
