// SPDX-License-Identifier: MIT
// Pages -> PDF and PNG bytes; the only folder that knows libharu, cairo and FreeType.
#pragma once

#include "layout/page.hpp"
#include "layout/text/measure.hpp"
#include "problem/problem.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdwater::draw {

/// Where the two faces lie; the TrueType files made in the build.
struct FontFiles {
    std::string regular;
    std::string bold;
};

/// The faces of the typeface in a folder.
FontFiles faces_in(const std::string& folder);

/// Exact advances from the font files. Error: font-unreadable.
problem::Result<std::unique_ptr<layout::Measure>> open_measure(const FontFiles& fonts);

struct PdfInfo {
    std::string title;
    std::string language;                  // "en"
    std::string creator;                   // "Holdwater 0.1.0"
    std::vector<std::string> page_labels;  // may be empty
};

/// A whole PDF in memory: tagged, PDF/A-1b, DeviceGray, compressed, embedded subset fonts, no dates, same input same
/// bytes. Warning: plain-pdf, where tags and PDF/A could not be had. Errors: glyph-missing, font-unreadable, and
/// pdf-failed with libharu's code.
problem::Result<std::string> to_pdf(const std::vector<layout::Page>& pages, const FontFiles& fonts,
                                    const PdfInfo& info);

/// Eyes in weak light: how much is resolved at which distance, and how much of the contrast is left.
struct Dim {
    double resolved_arcmin = 0.0;
    units::Millimetres distance;
    double contrast_share = 1.0;
};

/// By what light a picture shows a page; day if nothing is set.
struct Light {
    bool red_lamp = false;  // only red is seen
    std::optional<Dim> dim;
};

/// A PNG in memory. Error: png-failed.
problem::Result<std::string> to_png(const layout::Page& page, const FontFiles& fonts, double dpi,
                                    const Light& light = {});

}  // namespace holdwater::draw
