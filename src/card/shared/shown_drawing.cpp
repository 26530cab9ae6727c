// SPDX-License-Identifier: MIT
#include "card/shared/shown_drawing.hpp"

#include <string>
#include <utility>

namespace holdwater::card {

Drawings::Shown shown_drawing(const words::Words& words, std::string_view name, Text label) {
    return {std::string(name), words.text("drawing." + std::string(name)), std::move(label)};
}

}  // namespace holdwater::card
