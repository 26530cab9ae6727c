// SPDX-License-Identifier: MIT
// A page as a closed list of placed items, placed from the top left, y down. Back ends draw it, nothing else.
#pragma once

#include "units/page_length.hpp"

#include <array>
#include <string>
#include <variant>
#include <vector>

namespace holdwater::layout {

using units::Millimetres;
using units::Points;
using namespace units::page_literals;

enum class Weight { regular, bold };

/// What an item means to a reader: tags in the PDF, checks by machine.
enum class Role { heading, paragraph, table, caution, key_number, ruler_tick, artifact, cut_mark };

/// What a group of items is to someone who hears the page read out.
enum class Tag {
    title,      // row 0: number and name of a card, row 1: its question; a new part of the page starts here
    heading,    // within a card
    paragraph,  // one, or one a row
    list,       // a row an entry: cell 0 its mark, cell 1 its words
    table,      // a row a line; row -1 is the title above it
    figure      // drawn: all its items are one, and `alt` says what they show
};

/// Items that are read together. Groups stand in a page in reading order, whatever the order of painting.
struct Group {
    Tag tag = Tag::paragraph;
    bool headed = false;  // a table: row 0 names the columns
    std::string alt;      // of a figure; of a title: what an outline calls the card that starts here
};

/// Where an item stands in what is read; without a group it is furniture and is passed over.
struct Spot {
    int group = -1;
    int row = -1;
    int cell = -1;
    bool operator==(const Spot&) const = default;
};

struct PlacedText {
    Millimetres x;  // of the origin of the first glyph
    Millimetres baseline;
    Points size_pt;
    Weight face = Weight::regular;
    double grey = 0.0;  // 0 black, 1 white
    std::string text;   // UTF-8, one line
    Role role = Role::paragraph;
    Millimetres width;    // as measured
    bool upward = false;  // read with the card turned: runs up the page from its origin, capitals to the left
    Spot spot = {};
};

struct PlacedLine {
    Millimetres x1, y1, x2, y2;
    Points width_pt = 0.5_pt;
    std::vector<Millimetres> dash_mm;  // empty: solid
    double grey = 0.0;
    Role role = Role::artifact;
    Spot spot = {};
};

struct PlacedBox {
    Millimetres x, y, width, height;
    Points stroke_pt;  // 0: no outline
    bool filled = false;
    double fill_grey = 0.0;
    Role role = Role::artifact;
    Spot spot = {};
};

struct PlacedPath {
    struct Point {
        Millimetres x, y;
    };
    std::vector<Point> points;  // a polyline
    bool closed = false;
    bool filled = false;
    double fill_grey = 0.0;
    Points stroke_pt = 0.5_pt;  // 0: no outline
    std::vector<Millimetres> dash_mm;
    Role role = Role::artifact;
    Spot spot = {};
};

/// A line drawing in its box: outlines of straight lines and curves, painted in order, with round ends and corners.
struct PlacedDrawing {
    struct Point {
        Millimetres x, y;
    };
    struct Part {
        enum class Kind { move, line, curve, close };
        Kind kind = Kind::move;
        std::array<Point, 3> points = {};  // move and line: the first; curve: two controls and its end; close: none
    };
    struct Shape {
        std::vector<Part> parts;
        bool filled = false;
        double fill_grey = 0.0;  // 0 black, 1 white: hides what lies behind
        Points stroke_pt;        // 0: no outline; always black
    };
    Millimetres x, y, width, height;
    std::vector<Shape> shapes;
    Role role = Role::artifact;
    Spot spot = {};
};

using Item = std::variant<PlacedText, PlacedLine, PlacedBox, PlacedPath, PlacedDrawing>;

/// One function a kind of item, for std::visit. None of them takes every kind, so that a visit stops compiling when a
/// kind is added and nobody has said what becomes of it there.
template <class... F>
struct Overloaded : F... {
    using F::operator()...;
};
template <class... F>
Overloaded(F...) -> Overloaded<F...>;

/// The item if it is a text, else nothing.
inline const PlacedText* as_text(const Item& item) {
    using Found = const PlacedText*;
    return std::visit(Overloaded{[](const PlacedText& text) -> Found { return &text; },
                                 [](const PlacedLine&) -> Found { return nullptr; },
                                 [](const PlacedBox&) -> Found { return nullptr; },
                                 [](const PlacedPath&) -> Found { return nullptr; },
                                 [](const PlacedDrawing&) -> Found { return nullptr; }},
                      item);
}

struct Page {
    Millimetres width;
    Millimetres height;
    std::string name;  // "fill-1", "sheet 1 front"
    std::vector<Item> items;
    std::vector<Group> groups = {};
    double scale = 1.0;  // of what is on it, to its true size
};

}  // namespace holdwater::layout
