// SPDX-License-Identifier: MIT
// The picture of a page and its PDF are the same page; the ruler measures true on it.
#include "support/near.hpp"
#include "support/printing.hpp"

#include <cairo.h>
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <numeric>
#include <sstream>

using namespace holdwater;
using support::near_abs;

namespace {

/// Grey from 0 to 1, row by row; each point the mean of `mean` x `mean` pixels from the top left.
struct Picture {
    int width = 0;
    int height = 0;
    std::vector<double> grey;
    double at(int x, int y) const {
        return grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
    }
};

Picture averaged(const unsigned char* first, int width, int height, int step, int stride, int mean) {
    Picture made{width / mean, height / mean, {}};
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
Picture own_picture(const layout::Page& page, double dpi, int mean) {
    const support::Scratch scratch("own");
    const auto png = draw::to_png(page, support::fonts(), dpi);
    REQUIRE(png.ok());
    const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
        cairo_image_surface_create_from_png(scratch.write("own.png", *png).c_str()), cairo_surface_destroy);
    REQUIRE(cairo_surface_status(surface.get()) == CAIRO_STATUS_SUCCESS);
    REQUIRE(cairo_image_surface_get_format(surface.get()) == CAIRO_FORMAT_RGB24);
    cairo_surface_flush(surface.get());
    // The pages are grey: one of four bytes a pixel tells.
    return averaged(cairo_image_surface_get_data(surface.get()), cairo_image_surface_get_width(surface.get()),
                    cairo_image_surface_get_height(surface.get()), 4, cairo_image_surface_get_stride(surface.get()),
                    mean);
}

/// Another program's picture of the page's PDF, through a plain grey map.
Picture pdf_picture(const layout::Page& page, int dpi, int mean) {
    const support::Scratch scratch("theirs");
    const auto pdf = draw::to_pdf({page}, support::fonts(), {"page", "en", "test", {}});
    REQUIRE(pdf.ok());
    const std::string out = scratch.path("page.pgm");
    const auto ran = support::run("mutool draw -q -c gray -r " + std::to_string(dpi) + " -o " + out + " " +
                                  scratch.write("page.pdf", *pdf));
    REQUIRE_MESSAGE(ran.status == 0, ran.output);
    const std::string bytes = support::read_file(out);
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

}  // namespace

TEST_CASE("each card of the sample deck: cairo's picture against another program's picture of the PDF") {
    // Both averaged to 150 dpi; RMSE below 0.015 and no point off by half. Drawn at 1200 dpi, since the other program
    // puts letters on whole pixels: at 600 dpi that alone (half a pixel, measured) makes 0.023 on a page full of text.
    constexpr int dpi = 1200;
    constexpr int mean = 8;
    std::vector<layout::Page> pages;
    for (const auto& card : support::sample_faces("hand")) {
        pages.push_back(card.faces.front());
        if (card.key == "hold") {
            pages.push_back(card.faces.back());
        }
    }
    for (const auto& page : support::pages_of(support::sample_faces("pocket"))) {
        if (page.name == "hold-3" || page.name == "night-2") {  // turned labels; a curve
            pages.push_back(page);
        }
    }
    REQUIRE(pages.size() == support::sample_deck().cards.size() + 3);
    for (const auto& page : pages) {
        CAPTURE(page.name);
        const Picture ours = own_picture(page, dpi, mean);
        const Picture theirs = pdf_picture(page, dpi, mean);
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
        // And it is a page, not a blank.
        CHECK(std::accumulate(ours.grey.begin(), ours.grey.end(), 0.0) / static_cast<double>(ours.grey.size()) < 0.97);
    }
}

TEST_CASE("the ruler of the printed page: 60 mm between its ticks at 20 and 80 mm, within 0.1 mm") {
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
        return std::any_of(ticks.begin(), ticks.end(),
                           [&](double at) { return near_abs(at - ticks[0], mm, tolerance); });
    };
    CHECK(has(items, 20.0, 0.001));
    CHECK(has(items, 80.0, 0.001));

    // The same on the rendered page: dark runs down a line 2 mm from the left cut.
    constexpr int dpi = 600;
    const Picture picture = pdf_picture(page, dpi, 1);
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
    layout::Page page{60.0, 60.0, "turned", {}};
    layout::PlacedText text;
    text.x = 30.0;
    text.baseline = 50.0;
    text.size_pt = 20.0;
    text.text = "HHHH";
    text.upward = true;
    page.items.emplace_back(text);
    const double width = support::real_measure().width("HHHH", layout::Face::regular, 20.0);
    constexpr int dpi = 254;  // ten pixels a millimetre
    for (const auto& picture : {own_picture(page, dpi, 1), pdf_picture(page, dpi, 1)}) {
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
