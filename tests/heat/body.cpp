// SPDX-License-Identifier: MIT
// Bodies as users give them: thicker is never faster, long and short meet, sizes are checked.
#include "heat/body.hpp"

#include "heat/core_response.hpp"
#include "support/near.hpp"
#include "support/pieces.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

using namespace holdwater;
using facts::Contact;
using facts::Shape;
using support::meat;
using support::near_abs;
using support::near_rel;
using units::millimetres;

namespace {

heat::Body body(Shape shape, double thickness, Contact contact = Contact::free) {
    heat::Body b;
    b.shape = shape;
    b.thickness = millimetres(thickness);
    b.width = millimetres(120);
    b.length = millimetres(200);
    b.contact = contact;
    return b;
}

heat::Modes modes(const heat::Body& b, double film = 200) {
    auto result = heat::modes_of(b, meat, units::FilmCoefficient{film});
    REQUIRE(result.ok());
    return std::move(result).value();
}

/// Seconds until the core has gone half of the way.
double half_time(const heat::Modes& m) {
    double low = 0.0;
    double high = 1e6;
    for (int i = 0; i < 60; ++i) {
        const double t = 0.5 * (low + high);
        (heat::core_at(m, units::Duration{t}) > 0.5 ? low : high) = t;
    }
    return low;
}

}  // namespace

TEST_CASE("thicker is never faster, whatever the shape and the contact") {
    for (const Shape shape : {Shape::slab, Shape::round, Shape::block, Shape::ball}) {
        for (const Contact contact : {Contact::free, Contact::bottom, Contact::stacked}) {
            double last = 0.0;
            for (double mm = 5; mm <= 200; mm += 5) {
                CAPTURE(facts::to_name(shape));
                CAPTURE(facts::to_name(contact));
                CAPTURE(mm);
                const double now = half_time(modes(body(shape, mm, contact)));
                CHECK(now > last);
                last = now;
            }
        }
    }
}

TEST_CASE("contact is never faster than water all around") {
    for (const Shape shape : {Shape::slab, Shape::round, Shape::block, Shape::ball}) {
        for (const double mm : {15.0, 40.0, 90.0}) {
            for (const double film : {95.0, 500.0}) {
                CAPTURE(facts::to_name(shape));
                CAPTURE(mm);
                const double free = half_time(modes(body(shape, mm), film));
                const double floor = half_time(modes(body(shape, mm, Contact::bottom), film));
                const double stacked = half_time(modes(body(shape, mm, Contact::stacked), film));
                CHECK(floor > 1.2 * free);
                CHECK(stacked >= 0.999 * floor);
            }
        }
    }
}

TEST_CASE("a better film is never slower") {
    for (const Shape shape : {Shape::slab, Shape::round, Shape::block, Shape::ball}) {
        double last = 1e9;
        for (const double film : {50.0, 95.0, 155.0, 300.0, 500.0, 1100.0}) {
            CAPTURE(film);
            const double now = half_time(modes(body(shape, 60), film));
            CHECK(now < last);
            last = now;
        }
    }
}

TEST_CASE("a blocked slab is a free one of twice the thickness") {
    const auto floor = modes(body(Shape::slab, 30, Contact::bottom));
    const auto twice = modes(body(Shape::slab, 60));
    for (double t = 60; t < 20000; t *= 1.5) {
        CHECK(near_abs(heat::core_at(floor, units::Duration{t}), heat::core_at(twice, units::Duration{t}), 1e-12));
    }
}

TEST_CASE("a very long round, a very wide block and their endless forms meet") {
    heat::Body round = body(Shape::round, 60);
    round.length = millimetres(2000);
    heat::Body endless = round;
    endless.length.reset();
    CHECK(near_rel(half_time(modes(round)), half_time(modes(endless)), 1e-4));
    heat::Body block = body(Shape::block, 20);
    block.width = millimetres(2000);
    block.length = millimetres(2000);
    CHECK(near_rel(half_time(modes(block)), half_time(modes(body(Shape::slab, 20))), 1e-3));
}

TEST_CASE("enclosed bodies are faster: ball in cube, round in brick") {
    heat::Body cube = body(Shape::block, 60);
    cube.width = millimetres(60);
    cube.length = millimetres(60);
    CHECK(half_time(modes(body(Shape::ball, 60))) < half_time(modes(cube)));
    heat::Body brick = body(Shape::block, 60);
    brick.width = millimetres(60);
    CHECK(half_time(modes(body(Shape::round, 60))) < half_time(modes(brick)));
}

TEST_CASE("the rounded slab runs from slab to ball") {
    heat::Body rounded = body(Shape::slab, 50);
    double last = 1e9;
    for (const double b : {0.0, 0.28, 0.7, 1.0, 1.6, 2.0}) {
        rounded.curvature = b;
        const double now = half_time(modes(rounded));
        CHECK(now < last);
        last = now;
    }
    CHECK(near_rel(last, half_time(modes(body(Shape::ball, 50))), 1e-9));
}

TEST_CASE("surface leads, mean between, core last") {
    for (const Shape shape : {Shape::slab, Shape::round, Shape::block, Shape::ball}) {
        const auto m = modes(body(shape, 60));
        for (double t = 120; t < 20000; t *= 1.4) {
            CAPTURE(facts::to_name(shape));
            CAPTURE(t);
            const units::Duration at{t};
            CHECK(heat::surface_at(m, at) < heat::mean_at(m, at));
            CHECK(heat::mean_at(m, at) < heat::core_at(m, at) + 1e-9);
        }
    }
}

TEST_CASE("the core starts exactly at rest") {
    for (const Shape shape : {Shape::slab, Shape::round, Shape::block, Shape::ball}) {
        CHECK(near_abs(heat::core_at(modes(body(shape, 60)), units::Duration{0}), 1.0, 1e-12));
    }
}

TEST_CASE("bag and film in series; volumes") {
    CHECK(near_rel(heat::with_bag(units::FilmCoefficient{200}, units::ThermalResistance{0.005}).si(), 100.0, 1e-12));
    CHECK(near_rel(heat::with_bag(units::FilmCoefficient{95}, units::ThermalResistance{0}).si(), 95.0, 1e-12));
    CHECK(near_rel(heat::volume_of(body(Shape::block, 50)).si(), 0.05 * 0.12 * 0.2, 1e-12));
    CHECK(near_rel(heat::volume_of(body(Shape::round, 50)).si(), std::numbers::pi / 4 * 0.0025 * 0.2, 1e-12));
    CHECK(near_rel(heat::volume_of(body(Shape::ball, 50)).si(), std::numbers::pi / 6 * 1.25e-4, 1e-12));
}

TEST_CASE("sizes out of range and missing dimensions are refused, all at once") {
    const auto codes = [](const heat::Body& b) {
        std::string text;
        const auto result = heat::modes_of(b, meat, units::FilmCoefficient{200});
        CHECK_FALSE(result.ok());
        for (const auto& p : result.problems()) {
            text += std::string(p.code.text()) + " ";
            CHECK_FALSE(p.hint.empty());
        }
        return text;
    };
    CHECK(codes(body(Shape::slab, 0.9)) == "size-out-of-range ");
    CHECK(codes(body(Shape::ball, 401)) == "size-out-of-range ");
    CHECK(codes(body(Shape::slab, std::nan(""))) == "size-out-of-range ");
    heat::Body block = body(Shape::block, 500);
    block.width.reset();
    block.length.reset();
    CHECK(codes(block) == "size-out-of-range dimension-missing dimension-missing ");
    block = body(Shape::block, 50);
    block.length = millimetres(-3);
    CHECK(codes(block) == "size-out-of-range ");
    CHECK(heat::modes_of(body(Shape::slab, 1), meat, units::FilmCoefficient{200}).ok());
    CHECK(heat::modes_of(body(Shape::slab, 400), meat, units::FilmCoefficient{200}).ok());
}

TEST_CASE("the core asked for moment after moment is the core asked for once") {
    for (const Shape shape : {Shape::slab, Shape::round, Shape::block, Shape::ball}) {
        const heat::Modes m = modes(body(shape, 70));
        heat::CoreResponse response(m);
        double now = 0.0;
        for (const double step : {1.0, 1.0, 2.0, 4.0, 4.0, 8.0, 16.0, 32.0, 64.0, 128.0, 256.0, 256.0, 300.0, 77.0}) {
            for (int i = 0; i < 20; ++i) {
                now += step;
                CAPTURE(facts::to_name(shape));
                CAPTURE(now);
                CHECK(near_abs(response.after(step), heat::core_at(m, units::Duration{now}), 1e-12));
            }
        }
    }
}
