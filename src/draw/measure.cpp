// SPDX-License-Identifier: MIT
#include <utility>

#include "draw/font.hpp"

namespace holdwater::draw {

namespace {

constexpr double mm_per_pt = 25.4 / 72.0;
constexpr long thousand = 1000;

class FontMeasure : public layout::Measure {
  public:
    explicit FontMeasure(std::shared_ptr<OpenFonts> fonts) : fonts_(std::move(fonts)) {}

    double width(std::string_view text, layout::Face which, double size_pt) const override {
        FT_Face face = fonts_->face(which);
        long total = 0;
        for (const char32_t point : code_points(text)) {
            if (FT_Load_Glyph(face, FT_Get_Char_Index(face, point), FT_LOAD_NO_SCALE) == 0) {
                // The PDF knows whole thousandths of an em only, rounded down.
                total += face->glyph->advance.x * thousand / face->units_per_EM;
            }
        }
        return static_cast<double>(total) / static_cast<double>(thousand) * size_pt * mm_per_pt;
    }

    bool covers(std::string_view text, layout::Face which) const override {
        for (const char32_t point : code_points(text)) {
            if (FT_Get_Char_Index(fonts_->face(which), point) == 0) {
                return false;
            }
        }
        return true;
    }

  private:
    std::shared_ptr<OpenFonts> fonts_;
};

}  // namespace

problem::Result<std::unique_ptr<layout::Measure>> open_measure(const FontFiles& files) {
    auto fonts = open_fonts(files);
    if (!fonts.ok()) {
        return fonts.problems();
    }
    return std::unique_ptr<layout::Measure>(std::make_unique<FontMeasure>(std::move(fonts).value()));
}

}  // namespace holdwater::draw
