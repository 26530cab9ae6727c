// SPDX-License-Identifier: MIT
// Looking for something in a text.
#pragma once

#include <string_view>

namespace holdwater::support {

inline bool has(std::string_view text, std::string_view part) {
    return text.find(part) != std::string_view::npos;
}

}  // namespace holdwater::support
