// SPDX-License-Identifier: MIT
// Check values of common practice, no publication: with plausible inputs at the two ends the model brackets them.
#include "facts/facts.hpp"
#include "heat/bath.hpp"
#include "heat/food_properties.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using units::celsius;
using units::hours;
using units::litres;
using units::millimetres;

namespace {

units::History steady(double t) {
    units::History air;
    air.add(units::Duration{0}, celsius(t));
    return air;
}

heat::BoxHeat box(double loss) {
    return {units::HeatLoss{loss}, units::HeatCapacity{4000}, units::Area{0.15}};
}

const facts::Composition beef{72.96, 23.59, 2.94, 0, 0, 1.12};

heat::Modes piece(facts::Shape shape, double thickness, heat::Bound reading, double film) {
    heat::Body body;
    body.shape = shape;
    body.thickness = millimetres(thickness);
    if (shape == facts::Shape::round) {
        body.length = millimetres(280);  // 4.5 kg of 140 mm
    }
    auto modes = heat::modes_of(body, heat::reading_of(beef, celsius(33), reading), units::FilmCoefficient{film});
    REQUIRE(modes.ok());
    return std::move(modes).value();
}

double hours_to_57(const heat::Modes& modes, double bath, double start) {
    for (double h = 0.0; h < 48.0; h += 0.01) {
        if (bath + (start - bath) * heat::core_at(modes, hours(h)) >= 57.0) {
            return h;
        }
    }
    return 48.0;
}

}  // namespace

TEST_CASE("a small ordinary box of 60 C water at 0 C outside loses about 5.5 K in 2.5 h") {
    const auto fall = [](double loss, double volume) {
        heat::Bath bath(box(loss), litres(volume), celsius(60), steady(0));
        bath.advance_to(hours(2.5));
        return 60.0 - bath.temperature().celsius();
    };
    CHECK(fall(0.7, 22) < 5.5);  // wall of 25 mm foam alone, 0.77 W/K for 25 L
    CHECK(fall(1.3, 20) > 5.5);  // a hollow lid can double it
    CHECK(fall(0.7, 22) > 3.0);
    CHECK(fall(1.3, 20) < 9.0);
}

TEST_CASE("a filled box with cooked food at 65.5 C stands near 48 C after nine hours at -2 C") {
    const auto morning = [](double loss, double volume) {
        heat::Bath bath(box(loss), litres(volume), celsius(65.5), steady(-2));
        bath.put_in({piece(facts::Shape::round, 90, heat::Bound::likely, 300), units::HeatCapacity{4 * 3600},
                     celsius(62), units::kelvins(0)});
        bath.advance_to(hours(9));
        return bath.temperature().celsius();
    };
    CHECK(morning(1.0, 30) > 48.0);
    CHECK(morning(1.9, 30) < 48.0);
    CHECK(morning(1.0, 30) < 56.0);
    CHECK(morning(1.9, 30) > 40.0);
}

TEST_CASE("a roast of 4.5 kg in 30 L at 71 C brings the bath to the mid-60s within an hour or so") {
    const auto after = [](heat::Bound reading, double film, double loss, double h) {
        heat::Bath bath(box(loss), litres(30), celsius(71), steady(5));
        bath.put_in({piece(facts::Shape::round, 140, reading, film), units::HeatCapacity{4.5 * 3550}, celsius(5),
                     units::kelvins(0)});
        bath.advance_to(hours(h));
        return bath.temperature().celsius();
    };
    CHECK(after(heat::Bound::fast, 500, 1.3, 1.0) < 66.0);
    CHECK(after(heat::Bound::fast, 500, 1.3, 1.0) > 62.0);
    CHECK(after(heat::Bound::slow, 95, 0.7, 1.0) > 65.0);
    CHECK(after(heat::Bound::slow, 95, 0.7, 1.0) < 69.0);
}

TEST_CASE("that roast takes 6 to 8 h near 60 C") {
    const double fast = hours_to_57(piece(facts::Shape::round, 140, heat::Bound::fast, 500), 61, 5);
    const double slow = hours_to_57(piece(facts::Shape::round, 140, heat::Bound::slow, 95), 60, 5);
    MESSAGE("140 mm round: ", fast, " to ", slow, " h");
    CHECK(fast < 6.0);
    CHECK(slow > 8.0);
    const double likely = hours_to_57(piece(facts::Shape::round, 140, heat::Bound::likely, 300), 60.5, 5);
    MESSAGE("likely ", likely, " h");
    CHECK(likely > 5.0);
    CHECK(likely < 8.0);
}

TEST_CASE("a steak of 25 mm takes under 2 h near 60 C") {
    CHECK(hours_to_57(piece(facts::Shape::slab, 25, heat::Bound::slow, 95), 60, 5) < 2.0);
    CHECK(hours_to_57(piece(facts::Shape::slab, 25, heat::Bound::fast, 500), 60, 5) > 0.3);
}
