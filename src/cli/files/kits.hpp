// SPDX-License-Identifier: MIT
// Where boxes and fires are kept: kits/ beside a trip, and in the user's configuration folder.
#pragma once

#include "trip/read_trip.hpp"

#include <optional>
#include <string>

namespace holdwater::cli {

/// $XDG_CONFIG_HOME/holdwater/kits, else .config/holdwater/kits in the home folder; nothing where neither is known. A
/// folder that is no whole path counts as none.
std::optional<std::string> own_kit_folder();

/// Looks a kit up in kits/ of that folder, then in the user's own. Error: word-unknown, with what there is.
trip::KitReader kits_for(const std::string& trip_folder);

}  // namespace holdwater::cli
