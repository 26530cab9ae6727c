// SPDX-License-Identifier: MIT
#include "layout/drawing/svg_text.hpp"

#include "problem/bounds.hpp"
#include "problem/in_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::layout {

namespace {

constexpr std::string_view svg_blanks = " \t\r\n";

/// The end of an element's tag that begins at `at`: the byte of its ">", past all in quotes.
std::size_t end_of_tag(std::string_view text, std::size_t at) {
    char quote = '\0';
    for (; at < text.size(); ++at) {
        const char c = text[at];
        if (quote != '\0') {
            quote = c == quote ? '\0' : quote;
        } else if (c == '"' || c == '\'') {
            quote = c;
        } else if (c == '>') {
            break;
        }
    }
    return std::min(at, text.size());
}

std::size_t past(std::string_view text, std::size_t at, std::string_view end) {
    const std::size_t found = text.find(end, at);
    return found == std::string_view::npos ? text.size() : found + end.size();
}

}  // namespace

std::size_t place_of_attribute(std::string_view text, std::size_t element, std::string_view attribute) {
    const std::size_t end = end_of_tag(text, element);
    char quote = '\0';
    for (std::size_t at = element; at < end; ++at) {
        if (quote != '\0') {
            quote = text[at] == quote ? '\0' : quote;
        } else if (text[at] == '"' || text[at] == '\'') {
            quote = text[at];
        } else if (svg_blanks.find(text[at]) != std::string_view::npos && text.substr(at + 1).starts_with(attribute)) {
            const std::size_t next = text.find_first_not_of(svg_blanks, at + 1 + attribute.size());
            if (next < end && text[next] == '=') {
                return at + 1;
            }
        }
    }
    return element;
}

std::optional<problem::Problem> beyond_drawing_bounds(std::string_view text, const std::string& file_name) {
    const auto refused = [&](std::size_t byte, std::string what, std::string right) {
        problem::Problem made = problem::error("layout-unreadable", std::move(what), std::move(right));
        made.place = problem::place_in(text, byte, file_name);
        return made;
    };
    if (text.size() > bounds::drawing_bytes) {
        problem::Problem big = problem::error(
            "layout-out-of-range", fmt::format("{} bytes are too many for a drawing", text.size()),
            fmt::format("at most {}; save it as plain SVG, without pictures in it", bounds::drawing_bytes));
        big.place = problem::place_in(text, bounds::drawing_bytes, file_name);
        return big;
    }
    const auto odd = std::find_if(text.begin(), text.end(), [](char c) {
        return static_cast<unsigned char>(c) < 0x20U && svg_blanks.find(c) == std::string_view::npos;
    });
    if (odd != text.end()) {
        return refused(static_cast<std::size_t>(odd - text.begin()), "a byte that no text has",
                       "an SVG file is text in UTF-8");
    }
    std::size_t open = 0;
    for (std::size_t at = text.find('<'); at != std::string_view::npos; at = text.find('<', at)) {
        const std::string_view rest = text.substr(at);
        if (rest.starts_with("<!--")) {
            at = past(text, at + 4, "-->");
        } else if (rest.starts_with("<?")) {
            at = past(text, at, "?>");
        } else if (rest.starts_with("<!")) {
            return refused(at, "a document type or a stretch of raw text", "save it as plain SVG, without it");
        } else if (rest.starts_with("</")) {
            open -= open > 0 ? 1 : 0;
            ++at;
        } else {
            const std::size_t end = end_of_tag(text, at);
            const bool empty = end > at && text[end - 1] == '/';
            open += empty ? 0 : 1;
            if (open > bounds::drawing_depth) {
                return refused(at, fmt::format("more than {} elements are open here", bounds::drawing_depth),
                               "take the groups apart");
            }
            at = end;
        }
    }
    return std::nullopt;
}

}  // namespace holdwater::layout
