// SPDX-License-Identifier: MIT
#include "problem/codes.hpp"

namespace holdwater::problem {

std::optional<Code> Code::named(std::string_view text) {
    for (std::size_t row = 0; row < code_table.size(); ++row) {
        if (code_table[row].text == text) {
            return Code(row);
        }
    }
    return std::nullopt;
}

}  // namespace holdwater::problem
