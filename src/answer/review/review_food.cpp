// SPDX-License-Identifier: MIT
#include "answer/review/review_food.hpp"

#include "answer/review/review_clock.hpp"
#include "answer/review/review_ready.hpp"
#include "answer/review/review_verdict.hpp"
#include "facts/facts.hpp"
#include "heat/driven.hpp"
#include "safety/growth.hpp"
#include "safety/kill.hpp"
#include "safety/net_growth.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::History;
using units::Temperature;
using units::TemperatureDifference;

/// The piece as measured (0), thicker (1) or thinner (-1) by the spread of thicknesses.
heat::Body body_of(const Piece& piece, int side) {
    const facts::Spread& spread = facts::facts().spread("thickness");
    const double least = facts::facts().spread("thickness.least").high * 1e-3;
    heat::Body body = piece.body;
    body.thickness += units::Length{side * std::max(body.thickness.si() * (spread.high - 1.0), least)};
    return body;
}

/// The layer that an unstirred box hides. Likely: the middle of its spread. Cautious: its full end, besides the full
/// error of the reading that is in the path already.
TemperatureDifference layer_of(heat::Bound reading) {
    const facts::Spread& layer = facts::facts().spread("unstirred");
    return units::kelvins(reading == heat::Bound::slow ? layer.high : (layer.low + layer.high) / 2.0);
}

/// Of two moments that may never come.
std::optional<Duration> sooner(const std::optional<Duration>& a, const std::optional<Duration>& b) {
    return a && b ? std::min(*a, *b) : a ? a : b;
}

Duration first_reading_of(const trip::Log& log) {
    const auto read = std::find_if(log.rows.begin(), log.rows.end(), [](const trip::LogRow& row) { return row.bath; });
    return read != log.rows.end() ? read->at : log.rows.back().at;
}

std::vector<CoreReading> core_readings_of(const trip::Log& log, Stay stay, const History& likely,
                                          const History& cautious) {
    std::vector<CoreReading> readings;
    for (const trip::LogRow& row : log.rows) {
        if (row.core && row.at >= stay.in && row.at <= stay.out) {
            readings.push_back({row.at, *row.core, likely.at(row.at), cautious.at(row.at)});
        }
    }
    return readings;
}

/// From when on a written core starts the clock: it read below the floor, less its error, after it was done, or after
/// it had read as warm as the floor. It may have fallen right after the reading before.
std::optional<Duration> cold_from(const Course& course, const std::vector<CoreReading>& readings,
                                  TemperatureDifference error) {
    std::optional<Duration> warm = course.done;
    std::optional<Duration> before;
    for (const CoreReading& reading : readings) {
        const bool done = course.done && *course.done <= reading.at;
        const Temperature floor = done ? std::max(course.cook_floor, course.hold_floor) : course.cook_floor;
        if (warm && *warm <= reading.at && reading.read - error < floor) {
            return std::max(*warm, before.value_or(*warm));
        }
        if (reading.read >= floor) {
            warm = std::min(warm.value_or(reading.at), reading.at);
        }
        before = reading.at;
    }
    return std::nullopt;
}

/// When it can have been done at the soonest: warm at the start, quick to warm, in a bath as much hotter than read as
/// the thermometer may be off, stirred all the time.
std::optional<Duration> soonest_done(const Piece& piece, const safety::Standard& standard, const Stay& stay,
                                     const BathPaths& paths, const heat::Modes& fast, TemperatureDifference error) {
    History hot = part_of(paths.likely, stay.in, stay.out);
    for (History::Point& point : hot.points) {
        point.value = point.value + error;
    }
    const Temperature start = piece.start + units::kelvins(facts::facts().spread("start").high);
    return done_along(heat::driven(fast, start, hot, stay.in, stay.out).core, standard).safe;
}

double lagged(const facts::GrowthModel& model, const History& core, double q0) {
    return safety::growth_with_lag(model, core, q0);
}

Growth come_up_growth(const facts::GrowthModel& model, const History& likely, const History& cautious) {
    const Temperature to = facts::facts().temperature("come-up.to");
    const auto rise = [&](const History& core) {
        return part_of(core, core.points.front().at, core.first_at_or_above(to).value_or(core.points.back().at));
    };
    return {lagged(model, rise(cautious), model.q0_cautious), lagged(model, rise(likely), model.q0_likely),
            safety::growth_without_lag(model, rise(cautious))};
}

}  // namespace

problem::Result<safety::Standard> standard_for_review(const trip::Trip& trip, const trip::Food& food,
                                                      problem::Problems& remarks) {
    trip::Box box = trip.boxes.front();
    box.thermometer = box.thermometer.value_or(facts::facts().difference("review.no-thermometer"));
    auto standard = standard_of(food, trip, box);
    if (standard) {
        return standard;
    }
    const bool only_target = std::all_of(
        standard.problems().begin(), standard.problems().end(),
        [](const problem::Problem& p) { return p.code == "target-too-low" || p.code == "at-risk-target-too-low"; });
    if (!only_target) {
        return standard;
    }
    for (problem::Problem p : standard.problems()) {
        p.severity = problem::Severity::warning;
        p.hint += " Judged by what the core itself did.";
        remarks.push_back(std::move(p));
    }
    trip::Food hotter = food;
    hotter.target = facts::facts().temperature("finish.full");
    return standard_of(hotter, trip, box);
}

problem::Result<heat::Modes> modes_for(const Piece& piece, heat::Bound reading) {
    const int side = reading == heat::Bound::slow ? 1 : reading == heat::Bound::fast ? -1 : 0;
    return heat::modes_of(body_of(piece, side), properties_of(piece, reading), film_of(piece, reading));
}

problem::Result<FoodReview> review_food(const trip::Trip& trip, const trip::Log& log, const trip::Food& food,
                                        const safety::Standard& standard, Stay stay, const BathPaths& paths,
                                        TemperatureDifference error) {
    const Piece piece = piece_of(food);
    const auto slow = modes_for(piece, heat::Bound::slow);
    const auto likely = modes_for(piece, heat::Bound::likely);
    const auto fast = modes_for(piece, heat::Bound::fast);
    for (const auto* modes : {&slow, &likely, &fast}) {
        if (!*modes) {
            return modes->problems();
        }
    }
    FoodReview result;
    result.food = &food;
    result.standard = standard;
    result.in = stay.in;
    result.out = stay.out;
    result.out_written = stay.out_written;
    result.stay_known = stay.known;

    const TemperatureDifference colder_start = units::kelvins(facts::facts().spread("start").low);
    Course course;
    course.bath = part_of(paths.cautious, stay.in, stay.out);
    course.seen = seen_by_food(course.bath, stay.in, layer_of(heat::Bound::slow));
    const History seen_likely =
        seen_by_food(part_of(paths.likely, stay.in, stay.out), stay.in, layer_of(heat::Bound::likely));
    const auto core_in = [&](const heat::Modes& modes, const History& bath, TemperatureDifference off) {
        return heat::driven(modes, piece.start + off, bath, stay.in, stay.out).core;
    };
    result.core_likely = core_in(*likely, seen_likely, units::kelvins(0));
    const History computed = core_in(*slow, course.seen, colder_start);
    result.core_readings = core_readings_of(log, stay, result.core_likely, computed);
    result.core_cautious = not_above(computed, result.core_readings, error);
    course.core = result.core_cautious;
    course.core_fast = not_above(core_in(*fast, course.seen, colder_start), result.core_readings, error);
    course.in = stay.in;
    course.out = stay.out;
    course.cook_floor = standard.cook_floor;
    course.hold_floor = standard.hold_floor;

    // What is ready in time at the worst of everything at once is ready beyond doubt, and what is not even likely ready
    // is not. Whatever lies between is asked as the plan asks it: is it in 95 of 100 ways?
    const Done done_likely = done_along(result.core_likely, standard);
    const Done worst = done_along(result.core_cautious, standard);
    std::optional<Duration> safe = worst.safe;
    std::optional<Duration> ready = worst.ready;
    History deciding_core = result.core_cautious;
    if (!ready && done_likely.ready) {
        auto deciding =
            deciding_way({piece, standard, stay, course.bath, first_reading_of(log), result.core_readings, error});
        if (!deciding) {
            return deciding.problems();
        }
        safe = sooner(safe, deciding->safe);
        ready = deciding->ready;
        deciding_core = std::move(deciding).value().core;
    }
    const bool in_time = ready && *ready <= stay.out;
    course.done = safe && *safe <= stay.out ? safe : std::nullopt;
    course.hold_from = soonest_done(piece, standard, stay, paths, *fast, error);
    result.hold_from = std::min({course.hold_from.value_or(stay.out), stay.out, course.done.value_or(stay.out)});
    course.core_counts_from = cold_from(course, result.core_readings, error);
    result.consumer_met = stays_warm(result.core_cautious, standard.consumer_core, standard.consumer_hold);
    result.come_up = worst.come_up;
    result.come_up_verdict = judge_rise(result.core_cautious, worst.come_up);
    result.adaptation = safety::adaptation_factor(worst.come_up);
    result.kill = safety::kill_fraction(*standard.kill, result.core_cautious);
    result.kill_likely = safety::kill_fraction(*standard.kill, result.core_likely);
    result.margin = safety::kill_fraction(*standard.kill, deciding_core) /
                    safety::adaptation_factor(safety::come_up(deciding_core));
    result.core_peak = result.core_likely.highest();
    result.core_end = result.core_cautious.points.back().value;
    if (done_likely.ready && stay.known) {
        result.ready_likely = *done_likely.ready - stay.in;
    }
    if (!stay.known) {
        result.credited = false;
    } else if (in_time) {
        result.ready_late = *ready - stay.in;
    } else {
        History goes_on = course.bath;
        goes_on.add(stay.out + facts::facts().duration("review.look-ahead"), goes_on.points.back().value);
        const Missing missing = missing_time(*slow, piece.start + colder_start, course,
                                             seen_by_food(goes_on, stay.in, layer_of(heat::Bound::slow)), standard);
        result.missing = missing.time;
        result.credited = missing.credited;
    }

    const facts::GrowthModel& model = facts::facts().growth(facts::facts().find_food(food.kind)->growth);
    const Clocks clocks = clocks_of(course);
    const double exponent = growth_exponent(course, model);
    result.fall = clocks.fall;
    result.below_cook_floor = clocks.cooking;
    result.below_hold_floor = clocks.holding;
    result.growth.bound = std::max(0.0, safety::lagged_growth(exponent, model.q0_cautious));
    result.growth.without_lag = exponent;
    result.fall.growth = result.growth.bound;
    result.growth_left = safety::cautious_left_over(model, deciding_core, stay.out).log10;
    result.waits_for_growth = course.done && !in_time;
    result.come_up_growth = come_up_growth(model, result.core_likely, result.core_cautious);

    Course as_likely = course;
    as_likely.bath = part_of(paths.likely, stay.in, stay.out);
    as_likely.seen = seen_likely;
    as_likely.core = as_likely.core_fast = result.core_likely;
    as_likely.done = done_likely.safe;
    as_likely.hold_from.reset();
    as_likely.core_counts_from.reset();
    result.below_likely = clocks_of(as_likely).fall.below_floor;
    result.growth.likely =
        std::max(0.0, safety::lagged_growth(likely_growth_exponent(as_likely, model), model.q0_likely));

    judge(result, trip);
    return result;
}

}  // namespace holdwater::answer
