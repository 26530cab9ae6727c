// SPDX-License-Identifier: MIT
#include "cli/files/formats_that_do.hpp"

#include "cli/files/data.hpp"
#include "draw/draw.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>

namespace holdwater::cli {
namespace {

std::optional<layout::Format> format_named(std::string_view name) {
    const std::string path = fmt::format("formats/{}.toml", name);
    const auto text = layout_file(path);
    if (!text) {
        return std::nullopt;
    }
    auto format = layout::read_format(*text, layout_path(path));
    return format ? std::optional(*format) : std::nullopt;
}

/// "--format hand, pocket or wallet", of those for which `does` holds; empty: for none.
std::string formats_where(const std::function<bool(const layout::Format&)>& does) {
    std::vector<std::string_view> names;
    for (const std::string_view name : offered_formats) {
        const auto format = format_named(name);
        if (format && does(*format)) {
            names.push_back(name);
        }
    }
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += fmt::format("{}{}", i == 0 ? "--format " : i + 1 == names.size() ? " or " : ", ", names[i]);
    }
    return text;
}

/// What is wrong with one blank card of the format on this paper.
problem::Problems on_paper(const layout::Format& format, const layout::Sheet& sheet, layout::Sides sides,
                           const layout::Measure& measure) {
    layout::Page blank;
    blank.width = format.width;
    blank.height = format.height;
    layout::CardFaces card;
    card.key = "blank";
    card.faces = {blank, blank};
    card.harmless = true;
    return layout::impose({card}, format, sheet, sides, 1, "", measure).problems();
}

}  // namespace

problem::Problems paper_faults(const PrintingOptions& options) {
    const std::string path = "sheets/" + options.sheet + ".toml";
    const auto text = layout_file(path);
    const auto format = format_named(options.format);
    const auto measure = draw::open_measure(font_files());
    if (!text || !format || !measure) {
        return {};  // said where the deck is laid out
    }
    const auto sheet = layout::read_sheet(*text, layout_path(path));
    if (!sheet) {
        return {};
    }
    const layout::Sides sides = sides_from(options.sides);
    const problem::Problems found = on_paper(*format, *sheet, sides, **measure);
    if (!problem::has_error(found)) {
        return {};
    }
    const std::string others = formats_where(
        [&](const layout::Format& other) { return !problem::has_error(on_paper(other, *sheet, sides, **measure)); });
    return {problem::error("nothing-fits", found.front().message, others.empty() ? "another --sides" : others)};
}

problem::Problems with_formats_that_do(const problem::Problems& found, const PrintingOptions& options,
                                       const std::function<bool(const layout::Format&)>& lays_out) {
    const auto fault = std::find_if(found.begin(), found.end(), [](const problem::Problem& one) {
        return one.severity == problem::Severity::error;
    });
    const std::string others =
        formats_where([&](const layout::Format& other) { return other.name != options.format && lays_out(other); });
    if (fault == found.end() || others.empty()) {
        return found;
    }
    return {problem::error("nothing-fits", fault->message, "it prints with " + others)};
}

}  // namespace holdwater::cli
