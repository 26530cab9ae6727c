// SPDX-License-Identifier: MIT
#include "layout/drawing/svg_shape.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::layout {

namespace {

constexpr std::string_view path_places[] = {"d"};
constexpr std::string_view line_places[] = {"x1", "y1", "x2", "y2"};
constexpr std::string_view points_places[] = {"points"};
constexpr std::string_view circle_places[] = {"cx", "cy", "r"};
constexpr std::string_view ellipse_places[] = {"cx", "cy", "rx", "ry"};
constexpr std::string_view rect_places[] = {"x", "y", "width", "height", "rx", "ry"};

struct SvgShape {
    std::string_view name;
    std::span<const std::string_view> places;
};
constexpr SvgShape svg_shapes[] = {{"path", path_places},      {"line", line_places},     {"polyline", points_places},
                                   {"polygon", points_places}, {"circle", circle_places}, {"ellipse", ellipse_places},
                                   {"rect", rect_places}};

/// A length of a shape that must be more than nothing.
std::optional<double> extent_of(const SvgElement& element, std::string_view key, SvgSource& source) {
    const auto value = source.number(element, key);
    if (value && !(*value > 0.0)) {
        source.fault(element, key, "layout-out-of-range",
                     fmt::format("{} = {:g}: there is nothing to see", key, *value), "more than 0");
        return std::nullopt;
    }
    return value;
}

std::optional<std::string> ellipse_path(const SvgElement& element, std::string_view across, std::string_view down,
                                        SvgSource& source) {
    const auto x = source.number(element, "cx", 0.0);
    const auto y = source.number(element, "cy", 0.0);
    const auto rx = extent_of(element, across, source);
    const auto ry = across == down ? rx : extent_of(element, down, source);
    if (!x || !y || !rx || !ry) {
        return std::nullopt;
    }
    return fmt::format("M{} {}a{} {} 0 0 1 {} 0a{} {} 0 0 1 {} 0z", *x - *rx, *y, *rx, *ry, 2.0 * *rx, *rx, *ry,
                       -2.0 * *rx);
}

std::optional<std::string> rect_path(const SvgElement& element, SvgSource& source) {
    const auto x = source.number(element, "x", 0.0);
    const auto y = source.number(element, "y", 0.0);
    const auto width = extent_of(element, "width", source);
    const auto height = extent_of(element, "height", source);
    // A corner said one way is round, both ways alike.
    auto rx = source.number(element, "rx", -1.0);
    auto ry = source.number(element, "ry", -1.0);
    if (!x || !y || !width || !height || !rx || !ry) {
        return std::nullopt;
    }
    rx = *rx < 0.0 ? std::max(*ry, 0.0) : *rx;
    ry = *ry < 0.0 ? *rx : *ry;
    const double across = std::min(*rx, 0.5 * *width);
    const double down = std::min(*ry, 0.5 * *height);
    if (across <= 0.0 || down <= 0.0) {
        return fmt::format("M{} {}h{}v{}h{}z", *x, *y, *width, *height, -*width);
    }
    const std::string corner = fmt::format("a{} {} 0 0 1 ", across, down);
    return fmt::format("M{} {}h{}{}{} {}v{}{}{} {}h{}{}{} {}v{}{}{} {}z", *x + across, *y, *width - 2.0 * across,
                       corner, across, down, *height - 2.0 * down, corner, -across, down, 2.0 * across - *width, corner,
                       -across, -down, 2.0 * down - *height, corner, across, -down);
}

std::optional<std::string> text_of_shape(const SvgElement& element, std::string_view key, SvgSource& source) {
    const auto found = element.said.find(key);
    if (found == element.said.end() || found->second.empty()) {
        source.fault(element, key, "layout-key-missing", fmt::format("{} without {}", element.name, key),
                     fmt::format("{}=\"...\"", key));
        return std::nullopt;
    }
    return found->second;
}

}  // namespace

std::optional<std::span<const std::string_view>> places_of_shape(std::string_view name) {
    const auto* found = std::find_if(std::begin(svg_shapes), std::end(svg_shapes),
                                     [name](const SvgShape& one) { return one.name == name; });
    return found == std::end(svg_shapes) ? std::nullopt : std::optional(found->places);
}

std::optional<std::string> path_data_of(const SvgElement& element, SvgSource& source) {
    if (element.name == "path") {
        return text_of_shape(element, "d", source);
    }
    if (element.name == "circle") {
        return ellipse_path(element, "r", "r", source);
    }
    if (element.name == "ellipse") {
        return ellipse_path(element, "rx", "ry", source);
    }
    if (element.name == "rect") {
        return rect_path(element, source);
    }
    if (element.name == "line") {
        const auto x1 = source.number(element, "x1");
        const auto y1 = source.number(element, "y1");
        const auto x2 = source.number(element, "x2");
        const auto y2 = source.number(element, "y2");
        return x1 && y1 && x2 && y2 ? std::optional(fmt::format("M{} {}L{} {}", *x1, *y1, *x2, *y2)) : std::nullopt;
    }
    auto points = text_of_shape(element, "points", source);
    if (points && points->find_first_not_of("0123456789+-.,eE \t\r\n") != std::string::npos) {
        source.fault(element, "points", "layout-unreadable", "points that are no list of numbers",
                     "such as points=\"1,2 3,4\"");
        return std::nullopt;
    }
    return points ? std::optional("M" + *points + (element.name == "polygon" ? "z" : "")) : std::nullopt;
}

}  // namespace holdwater::layout
