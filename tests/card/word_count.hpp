// SPDX-License-Identifier: MIT
// How much stands on a face, and what its things are called.
#pragma once

#include "layout/page.hpp"

#include <cstddef>
#include <regex>
#include <string>

namespace holdwater::support {

/// Words and numbers of a text. A number with its unit is one, with what it is in the other system; so are "3 1/4",
/// "9 h 15" and "Fri 16:00".
std::size_t words_in(std::string text);

/// What stands on a face, but for its head (number, name) and its foot (trip, stamp, the last word).
std::size_t words_on(const layout::Page& page);

/// Names that no card in this language (en, es, fr) has for what is called otherwise everywhere else.
const std::regex& other_names(const std::string& language = "en");

}  // namespace holdwater::support
