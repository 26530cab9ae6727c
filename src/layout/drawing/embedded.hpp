// SPDX-License-Identifier: MIT
// layouts/drawings/*.svg as they were when the program was built. Made by src/embed.cmake.
#pragma once

#include <span>
#include <string_view>

namespace holdwater::layout {

struct Document {
    std::string_view name;
    std::string_view text;
};

std::span<const Document> embedded_documents();

}  // namespace holdwater::layout
