// SPDX-License-Identifier: MIT
// Whether one piece may be eaten: every reason for a no, the nearest plan allowed, and laws over a grid.
#include "answer/hold/hold_verdict.hpp"
#include "safety/clocks.hpp"
#include "safety/kill.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using namespace holdwater::support;
using answer::Why;
using units::celsius;

namespace {

answer::OnePieceQuestion question(const char* kind, double millimetres, double bath) {
    answer::OnePieceQuestion q;
    q.kind = facts::facts().find_food(kind);
    REQUIRE(q.kind != nullptr);
    q.body.thickness = units::millimetres(millimetres);
    q.bath = celsius(bath);
    q.start = celsius(5);
    return q;
}

answer::OnePieceAnswer answered(const answer::OnePieceQuestion& q) {
    const auto result = answer::answer_one_piece(q);
    REQUIRE(result.ok());
    return *result;
}

Why why(const answer::OnePieceQuestion& q) {
    return answered(q).why;
}

struct ReadingOfSlow {
    units::Diffusivity diffusivity;
    units::Conductivity conductivity;
};

}  // namespace

TEST_CASE("whole beef, chicken and fish in a bath that is warm enough may be eaten, not before the cautious time") {
    for (const auto& q :
         {question("beef-top-round", 40, 57), question("chicken-breast", 35, 62), question("salmon-farmed", 25, 65)}) {
        const auto a = answered(q);
        CAPTURE(q.kind->key);
        CHECK(a.why == Why::safe);
        REQUIRE(a.safe.has_value());
        CHECK(*a.safe >= *a.cautious->times.kill);
        CHECK(*a.safe >= *a.likely->times.safe);
    }
}

TEST_CASE("a bath below the credited rows kills nothing and is a no, with the nearest plan") {
    for (const auto& q : {question("beef-top-round", 40, 54), question("chicken-breast", 35, 59),
                          question("salmon-farmed", 25, 60), question("cod", 25, 40)}) {
        const auto a = answered(q);
        CAPTURE(q.kind->key);
        CHECK(a.why == Why::bath_too_cool);
        REQUIRE(a.nearest.has_value());
        CHECK(a.nearest->bath > q.bath);
        REQUIRE(a.nearest->safe.has_value());
        // The nearest plan is itself allowed.
        auto again = q;
        again.bath = a.nearest->bath;
        again.target = a.nearest->target;
        const auto b = answered(again);
        CHECK(b.why == Why::safe);
        CHECK(near_rel(std::max(*b.safe, *b.cautious->times.reach).si(), a.nearest->safe->si(), 1e-9));
    }
    CHECK_FALSE(answered(question("beef-top-round", 40, 54)).cautious->times.kill.has_value());
    CHECK_FALSE(answered(question("cod", 25, 62.9)).likely->times.kill.has_value());
}

TEST_CASE("an aim of 49 to 50 C is a no even in a bath of 57 C") {
    for (const double target : {49.0, 50.0, 54.0}) {
        auto q = question("beef-eye-of-round", 40, 57);
        q.target = celsius(target);
        const auto a = answered(q);
        CHECK(a.why == Why::target_refused);
        CHECK(a.refusal->code == problem::Code("target-too-low"));
        CHECK(a.nearest->target == celsius(54.4));
        CHECK(a.nearest->bath == celsius(57));
        CHECK(a.nearest->safe.has_value());
    }
}

TEST_CASE("a piece that comes up too slowly is a no, and the thickest one named passes") {
    auto q = question("beef-top-round", 120, 57);
    const auto a = answered(q);
    CHECK(a.why == Why::too_slow);
    REQUIRE(a.thickest.has_value());
    q.body.thickness = *a.thickest;
    CHECK(why(q) == Why::safe);
    q.body.thickness = *a.thickest + units::millimetres(2);
    CHECK(why(q) == Why::too_slow);
    q.body.thickness = *a.thickest + units::millimetres(2);
    q.body.contact = facts::Contact::bottom;
    CHECK(answered(q).safe_if_free.has_value() == false);  // free, it is still 2 mm too thick
    q.body.thickness = *a.thickest;
    CHECK(answered(q).safe_if_free.has_value());
}

TEST_CASE("kinds and cuts that a bath cannot make safe") {
    CHECK(why(question("wild-boar", 30, 75)) == Why::kind_refused);
    CHECK(why(question("bear", 30, 75)) == Why::kind_refused);
    CHECK(why(question("venison", 30, 65)) == Why::needs_finish);
    for (const facts::Cut cut :
         {facts::Cut::minced, facts::Cut::rolled, facts::Cut::stuffed, facts::Cut::injected, facts::Cut::tenderised}) {
        auto q = question("beef-top-round", 30, 62);
        q.cut = cut;
        const auto a = answered(q);
        CHECK(a.why == Why::needs_finish);
        CHECK(a.standard->finish->core >= celsius(68));
    }
    auto tied = question("beef-top-round", 30, 62);
    tied.cut = facts::Cut::tied;
    CHECK(why(tied) == Why::safe);
    auto at_risk = question("pork-liver", 30, 75);
    at_risk.at_risk = true;
    CHECK(why(at_risk) == Why::kind_refused);
}

TEST_CASE("people at risk ask for more") {
    auto q = question("beef-top-round", 30, 57);
    CHECK(why(q) == Why::safe);
    q.at_risk = true;
    const auto a = answered(q);
    CHECK(a.why == Why::bath_too_cool);
    CHECK(a.nearest->target == celsius(63));
}

TEST_CASE("a cold bath makes nothing safe") {
    auto q = question("beef-top-round", 30, 1);
    q.start = celsius(60);
    const auto a = answered(q);
    CHECK(a.why == Why::cools);
    CHECK(a.target == celsius(1.5));
    CHECK(*a.cautious->times.reach > *a.likely->times.reach);
}

TEST_CASE("given figures are taken exactly; what is left out is the likely figure of the kind") {
    auto q = question("pork-loin", 40, 65);
    q.film = units::FilmCoefficient{95};
    auto a = answered(q);
    CHECK(a.given->film.si() == 95.0);
    CHECK(a.given->diffusivity == a.likely->diffusivity);
    CHECK(a.given->conductivity == a.likely->conductivity);
    q.bag_given = true;
    q.bag = units::ThermalResistance{0.01};
    CHECK(near_rel(answered(q).given->film.si(), 1.0 / (1.0 / 95 + 0.01), 1e-12));
    q.diffusivity = units::Diffusivity{0.5e-7};  // slower than cautious: it decides
    a = answered(q);
    CHECK(a.given->diffusivity.si() == 0.5e-7);
    CHECK(a.safe >= a.given->times.safe);
}

TEST_CASE("own kill figures stand in where rules credit nothing, but lift no refusal") {
    const answer::KillFigures kill{units::minutes(4.68), celsius(60), units::kelvins(6.45), 7.0};
    auto q = question("chicken-breast", 30, 57);
    q.kill = kill;
    CHECK(why(q) == Why::own_figures);
    q.target = celsius(50);  // an aim that is refused stays refused
    CHECK(why(q) == Why::bath_too_cool);
    q.target.reset();
    q.bath = celsius(50);  // the core never comes up
    CHECK_FALSE(answered(q).eat());
    q.bath = celsius(57);
    q.cut = facts::Cut::minced;
    CHECK_FALSE(answered(q).eat());
    auto boar = question("wild-boar", 30, 70);
    boar.kill = kill;
    CHECK(why(boar) == Why::kind_refused);
    answer::OnePieceQuestion bare;
    bare.body.thickness = units::millimetres(30);
    bare.bath = celsius(60);
    bare.start = celsius(5);
    CHECK(answer::answer_one_piece(bare).problems().front().code == problem::Code("properties-missing"));
    bare.diffusivity = units::Diffusivity{1.11e-7};
    bare.conductivity = units::Conductivity{0.48};
    bare.film = units::FilmCoefficient{95};
    CHECK(why(bare) == Why::no_kind);
    bare.kill = kill;
    CHECK(why(bare) == Why::own_figures);
}

TEST_CASE("cautious is never less strict than likely; heat adaptation doubles the rows of slow pieces") {
    for (const char* kind : {"beef-top-round", "pork-loin-fat", "chicken-thigh", "salmon-farmed"}) {
        for (const double millimetres : {4.0, 15.0, 40.0, 90.0}) {
            for (const double bath : {54.5, 57.0, 60.0, 63.5, 70.0, 85.0}) {
                for (const auto shape : {facts::Shape::slab, facts::Shape::round, facts::Shape::ball}) {
                    auto q = question(kind, millimetres, bath);
                    q.body.shape = shape;
                    const auto a = answered(q);
                    const auto& likely = a.likely->times;
                    const auto& cautious = a.cautious->times;
                    CHECK(*cautious.reach >= *likely.reach);
                    CHECK(cautious.come_up.value_or(units::hours(1e6)) >= likely.come_up.value_or(units::hours(1e6)));
                    CHECK(cautious.kill.value_or(units::hours(1e6)) >= likely.kill.value_or(units::hours(1e6)));
                }
            }
        }
    }
}

TEST_CASE("a bath exactly at the floor: chicken at 60 C may be eaten, beef at 54.4 C and fish at 63 C may not") {
    const auto chicken = answered(question("chicken-breast", 30, 60));
    CHECK(chicken.why == Why::safe);
    CHECK(*chicken.safe < units::hours(6));
    // Hotter is never slower, also just above the floor.
    CHECK(*answered(question("chicken-breast", 30, 60.01)).safe <= *chicken.safe);
    CHECK(why(question("beef-top-round", 30, 54.4)) == Why::bath_too_cool);
    CHECK(why(question("cod", 30, 63)) == Why::bath_too_cool);
}

TEST_CASE("own kill figures never lift what people at risk need") {
    for (const char* kind : {"beef-top-round", "salmon-farmed"}) {
        auto q = question(kind, 30, 55);
        q.kill = answer::KillFigures{units::seconds(1), celsius(60), units::kelvins(6), 7.0};
        CHECK(answered(q).eat());
        q.at_risk = true;
        for (const bool aimed : {false, true}) {
            q.target = aimed ? std::optional{celsius(54.5)} : std::nullopt;
            CHECK_FALSE(answered(q).eat());
            CHECK(answered(q).nearest->target == celsius(63));
        }
    }
}

TEST_CASE("own kill figures are judged on the cautious reading of the kind") {
    auto q = question("chicken-breast", 40, 57);
    q.kill = answer::KillFigures{units::minutes(4.68), celsius(60), units::kelvins(6.45), 7.0};
    const auto a = answered(q);
    CHECK(a.why == Why::own_figures);
    CHECK(*a.safe > *a.given->times.kill);
    CHECK(*a.come_up == *a.cautious->times.come_up);
}

TEST_CASE("food that goes in warm or frozen is physics only, with or without own figures") {
    for (const auto& [start, warm] : {std::pair{25.5, true}, {45.0, true}, {-1.5, false}, {-5.0, false}}) {
        CAPTURE(start);
        const Why expected = warm ? Why::start_warm : Why::start_frozen;
        auto q = question("chicken-breast", 30, 62);
        q.start = celsius(start);
        CHECK(why(q) == expected);
        q.kill = answer::KillFigures{units::minutes(4.68), celsius(60), units::kelvins(6.45), 7.0};
        CHECK(why(q) == expected);
        answer::OnePieceQuestion bare = q;
        bare.kind = nullptr;
        bare.diffusivity = units::Diffusivity{1.11e-7};
        bare.conductivity = units::Conductivity{0.48};
        bare.film = units::FilmCoefficient{95};
        CHECK(why(bare) == expected);
        bare.kill.reset();
        CHECK(why(bare) == Why::no_kind);
    }
    for (const double start : {0.0, 25.0}) {
        auto q = question("chicken-breast", 30, 62);
        q.start = celsius(start);
        CHECK(why(q) == Why::safe);
    }
}

TEST_CASE("cautious is a piece 4 % and at least 2 mm thicker and 2 K colder, in slow food and a poor film") {
    for (const double millimetres : {20.0, 85.0}) {
        const auto q = question("beef-top-round", millimetres, 60);
        const auto a = answered(q);
        const ReadingOfSlow slow{a.cautious->diffusivity, a.cautious->conductivity};
        answer::PieceQuestion worse{q.body, q.bath, celsius(3), a.target, std::nullopt};
        worse.body.thickness = units::millimetres(millimetres + std::max(2.0, 0.04 * millimetres));
        heat::FoodProperties properties;
        properties.diffusivity = slow.diffusivity;
        properties.conductivity = slow.conductivity;
        const auto by_hand = answer::times_of(worse, properties, a.cautious->film, *a.standard);
        CHECK(near_rel(by_hand->kill->si(), a.cautious->times.kill->si(), 1e-9));
        CHECK(near_rel(by_hand->safe->si(), a.safe->si(), 1e-9));
        worse.body = q.body;
        CHECK(answer::times_of(worse, properties, a.cautious->film, *a.standard)->kill < a.cautious->times.kill);
    }
}

TEST_CASE("the 7-log rows of red meat are worked out beside the ones that decide, and never met sooner") {
    for (const double bath : {55.0, 57.5, 62.0, 66.0}) {
        const auto a = answered(question("beef-top-round", 40, bath));
        REQUIRE(a.cautious->times.kill_7.has_value());
        CHECK(*a.cautious->times.kill_7 >= *a.cautious->times.kill);
        CHECK(*a.likely->times.kill_7 >= *a.likely->times.kill);
    }
    CHECK_FALSE(answered(question("chicken-breast", 40, 62)).cautious->times.kill_7.has_value());
}

TEST_CASE("the thickest slab and round of a bath: they come up in time, one kelvin cooler never allows more") {
    for (const char* kind : {"beef-top-round", "pork-loin", "chicken-breast"}) {
        units::Length slab;
        units::Length round;
        for (const double bath : {57.0, 60.0, 63.0, 66.0}) {
            CAPTURE(kind);
            CAPTURE(bath);
            const auto a = answered(question(kind, 30, bath));
            REQUIRE(a.thickest_slab.has_value());
            REQUIRE(a.thickest_round.has_value());
            CHECK(*a.thickest_round > *a.thickest_slab);
            CHECK(*a.thickest_slab >= slab);
            CHECK(*a.thickest_round >= round);
            slab = *a.thickest_slab;
            round = *a.thickest_round;
            auto thick = question(kind, units::in_millimetres(slab), bath);
            const auto passes = answered(thick);
            CHECK(safety::judge_come_up(passes.cautious->times.come_up) != safety::ComeUpVerdict::refused);
            thick.body.thickness += units::millimetres(3);
            const auto fails = answered(thick);
            CHECK(safety::judge_come_up(fails.cautious->times.come_up) == safety::ComeUpVerdict::refused);
        }
    }
}
