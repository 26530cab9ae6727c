// SPDX-License-Identifier: MIT
// The word that somebody may have meant.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace holdwater::units {

/// The known word with the smallest edit distance to `word`, case ignored; nothing if even that is too far (more than
/// a third of the letters, at least one allowed).
std::optional<std::string_view> nearest(std::string_view word, std::span<const std::string_view> known);

/// The known words that contain `word`, case ignored, those that begin with it first; none for an empty word.
std::vector<std::string_view> containing(std::string_view word, std::span<const std::string_view> known);

}  // namespace holdwater::units
