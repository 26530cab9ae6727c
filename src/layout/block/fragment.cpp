// SPDX-License-Identifier: MIT
#include "layout/block/fragment.hpp"

#include "layout/style.hpp"

#include <algorithm>
#include <type_traits>
#include <utility>

namespace holdwater::layout {

namespace {

/// Every point of a drawing; those that a part does not use come along and harm nobody.
template <class Change>
void for_points(PlacedDrawing& drawing, const Change& change) {
    for (auto& shape : drawing.shapes) {
        for (auto& part : shape.parts) {
            std::for_each(part.points.begin(), part.points.end(), change);
        }
    }
}

}  // namespace

Item moved(Item item, Millimetres dx, Millimetres dy) {
    std::visit(Overloaded{[&](PlacedText& text) {
                              text.x += dx;
                              text.baseline += dy;
                          },
                          [&](PlacedLine& rule) {
                              rule.x1 += dx;
                              rule.x2 += dx;
                              rule.y1 += dy;
                              rule.y2 += dy;
                          },
                          [&](PlacedBox& box) {
                              box.x += dx;
                              box.y += dy;
                          },
                          [&](PlacedPath& path) {
                              for (auto& point : path.points) {
                                  point.x += dx;
                                  point.y += dy;
                              }
                          },
                          [&](PlacedDrawing& drawing) {
                              drawing.x += dx;
                              drawing.y += dy;
                              for_points(drawing, [&](PlacedDrawing::Point& point) {
                                  point.x += dx;
                                  point.y += dy;
                              });
                          }},
               item);
    return item;
}

Item scaled(Item item, double factor) {
    const auto scale = [factor](auto&... values) { ((values *= factor), ...); };
    const auto scale_dashes = [factor](std::vector<Millimetres>& dashes) {
        for (auto& dash : dashes) {
            dash *= factor;
        }
    };
    std::visit(Overloaded{[&](PlacedText& text) { scale(text.x, text.baseline, text.size_pt, text.width); },
                          [&](PlacedLine& rule) {
                              scale(rule.x1, rule.y1, rule.x2, rule.y2, rule.width_pt);
                              scale_dashes(rule.dash_mm);
                          },
                          [&](PlacedBox& box) { scale(box.x, box.y, box.width, box.height, box.stroke_pt); },
                          [&](PlacedPath& path) {
                              for (auto& point : path.points) {
                                  scale(point.x, point.y);
                              }
                              scale(path.stroke_pt);
                              scale_dashes(path.dash_mm);
                          },
                          [&](PlacedDrawing& drawing) {
                              scale(drawing.x, drawing.y, drawing.width, drawing.height);
                              for_points(drawing, [&](PlacedDrawing::Point& point) { scale(point.x, point.y); });
                              for (auto& shape : drawing.shapes) {
                                  scale(shape.stroke_pt);
                              }
                          }},
               item);
    return item;
}

Item turned(Item item, Millimetres height) {
    const auto turn = [height](Millimetres& x, Millimetres& y) {
        const Millimetres across = x;
        x = y;
        y = height - across;
    };
    std::visit(Overloaded{[&](PlacedText& text) {
                              turn(text.x, text.baseline);
                              text.upward = true;
                          },
                          [&](PlacedLine& rule) {
                              turn(rule.x1, rule.y1);
                              turn(rule.x2, rule.y2);
                          },
                          [&](PlacedBox& box) {
                              turn(box.x, box.y);
                              std::swap(box.width, box.height);
                              box.y -= box.height;
                          },
                          [&](PlacedPath& path) {
                              for (auto& point : path.points) {
                                  turn(point.x, point.y);
                              }
                          },
                          [&](PlacedDrawing& drawing) {
                              turn(drawing.x, drawing.y);
                              std::swap(drawing.width, drawing.height);
                              drawing.y -= drawing.height;
                              for_points(drawing, [&](PlacedDrawing::Point& point) { turn(point.x, point.y); });
                          }},
               item);
    return item;
}

void put(std::vector<Item>& onto, const std::vector<Item>& items, Millimetres dx, Millimetres dy) {
    onto.reserve(onto.size() + items.size());
    for (const auto& item : items) {
        onto.push_back(moved(item, dx, dy));
    }
}

void put(Fragment& onto, const Fragment& part, Millimetres dx, Millimetres dy) {
    put(onto.items, part.items, dx, dy);
    onto.too_wide = std::max(onto.too_wide, part.too_wide);
}

PlacedLine line(Millimetres x1, Millimetres y1, Millimetres x2, Millimetres y2, Points width_pt) {
    PlacedLine made;
    made.x1 = x1;
    made.y1 = y1;
    made.x2 = x2;
    made.y2 = y2;
    made.width_pt = width_pt;
    return made;
}

PlacedBox filled_box(Millimetres x, Millimetres y, Millimetres width, Millimetres height, double grey) {
    PlacedBox made;
    made.x = x;
    made.y = y;
    made.width = width;
    made.height = height;
    made.filled = true;
    made.fill_grey = grey;
    return made;
}

PlacedBox frame(Millimetres x, Millimetres y, Millimetres width, Millimetres height, Points stroke_pt) {
    const Millimetres stroke = em(stroke_pt);
    PlacedBox made;
    made.x = x + 0.5 * stroke;
    made.y = y + 0.5 * stroke;
    made.width = width - stroke;
    made.height = height - stroke;
    made.stroke_pt = stroke_pt;
    return made;
}

}  // namespace holdwater::layout
