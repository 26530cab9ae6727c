// SPDX-License-Identifier: MIT
// A trip file by questions: a new one, or an old one for another time.
#pragma once

#include "cli/exit.hpp"

#include <string>

namespace holdwater::cli {

/// Asks for one meal and writes its trip file; what nobody knows is taken cautiously, as `quick` takes it. Ends with
/// the verdict and the next command. What was said before Ctrl-C is kept: exit code check.
Exit ask_for_trip(const std::string& path);

/// The trip of `old_path` for another day, number of eaters and so on; all else stays as it is written there.
Exit ask_what_changes(const std::string& old_path, const std::string& path);

}  // namespace holdwater::cli
