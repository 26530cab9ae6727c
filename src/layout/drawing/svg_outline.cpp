// SPDX-License-Identifier: MIT
#include "layout/drawing/svg_outline.hpp"

// The library is not written for our warnings.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wall"
#pragma GCC diagnostic ignored "-Wextra"
#include <svgpp/svgpp.hpp>
#pragma GCC diagnostic pop

#include <cmath>
#include <exception>

namespace holdwater::layout {

namespace {

using Part = PlacedDrawing::Part;

/// What svgpp calls for each piece of a path, all in absolute coordinates.
class OutlineMaker {
  public:
    explicit OutlineMaker(const Transform& transform) : transform_(transform) {}

    using Absolute = svgpp::tag::coordinate::absolute;
    void path_move_to(double x, double y, Absolute) { parts.push_back({Part::Kind::move, {at(x, y)}}); }
    void path_line_to(double x, double y, Absolute) { parts.push_back({Part::Kind::line, {at(x, y)}}); }
    void path_cubic_bezier_to(double x1, double y1, double x2, double y2, double x, double y, Absolute) {
        parts.push_back({Part::Kind::curve, {at(x1, y1), at(x2, y2), at(x, y)}});
    }
    void path_close_subpath() { parts.push_back({Part::Kind::close, {}}); }
    void path_exit() {}

    std::vector<Part> parts;

  private:
    PlacedDrawing::Point at(double x, double y) const {
        return {Millimetres{transform_.a * x + transform_.c * y + transform_.e},
                Millimetres{transform_.b * x + transform_.d * y + transform_.f}};
    }
    Transform transform_;
};

struct TransformMaker {
    void transform_matrix(const boost::array<double, 6>& m) { made = {m[0], m[1], m[2], m[3], m[4], m[5]}; }
    Transform made;
};

}  // namespace

Transform Transform::after(const Transform& first) const {
    return {a * first.a + c * first.b, b * first.a + d * first.b,     a * first.c + c * first.d,
            b * first.c + d * first.d, a * first.e + c * first.f + e, b * first.e + d * first.f + f};
}

std::optional<double> Transform::growth() const {
    constexpr double alike = 1e-6;
    const double across = std::hypot(a, b);
    const double down = std::hypot(c, d);
    const bool sheared = std::abs(a * c + b * d) > alike * across * down;
    if (sheared || std::abs(across - down) > alike * across || !(across > 0.0) || !std::isfinite(across)) {
        return std::nullopt;
    }
    return across;
}

std::optional<std::vector<Part>> outline_of(const std::string& path_data, const Transform& transform) {
    using Parser = svgpp::value_parser<svgpp::tag::type::path_data, svgpp::path_policy<svgpp::policy::path::minimal>>;
    OutlineMaker maker(transform);
    try {
        if (!Parser::parse(svgpp::tag::attribute::d(), maker, path_data, svgpp::tag::source::attribute())) {
            return std::nullopt;
        }
    } catch (const std::exception&) {  // so the library says that it cannot read it
        return std::nullopt;
    }
    return std::move(maker.parts);
}

std::optional<Transform> transform_of(const std::string& list) {
    using Parser = svgpp::value_parser<svgpp::tag::type::transform_list>;
    TransformMaker maker;
    try {
        if (!Parser::parse(svgpp::tag::attribute::transform(), maker, list, svgpp::tag::source::attribute())) {
            return std::nullopt;
        }
    } catch (const std::exception&) {
        return std::nullopt;
    }
    return maker.made;
}

}  // namespace holdwater::layout
