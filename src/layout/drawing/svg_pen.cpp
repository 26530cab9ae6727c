// SPDX-License-Identifier: MIT
#include "layout/drawing/svg_pen.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace holdwater::layout {

namespace {

struct OnlyValues {
    std::string_view key;
    std::array<std::string_view, 3> allowed;
};

/// Looks that a card has in one way only.
constexpr OnlyValues only_values[] = {{"fill-rule", {"nonzero", "nonzero", "nonzero"}},
                                      {"stroke-dasharray", {"none", "none", "none"}},
                                      {"opacity", {"1", "1.0", "100%"}},
                                      {"fill-opacity", {"1", "1.0", "100%"}},
                                      {"stroke-opacity", {"1", "1.0", "100%"}},
                                      {"display", {"inline", "block", "inline"}},
                                      {"visibility", {"visible", "visible", "visible"}}};

/// Nothing for "none" and, with its fault, for a colour.
std::optional<double> tone_of(const SvgElement& element, std::string_view key, const std::string& paint,
                              SvgSource& source) {
    constexpr std::string_view blacks[] = {"black", "#000", "#000000"};
    constexpr std::string_view whites[] = {"white", "#fff", "#ffffff", "#FFF", "#FFFFFF"};
    if (std::find(std::begin(blacks), std::end(blacks), paint) != std::end(blacks)) {
        return 0.0;
    }
    if (std::find(std::begin(whites), std::end(whites), paint) != std::end(whites)) {
        return 1.0;
    }
    if (paint != "none") {
        source.fault(element, key, "layout-unreadable",
                     fmt::format("{} = \"{}\": cards are black on white", key, paint), "black, white or none");
    }
    return std::nullopt;
}

}  // namespace

bool is_of_pen(std::string_view key) {
    constexpr std::string_view keys[] = {"fill",           "stroke",          "stroke-width",
                                         "stroke-linecap", "stroke-linejoin", "transform"};
    return std::find(std::begin(keys), std::end(keys), key) != std::end(keys) ||
           std::any_of(std::begin(only_values), std::end(only_values),
                       [key](const auto& one) { return one.key == key; });
}

bool is_beside_the_point(std::string_view key) {
    constexpr std::string_view keys[] = {
        "id", "class", "version", "xmlns", "stroke-miterlimit", "stroke-dashoffset", "paint-order"};
    return key.find(':') != std::string_view::npos ||
           std::find(std::begin(keys), std::end(keys), key) != std::end(keys);
}

SvgPen pen_of(const SvgElement& element, const SvgPen& around, SvgSource& source) {
    SvgPen pen = around;
    const auto said = [&](std::string_view key) -> const std::string* {
        const auto found = element.said.find(key);
        return found == element.said.end() ? nullptr : &found->second;
    };
    if (const auto* paint = said("fill")) {
        pen.fill = tone_of(element, "fill", *paint, source);
    }
    if (const auto* paint = said("stroke")) {
        const auto tone = tone_of(element, "stroke", *paint, source);
        pen.stroked = tone.has_value();
        if (tone && *tone > 0.0) {
            source.fault(element, "stroke", "layout-unreadable", "a white line", "lines are black");
        }
    }
    if (const auto width = source.number(element, "stroke-width", around.width)) {
        pen.width = *width;
    }
    if (const auto* end = said("stroke-linecap")) {
        pen.round_ends = *end == "round";
    }
    if (const auto* corner = said("stroke-linejoin")) {
        pen.round_corners = *corner == "round";
    }
    for (const auto& [key, allowed] : only_values) {
        const auto* value = said(key);
        if (value != nullptr && std::find(allowed.begin(), allowed.end(), *value) == allowed.end()) {
            source.fault(element, key, "layout-unreadable", fmt::format("{} = \"{}\" does not print", key, *value),
                         fmt::format("{}, or leave it out", allowed.front()));
        }
    }
    if (const auto* list = said("transform")) {
        const auto transform = transform_of(*list);
        if (!transform) {
            source.fault(element, "transform", "layout-unreadable", fmt::format("\"{}\" is no transform", *list),
                         "such as translate(3,4) rotate(90)");
        } else if (!transform->growth()) {
            source.fault(element, "transform", "layout-unreadable", fmt::format("\"{}\" makes lines uneven", *list),
                         "grow both ways alike, without shear");
        } else {
            pen.transform = around.transform.after(*transform);
        }
    }
    return pen;
}

}  // namespace holdwater::layout
