// SPDX-License-Identifier: MIT
// What the notes of a log say about food and water.
#include "answer/review_notes.hpp"
#include "review/reading.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;
using units::minutes;

namespace {

/// The crew's trip with a second food.
trip::Trip two_foods() {
    trip::Trip trip = log_trip("crew.toml");
    trip.foods.push_back(trip.foods.front());
    trip.foods.back().name = "Trout, whole";
    return trip;
}

answer::Notes notes_of(const trip::Trip& trip, const std::string& rows) {
    return answer::read_notes(trip, log_from("time_min,bath_c,note\n" + rows));
}

}  // namespace

TEST_CASE("food in and out, in the words that people write") {
    const trip::Trip trip = log_trip("crew.toml");
    for (const std::string in : {"food in", "Food In", "IN", " in ", "lid open; food in", "meat in"}) {
        CAPTURE(in);
        const auto notes = notes_of(trip, "0,70,\n10,69," + in + "\n60,65,served\n90,64,\n");
        CHECK(notes.remarks.empty());
        CHECK(notes.stays[0].in == minutes(10));
        CHECK(notes.stays[0].out == minutes(60));
    }
    for (const std::string other : {"inside the hut", "windy outside", "food almost in", "turned", "out of wood"}) {
        CAPTURE(other);
        const auto notes = notes_of(trip, "0,70,food in\n10,69," + other + "\n60,65,\n");
        CHECK(notes.stays[0].in == minutes(0));
        CHECK(notes.stays[0].out == minutes(60));
    }
}

TEST_CASE("without a note the first row counts, which is warned of") {
    const auto notes = notes_of(log_trip("crew.toml"), "5,70,\n60,65,\n");
    CHECK(has_code(notes.remarks, "no-food-in"));
    CHECK(notes.stays[0].in == minutes(5));
    CHECK(notes.stays[0].out == minutes(60));
}

TEST_CASE("each food by name, capitals and commas aside") {
    const auto notes = notes_of(
        two_foods(), "0,70,food in: Pork Loin\n90,66,\"in: trout, whole\"\n120,65,out: pork loin\n150,64,served\n");
    CHECK(notes.remarks.empty());
    CHECK(notes.stays[0].in == minutes(0));
    CHECK(notes.stays[0].out == minutes(120));
    CHECK(notes.stays[1].in == minutes(90));
    CHECK(notes.stays[1].out == minutes(150));
}

TEST_CASE("a name counts before a note for all, and a food that nobody has is named") {
    const auto notes =
        notes_of(two_foods(), "0,70,food in\n90,66,\"food in: trout, whole\"\n120,65,food in: goose\n150,64,\n");
    CHECK(notes.stays[0].in == minutes(0));
    CHECK(notes.stays[1].in == minutes(90));
    CHECK(has_code(notes.remarks, "note-food-unknown"));
    CHECK(notes.remarks.front().place->line == 4);
}

TEST_CASE("going in twice is an error, coming out before going in a warning") {
    const trip::Trip trip = log_trip("crew.toml");
    CHECK(problem::has_error(notes_of(trip, "0,70,food in\n60,66,food in\n").remarks));
    CHECK_FALSE(answer::review(trip, log_from("time_min,bath_c,note\n0,70,food in\n60,66,in\n")).ok());
    const auto swapped = notes_of(trip, "0,70,out\n60,66,food in\n90,65,\n");
    CHECK(has_code(swapped.remarks, "out-before-in"));
    CHECK(swapped.stays[0].out == minutes(90));
}

TEST_CASE("pouring is known by its first words") {
    for (const char* note : {"top-up", "Topped up 4 L", "top up", "swap 3 L", "lid; topped up", "hot water in"}) {
        CAPTURE(note);
        CHECK(answer::says_poured(note));
    }
    for (const char* note : {"", "lid", "no top-up", "stopped", "food in"}) {
        CAPTURE(note);
        CHECK_FALSE(answer::says_poured(note));
    }
}
