// SPDX-License-Identifier: MIT
#include "layout/drawing/svg_element.hpp"

#include "layout/drawing/svg_text.hpp"
#include "problem/bounds.hpp"
#include "problem/in_text.hpp"
#include "units/plain_number.hpp"

#include <fmt/format.h>

#include <pugixml.hpp>
#include <utility>

namespace holdwater::layout {

namespace {

std::string_view without_blanks(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n";
    const auto first = text.find_first_not_of(blanks);
    return first == std::string_view::npos ? std::string_view{}
                                           : text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

}  // namespace

SvgElement SvgSource::element(const pugi::xml_node& node) const {
    SvgElement made;
    made.name = node.name();
    made.at = static_cast<std::size_t>(node.offset_debug());
    for (const pugi::xml_attribute& attribute : node.attributes()) {
        if (std::string_view(attribute.name()) != "style") {
            made.said.emplace(attribute.name(), without_blanks(attribute.value()));
        }
    }
    std::string_view style = node.attribute("style").value();
    while (!style.empty()) {
        const std::string_view one = style.substr(0, style.find(';'));
        style.remove_prefix(std::min(style.size(), one.size() + 1));
        const auto colon = one.find(':');
        const std::string key(without_blanks(one.substr(0, colon)));
        if (!key.empty()) {
            made.said[key] = colon == std::string_view::npos ? "" : without_blanks(one.substr(colon + 1));
            made.from_style[key] = true;
        }
    }
    return made;
}

void SvgSource::fault(std::size_t byte, problem::Code code, std::string what, std::string right) {
    if (problems.size() >= bounds::listed_problems) {
        return;  // who has mended these reads the file again
    }
    problem::Problem made = problem::error(code, std::move(what), std::move(right));
    made.place = problem::place_in(text_, byte, file_name_);
    problems.push_back(std::move(made));
}

void SvgSource::fault(const SvgElement& element, std::string_view key, problem::Code code, std::string what,
                      std::string right) {
    fault(place_of_attribute(text_, element.at, element.styled(key) ? "style" : key), code, std::move(what),
          std::move(right));
}

std::optional<double> SvgSource::number(const SvgElement& element, std::string_view key,
                                        std::optional<double> otherwise) {
    const auto found = element.said.find(key);
    if (found == element.said.end()) {
        if (!otherwise) {
            fault(element, key, "layout-key-missing", fmt::format("{} without {}", element.name, key),
                  fmt::format("{}=\"...\", in mm", key));
        }
        return otherwise;
    }
    std::string_view text = found->second;
    if (text.ends_with("mm") || text.ends_with("px")) {  // a px is a unit of the viewBox, which is 1 mm
        text.remove_suffix(2);
    }
    const auto value = units::plain_number(text);
    if (!value) {
        fault(element, key, "layout-number-expected", fmt::format("{} = \"{}\" is no number", key, found->second),
              "a number of mm");
        return std::nullopt;
    }
    return value;
}

}  // namespace holdwater::layout
