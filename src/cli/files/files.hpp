// SPDX-License-Identifier: MIT
// The disk: files are read whole, and written whole or not at all.
#pragma once

#include <string>
#include <vector>

#include "problem/problem.hpp"

namespace holdwater::cli {

/// Regular files only, up to the size of the longest log. Errors: file-unreadable, file-too-big.
problem::Result<std::string> read_file(const std::string& path);

/// Temporary name beside the target, checked write, fsync, rename. The folder is made if it is missing.
/// `replace` false: an existing file is an error and stays as it is.
problem::Result<bool> write_file(const std::string& path, const std::string& bytes, bool replace = true);

/// Renames every earlier output of this trip (NAME-cards.pdf, NAME-basis.pdf, NAME-card-*.png) to *.superseded; returns the new names.
std::vector<std::string> supersede(const std::string& folder, const std::string& name);

/// Prints every problem on standard error, one a line.
void tell(const problem::Problems& problems);

}  // namespace holdwater::cli
