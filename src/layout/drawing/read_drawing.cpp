// SPDX-License-Identifier: MIT
#include "layout/drawing/drawing.hpp"
#include "layout/drawing/svg_element.hpp"
#include "layout/drawing/svg_outline.hpp"
#include "layout/drawing/svg_pen.hpp"
#include "layout/drawing/svg_shape.hpp"
#include "layout/drawing/svg_text.hpp"
#include "layout/style.hpp"
#include "problem/in_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <pugixml.hpp>
#include <utility>

namespace holdwater::layout {

namespace {

using PartKind = PlacedDrawing::Part::Kind;

constexpr Millimetres drawing_rounding = 0.005_mm;
constexpr Points pen_rounding = 1e-6_pt;

/// Where a curve is at a share t of its way.
PlacedDrawing::Point on_curve(PlacedDrawing::Point from, const std::array<PlacedDrawing::Point, 3>& to, double t) {
    const double u = 1.0 - t;
    const auto mix = [&](Millimetres a, Millimetres b, Millimetres c, Millimetres d) {
        return u * u * u * a + 3.0 * u * u * t * b + 3.0 * u * t * t * c + t * t * t * d;
    };
    return {mix(from.x, to[0].x, to[1].x, to[2].x), mix(from.y, to[0].y, to[1].y, to[2].y)};
}

/// True if nothing of a shape, with half its line, lies outside a sheet of this size.
bool stays_inside(const PlacedDrawing::Shape& shape, Millimetres width, Millimetres height) {
    const Millimetres half = 0.5 * em(shape.stroke_pt) - drawing_rounding;
    const auto is_in = [&](PlacedDrawing::Point point) {
        return point.x >= half && point.x <= width - half && point.y >= half && point.y <= height - half;
    };
    PlacedDrawing::Point last;
    for (const auto& part : shape.parts) {
        if (part.kind == PartKind::curve) {
            constexpr int samples = 32;
            for (int i = 1; i <= samples; ++i) {
                if (!is_in(on_curve(last, part.points, static_cast<double>(i) / samples))) {
                    return false;
                }
            }
            last = part.points[2];
        } else if (part.kind != PartKind::close) {
            if (!is_in(part.points[0])) {
                return false;
            }
            last = part.points[0];
        }
    }
    return true;
}

class DrawingReader {
  public:
    DrawingReader(std::string_view text, const std::string& file_name) : source_(text, file_name) {}

    problem::Result<PlacedDrawing> read(const pugi::xml_node& root);

  private:
    void read_size(const SvgElement& root);
    void read_inside(const pugi::xml_node& node, const SvgPen& pen);
    void read_shape(const SvgElement& element, const SvgPen& pen);
    void refuse_unknown(const SvgElement& element, std::span<const std::string_view> places);

    SvgSource source_;
    PlacedDrawing drawing_;
};

void DrawingReader::refuse_unknown(const SvgElement& element, std::span<const std::string_view> places) {
    for (const auto& [key, value] : element.said) {
        const bool place = std::find(places.begin(), places.end(), key) != places.end() && !element.styled(key);
        if (!place && !is_of_pen(key) && !is_beside_the_point(key)) {
            source_.fault(element, key, "layout-key-unknown",
                          fmt::format("{} has {}, which does not print", element.name, key), "leave it out");
        }
    }
}

void DrawingReader::read_size(const SvgElement& root) {
    constexpr std::string_view root_places[] = {"width", "height", "viewBox"};
    refuse_unknown(root, root_places);
    for (const auto& [key, into] : {std::pair{"width", &drawing_.width}, std::pair{"height", &drawing_.height}}) {
        const auto found = root.said.find(key);
        if (found != root.said.end() && !found->second.ends_with("mm")) {
            source_.fault(root, key, "layout-unreadable", fmt::format("{} = \"{}\" is not in mm", key, found->second),
                          fmt::format("{}=\"45mm\", as it is printed", key));
            continue;
        }
        const auto side = source_.number(root, key);
        if (side && (Millimetres{*side} < least_drawing_side || Millimetres{*side} > most_drawing_side)) {
            source_.fault(root, key, "layout-out-of-range", fmt::format("{} = {:g} mm is out of range", key, *side),
                          fmt::format("{:g} to {:g} mm", least_drawing_side.value(), most_drawing_side.value()));
        } else if (side) {
            *into = Millimetres{*side};
        }
    }
    const auto box = root.said.find("viewBox");
    const std::string right = fmt::format("0 0 {:g} {:g}", drawing_.width.value(), drawing_.height.value());
    if (source_.problems.empty() && (box == root.said.end() || box->second != right)) {
        source_.fault(root, "viewBox", "layout-unreadable", "the viewBox does not count in mm",
                      fmt::format("viewBox=\"{}\"", right));
    }
}

void DrawingReader::read_shape(const SvgElement& element, const SvgPen& pen) {
    const auto data = path_data_of(element, source_);
    if (!data) {
        return;
    }
    const char* const place = element.name == "path" ? "d" : "points";
    auto outline = outline_of(*data, pen.transform);
    const bool drawn = outline && std::any_of(outline->begin(), outline->end(),
                                              [](const auto& part) { return part.kind != PartKind::move; });
    if (!drawn) {
        source_.fault(element, place, "layout-unreadable",
                      outline ? "an outline that goes nowhere" : fmt::format("\"{:.40}\" is no outline", *data),
                      "such as d=\"M 1 2 L 3 4\"");
        return;
    }
    PlacedDrawing::Shape shape;
    shape.parts = *std::move(outline);
    shape.filled = pen.fill.has_value();
    shape.fill_grey = pen.fill.value_or(0.0);
    if (pen.stroked) {
        const Millimetres width{pen.width * pen.transform.growth().value_or(1.0)};
        shape.stroke_pt = units::in_points(width);
        if (shape.stroke_pt < hair_pt - pen_rounding || width > least_drawing_side) {
            source_.fault(element, "stroke-width", "layout-out-of-range",
                          fmt::format("a line of {:.2f} pt ({:.3f} mm)", shape.stroke_pt.value(), width.value()),
                          fmt::format("at least {:g} pt ({:.3f} mm), or printers lose it; at most {:g} mm",
                                      hair_pt.value(), em(hair_pt).value(), least_drawing_side.value()));
            return;
        }
        if (!pen.round_ends || !pen.round_corners) {
            source_.fault(element, pen.round_ends ? "stroke-linejoin" : "stroke-linecap", "layout-unreadable",
                          "a line whose ends or corners are not round",
                          "stroke-linecap=\"round\" and stroke-linejoin=\"round\"");
            return;
        }
    } else if (!shape.filled) {
        source_.fault(element, "fill", "layout-unreadable", "a shape with neither fill nor line", "give it one");
        return;
    }
    if (!stays_inside(shape, drawing_.width, drawing_.height)) {
        source_.fault(element, place, "layout-out-of-range", fmt::format("this {} leaves the drawing", element.name),
                      fmt::format("it is {:g} x {:g} mm, lines with their width", drawing_.width.value(),
                                  drawing_.height.value()));
        return;
    }
    drawing_.shapes.push_back(std::move(shape));
}

void DrawingReader::read_inside(const pugi::xml_node& node, const SvgPen& pen) {
    for (const pugi::xml_node& child : node.children()) {
        if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata) {
            source_.fault(static_cast<std::size_t>(child.offset_debug()), "layout-unreadable", "bare text",
                          "words stand in layouts/words");
            continue;
        }
        if (child.type() != pugi::node_element) {
            continue;
        }
        const SvgElement element = source_.element(child);
        const bool empty_list = element.name == "defs" && child.first_child().empty();
        if (element.name == "title" || element.name == "desc" || element.name == "metadata" || empty_list ||
            element.name.find(':') != std::string::npos) {
            continue;  // about the drawing, not of it
        }
        const auto places = places_of_shape(element.name);
        if (!places && element.name != "g") {
            source_.fault(element.at, "layout-unreadable", fmt::format("{} does not print", element.name),
                          "g, path, line, polyline, polygon, circle, ellipse and rect do; turn others into paths");
            continue;
        }
        refuse_unknown(element, places.value_or(std::span<const std::string_view>{}));
        const SvgPen own = pen_of(element, pen, source_);
        if (places) {
            read_shape(element, own);
        } else {
            read_inside(child, own);
        }
    }
}

problem::Result<PlacedDrawing> DrawingReader::read(const pugi::xml_node& root) {
    const SvgElement svg = source_.element(root);
    if (svg.name != "svg") {
        source_.fault(svg.at, "layout-unreadable", fmt::format("this is {}, no drawing", svg.name), "an <svg> element");
        return source_.problems;
    }
    read_size(svg);
    if (source_.problems.empty()) {
        read_inside(root, pen_of(svg, {}, source_));
    }
    if (source_.problems.empty() && drawing_.shapes.empty()) {
        source_.fault(svg.at, "layout-unreadable", "there is nothing in this drawing", "at least one shape");
    }
    if (!source_.problems.empty()) {
        return std::move(source_.problems);
    }
    return std::move(drawing_);
}

}  // namespace

problem::Result<PlacedDrawing> read_drawing(std::string_view svg, const std::string& file_name) {
    if (auto beyond = beyond_drawing_bounds(svg, file_name)) {
        return *std::move(beyond);
    }
    pugi::xml_document document;
    const auto parsed = document.load_buffer(svg.data(), svg.size(), pugi::parse_default, pugi::encoding_utf8);
    const pugi::xml_node root = document.document_element();
    if (!parsed || root.empty()) {
        problem::Problem bad =
            problem::error("layout-unreadable", parsed ? "there is no element in this file" : parsed.description(),
                           "a plain SVG file");
        bad.place = problem::place_in(svg, std::min(svg.size(), static_cast<std::size_t>(parsed.offset)), file_name);
        return bad;
    }
    return DrawingReader(svg, file_name).read(root);
}

}  // namespace holdwater::layout
