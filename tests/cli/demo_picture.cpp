// SPDX-License-Identifier: MIT
// The picture of the demo deck that the README shows is the one that the program draws today.
#include "cli/trail_crew_cards.hpp"

#include <cairo.h>
#include <doctest/doctest.h>

#include <cmath>
#include <cstdint>
#include <cstring>
#include <vector>

using namespace holdwater::support;

namespace {

struct Grey {
    int width = 0;
    int height = 0;
    std::vector<int> dots;  // 0 black to 255 white
};

/// A picture on white paper, in grey.
Grey read_grey(const std::string& path) {
    cairo_surface_t* file = cairo_image_surface_create_from_png(path.c_str());
    Grey grey;
    if (cairo_surface_status(file) == CAIRO_STATUS_SUCCESS) {
        grey.width = cairo_image_surface_get_width(file);
        grey.height = cairo_image_surface_get_height(file);
        cairo_surface_t* paper = cairo_image_surface_create(CAIRO_FORMAT_RGB24, grey.width, grey.height);
        cairo_t* pen = cairo_create(paper);
        cairo_set_source_rgb(pen, 1, 1, 1);
        cairo_paint(pen);
        cairo_set_source_surface(pen, file, 0, 0);
        cairo_paint(pen);
        cairo_destroy(pen);
        cairo_surface_flush(paper);
        const unsigned char* data = cairo_image_surface_get_data(paper);
        const int stride = cairo_image_surface_get_stride(paper);
        for (int y = 0; y < grey.height; ++y) {
            for (int x = 0; x < grey.width; ++x) {
                std::uint32_t dot = 0;
                std::memcpy(&dot, data + y * stride + 4 * x, sizeof dot);
                grey.dots.push_back(static_cast<int>((dot & 255U) + (dot >> 8U & 255U) + (dot >> 16U & 255U)) / 3);
            }
        }
        cairo_surface_destroy(paper);
    }
    cairo_surface_destroy(file);
    return grey;
}

/// Dots that differ by more than a quarter of the way from black to white: the kept picture has sixteen greys only.
int dots_that_differ(const Grey& a, const Grey& b) {
    int count = 0;
    for (std::size_t i = 0; i < a.dots.size(); ++i) {
        count += std::abs(a.dots[i] - b.dots[i]) > 64 ? 1 : 0;
    }
    return count;
}

}  // namespace

TEST_CASE("the picture in the README shows the demo deck of today, down to its stamp") {
    const auto& [folder, said] = trail_crew_cards();
    CAPTURE(said.err);
    REQUIRE(good(said.exit));
    const Grey now = read_grey((folder / "trail-crew-card-sheet.png").string());
    const Grey kept = read_grey(std::string(HOLDWATER_SOURCE_DIR) + "/out/demo-deck.png");
    REQUIRE(now.width > 0);
    REQUIRE(kept.width == now.width);
    REQUIRE(kept.height == now.height);
    // Renew it as DEVELOPERS.md says, and look at it.
    CHECK(dots_that_differ(now, kept) == 0);
    // The comparison sees a deck in light that leaves half of its contrast, and one card less would change the size.
    Grey dim = now;
    for (int& dot : dim.dots) {
        dot = 255 - (255 - dot) / 2;
    }
    CHECK(dots_that_differ(dim, kept) > 0);
}
