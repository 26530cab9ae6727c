// SPDX-License-Identifier: MIT
// The picture of a page and its PDF are the same page; the ruler measures true on it.
#include <algorithm>
#include <cmath>
#include <memory>
#include <numeric>

#include <cairo.h>
#include <doctest/doctest.h>

#include "support/near.hpp"
#include "support/printing.hpp"

using namespace holdwater;
using support::near_abs;

namespace {

/// Grey from 0 to 1, row by row.
struct Picture {
    int width = 0;
    int height = 0;
    std::vector<double> grey;
    double at(int x, int y) const { return grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)]; }
};

Picture read_png(const std::string& file) {
    const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
        cairo_image_surface_create_from_png(file.c_str()), cairo_surface_destroy);
    REQUIRE(cairo_surface_status(surface.get()) == CAIRO_STATUS_SUCCESS);
    cairo_surface_flush(surface.get());
    Picture made;
    made.width = cairo_image_surface_get_width(surface.get());
    made.height = cairo_image_surface_get_height(surface.get());
    const auto format = cairo_image_surface_get_format(surface.get());
    REQUIRE((format == CAIRO_FORMAT_RGB24 || format == CAIRO_FORMAT_ARGB32));
    const unsigned char* data = cairo_image_surface_get_data(surface.get());
    const int stride = cairo_image_surface_get_stride(surface.get());
    for (int y = 0; y < made.height; ++y) {
        for (int x = 0; x < made.width; ++x) {
            made.grey.push_back(data[y * stride + 4 * x + 1] / 255.0);  // the pages are grey: one channel tells
        }
    }
    return made;
}

/// Means of 4 x 4 pixels from the top left.
Picture averaged(const Picture& fine) {
    Picture made;
    made.width = fine.width / 4;
    made.height = fine.height / 4;
    for (int y = 0; y < made.height; ++y) {
        for (int x = 0; x < made.width; ++x) {
            double sum = 0.0;
            for (int dy = 0; dy < 4; ++dy) {
                for (int dx = 0; dx < 4; ++dx) {
                    sum += fine.at(4 * x + dx, 4 * y + dy);
                }
            }
            made.grey.push_back(sum / 16.0);
        }
    }
    return made;
}

std::string picture_of_pdf(const support::Scratch& scratch, const layout::Page& page, int dpi) {
    const auto pdf = draw::to_pdf({page}, support::fonts(), {"page", "en", "test", {}});
    REQUIRE(pdf.ok());
    const std::string file = scratch.write("page.pdf", *pdf);
    const std::string out = scratch.path("page.png");
    const auto ran = support::run("mutool draw -q -c rgb -r " + std::to_string(dpi) + " -o " + out + " " + file);
    REQUIRE_MESSAGE(ran.status == 0, ran.output);
    return out;
}

}  // namespace

TEST_CASE("each page of the sample deck: cairo's picture against another program's picture of the PDF") {
    // print.md 5.2: both at 600 dpi, averaged to 150; RMSE below 0.015 and no pixel off by half.
    const support::Scratch scratch("pictures");
    for (const char* format : {"hand", "pocket"}) {
        for (const auto& page : support::pages_of(support::sample_faces(format))) {
            CAPTURE(page.name);
            const Picture theirs = averaged(read_png(picture_of_pdf(scratch, page, 600)));
            const auto png = draw::to_png(page, support::fonts(), 600.0);
            REQUIRE(png.ok());
            const Picture ours = averaged(read_png(scratch.write("ours.png", *png)));
            const int width = std::min(ours.width, theirs.width);
            const int height = std::min(ours.height, theirs.height);
            CHECK(std::abs(ours.width - theirs.width) <= 1);
            CHECK(std::abs(ours.height - theirs.height) <= 1);
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
            // And it is a page, not a blank.
            CHECK(std::accumulate(ours.grey.begin(), ours.grey.end(), 0.0) / static_cast<double>(ours.grey.size()) < 0.97);
        }
    }
}

TEST_CASE("the ruler of the printed page: 60 mm between its ticks at 20 and 80 mm, within 0.1 mm") {
    const support::Scratch scratch("ruler");
    const auto cards = support::sample_faces("hand");
    const auto hold = std::find_if(cards.begin(), cards.end(), [](const auto& card) { return card.key == "hold"; });
    REQUIRE(hold != cards.end());
    const layout::Page& page = hold->faces.back();

    std::vector<double> items;
    for (const auto& item : page.items) {
        const auto* rule = std::get_if<layout::PlacedLine>(&item);
        if (rule != nullptr && rule->role == layout::Role::ruler_tick && rule->x1 == 0.0) {
            items.push_back(rule->y1);
        }
    }
    std::sort(items.begin(), items.end());
    REQUIRE(items.size() >= 17);
    const auto has = [](const std::vector<double>& ticks, double mm, double tolerance) {
        return std::any_of(ticks.begin(), ticks.end(), [&](double at) { return near_abs(at - ticks[0], mm, tolerance); });
    };
    CHECK(has(items, 20.0, 0.001));
    CHECK(has(items, 80.0, 0.001));

    // The same on the rendered page: dark runs down a line 2 mm from the left cut.
    constexpr int dpi = 600;
    const Picture picture = read_png(picture_of_pdf(scratch, page, dpi));
    const int column = static_cast<int>(2.0 / 25.4 * dpi);
    std::vector<double> seen;
    for (int y = 0; y < picture.height; ++y) {
        int end = y;
        while (end < picture.height && picture.at(column, end) < 0.5) {
            ++end;
        }
        if (end > y) {
            seen.push_back(0.5 * (y + end) * 25.4 / dpi);
            y = end;
        }
    }
    CHECK(seen.size() == items.size());
    CHECK(has(seen, 20.0, 0.05));
    CHECK(has(seen, 80.0, 0.05));
}

TEST_CASE("a turned text runs up the page in both") {
    const support::Scratch scratch("turned");
    layout::Page page{60.0, 60.0, "turned", {}};
    layout::PlacedText text;
    text.x = 30.0;
    text.baseline = 50.0;
    text.size_pt = 20.0;
    text.text = "HHHH";
    text.upward = true;
    page.items.emplace_back(text);
    const double width = support::real_measure().width("HHHH", layout::Face::regular, 20.0);
    const auto png = draw::to_png(page, support::fonts(), 254.0);  // ten pixels a millimetre
    REQUIRE(png.ok());
    for (const auto& file : {scratch.write("ours.png", *png), picture_of_pdf(scratch, page, 254)}) {
        const Picture picture = read_png(file);
        double left = 60.0, right = 0.0, top = 60.0, bottom = 0.0;
        for (int y = 0; y < picture.height; ++y) {
            for (int x = 0; x < picture.width; ++x) {
                if (picture.at(x, y) < 0.5) {
                    left = std::min(left, x / 10.0);
                    right = std::max(right, x / 10.0);
                    top = std::min(top, y / 10.0);
                    bottom = std::max(bottom, y / 10.0);
                }
            }
        }
        CHECK(right <= 30.1);
        CHECK(left >= 30.0 - 0.78 * 20.0 * 25.4 / 72.0);
        CHECK(bottom <= 50.0);
        CHECK(bottom >= 48.5);
        CHECK(near_abs(top, 50.0 - width, 1.5));
    }
}
