// SPDX-License-Identifier: MIT
// A page as cairo has drawn it, before it is packed as a PNG. Inside draw/ and its tests only.
#pragma once

#include "draw/draw.hpp"

#include <cairo.h>

#include <memory>

namespace holdwater::draw {

struct SurfaceCloser {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
using Surface = std::unique_ptr<cairo_surface_t, SurfaceCloser>;

/// Four bytes a pixel, of which one is not used. Error: png-failed.
problem::Result<Surface> drawn_page(const layout::Page& page, const FontFiles& fonts, double dpi);

}  // namespace holdwater::draw
