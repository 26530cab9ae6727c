// SPDX-License-Identifier: MIT
#include "layout/block/fragment.hpp"
#include "layout/drawing/drawing.hpp"
#include "layout/drawing/embedded.hpp"

#include <map>
#include <stdexcept>
#include <utility>

namespace holdwater::layout {

namespace {

constexpr std::string_view drawing_ending = ".svg";

std::map<std::string, PlacedDrawing, std::less<>> read_all_drawings() {
    std::map<std::string, PlacedDrawing, std::less<>> made;
    for (const Document& document : embedded_documents()) {
        auto read = read_drawing(document.text, std::string("layouts/drawings/").append(document.name));
        if (!read.ok()) {
            throw std::logic_error(problem::to_line(read.problems().front()));
        }
        made.emplace(document.name.substr(0, document.name.size() - drawing_ending.size()), std::move(read).value());
    }
    return made;
}

const std::map<std::string, PlacedDrawing, std::less<>>& all_drawings() {
    static const auto all = read_all_drawings();
    return all;
}

}  // namespace

const PlacedDrawing& drawing_named(std::string_view name) {
    const auto found = all_drawings().find(name);
    if (found == all_drawings().end()) {
        throw std::logic_error("there is no drawing layouts/drawings/" + std::string(name) +
                               std::string(drawing_ending));
    }
    return found->second;
}

std::vector<std::string> drawing_names() {
    std::vector<std::string> names;
    for (const auto& [name, drawing] : all_drawings()) {
        names.push_back(name);
    }
    return names;
}

PlacedDrawing drawing_of_height(const PlacedDrawing& drawing, Millimetres height) {
    return std::get<PlacedDrawing>(scaled(drawing, height / drawing.height));
}

}  // namespace holdwater::layout
