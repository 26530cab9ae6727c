// SPDX-License-Identifier: MIT
// A typeface of which all characters are half an em wide, so that a test can reckon by hand.
#pragma once

#include "layout/text/measure.hpp"

#include <string_view>

namespace holdwater::support {

class FakeMeasure : public layout::Measure {
  public:
    layout::Millimetres width(std::string_view text, layout::Weight, layout::Points size) const override {
        std::size_t characters = 0;
        for (const char c : text) {
            characters += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
        }
        return layout::Millimetres{static_cast<double>(characters) * 0.5 * size.value() * 25.4 / 72.0};
    }
    /// Has every character but the snowman.
    bool covers(std::string_view text, layout::Weight) const override {
        return text.find("\u2603") == std::string_view::npos;
    }
};

inline const FakeMeasure measure;

}  // namespace holdwater::support
