// SPDX-License-Identifier: MIT
#include "cli/files/sheets_file.hpp"

#include "cli/files/data.hpp"
#include "draw/draw.hpp"

namespace holdwater::cli {

problem::Result<std::string> sheets_pdf(const card::Sheets& sheets, const layout::Sheet& paper,
                                        const layout::Measure& measure, const layout::Phrases& phrases) {
    const std::string file = "formats/plain.toml";
    const auto text = layout_file(file);
    if (!text) {
        return text.problems();
    }
    const auto type = layout::read_format(*text, layout_path(file));
    if (!type) {
        return type.problems();
    }
    const auto pages = layout::lay_out_sheets(sheets, *type, paper, measure, phrases);
    if (!pages) {
        return pages.problems();
    }
    draw::PdfInfo info;
    info.title = sheets.title + " · " + sheets.name;
    info.language = sheets.language;
    info.creator = "Holdwater " + version();
    for (const layout::Page& page : *pages) {
        info.page_labels.push_back(page.name);
    }
    return draw::to_pdf(*pages, font_files(), info);
}

}  // namespace holdwater::cli
