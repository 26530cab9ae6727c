// SPDX-License-Identifier: MIT
// Other light on a card: what a red lamp hides, what dim light blurs.
#include "draw/night_view.hpp"

#include "support/near.hpp"
#include "support/pictures.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace holdwater;
using namespace holdwater::units::page_literals;
using draw::Colour;
using support::near_abs;
using support::near_rel;

namespace {

constexpr Colour white{255, 255, 255};

/// A card face as a picture in colour.
draw::Pixels picture(const layout::Page& page, double dpi, const draw::Light& light) {
    const support::Scratch scratch("sight");
    const auto png = draw::to_png(page, support::fonts(), dpi, light);
    REQUIRE(png.ok());
    const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
        cairo_image_surface_create_from_png(scratch.write("sight.png", *png).c_str()), cairo_surface_destroy);
    REQUIRE(cairo_surface_status(surface.get()) == CAIRO_STATUS_SUCCESS);
    draw::Pixels made{cairo_image_surface_get_width(surface.get()), cairo_image_surface_get_height(surface.get()), {}};
    const unsigned char* first = cairo_image_surface_get_data(surface.get());
    for (int y = 0; y < made.height; ++y) {
        const unsigned char* row = first + y * cairo_image_surface_get_stride(surface.get());
        for (int x = 0; x < made.width; ++x) {
            made.colours.push_back({row[4 * x + 2], row[4 * x + 1], row[4 * x]});
        }
    }
    return made;
}

/// Black on the left, white from the middle on.
layout::Page edge_page(double scale) {
    layout::Page page{20.0_mm, 10.0_mm, "edge", {}};
    layout::PlacedBox box;
    box.width = 10.0_mm;
    box.height = 10.0_mm;
    box.filled = true;
    page.items.emplace_back(box);
    page.scale = scale;
    return page;
}

/// How far it is from a tenth to nine tenths of the step of an edge, in linear light [pixels].
double edge_width(const draw::Pixels& pixels) {
    const auto light = [&](int x) {
        const double c = pixels.colours[static_cast<std::size_t>(pixels.height / 2 * pixels.width + x)].green / 255.0;
        return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    const double low = light(0);
    const double high = light(pixels.width - 1);
    const auto crossing = [&](double share) {
        for (int x = 1; x < pixels.width; ++x) {
            const double wanted = low + share * (high - low);
            if (light(x) >= wanted) {
                return x - 1 + (wanted - light(x - 1)) / (light(x) - light(x - 1));
            }
        }
        return 0.0;
    };
    return crossing(0.9) - crossing(0.1);
}

}  // namespace

TEST_CASE("under a red lamp black and blue inks hold their contrast, red ones vanish") {
    // Contrast on white in red light, computed by hand from the sRGB curve for common inks; two figures.
    struct Row {
        const char* ink;
        Colour colour;
        double contrast;
    };
    for (const Row& row : {Row{"black", {0, 0, 0}, 21.0}, Row{"orange", {0xE6, 0x9F, 0x00}, 1.25},
                           Row{"sky blue", {0x56, 0xB4, 0xE9}, 7.3}, Row{"bluish green", {0x00, 0x9E, 0x73}, 21.0},
                           Row{"yellow", {0xF0, 0xE4, 0x42}, 1.14}, Row{"blue", {0x00, 0x72, 0xB2}, 21.0},
                           Row{"vermillion", {0xD5, 0x5E, 0x00}, 1.47}, Row{"reddish purple", {0xCC, 0x79, 0xA7}, 1.61},
                           Row{"signal red", {0x9B, 0x24, 0x23}, 2.78}, Row{"pure red", {0xFF, 0x00, 0x00}, 1.00}}) {
        CAPTURE(row.ink);
        CHECK(near_rel(draw::contrast_under_red_lamp(row.colour, white), row.contrast, 0.01));
        CHECK(draw::contrast_under_red_lamp(row.colour, white) == draw::contrast_under_red_lamp(white, row.colour));
    }
    CHECK(draw::contrast_under_red_lamp({0, 0, 0}, white) >= 7.0);
    const Colour ink = draw::under_red_lamp({255, 0, 0});
    const Colour paper = draw::under_red_lamp(white);
    CHECK(ink.red == paper.red);
    CHECK(ink.green == paper.green);
    CHECK(ink.blue == paper.blue);
}

TEST_CASE("a card by a red lamp: nothing but red, and as dark where it was dark") {
    const auto page = support::sample_faces("hand")[1].faces[0];
    draw::Light lamp;
    lamp.red_lamp = true;
    const auto day = picture(page, 100.0, {});
    const auto red = picture(page, 100.0, lamp);
    REQUIRE(day.colours.size() == red.colours.size());
    bool alike = true;
    bool only_red = true;
    int darkest = 255;
    for (std::size_t i = 0; i < day.colours.size(); ++i) {
        alike = alike && day.colours[i].red == red.colours[i].red;
        only_red = only_red && red.colours[i].green == 0 && red.colours[i].blue == 0;
        darkest = std::min(darkest, red.colours[i].red);
    }
    CHECK(alike);
    CHECK(only_red);
    CHECK(draw::contrast_under_red_lamp({darkest, 0, 0}, {255, 0, 0}) >= 7.0);
}

TEST_CASE("dim light blurs an edge as wide as the eye resolves, and takes half of the contrast") {
    draw::Light light;
    light.dim = draw::Dim{3.0, 450.0_mm, 0.5};
    constexpr double dpi = 254.0;  // ten pixels a millimetre
    // Three minutes of arc at 450 mm are 0.393 mm; an edge under a bell of that width at half its height goes from a
    // tenth to nine tenths within 2.563 / 2.355 of it.
    const double wide = 10.0 * 450.0 * std::tan(3.0 / 60.0 * 3.14159265358979 / 180.0) * 2.563 / 2.355;
    const auto dim = picture(edge_page(1.0), dpi, light);
    CHECK(near_rel(edge_width(dim), wide, 0.05));
    CHECK(near_rel(edge_width(picture(edge_page(0.5), dpi, light)), 0.5 * wide, 0.12));
    // Black is lifted to half of the paper's light: 188 of 255 in sRGB.
    CHECK(near_abs(dim.colours.front().red, 188.0, 1.0));
    CHECK(dim.colours.back().red == 255);
    light.dim->contrast_share = 1.0;
    CHECK(picture(edge_page(1.0), dpi, light).colours.front().red == 0);
}

TEST_CASE("dim light and no blur at all leaves a picture as it is") {
    draw::Pixels pixels{2, 1, {{0, 10, 200}, {255, 128, 3}}};
    draw::put_in_dim_light(pixels, 0.0, 1.0);
    CHECK(pixels.colours[0].blue == 200);
    CHECK(pixels.colours[0].green == 10);
    CHECK(pixels.colours[1].green == 128);
    CHECK(pixels.colours[1].blue == 3);
}
