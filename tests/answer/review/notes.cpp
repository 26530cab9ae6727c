// SPDX-License-Identifier: MIT
// What the notes of a log say about food and water.
#include "answer/review/reading.hpp"
#include "answer/review/review_notes.hpp"

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
    for (const std::string in : {"food in", "Food In", "IN", " in ", "lid open; food in", "meat in", "food in.",
                                 "food in!", "food in (2 pieces)", "put food in", "food  in", "pork loin in",
                                 "\"food in, lid shut\"", "put all the food into the bath", "loins in"}) {
        CAPTURE(in);
        const auto notes = notes_of(trip, "0,70,\n10,69," + in + "\n60,65,served\n90,64,\n");
        CHECK(notes.remarks.empty());
        CHECK(notes.stays[0].in == minutes(10));
        CHECK(notes.stays[0].out == minutes(60));
    }
    for (const std::string other :
         {"inside the hut", "windy outside", "turned", "out of wood", "lid out", "took the lid off", "took a reading",
          "hot water in", "swap 3 L out", "removed the lid", "2 K lower in the morning"}) {
        CAPTURE(other);
        const auto notes = notes_of(trip, "0,70,food in\n10,69," + other + "\n60,65,\n");
        CHECK(notes.stays[0].in == minutes(0));
        CHECK(notes.stays[0].out == minutes(60));
        CHECK(notes.stays[0].known);
        CHECK_FALSE(notes.stays[0].out_written);
    }
    for (const std::string out : {"took the food out", "Out.", "eaten", "removed", "served!", "meat taken out", "OUT",
                                  "pork loin out", "we ate it", "took it out of the water", "\"out, lid shut\""}) {
        CAPTURE(out);
        const auto notes = notes_of(trip, "0,70,food in\n60,65," + out + "\n90,64,\n");
        CHECK(notes.remarks.empty());
        CHECK(notes.stays[0].out == minutes(60));
        CHECK(notes.stays[0].out_written);
    }
}

TEST_CASE("a note that may be about the food is asked about, and nobody may eat by it") {
    const trip::Trip trip = log_trip("crew.toml");
    const std::string later = "120,66.2,\n240,64.0,\n360,61.9,\n420,60.9,\n";
    CHECK(reviewed(trip, log_from("time_min,bath_c,note\n0,70,food in\n60,67.4,\n" + later)).verdict ==
          answer::Verdict::eat);
    for (const std::string unclear :
         {"food almost in", "half the food out", "went out for a walk", "food back in", "food out?", "goose out",
          "in and out", "took something", "out in the rain", "took it out and the lid off"}) {
        CAPTURE(unclear);
        const trip::Log log = log_from("time_min,bath_c,note\n0,70,food in\n60,67.4," + unclear + "\n" + later);
        const answer::Review review = reviewed(trip, log);
        CHECK(support::has_code(review.remarks, "note-unclear"));
        CHECK(review.verdict == answer::Verdict::not_done);
        CHECK_FALSE(review.foods[0].stay_known);
        CHECK_FALSE(review.foods[0].ready_late.has_value());
    }
    // No moment of going in at all: the same.
    const answer::Review none = reviewed(trip, log_from("time_min,bath_c,note\n0,70,\n60,67.4,\n" + later));
    CHECK(none.verdict == answer::Verdict::not_done);
    // Once the food is out, nothing more can be said about it.
    const trip::Log after = log_from("time_min,bath_c,note\n0,70,food in\n60,67.4,\n" + later +
                                     "430,60.7,food out\n440,60.6,went out for a walk\n");
    CHECK(reviewed(trip, after).verdict == answer::Verdict::eat);
}

TEST_CASE("one food of two by a part of its name: a late one is never judged by the other's time") {
    trip::Trip trip = two_foods();
    trip.foods.back().name = "flank steak";
    for (const char* note : {"steak in", "food in: steak", "in: flank steak", "put the steak in"}) {
        CAPTURE(note);
        const auto notes = notes_of(trip, std::string("0,70,pork loin in\n290,63,") + note + "\n300,62.9,out\n");
        CHECK(notes.remarks.empty());
        CHECK(notes.stays[0].in == minutes(0));
        CHECK(notes.stays[1].in == minutes(290));
        CHECK(notes.stays[1].out == minutes(300));
    }
    // A food of that name is in neither: no stay is trusted.
    const auto goose = notes_of(trip, "0,70,food in\n290,63,food in: goose\n300,62.9,out\n");
    CHECK_FALSE(goose.stays[0].known);
    CHECK_FALSE(goose.stays[1].known);
}

TEST_CASE("without a note the first row counts, which is warned of") {
    const auto notes = notes_of(log_trip("crew.toml"), "5,70,\n60,65,\n");
    CHECK(support::has_code(notes.remarks, "no-food-in"));
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
    CHECK(support::has_code(notes.remarks, "note-food-unknown"));
    CHECK(notes.remarks.front().place->line == 4);
}

TEST_CASE("going in twice is an error, coming out before going in a warning") {
    const trip::Trip trip = log_trip("crew.toml");
    CHECK(problem::has_error(notes_of(trip, "0,70,food in\n60,66,food in\n").remarks));
    CHECK_FALSE(answer::review(trip, log_from("time_min,bath_c,note\n0,70,food in\n60,66,in\n")).ok());
    const auto swapped = notes_of(trip, "0,70,out\n60,66,food in\n90,65,\n");
    CHECK(support::has_code(swapped.remarks, "out-before-in"));
    CHECK(swapped.stays[0].out == minutes(90));
    CHECK_FALSE(swapped.stays[0].known);
}

TEST_CASE("coming out twice is an error; served after it came out is not, and the first counts") {
    const trip::Trip trip = log_trip("crew.toml");
    const auto twice = notes_of(trip, "0,70,food in\n60,66,food out\n120,65,\n360,63,out\n");
    CHECK(problem::has_error(twice.remarks));
    CHECK(support::has_code(twice.remarks, "food-out-twice"));
    const auto served = notes_of(trip, "0,70,food in\n60,66,food out\n75,65,served\n90,65,\n");
    CHECK(served.remarks.empty());
    CHECK(served.stays[0].out == minutes(60));
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
