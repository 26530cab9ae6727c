// SPDX-License-Identifier: MIT
// The card faces of the demo trips in the hand format, and each as a list of its items in text.
#pragma once

#include "layout/layout.hpp"

#include <map>
#include <string>
#include <vector>

namespace holdwater::support {

/// The trips in layouts/trips whose decks the README shows.
const std::vector<std::string>& demo_names();

/// All faces, in the order of the deck; its stamp is the same for every deck. Made once a test program.
const std::vector<layout::Page>& demo_faces(const std::string& trip);

/// One line an item: what it is, its place in 0.1 mm, its size, its tag and its words.
std::string items_of(const layout::Page& page);

/// Every list by its path below tests/pages, such as "trail-crew/fill-1.txt".
std::map<std::string, std::string> page_lists();

}  // namespace holdwater::support
