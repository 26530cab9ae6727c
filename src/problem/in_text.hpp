// SPDX-License-Identifier: MIT
// Places in a user's text, and how messages quote it.
#pragma once

#include "problem/bounds.hpp"
#include "problem/problem.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace holdwater::problem {

/// Line and column of a byte of the text; columns count letters, as the TOML reader does. A byte beyond the end stands
/// for the end.
Place place_in(std::string_view text, std::size_t byte, const std::string& file_name);

/// Control characters, line feeds among them, as '?': no terminal is made to do anything by a file.
std::string one_line(std::string_view text);

/// Text of a user as a message quotes it: one line, cut to `letters` with "..." behind.
std::string quoted(std::string_view text, std::size_t letters = bounds::quoted_letters);

}  // namespace holdwater::problem
