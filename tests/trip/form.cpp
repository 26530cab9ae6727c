// SPDX-License-Identifier: MIT
// Filling in a form, and the sizes that are taken where none is given.
#include "trip/form.hpp"

#include "reading.hpp"
#include "support/near.hpp"
#include "trip/large_piece.hpp"
#include "trip/moved_dates.hpp"
#include "trip/shape_mass.hpp"

#include <doctest/doctest.h>

#include <stdexcept>

using namespace holdwater;
using namespace holdwater::support;
using trip::Form;

namespace {

constexpr std::string_view small_form = R"(# A form.
[trip]
name = "with # in it"              # printed
people = 4                         # who eats

[[food]]
name = "meat"
# over_fire = true                 # at the end
)";

}  // namespace

TEST_CASE("a form that nobody filled in is the text it was made from, whatever else stands in it") {
    CHECK(Form(small_form).text() == small_form);
    for (const char* name : {"template", "quick", "trail-crew"}) {
        const std::string text = read_text(trip_layouts() / (std::string(name) + ".toml"));
        CHECK(Form(text).text() == text);
    }
}

TEST_CASE("a value that was said loses the remark of the old one, one of our own keeps it, a choice is made and left") {
    Form form(small_form);
    CHECK(form.entry("trip", "name").value == "\"with # in it\"");
    CHECK(form.entry("trip", "name").remark == "printed");
    CHECK_FALSE(form.entry("food", "over_fire").chosen);
    form.put("trip", "name", trip::in_toml("a \"b\" \\ c"));
    form.suggest("trip", "people", "6");
    form.suggest("food", "over_fire", "true");
    form.leave_out("food", "name");
    CHECK(form.text() == R"(# A form.
[trip]
name = "a \"b\" \\ c"
people = 6                         # who eats

[[food]]
# name = "meat"
over_fire = true                   # at the end
)");
}

TEST_CASE("a line that a form has not is our own fault") {
    Form form(small_form);
    CHECK_THROWS_AS(form.put("trip", "tide", "1"), std::logic_error);
    CHECK_THROWS_AS(form.put("box", "name", "1"), std::logic_error);
}

TEST_CASE("a large piece grows with its thickness and is never under the size of a hand") {
    using facts::Shape;
    for (const Shape shape : {Shape::slab, Shape::block, Shape::round, Shape::ball}) {
        units::Mass last{};
        for (int mm = 5; mm <= 250; mm += 5) {
            CAPTURE(mm);
            const units::Mass piece = trip::large_piece(shape, units::millimetres(mm));
            CHECK(piece >= last);
            CHECK(piece > units::Mass{});
            last = piece;
        }
    }
    CHECK(trip::large_piece(Shape::slab, units::millimetres(20)).si() >= 0.1 * 0.14 * 0.02 * 1050);
    // A ball is what it is: no more than the next 50 g.
    const double ball = trip::large_piece(Shape::ball, units::millimetres(100)).si();
    CHECK(ball >= 0.5497);
    CHECK(ball <= 0.6);
}

TEST_CASE("a roomy box holds a third more than water and food, and a bath of it is not taken for brimful") {
    for (const double litres : {2.0, 10.0, 30.0, 80.0}) {
        const units::Volume water = units::litres(litres);
        const units::Mass food{litres / 10};
        const auto inside = trip::roomy_box(water, food);
        const double room = inside[0].si() * inside[1].si() * inside[2].si();
        const double filled = water.si() + food.si() / trip::density_for_check.si();
        CAPTURE(litres);
        CHECK(filled / room <= 0.75);
        CHECK(filled / room >= 0.6);
        CHECK(inside[0] >= inside[1]);
    }
}

TEST_CASE("of several tables of one name each line is found, and what is a remark belongs to the heading before it") {
    Form form(R"([[food]]
pieces = 1
[[food]]
pieces = 2
# [sleep]
# from = "22:00"
name = "x"
)");
    CHECK(form.entry("food", "pieces", 1).value == "2");
    CHECK(form.find("food", "pieces", 2) == nullptr);
    CHECK(form.find("sleep", "from") != nullptr);
    CHECK(form.entry("food", "name", 1).value == "\"x\"");
    form.put("food", "pieces", "7", 1);
    CHECK(form.entry("food", "pieces").value == "1");
    CHECK(form.text().find("pieces = 7") != std::string::npos);
}

TEST_CASE("dates move by whole days over the end of a month, clocks and remarks stay") {
    const std::string text =
        "from = 2027-12-31T16:00:00  # not 2027-01-01T00:00:00\nserve = [2028-02-28T08:00, "
        "2028-02-29T08:00]\nat = \"08:00\"\nname = \"12027-12-31T16:00\"\n";
    CHECK(trip::moved_dates(text, 0) == text);
    CHECK(trip::moved_dates(text, 1) ==
          "from = 2028-01-01T16:00:00  # not 2027-01-01T00:00:00\nserve = [2028-02-29T08:00, "
          "2028-03-01T08:00]\nat = \"08:00\"\nname = \"12027-12-31T16:00\"\n");
    CHECK(trip::moved_dates(trip::moved_dates(text, 400), -400) == text);
}
