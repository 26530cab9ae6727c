// SPDX-License-Identifier: MIT
// Pages as pictures: the same items as in the PDF, drawn by cairo.
#include "draw/drawn_page.hpp"
#include "draw/font.hpp"
#include "draw/night_view.hpp"

#include <cairo-ft.h>
#include <cairo.h>
#include <fmt/format.h>

#include <cmath>
#include <cstdint>
#include <cstring>
#include <memory>
#include <numbers>
#include <string>

namespace holdwater::draw {

namespace {

using layout::Millimetres;
using layout::Points;

struct ContextCloser {
    void operator()(cairo_t* context) const { cairo_destroy(context); }
};
struct FontFaceCloser {
    void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
};
struct OptionsCloser {
    void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};

/// Draws in points, y down, as the page lists its items.
class PngPainter {
  public:
    PngPainter(cairo_t* context, const OpenFonts& fonts)
        : context_(context),
          regular_(cairo_ft_font_face_create_for_ft_face(fonts.regular.get(), FT_LOAD_NO_HINTING)),
          bold_(cairo_ft_font_face_create_for_ft_face(fonts.bold.get(), FT_LOAD_NO_HINTING)) {
        const std::unique_ptr<cairo_font_options_t, OptionsCloser> options(cairo_font_options_create());
        cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
        cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
        cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
        cairo_set_font_options(context_, options.get());
    }

    void operator()(const layout::PlacedText& text) const {
        cairo_save(context_);
        cairo_set_font_face(context_, text.face == layout::Weight::bold ? bold_.get() : regular_.get());
        cairo_set_font_size(context_, text.size_pt.value());
        tone(text.grey);
        cairo_translate(context_, pt(text.x), pt(text.baseline));
        if (text.upward) {
            cairo_rotate(context_, -std::numbers::pi / 2.0);
        }
        // Outlines, not glyph pictures: those stand on whole pixels only.
        cairo_move_to(context_, 0.0, 0.0);
        cairo_text_path(context_, text.text.c_str());
        cairo_fill(context_);
        cairo_restore(context_);
    }

    void operator()(const layout::PlacedLine& rule) const {
        cairo_move_to(context_, pt(rule.x1), pt(rule.y1));
        cairo_line_to(context_, pt(rule.x2), pt(rule.y2));
        stroke(rule.width_pt, rule.dash_mm, rule.grey);
    }

    void operator()(const layout::PlacedBox& box) const {
        cairo_rectangle(context_, pt(box.x), pt(box.y), pt(box.width), pt(box.height));
        finish(box.filled, box.fill_grey, box.stroke_pt, {});
    }

    void operator()(const layout::PlacedPath& path) const {
        if (path.points.empty()) {
            return;
        }
        cairo_new_path(context_);
        for (const auto& point : path.points) {
            cairo_line_to(context_, pt(point.x), pt(point.y));
        }
        if (path.closed) {
            cairo_close_path(context_);
        }
        finish(path.filled, path.fill_grey, path.stroke_pt, path.dash_mm);
    }

    void operator()(const layout::PlacedDrawing& drawing) const {
        cairo_save(context_);
        cairo_set_line_cap(context_, CAIRO_LINE_CAP_ROUND);
        cairo_set_line_join(context_, CAIRO_LINE_JOIN_ROUND);
        for (const auto& shape : drawing.shapes) {
            cairo_new_path(context_);
            for (const auto& part : shape.parts) {
                trace(part);
            }
            finish(shape.filled, shape.fill_grey, shape.stroke_pt, {});
        }
        cairo_restore(context_);
    }

  private:
    void trace(const layout::PlacedDrawing::Part& part) const {
        using Kind = layout::PlacedDrawing::Part::Kind;
        const auto& [first, second, third] = part.points;
        switch (part.kind) {
            case Kind::move:
                cairo_move_to(context_, pt(first.x), pt(first.y));
                break;
            case Kind::line:
                cairo_line_to(context_, pt(first.x), pt(first.y));
                break;
            case Kind::curve:
                cairo_curve_to(context_, pt(first.x), pt(first.y), pt(second.x), pt(second.y), pt(third.x),
                               pt(third.y));
                break;
            case Kind::close:
                cairo_close_path(context_);
                break;
        }
    }

    static double pt(Millimetres length) { return units::in_points(length).value(); }
    void tone(double grey) const { cairo_set_source_rgb(context_, grey, grey, grey); }

    void stroke(Points width, const std::vector<Millimetres>& lengths, double grey) const {
        tone(grey);
        cairo_set_line_width(context_, width.value());
        std::vector<double> dash;
        for (const Millimetres part : lengths) {
            dash.push_back(pt(part));
        }
        cairo_set_dash(context_, dash.data(), static_cast<int>(dash.size()), 0.0);
        cairo_stroke(context_);
    }

    void finish(bool filled, double fill_grey, Points stroke_pt, const std::vector<Millimetres>& dash_mm) const {
        if (filled) {
            tone(fill_grey);
            cairo_fill_preserve(context_);
        }
        if (stroke_pt > Points{}) {
            stroke(stroke_pt, dash_mm, 0.0);
        }
        cairo_new_path(context_);
    }

    cairo_t* context_;
    std::unique_ptr<cairo_font_face_t, FontFaceCloser> regular_;
    std::unique_ptr<cairo_font_face_t, FontFaceCloser> bold_;
};

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

/// Where a pixel of four bytes lies.
unsigned char* pixel_at(unsigned char* first, cairo_surface_t* surface, int x, int y) {
    const std::ptrdiff_t row = cairo_image_surface_get_stride(surface);
    return first + row * y + std::ptrdiff_t{4} * x;
}

/// Cairo's pixels hold blue in the lowest byte, then green and red.
Pixels read_pixels(cairo_surface_t* surface) {
    cairo_surface_flush(surface);
    Pixels made{cairo_image_surface_get_width(surface), cairo_image_surface_get_height(surface), {}};
    unsigned char* const first = cairo_image_surface_get_data(surface);
    for (int y = 0; y < made.height; ++y) {
        for (int x = 0; x < made.width; ++x) {
            std::uint32_t pixel = 0;
            std::memcpy(&pixel, pixel_at(first, surface, x, y), sizeof pixel);
            const auto part = [pixel](unsigned shift) { return static_cast<int>((pixel >> shift) & 0xFFU); };
            made.colours.push_back({part(16), part(8), part(0)});
        }
    }
    return made;
}

void write_pixels(const Pixels& pixels, cairo_surface_t* surface) {
    unsigned char* first = cairo_image_surface_get_data(surface);
    std::size_t i = 0;
    for (int y = 0; y < pixels.height; ++y) {
        for (int x = 0; x < pixels.width; ++x, ++i) {
            const Colour& colour = pixels.colours[i];
            const std::uint32_t pixel = (static_cast<std::uint32_t>(colour.red) << 16U) |
                                        (static_cast<std::uint32_t>(colour.green) << 8U) |
                                        static_cast<std::uint32_t>(colour.blue);
            std::memcpy(pixel_at(first, surface, x, y), &pixel, sizeof pixel);
        }
    }
    cairo_surface_mark_dirty(surface);
}

/// What the eye resolves at the distance D of a card, in pixels of the picture: D tan(angle). On a page that shows
/// cards smaller than they are it shrinks with them.
double blur_px(const Dim& dim, double page_scale, double dpi) {
    const double angle = dim.resolved_arcmin / 60.0 * std::numbers::pi / 180.0;
    return dim.distance * std::tan(angle) * page_scale / units::inch * dpi;
}

void see(cairo_surface_t* surface, const Light& light, double page_scale, double dpi) {
    if (!light.red_lamp && !light.dim) {
        return;
    }
    Pixels pixels = read_pixels(surface);
    if (light.dim) {
        put_in_dim_light(pixels, blur_px(*light.dim, page_scale, dpi), light.dim->contrast_share);
    }
    if (light.red_lamp) {
        put_under_red_lamp(pixels);
    }
    write_pixels(pixels, surface);
}

problem::Problem failed(cairo_status_t status) {
    return problem::error("png-failed", fmt::format("the picture cannot be drawn: {}", cairo_status_to_string(status)));
}

}  // namespace

problem::Result<Surface> drawn_page(const layout::Page& page, const FontFiles& files, double dpi) {
    auto fonts = open_fonts(files);
    if (!fonts.ok()) {
        return fonts.problems();
    }
    const double scale = dpi / units::points_per_inch;
    // Pixels as the rasterisers of the PDF count them: the page's own top edge is row 0, the last row may be part
    // empty.
    const auto pixels = [&](Millimetres length) {
        return static_cast<int>(std::ceil(units::in_points(length).value() * scale - 1e-6));
    };
    Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, pixels(page.width), pixels(page.height)));
    if (const auto status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS) {
        return failed(status);
    }
    const std::unique_ptr<cairo_t, ContextCloser> context(cairo_create(surface.get()));
    cairo_set_source_rgb(context.get(), 1.0, 1.0, 1.0);
    cairo_paint(context.get());
    cairo_scale(context.get(), scale, scale);
    {
        const PngPainter painter(context.get(), **fonts);
        for (const auto& item : page.items) {
            std::visit(painter, item);
        }
    }
    if (const auto status = cairo_status(context.get()); status != CAIRO_STATUS_SUCCESS) {
        return failed(status);
    }
    return surface;
}

problem::Result<std::string> to_png(const layout::Page& page, const FontFiles& files, double dpi, const Light& light) {
    const auto surface = drawn_page(page, files, dpi);
    if (!surface.ok()) {
        return surface.problems();
    }
    see(surface->get(), light, page.scale, dpi);
    std::string bytes;
    if (const auto status = cairo_surface_write_to_png_stream(surface->get(), append, &bytes);
        status != CAIRO_STATUS_SUCCESS) {
        return failed(status);
    }
    return bytes;
}

}  // namespace holdwater::draw
