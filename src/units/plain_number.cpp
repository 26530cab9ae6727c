// SPDX-License-Identifier: MIT
#include "units/plain_number.hpp"

#include <charconv>
#include <cmath>

namespace holdwater::units {

bool is_sound(double value) {
    return value == 0.0 || std::isnormal(value);
}

std::optional<double> number_at_start(std::string_view text, std::size_t& used) {
    double value = 0.0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault != std::errc{} || !is_sound(value)) {
        return std::nullopt;
    }
    used = static_cast<std::size_t>(end - text.data());
    return value;
}

std::optional<double> plain_number(std::string_view text) {
    std::size_t used = 0;
    const auto value = number_at_start(text, used);
    return used == text.size() ? value : std::nullopt;
}

}  // namespace holdwater::units
