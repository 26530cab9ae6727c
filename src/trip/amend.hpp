// SPDX-License-Identifier: MIT
// A trip file with some of its values changed, and everything else left as its user wrote it.
#pragma once

#include "problem/problem.hpp"
#include "trip/trip.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace holdwater::trip {

/// `text` is the file that `before` was read from. What is otherwise in `after` is written into it, with the old value
/// in a remark behind it; what is no more there becomes a remark; remarks and layout stay. Only what a plan's changes
/// touch is looked at: times, foods (by name) and boxes (by place), wind and pots. Nothing where the layout of the text
/// does not allow it, such as a table in one line that needs another key: read it back, and compare.
std::optional<std::string> amended(std::string_view text, const Trip& before, const Trip& after);

/// The user's text with the changes in it, or where its layout does not allow that, the trip anew. `read_back` reads
/// such a text as the user's was read: it means the trip that was planned, else a logic_error is thrown.
std::string mended_text(std::string_view text, const Trip& before, const Trip& after,
                        const std::function<problem::Result<Trip>(const std::string&)>& read_back);

}  // namespace holdwater::trip
