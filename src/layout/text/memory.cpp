// SPDX-License-Identifier: MIT
#include "layout/text/memory.hpp"

#include <algorithm>

namespace holdwater::layout {

namespace {

bool sets_alike(const TextStyle& a, const TextStyle& b) {
    return a.size_pt == b.size_pt && a.face == b.face && a.unit_pt == b.unit_pt && a.quiet_units == b.quiet_units;
}

}  // namespace

SetText& TextMemory::of(std::string_view text, const TextStyle& style) {
    auto found = texts_.find(text);
    if (found == texts_.end()) {
        found = texts_.emplace(std::string(text), std::deque<SetText>{}).first;
    }
    std::deque<SetText>& styles = found->second;
    const auto known =
        std::find_if(styles.begin(), styles.end(), [&](const SetText& one) { return sets_alike(one.style, style); });
    if (known != styles.end()) {
        return *known;
    }
    styles.push_back({style, std::nullopt, std::nullopt, {}});
    return styles.back();
}

}  // namespace holdwater::layout
