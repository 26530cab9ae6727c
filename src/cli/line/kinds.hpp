// SPDX-License-Identifier: MIT
#pragma once

#include <string>

namespace holdwater::cli {

/// The kinds that somebody may have meant: all that contain the word, large or small, else the nearest.
std::string kinds_like(const std::string& word);

/// The sets of rules for messages, "us, uk, au-nz or ca".
std::string rules_listed();

}  // namespace holdwater::cli
