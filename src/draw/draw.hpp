// SPDX-License-Identifier: MIT
// Pages -> PDF and PNG bytes; the only folder that knows libharu, cairo and FreeType.
#pragma once

#include "layout/measure.hpp"
#include "layout/page.hpp"
#include "problem/problem.hpp"

#include <memory>
#include <string>
#include <vector>

namespace holdwater::draw {

/// Where the two faces lie; the TrueType files made in the build.
struct FontFiles {
    std::string regular;
    std::string bold;
};

/// Exact advances from the font files. Error: font-unreadable.
problem::Result<std::unique_ptr<layout::Measure>> open_measure(const FontFiles& fonts);

struct PdfInfo {
    std::string title;
    std::string language;                  // "en"
    std::string creator;                   // "Holdwater 0.1.0"
    std::vector<std::string> page_labels;  // may be empty
};

/// A whole PDF in memory: DeviceGray, compressed, embedded subset fonts, no dates, same input same bytes. Error:
/// pdf-failed with libharu's code.
problem::Result<std::string> to_pdf(const std::vector<layout::Page>& pages, const FontFiles& fonts,
                                    const PdfInfo& info);

/// A PNG in memory. Error: png-failed.
problem::Result<std::string> to_png(const layout::Page& page, const FontFiles& fonts, double dpi);

}  // namespace holdwater::draw
