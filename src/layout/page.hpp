// SPDX-License-Identifier: MIT
// A page as a closed list of placed items, in millimetres from the top left, y down. Back ends draw it, nothing else.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace holdwater::layout {

enum class Face { regular, bold };

/// What an item means to a reader: tags in the PDF, checks by machine.
enum class Role { heading, paragraph, table, caution, key_number, ruler_tick, artifact, cut_mark };

struct PlacedText {
    double x = 0.0;  // of the origin of the first glyph
    double baseline = 0.0;
    double size_pt = 0.0;
    Face face = Face::regular;
    double grey = 0.0;  // 0 black, 1 white
    std::string text;   // UTF-8, one line
    Role role = Role::paragraph;
    double width = 0.0;   // as measured
    bool upward = false;  // read with the card turned: runs up the page from its origin, capitals to the left
};

struct PlacedLine {
    double x1 = 0.0, y1 = 0.0, x2 = 0.0, y2 = 0.0;
    double width_pt = 0.5;
    std::vector<double> dash_mm;  // empty: solid
    double grey = 0.0;
    Role role = Role::artifact;
};

struct PlacedBox {
    double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
    double stroke_pt = 0.0;  // 0: no outline
    bool filled = false;
    double fill_grey = 0.0;
    Role role = Role::artifact;
};

struct PlacedPath {
    struct Point {
        double x = 0.0, y = 0.0;
    };
    std::vector<Point> points;  // a polyline
    bool closed = false;
    bool filled = false;
    double fill_grey = 0.0;
    double stroke_pt = 0.5;  // 0: no outline
    std::vector<double> dash_mm;
    Role role = Role::artifact;
};

using Item = std::variant<PlacedText, PlacedLine, PlacedBox, PlacedPath>;

struct Page {
    double width = 0.0;  // mm
    double height = 0.0;
    std::string name;  // "fill-1", "sheet 1 front"
    std::vector<Item> items;
};

}  // namespace holdwater::layout
