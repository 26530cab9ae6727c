// SPDX-License-Identifier: MIT
#include "draw/font.hpp"
#include "typeface.hpp"

#include <array>
#include <unordered_map>
#include <utility>

namespace holdwater::draw {

namespace {

constexpr long thousand = 1000;

/// Advances in thousandths of an em, rounded down: the PDF knows no finer ones, and both back ends draw with these.
using Advances = std::unordered_map<char32_t, long>;

Advances read_advances(FT_Face face) {
    Advances made;
    FT_UInt glyph = 0;
    for (FT_ULong point = FT_Get_First_Char(face, &glyph); glyph != 0; point = FT_Get_Next_Char(face, point, &glyph)) {
        if (FT_Load_Glyph(face, glyph, FT_LOAD_NO_SCALE) == 0) {
            made.emplace(static_cast<char32_t>(point), face->glyph->advance.x * thousand / face->units_per_EM);
        }
    }
    return made;
}

class FontMeasure : public layout::Measure {
  public:
    explicit FontMeasure(const OpenFonts& fonts)
        : advances_{read_advances(fonts.regular.get()), read_advances(fonts.bold.get())} {}

    layout::Millimetres width(std::string_view text, layout::Weight which, layout::Points size) const override {
        const auto& known = advances_.at(which == layout::Weight::bold ? 1 : 0);
        long total = 0;
        for (const char32_t point : code_points(text)) {
            if (const auto found = known.find(point); found != known.end()) {
                total += found->second;
            }
        }
        return units::in_millimetres(static_cast<double>(total) / static_cast<double>(thousand) * size);
    }

    bool covers(std::string_view text, layout::Weight which) const override {
        const auto& known = advances_.at(which == layout::Weight::bold ? 1 : 0);
        for (const char32_t point : code_points(text)) {
            if (point == no_code_point || !known.contains(point)) {
                return false;
            }
        }
        return true;
    }

  private:
    std::array<Advances, 2> advances_;
};

}  // namespace

FontFiles faces_in(const std::string& folder) {
    return {folder + "/" + typeface::regular + ".ttf", folder + "/" + typeface::bold + ".ttf"};
}

problem::Result<std::unique_ptr<layout::Measure>> open_measure(const FontFiles& files) {
    auto fonts = open_fonts(files);
    if (!fonts.ok()) {
        return fonts.problems();
    }
    return std::unique_ptr<layout::Measure>(std::make_unique<FontMeasure>(**fonts));
}

}  // namespace holdwater::draw
