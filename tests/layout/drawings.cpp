// SPDX-License-Identifier: MIT
// The line drawings: every one that is shipped is sound and said in words, and whatever would print otherwise than it
// is seen is refused with its place.
#include "layout/block/blocks.hpp"
#include "layout/drawing/drawing.hpp"
#include "layout/reading.hpp"
#include "layout/style.hpp"
#include "problem/bounds.hpp"
#include "support/faces.hpp"
#include "support/fake_measure.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <stdexcept>

using namespace holdwater;
using namespace holdwater::layout;
namespace fs = std::filesystem;

namespace {

using Kind = PlacedDrawing::Part::Kind;

const std::string good_drawing =
    "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"40mm\" height=\"20mm\" viewBox=\"0 0 40 20\">\n"
    "<g fill=\"none\" stroke=\"black\" stroke-width=\"0.5\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n"
    "<path d=\"M1 1 L5 5\"/>\n"
    "</g>\n"
    "</svg>\n";

std::string with(const std::string& from, const std::string& to) {
    std::string text = good_drawing;
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

/// The good drawing with another line in place of its path.
std::string with_shape(const std::string& shape) {
    return with("<path d=\"M1 1 L5 5\"/>", shape);
}

std::string first_line(const problem::Result<PlacedDrawing>& read) {
    REQUIRE_FALSE(read.ok());
    REQUIRE_FALSE(read.problems().empty());
    return problem::to_line(read.problems()[0]);
}

std::vector<fs::path> shipped() {
    std::vector<fs::path> files;
    for (const auto& entry : fs::directory_iterator(fs::path(HOLDWATER_SOURCE_DIR) / "layouts/drawings")) {
        files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

PlacedDrawing::Point last_of(const PlacedDrawing::Part& part) {
    return part.points[part.kind == Kind::curve ? 2 : 0];
}

/// A point of a curve, by halving between its controls again and again.
PlacedDrawing::Point bezier(PlacedDrawing::Point from, std::array<PlacedDrawing::Point, 3> to, double t) {
    std::array<PlacedDrawing::Point, 4> at{from, to[0], to[1], to[2]};
    for (std::size_t left = 3; left > 0; --left) {
        for (std::size_t i = 0; i < left; ++i) {
            at[i] = {at[i].x + t * (at[i + 1].x - at[i].x), at[i].y + t * (at[i + 1].y - at[i].y)};
        }
    }
    return at[0];
}

}  // namespace

TEST_CASE("every shipped drawing is compiled in, black on white, inside its box, with lines that print") {
    const auto files = shipped();
    REQUIRE(files.size() >= 9);
    const auto names = drawing_names();
    REQUIRE(names.size() == files.size());
    for (const fs::path& file : files) {
        CAPTURE(file.string());
        CHECK(file.extension() == ".svg");
        const auto read = read_drawing(support::file_text(file.string()), file.filename().string());
        for (const auto& one : read.problems()) {
            CAPTURE(problem::to_line(one));
            CHECK(false);
        }
        REQUIRE(read.ok());
        const PlacedDrawing& drawing = *read;
        CHECK(std::count(names.begin(), names.end(), file.stem().string()) == 1);
        CHECK(drawing_named(file.stem().string()).shapes.size() == drawing.shapes.size());
        // As wide as a card has room for, and few enough lines to be read in weak light.
        CHECK(drawing.width >= 30.0_mm);
        CHECK(drawing.width <= 60.0_mm);
        CHECK(drawing.shapes.size() <= 30);
        Points widest;
        for (const auto& shape : drawing.shapes) {
            CHECK((shape.filled || shape.stroke_pt > 0.0_pt));
            CHECK((shape.stroke_pt == 0.0_pt || shape.stroke_pt >= hair_pt));
            CHECK((shape.fill_grey == 0.0 || shape.fill_grey == 1.0));
            widest = std::max(widest, shape.stroke_pt);
            for (const auto& part : shape.parts) {
                const auto at = last_of(part);
                if (part.kind != Kind::close) {
                    CHECK((at.x >= 0.0_mm && at.x <= drawing.width && at.y >= 0.0_mm && at.y <= drawing.height));
                }
            }
        }
        CHECK(widest >= 2.0_pt);
        // Smaller than any card will want it, no line is lost.
        const PlacedDrawing small = drawing_of_height(drawing, 0.6 * drawing.height);
        for (const auto& shape : small.shapes) {
            CHECK((shape.stroke_pt == 0.0_pt || shape.stroke_pt >= hair_pt));
        }
    }
}

TEST_CASE("shapes, transforms and styles are read as a drawing program means them") {
    const auto bounds = [](const std::string& shape) {
        const auto read = read_drawing(with_shape(shape), "x.svg");
        for (const auto& one : read.problems()) {
            CAPTURE(problem::to_line(one));
            CHECK(false);
        }
        REQUIRE(read.ok());
        constexpr double far = 1e9;
        double left = far, top = far, right = -far, bottom = -far;
        PlacedDrawing::Point last;
        for (const auto& part : read->shapes.at(0).parts) {
            if (part.kind == Kind::close) {
                continue;
            }
            constexpr int samples = 120;
            for (int i = part.kind == Kind::curve ? 1 : samples; i <= samples; ++i) {
                const auto at =
                    part.kind == Kind::curve ? bezier(last, part.points, i / double(samples)) : last_of(part);
                left = std::min(left, at.x.value());
                right = std::max(right, at.x.value());
                top = std::min(top, at.y.value());
                bottom = std::max(bottom, at.y.value());
            }
            last = last_of(part);
        }
        return fmt::format("{:.2f} {:.2f} {:.2f} {:.2f}", left, top, right, bottom);
    };
    CHECK(bounds("<path d=\"m2 3 h4 v5 h-4 z\"/>") == "2.00 3.00 6.00 8.00");
    CHECK(bounds("<path d=\"M2 3 q2 4 4 0 t4 0 s1 1 2 2\"/>") == "2.00 1.00 12.00 5.00");
    CHECK(bounds("<path d=\"M2 3 a2 2 0 0 1 4 0\"/>") == "2.00 1.00 6.00 3.00");
    CHECK(bounds("<line x1=\"1\" y1=\"2\" x2=\"3\" y2=\"5\"/>") == "1.00 2.00 3.00 5.00");
    CHECK(bounds("<polyline points=\"1,2 3,4 5,1\"/>") == "1.00 1.00 5.00 4.00");
    CHECK(bounds("<polygon points=\"1,2 3,4 5,1\"/>") == "1.00 1.00 5.00 4.00");
    CHECK(bounds("<circle cx=\"10\" cy=\"9\" r=\"2\"/>") == "8.00 7.00 12.00 11.00");
    CHECK(bounds("<ellipse cx=\"10\" cy=\"9\" rx=\"3\" ry=\"2\"/>") == "7.00 7.00 13.00 11.00");
    CHECK(bounds("<rect x=\"4\" y=\"5\" width=\"6\" height=\"3\"/>") == "4.00 5.00 10.00 8.00");
    CHECK(bounds("<rect x=\"4\" y=\"5\" width=\"6\" height=\"3\" rx=\"1\"/>") == "4.00 5.00 10.00 8.00");
    CHECK(bounds("<g transform=\"translate(10,4)\"><path transform=\"rotate(90)\" d=\"M0 0 L2 0\"/></g>") ==
          "10.00 4.00 10.00 6.00");
    CHECK(bounds("<g transform=\"matrix(2 0 0 2 1 1)\"><path d=\"M1 1 L2 3\"/></g>") == "3.00 3.00 5.00 7.00");

    // A line grows with its transform, and a style counts before an attribute.
    const auto grown =
        read_drawing(with_shape("<path transform=\"scale(2)\" style=\"fill:#ffffff;stroke:#000000;"
                                "stroke-width:0.5px;stroke-opacity:1\" fill=\"black\" d=\"M1 1 L5 5\"/>"),
                     "x.svg");
    REQUIRE(grown.ok());
    CHECK(grown->shapes[0].stroke_pt.value() > 2.83);
    CHECK(grown->shapes[0].stroke_pt.value() < 2.84);
    CHECK(grown->shapes[0].fill_grey == 1.0);

    // What a drawing program writes of itself is passed over.
    CHECK(read_drawing("<?xml version=\"1.0\"?>\n<!-- made by hand -->\n" +
                           with_shape("<defs id=\"d\"/><title>t</title><desc>d</desc><metadata><a><b/></a></metadata>"
                                      "<sodipodi:namedview xmlns:sodipodi=\"s\" id=\"v\"/>"
                                      "<path id=\"p\" inkscape:label=\"l\" xmlns:inkscape=\"i\" d=\"M1 1 L5 5\"/>"),
                       "x.svg")
              .ok());
}

TEST_CASE("a bad drawing is refused with line and column, what is wrong and what would be right") {
    CHECK(read_drawing(good_drawing, "x.svg").ok());
    struct Bad {
        std::string svg;
        std::string place;
        std::string code;
        std::string says;
    };
    const std::string deep = [] {
        std::string made;
        for (std::size_t i = 0; i < bounds::drawing_depth; ++i) {
            made += "<g>";
        }
        return made;
    }();
    const Bad table[] = {
        {"", "x.svg:1:1", "layout-unreadable", "a plain SVG file"},
        {"no drawing", "x.svg:1:", "layout-unreadable", "a plain SVG file"},
        {good_drawing.substr(0, 200), "x.svg:", "layout-unreadable", ""},
        {with("</g>\n", ""), "x.svg:4:", "layout-unreadable", "mismatch"},
        {with("<svg", "<html"), "x.svg:5:", "layout-unreadable", ""},
        {"<html/>", "x.svg:1:2", "layout-unreadable", "this is html"},
        {"<!DOCTYPE svg [<!ENTITY a \"b\">]>\n" + good_drawing, "x.svg:1:1", "layout-unreadable", "document type"},
        {with_shape(std::string(1, '\0') + "<path d=\"M1 1 L5 5\"/>"), "x.svg:3:1", "layout-unreadable", "byte"},
        {with_shape(deep), "x.svg:3:31", "layout-unreadable", "more than 12 elements"},
        {with_shape("<!--" + std::string(bounds::drawing_bytes, 'x') + "-->"), "x.svg:3:", "layout-out-of-range",
         "too many"},
        {with("width=\"40mm\"", "width=\"40\""), "x.svg:1:41", "layout-unreadable", "not in mm"},
        {with("width=\"40mm\"", "width=\"4000mm\""), "x.svg:1:41", "layout-out-of-range", "5 to 200 mm"},
        {with("height=\"20mm\" ", ""), "x.svg:1:2", "layout-key-missing", "height"},
        {with("width=\"40mm\"", "width=\"widemm\""), "x.svg:1:41", "layout-number-expected", "no number"},
        {with("0 0 40 20", "0 0 400 200"), "x.svg:1:68", "layout-unreadable", "viewBox=\"0 0 40 20\""},
        {with(" viewBox=\"0 0 40 20\"", ""), "x.svg:1:2", "layout-unreadable", "viewBox"},
        {with_shape(""), "x.svg:1:2", "layout-unreadable", "nothing in this drawing"},
        {with_shape("<path/>"), "x.svg:3:2", "layout-key-missing", "path without d"},
        {with_shape("<path d=\"M1 1 L5 x\"/>"), "x.svg:3:7", "layout-unreadable", "no outline"},
        {with_shape("<path d=\"L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "no outline"},
        {with_shape("<path d=\"M1 1\"/>"), "x.svg:3:7", "layout-unreadable", "goes nowhere"},
        {with_shape("<path d=\"M1 1 L50 5\"/>"), "x.svg:3:7", "layout-out-of-range", "leaves the drawing"},
        {with_shape("<path d=\"M0.1 1 L5 5\"/>"), "x.svg:3:7", "layout-out-of-range", "lines with their width"},
        {with_shape("<path d=\"M1 1 C1 40 5 40 5 1\"/>"), "x.svg:3:7", "layout-out-of-range", "leaves the drawing"},
        {with_shape("<path stroke=\"red\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "black on white"},
        {with_shape("<path stroke=\"#888\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "black on white"},
        {with_shape("<path fill=\"url(#g)\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "black on white"},
        {with_shape("<path stroke=\"white\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "lines are black"},
        {with_shape("<path stroke=\"none\" d=\"M1 1 L5 5\"/>"), "x.svg:3:2", "layout-unreadable", "neither fill nor"},
        {with_shape("<path d=\"M1 1 L5 5\" stroke-width=\"0.1\"/>"), "x.svg:3:21", "layout-out-of-range", "0.28 pt"},
        {with_shape("<path d=\"M1 1 L5 5\" style=\"stroke-width:0.1\"/>"), "x.svg:3:21", "layout-out-of-range",
         "at least 0.4 pt"},
        {with_shape("<path d=\"M1 1 L5 5\" stroke-width=\"thick\"/>"), "x.svg:3:21", "layout-number-expected", "thick"},
        {with_shape("<g transform=\"scale(0.2)\"><path d=\"M5 5 L9 9\"/></g>"), "x.svg:3:", "layout-out-of-range",
         "0.28 pt"},
        {with_shape("<path stroke-linecap=\"butt\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "not round"},
        {with_shape("<path stroke-dasharray=\"1 1\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable",
         "does not print"},
        {with_shape("<path opacity=\"0.5\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "does not print"},
        {with_shape("<path display=\"none\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "does not print"},
        {with_shape("<path fill-rule=\"evenodd\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "nonzero"},
        {with_shape("<path filter=\"url(#f)\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-key-unknown", "filter"},
        {with_shape("<path colour=\"black\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-key-unknown", "colour"},
        {with_shape("<path transform=\"turn(3)\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "no transform"},
        {with_shape("<path transform=\"scale(2,1)\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "uneven"},
        {with_shape("<path transform=\"skewX(20)\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "uneven"},
        {with_shape("<path transform=\"scale(0)\" d=\"M1 1 L5 5\"/>"), "x.svg:3:7", "layout-unreadable", "uneven"},
        {with_shape("<circle cx=\"5\" cy=\"5\"/>"), "x.svg:3:2", "layout-key-missing", "circle without r"},
        {with_shape("<circle cx=\"5\" cy=\"5\" r=\"-1\"/>"), "x.svg:3:23", "layout-out-of-range", "more than 0"},
        {with_shape("<rect x=\"1\" y=\"1\" width=\"0\" height=\"2\"/>"), "x.svg:3:19", "layout-out-of-range",
         "more than 0"},
        {with_shape("<line x1=\"1\" y1=\"1\" x2=\"nan\" y2=\"2\"/>"), "x.svg:3:21", "layout-number-expected", "nan"},
        {with_shape("<polygon points=\"1,1 L 5,5\"/>"), "x.svg:3:10", "layout-unreadable", "list of numbers"},
        {with_shape("<text x=\"1\" y=\"1\">hot</text>"), "x.svg:3:2", "layout-unreadable", "text does not print"},
        {with_shape("<image href=\"a.png\"/>"), "x.svg:3:2", "layout-unreadable", "image does not print"},
        {with_shape("<use href=\"#a\"/>"), "x.svg:3:2", "layout-unreadable", "use does not print"},
        {with_shape("<script>x</script>"), "x.svg:3:2", "layout-unreadable", "script does not print"},
        {with_shape("<style>path{}</style>"), "x.svg:3:2", "layout-unreadable", "style does not print"},
        {with_shape("<defs><path d=\"M1 1 L5 5\"/></defs>"), "x.svg:3:2", "layout-unreadable", "defs does not print"},
        {with_shape("hot"), "x.svg:", "layout-unreadable", "bare text"},
    };
    static_assert(std::size(table) >= 50);
    for (const Bad& bad : table) {
        CAPTURE(bad.svg.substr(0, 400));
        const auto read = read_drawing(bad.svg, "x.svg");
        const std::string said = first_line(read);
        CAPTURE(said);
        CHECK(said.starts_with(bad.place));
        CHECK(read.problems()[0].code.text() == bad.code);
        CHECK(said.find(bad.says) != std::string::npos);
        CHECK(read.problems()[0].code.whose() == problem::Whose::ours);  // exit code 70
        CHECK((!read.problems()[0].hint.empty() || said.find("mm") != std::string::npos));
    }
}

TEST_CASE("a drawing that there is not is named as our own fault") {
    CHECK_THROWS_AS(drawing_named("no-such-drawing"), std::logic_error);
}

TEST_CASE("drawings stand side by side at the height asked for, over their labels, one alone beside its own") {
    const support::FakeMeasure measure;
    const Format format = support::format("hand");
    const BlockContext setting{format, measure, support::phrases, 84.0_mm};
    const auto drawn = [](const Fragment& fragment) {
        std::vector<PlacedDrawing> found;
        for (const auto& item : fragment.items) {
            if (const auto* one = std::get_if<PlacedDrawing>(&item)) {
                found.push_back(*one);
            }
        }
        return found;
    };
    const card::Drawings two{{{"probe-in-core", "a probe", "Core"}, {"no-wet-glove", "a glove", "Dry"}}, 20.0};
    const Fragment pair = drawings(two, setting);
    REQUIRE(drawn(pair).size() == 2);
    CHECK(pair.too_wide == 0.0_mm);
    CHECK(pair.group.tag == Tag::figure);
    CHECK(pair.group.alt == "Core. a probe. Dry. a glove");
    CHECK(drawn(pair)[0].height == 20.0_mm);
    CHECK(drawn(pair)[0].x + drawn(pair)[0].width < drawn(pair)[1].x);
    CHECK(drawn(pair)[1].x + drawn(pair)[1].width <= 84.0_mm);
    CHECK(pair.height > 20.0_mm);

    const Fragment single = drawings({{{"probe-in-core", "a probe", "The tip in the core."}}, 0.0}, setting);
    REQUIRE(drawn(single).size() == 1);
    CHECK(drawn(single)[0].width == 42.0_mm);
    CHECK(single.height == 30.0_mm);
    for (const auto& item : single.items) {
        if (const auto* text = as_text(item)) {
            CHECK(text->x > 42.0_mm);
        }
    }
    const Fragment crowded = drawings({{{"box-in-section", "a", ""}, {"out-then-in", "b", ""}}, 40.0}, setting);
    CHECK(crowded.too_wide > 0.0_mm);
    CHECK(std::string(block_name(card::Drawings{})) == "drawing");

    // Moved, grown and turned with its page.
    const PlacedDrawing& own = drawing_named("probe-in-core");
    const auto at = std::get<PlacedDrawing>(moved(own, 3.0_mm, 4.0_mm));
    CHECK(at.x == 3.0_mm);
    CHECK(at.shapes[0].parts[0].points[0].y == own.shapes[0].parts[0].points[0].y + 4.0_mm);
    const auto up = std::get<PlacedDrawing>(turned(own, 100.0_mm));
    CHECK(up.width == own.height);
    CHECK(up.y + up.height == 100.0_mm);
    CHECK(up.shapes[0].parts[0].points[0].x == own.shapes[0].parts[0].points[0].y);
}
