// SPDX-License-Identifier: MIT
#include "cli/picture/chart.hpp"

#include "cli/files/data.hpp"
#include "draw/draw.hpp"
#include "layout/layout.hpp"

namespace holdwater::cli {
namespace {

constexpr double chart_dpi = 160.0;
constexpr const char* format_name = "formats/chart.toml";

}  // namespace

problem::Result<std::string> chart_png(const card::Card& card, const std::string& title) {
    const auto format_text = layout_file(format_name);
    if (!format_text) {
        return format_text.problems();
    }
    const auto format = layout::read_format(*format_text, layout_path(format_name));
    if (!format) {
        return format.problems();
    }
    const auto measure = draw::open_measure(font_files());
    if (!measure) {
        return measure.problems();
    }
    card::Deck deck;
    deck.title = title;
    deck.language = "en";
    deck.stamp = "Holdwater " + version();
    deck.cards.push_back(card);
    deck.cards.front().number = 1;
    const auto faces = layout::lay_out(deck, *format, **measure);
    if (!faces) {
        return faces.problems();
    }
    const std::vector<layout::Page>& pages = faces->front().faces;
    std::size_t drawn = 0;
    for (const layout::Page& page : pages) {
        drawn += page.items.empty() ? 0 : 1;
    }
    if (drawn != 1) {
        return problem::error("chart-two-faces", "the chart \"" + card.name + "\" does not fit one face");
    }
    return draw::to_png(pages.front(), font_files(), chart_dpi);
}

}  // namespace holdwater::cli
