// SPDX-License-Identifier: MIT
// Keys of the trade: steaks, food kept hot, sittings, hot water, frozen food.
#include "support/near.hpp"
#include "trip/reading.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace holdwater;
using namespace holdwater::support;

namespace {

std::string hot_food() {
    return changed(changed(small_trip, "start = \"4 C\"\ntarget = \"60 C\"", "start = \"80 C\""), "cut = \"intact\"",
                   "use = \"keep-hot\"\ncut = \"intact\"");
}

/// The one problem that this text has.
problem::Problem only_problem(const std::string& text) {
    const auto read = read_trip_text(text);
    REQUIRE_MESSAGE(read.problems().size() == 1, lines(read.problems()));
    return read.problems().front();
}

std::string with_serve(const std::string& serve) {
    return changed(small_trip, "serve = 2027-05-08T18:00:00", "serve = " + serve);
}

}  // namespace

TEST_CASE("a food is cooked unless use says otherwise") {
    CHECK(good_trip(small_trip).foods.front().use == facts::Use::cook);
    const std::string steak = changed(small_trip, "cut = \"intact\"", "use = \"steak\"\ncut = \"intact\"");
    CHECK(good_trip(steak).foods.front().use == facts::Use::steak);
    const problem::Problem unknown =
        only_problem(changed(small_trip, "cut = \"intact\"", "use = \"keep hot\"\ncut = \"intact\""));
    CHECK(unknown.code == problem::Code("word-unknown"));
    CHECK(unknown.place->line == 13);
    CHECK(unknown.hint.find("keep-hot") != std::string::npos);
}

TEST_CASE("what is kept hot starts hot and has no target") {
    const trip::Trip trip = good_trip(hot_food());
    CHECK(trip.foods.front().use == facts::Use::keep_hot);
    CHECK(trip.foods.front().start == units::celsius(80));
    CHECK(trip.foods.front().target == units::celsius(80));
    // Nothing else may start so hot.
    CHECK(only_problem(changed(small_trip, "start = \"4 C\"", "start = \"80 C\"")).code ==
          problem::Code("out-of-range"));
    const problem::Problem unused =
        only_problem(changed(hot_food(), "start = \"80 C\"", "start = \"80 C\"\ntarget = \"60 C\""));
    CHECK(unused.code == problem::Code("key-unused"));
    CHECK(unused.severity == problem::Severity::warning);
}

TEST_CASE("frozen food is told how to thaw, and how long where that is known") {
    const std::string frozen = changed(small_trip, "start = \"4 C\"", "start = \"-18 C\"");
    CHECK(only_problem(frozen).hint.find("cold water changed every 30 min") != std::string::npos);
    trip::Known knows = known();
    knows.thawing = [](units::Mass piece) { return "so long for " + std::to_string(piece.si()).substr(0, 3); };
    const auto read = trip::read_trip(frozen, "t.toml", files_in(trip_tests()), knows);
    REQUIRE_FALSE(read.ok());
    CHECK(read.problems().front().hint.find("so long for 0.6") != std::string::npos);
}

TEST_CASE("several sittings: ready by the first, held until the last") {
    const trip::Trip trip = good_trip(with_serve("[2027-05-08T17:00:00, 2027-05-08T17:40:00, 2027-05-08T18:30:00]"));
    CHECK(trip.serve == units::LocalTime::from_civil(2027, 5, 8, 18, 30));
    CHECK(trip::first_sitting(trip) == units::LocalTime::from_civil(2027, 5, 8, 17, 0));
    REQUIRE(trip.earlier_sittings.size() == 2);
    CHECK(trip.earlier_sittings.back() == units::minutes(50));
    CHECK(trip::first_eaten(trip.foods.front(), trip) == trip::first_sitting(trip));
    CHECK(trip::eaten(trip.foods.front(), trip) == trip.serve);
    // A food with a meal of its own has nothing to do with them.
    trip::Food lunch = trip.foods.front();
    lunch.out = units::LocalTime::from_civil(2027, 5, 8, 13, 0);
    CHECK(trip::first_eaten(lunch, trip) == *lunch.out);
    CHECK(trip::first_sitting(good_trip(small_trip)) == good_trip(small_trip).serve);
}

TEST_CASE("sittings in the wrong order, too few, too many, before the fire, or no times are refused at their place") {
    struct Row {
        const char* serve;
        const char* code;
        int column;
    };
    for (const Row& row : {Row{"[2027-05-08T18:00:00, 2027-05-08T17:00:00]", "times-order", 31},
                           Row{"[2027-05-08T18:00:00, 2027-05-08T18:00:00]", "times-order", 31},
                           Row{"[2027-05-08T18:00:00]", "out-of-range", 9}, Row{"[]", "out-of-range", 9},
                           Row{"[2027-05-08T18:00:00, \"18:30\"]", "type-wrong", 31},
                           Row{"[2027-05-08T09:00:00, 2027-05-08T18:00:00]", "times-order", 9},
                           Row{"[2027-05-08T11:00:00, 2027-05-08T12:00:00, 2027-05-08T13:00:00, 2027-05-08T14:00:00, "
                               "2027-05-08T15:00:00, 2027-05-08T16:00:00, 2027-05-08T17:00:00]",
                               "out-of-range", 9}}) {
        INFO(row.serve);
        const problem::Problem problem = only_problem(with_serve(row.serve));
        CHECK(problem.code.text() == std::string(row.code));
        CHECK(problem.place->line == 7);
        CHECK(problem.place->column == row.column);
        CHECK_FALSE(problem.hint.empty());
    }
}

TEST_CASE("hot water is of each person or of all, at the meal or at its own time") {
    const trip::Trip trip = good_trip(small_trip + R"(
[[hot_water]]
name = "tea"
per_person = "0.4 L"
[[hot_water]]
name = "washing-up"
volume = "6 L"
at = 2027-05-08T18:45:00
)");
    REQUIRE(trip.hot_water.size() == 2);
    CHECK(near_abs(units::in_litres(trip::all_of(trip.hot_water[0], trip)), 1.6, 1e-9));
    CHECK_FALSE(trip.hot_water[0].at.has_value());
    CHECK(near_abs(units::in_litres(trip::all_of(trip.hot_water[1], trip)), 6.0, 1e-9));
    CHECK(trip.hot_water[1].at == units::LocalTime::from_civil(2027, 5, 8, 18, 45));
    struct Row {
        const char* keys;
        const char* code;
    };
    for (const Row& row :
         {Row{"volume = \"6 L\"\nper_person = \"0.4 L\"", "key-unused"}, Row{"", "key-missing"},
          Row{"volume = \"6 L\"\nat = 2027-05-08T09:00:00", "food-time"},
          Row{"volume = \"6 L\"\nat = 2027-05-08T21:30:00", "food-time"}, Row{"per_person = \"20 L\"", "out-of-range"},
          Row{"volume = 6", "unit-missing"}, Row{"volume = \"6 L\"\nwhen = \"now\"", "key-unknown"}}) {
        INFO(row.keys);
        const problem::Problem problem = only_problem(small_trip + "[[hot_water]]\nname = \"tea\"\n" + row.keys + "\n");
        CHECK(problem.code.text() == std::string(row.code));
        CHECK(problem.place->line >= 36);
    }
}

TEST_CASE("all this stands in the canonical text, and is read again from it") {
    const std::string hot_water =
        "[[hot_water]]\nname = \"tea\"\nper_person = \"0.4 L\"\n[[hot_water]]\nname = \"pots\"\n"
        "volume = \"6 L\"\nat = 2027-05-08T18:45:00\n";
    for (const std::string& text :
         {hot_food(), small_trip + hot_water, with_serve("[2027-05-08T17:00:00, 2027-05-08T18:30:00]"),
          changed(small_trip, "cut = \"intact\"", "use = \"steak\"\ncut = \"intact\"")}) {
        const std::string once = trip::canonical(good_trip(text));
        CHECK(once == trip::canonical(good_trip(once)));
        CHECK(once != trip::canonical(good_trip(small_trip)));
    }
    CHECK(trip::canonical(good_trip(hot_food())).find("target") == std::string::npos);
}
