// SPDX-License-Identifier: MIT
// The one place where a text becomes a number.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace holdwater::units {

/// Neither infinite, nor NaN, nor so near to nought that its digits get lost (denormal): what may be reckoned with.
bool is_sound(double value);

/// The number at the start of a text, with a decimal point, perhaps with a sign and an exponent; `used` becomes the
/// number of its bytes. Nothing where there is none, or one that is not sound.
std::optional<double> number_at_start(std::string_view text, std::size_t& used);

/// A whole text that is such a number and nothing else.
std::optional<double> plain_number(std::string_view text);

}  // namespace holdwater::units
