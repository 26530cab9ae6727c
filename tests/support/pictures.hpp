// SPDX-License-Identifier: MIT
// A page as cairo draws it and as another program draws its PDF, to be held one against the other.
#pragma once

#include "draw/drawn_page.hpp"
#include "support/printing.hpp"

#include <cairo.h>
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <numeric>
#include <sstream>
#include <string>
#include <vector>

namespace holdwater::support {

/// Grey from 0 to 1, row by row; each point the mean of `mean` x `mean` pixels from the top left.
struct Picture {
    int width = 0;
    int height = 0;
    std::vector<double> grey;
    double at(int x, int y) const {
        return grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
    }
};

inline Picture averaged(const unsigned char* first, int width, int height, int step, int stride, int mean) {
    Picture made{width / mean, height / mean, {}};
    made.grey.reserve(static_cast<std::size_t>(made.width) * static_cast<std::size_t>(made.height));
    for (int y = 0; y < made.height; ++y) {
        for (int x = 0; x < made.width; ++x) {
            int sum = 0;
            for (int dy = 0; dy < mean; ++dy) {
                const unsigned char* row = first + static_cast<std::ptrdiff_t>(y * mean + dy) * stride;
                for (int dx = 0; dx < mean; ++dx) {
                    sum += row[(x * mean + dx) * step];
                }
            }
            made.grey.push_back(sum / (255.0 * mean * mean));
        }
    }
    return made;
}

/// Our own picture of a page, by cairo.
inline Picture own_picture(const layout::Page& page, double dpi, int mean) {
    const auto drawn = draw::drawn_page(page, fonts(), dpi);
    REQUIRE(drawn.ok());
    cairo_surface_t* const surface = drawn->get();
    REQUIRE(cairo_image_surface_get_format(surface) == CAIRO_FORMAT_RGB24);
    cairo_surface_flush(surface);
    // The pages are grey: one of four bytes a pixel tells.
    return averaged(cairo_image_surface_get_data(surface), cairo_image_surface_get_width(surface),
                    cairo_image_surface_get_height(surface), 4, cairo_image_surface_get_stride(surface), mean);
}

/// Another program's picture of the page's PDF, through a plain grey map.
inline Picture pdf_picture(const layout::Page& page, int dpi, int mean) {
    const Scratch scratch("theirs");
    const auto pdf = draw::to_pdf({page}, fonts(), {"page", "en", "test", {}});
    REQUIRE(pdf.ok());
    const std::string out = scratch.path("page.pgm");
    const auto ran =
        run("mutool draw -q -c gray -r " + std::to_string(dpi) + " -o " + out + " " + scratch.write("page.pdf", *pdf));
    REQUIRE_MESSAGE(ran.status == 0, ran.output);
    const std::string bytes = file_text(out);
    std::istringstream head(bytes);
    std::string magic;
    int width = 0;
    int height = 0;
    int most = 0;
    head >> magic >> width >> height >> most;
    REQUIRE(magic == "P5");
    REQUIRE(most == 255);
    const std::size_t pixels = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    REQUIRE(bytes.size() > pixels);
    return averaged(reinterpret_cast<const unsigned char*>(bytes.data()) + (bytes.size() - pixels), width, height, 1,
                    width, mean);
}

/// Both drawn and averaged to 150 dpi: root mean square of their difference below 0.015, no point off by half, and not
/// blank. Theirs is drawn at 1200 dpi, since the other program puts letters on whole pixels: at 600 dpi that alone
/// (half a pixel, measured) makes 0.023 on a page full of text. Ours lie where they are, at 300 dpi as well.
inline void check_same_picture(const layout::Page& page) {
    constexpr int dpi = 150;
    constexpr int our_mean = 2;
    constexpr int their_mean = 8;
    CAPTURE(page.name);
    const Picture ours = own_picture(page, dpi * our_mean, our_mean);
    const Picture theirs = pdf_picture(page, dpi * their_mean, their_mean);
    CHECK(std::abs(ours.width - theirs.width) <= 1);
    CHECK(std::abs(ours.height - theirs.height) <= 1);
    const int width = std::min(ours.width, theirs.width);
    const int height = std::min(ours.height, theirs.height);
    double squares = 0.0;
    double worst = 0.0;
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const double off = ours.at(x, y) - theirs.at(x, y);
            squares += off * off;
            worst = std::max(worst, std::abs(off));
        }
    }
    CHECK(std::sqrt(squares / (static_cast<double>(width) * height)) < 0.015);
    CHECK(worst < 0.5);
    CHECK(std::accumulate(ours.grey.begin(), ours.grey.end(), 0.0) / static_cast<double>(ours.grey.size()) < 0.97);
}

}  // namespace holdwater::support
