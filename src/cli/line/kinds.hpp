// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

namespace holdwater::cli {

/// The kinds that somebody may have meant: all that contain the word, large or small, else the nearest.
std::string kinds_like(std::string word);

/// The sets of rules for help texts, "us, uk, au-nz or ca"; the first with what is to be said of it.
std::string rules_listed(std::string_view about_the_first = {});

}  // namespace holdwater::cli
