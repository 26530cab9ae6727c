// SPDX-License-Identifier: MIT
// What each kind of food, eater and rule does to the verdict.
#include "answer/review/reading.hpp"
#include "safety/growth.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace holdwater;
using namespace holdwater::support;
using answer::Verdict;
using units::in_hours;

namespace {

trip::Log minutes_log(const std::string& rows) {
    return log_from("time_min,bath_c,note\n" + rows);
}

/// Hot and fair for seven hours.
const std::string fair =
    "0,70,food in\n60,67.4,\n120,66.2,\n180,65.1,\n240,64.0,\n300,62.9,\n360,61.9,\n420,60.9,served\n";

std::string day(double lowest_at_20_h) {
    std::string rows = "0,68,food in\n";
    for (int h = 2; h <= 24; h += 2) {
        rows += fmt::format("{},{},\n", h * 60, h == 20 ? lowest_at_20_h : 61.8);
        rows += h < 24 ? fmt::format("{},64.0,topped up\n", h * 60) : "";
    }
    return rows;
}

}  // namespace

TEST_CASE("up to a day in the bath is harmless only while nothing falls below the floor") {
    const trip::Trip trip = log_trip("crew.toml");
    const answer::Review held = reviewed(trip, minutes_log(day(61.8)));
    CHECK(held.verdict == Verdict::eat);
    CHECK(held.below_floor.si() == 0.0);
    const answer::Review dipped = reviewed(trip, minutes_log(day(54.0)));
    CHECK(dipped.verdict != Verdict::eat);
    CHECK(dipped.below_floor.si() > 0.0);
}

TEST_CASE("the clock names the rule that decided") {
    const trip::Trip trip = log_trip("crew.toml");
    const answer::Review lid = reviewed(trip, named_log("forgotten-lid"));
    CHECK(lid.foods[0].reason.figure == "fall.eat-next");
    CHECK(lid.foods[0].reason.source == facts::facts().figure("fall.eat-next").source);
    CHECK(lid.foods[0].reason.rule == "us/red-meat");
    CHECK(reviewed(trip, named_log("down-to-48")).foods[0].reason.figure == "fall.eat-now");
    CHECK(reviewed(trip, named_log("fast-leak")).foods[0].reason.figure == "fall.growth");
    CHECK(reviewed(log_trip("uk.toml"), named_log("uk-second-fall")).foods[0].reason.figure == "fall.uk");
    CHECK(reviewed(trip, minutes_log(fair)).foods[0].reason.figure == "us-red-meat-6.5");
}

TEST_CASE("what is missing is the time after which it would be done") {
    const trip::Trip trip = log_trip("crew.toml");
    const answer::Review early = reviewed(trip, named_log("too-early"));
    REQUIRE(early.foods[0].missing.has_value());
    CHECK(early.foods[0].margin < 1.0);
    // Held on at the last reading for so long and a little longer, it is done; a little less, it is not.
    const std::string head = "0,68,food in\n30,66,\n60,64.8,\n90,63.8,\n120,63,\n";
    const double minutes = units::in_minutes(*early.foods[0].missing);
    std::string rows = head;
    for (int i = 1; i <= 10; ++i) {
        rows += fmt::format("{:.2f},63,top-up\n", 120 + minutes * 1.25 * i / 10.0);
    }
    CHECK(reviewed(trip, minutes_log(rows)).verdict == Verdict::eat);
    const answer::Review cool = reviewed(trip, minutes_log("0,56,food in\n60,55.5,\n120,55.0,\n"));
    CHECK_FALSE(cool.foods[0].missing.has_value());
    CHECK_FALSE(cool.foods[0].credited);
}

TEST_CASE("the rows met, but what grew while it warmed is not dead yet: not ready before that") {
    trip::Trip trip = log_trip("crew.toml");
    trip.foods[0].thickness = units::millimetres(112);
    int waiting = 0;
    bool ready = false;
    double left = 0.0;
    for (int end = 330; end <= 600 && !ready; end += 10) {
        std::string rows = "0,66,food in\n";
        for (int minute = 30; minute <= end; minute += 30) {
            rows += fmt::format("{},61,\n{},62.5,top-up\n", minute, minute + 1);
        }
        const answer::Review review = reviewed(trip, minutes_log(rows + fmt::format("{},62,served\n", end + 2)));
        const answer::FoodReview& food = review.foods[0];
        INFO(end, " min: margin ", food.margin, ", left ", food.growth_left);
        if (food.waits_for_growth) {
            ++waiting;
            left = food.growth_left;
            CHECK(food.margin >= 1.0);
            CHECK(food.growth_left > 0.0);
            CHECK(review.verdict == Verdict::not_done);
            CHECK(food.reason.figure == "perfringens.d.cautious");
            CHECK_FALSE(food.ready_late.has_value());
        } else if (food.ready_late) {
            ready = true;
            CHECK(food.growth_left == 0.0);
            CHECK(review.verdict == Verdict::eat);
        }
    }
    CHECK(waiting > 0);
    CHECK(ready);
    MESSAGE("waited at ", waiting, " of the ends, at the last with ", left, " log10 left");
}

TEST_CASE("likely growth is what the model gives along the likely histories, no bound") {
    // A night out of the bath's reach: down to 25 C and there for hours.
    const trip::Trip trip = log_trip("crew.toml");
    const answer::Review review = reviewed(
        trip, minutes_log("0,66,food in\n240,63,\n300,50,lid off\n360,38,\n420,29,\n480,25,\n720,22,\n960,20,\n"));
    const answer::FoodReview& food = review.foods[0];
    const facts::GrowthModel& model = facts::facts().growth("pork");
    double core = 0.0;
    for (double t = 240.0 * 60.0; t < 960.0 * 60.0; t += 60.0) {
        core += safety::growth_rate(model, food.core_likely.at(units::seconds(t))) / 60.0;
    }
    const double along_core = safety::lagged_growth(core, model.q0_likely);
    INFO("core ", along_core, ", likely ", food.growth.likely, ", bound ", food.growth.bound);
    CHECK(food.growth.likely >= along_core - 0.1);
    CHECK(food.growth.likely < along_core + 2.0);
    CHECK(food.growth.bound > 2.0 * food.growth.likely);
}

TEST_CASE("food that is not done and cooled off goes over the fire, which does both") {
    const answer::Review review =
        reviewed(log_trip("crew.toml"),
                 minutes_log("0,66,food in\n60,62,\n90,60.8,\n120,53.5,lid\n121,62,topped up\n150,61,\n"));
    CHECK_FALSE(review.foods[0].ready_late.has_value());
    CHECK(review.verdict == Verdict::finish_and_eat_next);
    CHECK(review.foods[0].below_cook_floor.si() > 0.0);
    CHECK(review.foods[0].below_hold_floor.si() == 0.0);
}

TEST_CASE("a core that warms for over six hours is thrown away, for whatever reason") {
    trip::Trip trip = log_trip("crew.toml");
    trip.foods[0].thickness = units::millimetres(160);
    std::string rows = "0,62,food in\n";
    for (int h = 1; h <= 12; ++h) {
        rows += fmt::format("{},61,top-up\n", h * 60);
    }
    const answer::Review review = reviewed(trip, minutes_log(rows));
    CHECK(review.foods[0].come_up_verdict == safety::ComeUpVerdict::refused);
    CHECK(review.verdict == Verdict::throw_away);
    CHECK(review.foods[0].reason.figure == "come-up.refuse");
}

TEST_CASE("people at risk: the strictest") {
    trip::Trip trip = log_trip("crew.toml");
    const trip::Log two_to_four = named_log("gap-at-night");
    CHECK(reviewed(trip, two_to_four).verdict == Verdict::finish_and_eat_now);
    trip.at_risk = true;
    trip.foods[0].target = units::celsius(65);
    const answer::Review review = reviewed(trip, two_to_four);
    CHECK(review.verdict == Verdict::throw_away);
    // 63 C for 3 min at the core, not the hold rows alone.
    const std::string warm = "0,67,food in\n60,65,\n120,64,\n180,63,\n240,62.5,\n300,62,served\n";
    CHECK(reviewed(trip, minutes_log(warm)).verdict == Verdict::not_done);
    trip.at_risk = false;
    CHECK(reviewed(trip, minutes_log(warm)).verdict == Verdict::eat);
}

TEST_CASE("a target that the rules refuse is warned of, and the core is judged all the same") {
    trip::Trip trip = log_trip("crew.toml");
    trip.foods[0].target = units::celsius(50);
    const answer::Review review = reviewed(trip, minutes_log(fair));
    CHECK(support::has_code(review.remarks, "target-too-low"));
    CHECK(review.verdict == Verdict::eat);
}

TEST_CASE("a refused food gets no verdict") {
    trip::Trip trip = log_trip("crew.toml");
    trip.foods[0].kind = "wild-boar";
    REQUIRE(facts::facts().find_food("wild-boar") != nullptr);
    const auto review = answer::review(trip, minutes_log(fair));
    CHECK_FALSE(review.ok());
    CHECK(support::has_code(review.problems(), "category-refused"));
}

TEST_CASE("without a thermometer in the trip its error is assumed, which is warned of") {
    trip::Trip trip = log_trip("crew.toml");
    trip.boxes[0].thermometer.reset();
    const answer::Review review = reviewed(trip, minutes_log(fair));
    CHECK(support::has_code(review.remarks, "thermometer-unknown"));
    CHECK(near_abs(review.error.si(), facts::facts().value("review.no-thermometer"), 1e-12));
}

TEST_CASE("two boxes are two reviews") {
    trip::Trip trip = log_trip("crew.toml");
    trip.boxes.push_back(trip.boxes[0]);
    CHECK(support::has_code(answer::review(trip, minutes_log(fair)).problems(), "two-boxes"));
}

TEST_CASE("several foods: the worst one leads") {
    trip::Trip trip = log_trip("crew.toml");
    trip.foods.push_back(trip.foods[0]);
    trip.foods[1].name = "late loin";
    const answer::Review review = reviewed(
        trip,
        minutes_log("0,70,food in: pork loin\n60,67.4,\n120,66.2,\n180,65.1,\n240,64,\n300,63,in: late loin\n330,62,\n"
                    "360,61.5,\n"));
    CHECK(review.foods[0].verdict == Verdict::eat);
    CHECK(review.foods[1].verdict == Verdict::not_done);
    CHECK(review.worst == 1);
    CHECK(review.verdict == Verdict::not_done);
}

TEST_CASE("a core column lowers the core, never lifts it, and is named where it differs") {
    const trip::Trip trip = log_trip("crew.toml");
    const auto with_core = [&](const std::string& core) {
        return reviewed(trip, log_from("time_min,bath_c,core_c,note\n0,70,,food in\n120,66.2,,\n240,64.0," + core +
                                       ",\n360,61.9," + core + ",\n"));
    };
    const answer::Review without = with_core("");
    const answer::Review low = with_core("50");
    const answer::Review high = with_core("70");
    CHECK(without.foods[0].ready_late.has_value());
    CHECK_FALSE(low.foods[0].ready_late.has_value());
    CHECK(support::has_code(low.remarks, "core-differs"));
    CHECK(support::has_code(high.remarks, "core-differs"));
    CHECK(near_abs(high.foods[0].kill, without.foods[0].kill, 1e-9));
    REQUIRE(low.foods[0].core_readings.size() == 2);
    CHECK(low.foods[0].core_readings[0].likely > units::celsius(58));
    CHECK(near_abs(low.foods[0].core_end.celsius(), 49, 1e-9));
}

TEST_CASE("a log of another day is warned of") {
    const trip::Log log = log_from("time,bath_c,note\n2026-10-15T16:00,70,food in\n2026-10-15T20:00,66,\n");
    CHECK(support::has_code(reviewed(log_trip("crew.toml"), log).remarks, "log-other-day"));
    const trip::Log right = log_from("time,bath_c,note\n2027-10-15T16:00,70,food in\n2027-10-15T20:00,66,\n");
    CHECK_FALSE(support::has_code(reviewed(log_trip("crew.toml"), right).remarks, "log-other-day"));
}

TEST_CASE("doubtful readings: the verdict without them stands beside") {
    const answer::Review review = reviewed(log_trip("crew.toml"), named_log("thermometer-jump"));
    REQUIRE(review.without_doubtful.has_value());
    CHECK(review.without_doubtful->verdict == Verdict::eat);
    CHECK(review.without_doubtful->below_floor.si() == 0.0);
    CHECK_FALSE(reviewed(log_trip("crew.toml"), named_log("fair-night")).without_doubtful.has_value());
}

TEST_CASE("watches are given as they were written") {
    CHECK(answer::watch(named_log("fair-night"), units::hours(8)) == "01:00");
    CHECK(answer::watch(named_log("fast-leak"), units::hours(1.5)) == "minute 90");
    const trip::Log log = log_from("time,bath_c,note\n2027-10-15T16:00,70,food in\n");
    CHECK(answer::watch(log, units::hours(10)) == "Sat 02:00");
}
