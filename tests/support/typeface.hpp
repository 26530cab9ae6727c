// SPDX-License-Identifier: MIT
// The faces made in the build.
#pragma once

#include "draw/draw.hpp"

#include <memory>
#include <utility>

namespace holdwater::support {

inline draw::FontFiles fonts() {
    return draw::faces_in(HOLDWATER_FONT_DIR);
}

inline const layout::Measure& real_measure() {
    static const std::unique_ptr<layout::Measure> measure = std::move(draw::open_measure(fonts())).value();
    return *measure;
}

}  // namespace holdwater::support
