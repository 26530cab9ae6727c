// SPDX-License-Identifier: MIT
// Where the program finds what it ships with: next to itself when installed, else where it was built.
#pragma once

#include "draw/draw.hpp"
#include "problem/problem.hpp"

#include <string>

namespace holdwater::cli {

/// Text of layouts/NAME, such as "formats/hand.toml". Errors: data-missing, data-unreadable.
problem::Result<std::string> layout_file(const std::string& name);
std::string layout_path(const std::string& name);
draw::FontFiles font_files();
std::string version();
/// The day on which that version was made, 2026-11-30; a day on which somebody built it would differ each time.
std::string version_date();

}  // namespace holdwater::cli
