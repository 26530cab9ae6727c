// SPDX-License-Identifier: MIT
#include "support/near.hpp"
#include "trip/reading.hpp"
#include "trip/shape_mass.hpp"

#include <doctest/doctest.h>

#include <numbers>

using namespace holdwater;
using namespace holdwater::support;

namespace {

trip::Food piece(facts::Shape shape, double thickness, std::optional<double> width, std::optional<double> length) {
    trip::Food food;
    food.shape = shape;
    food.thickness = units::metres(thickness);
    if (width) {
        food.width = units::metres(*width);
    }
    if (length) {
        food.length = units::metres(*length);
    }
    return food;
}

/// Reads the small trip (a round of 60 x 200 mm, which would weigh 0.5938 kg) with another mass.
problem::Result<trip::Trip> with_mass(const std::string& mass) {
    return read_trip_text(changed(small_trip, "\"0.6 kg\"", "\"" + mass + "\""));
}

}  // namespace

TEST_CASE("volumes of the four shapes") {
    using std::numbers::pi;
    CHECK(near_rel(trip::volume_of(piece(facts::Shape::block, 0.05, 0.1, 0.2))->si(), 0.001, 1e-12));
    CHECK(near_rel(trip::volume_of(piece(facts::Shape::slab, 0.02, 0.1, 0.2))->si(), 0.0004, 1e-12));
    CHECK(near_rel(trip::volume_of(piece(facts::Shape::round, 0.1, {}, 0.4))->si(), pi / 1000, 1e-12));
    CHECK(near_rel(trip::volume_of(piece(facts::Shape::ball, 0.1, {}, {}))->si(), pi / 6000, 1e-12));
}

TEST_CASE("no volume where a measure is not known") {
    CHECK(!trip::volume_of(piece(facts::Shape::slab, 0.02, {}, {})));
    CHECK(!trip::volume_of(piece(facts::Shape::slab, 0.02, 0.1, {})));
    CHECK(!trip::volume_of(piece(facts::Shape::slab, 0.02, {}, 0.1)));
    CHECK(!trip::volume_of(piece(facts::Shape::round, 0.1, {}, {})));
}

TEST_CASE("mass against size: silent to 15 %, warned to 40 %, refused beyond") {
    struct Row {
        std::string mass;
        bool read;
        std::size_t problems;
    };
    // 0.59376 kg x 0.86, 0.84, 0.61, 0.59 and x 1.14, 1.16, 1.39, 1.41
    for (const Row& row :
         {Row{"0.511 kg", true, 0}, Row{"0.499 kg", true, 1}, Row{"0.362 kg", true, 1}, Row{"0.350 kg", false, 1},
          Row{"0.677 kg", true, 0}, Row{"0.689 kg", true, 1}, Row{"0.825 kg", true, 1}, Row{"0.837 kg", false, 1}}) {
        CAPTURE(row.mass);
        const auto result = with_mass(row.mass);
        CHECK(result.ok() == row.read);
        CHECK(result.problems().size() == row.problems);
    }
}

TEST_CASE("without a length a round is not weighed") {
    const auto result = read_trip_text(changed(changed(small_trip, "length = \"200 mm\"\n", ""), "0.6 kg", "5 kg"));
    CHECK(result.ok());
    CHECK(result.problems().empty());
}
