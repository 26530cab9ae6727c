// SPDX-License-Identifier: MIT
// Which foods are never served from the bath alone, and to what they are finished over the fire.
#pragma once

#include "safety/standard.hpp"

#include <optional>

namespace holdwater::safety {

/// The finish that the cut, the kind and the eaters ask for together: the hottest, held for the longest of them;
/// nothing if the bath alone will do.
std::optional<Finish> finish_for(const Request& request);

/// The finish that kills what grew in a core while it warmed slowly, where the bath does not do that in time.
Finish finish_after_growth(facts::Ruleset ruleset);

/// True for pieces whose inside no germ from outside has reached: the bath alone can make them safe.
bool is_whole_muscle(facts::Cut cut);

}  // namespace holdwater::safety
