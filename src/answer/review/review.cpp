// SPDX-License-Identifier: MIT
#include "answer/review/review.hpp"

#include "answer/review/review_bath.hpp"
#include "answer/review/review_food.hpp"
#include "answer/review/review_notes.hpp"
#include "answer/review/review_timeline.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::History;

void append(problem::Problems& all, const problem::Problems& more) {
    all.insert(all.end(), more.begin(), more.end());
}

struct Judged {
    std::vector<const trip::Food*> foods;
    std::vector<safety::Standard> standards;
};

problem::Result<Judged> standards_of(const trip::Trip& trip, problem::Problems& remarks) {
    problem::Problems refused;
    Judged judged;
    for (const trip::Food& food : trip.foods) {
        const auto standard = standard_for_review(trip, food, remarks);
        if (!standard) {
            append(refused, standard.problems());
            continue;
        }
        judged.foods.push_back(&food);
        judged.standards.push_back(*standard);
    }
    if (!refused.empty()) {
        return refused;
    }
    return judged;
}

void look_at_days(const trip::Trip& trip, const trip::Log& log, problem::Problems& remarks) {
    const auto* zero = std::get_if<units::LocalTime>(&log.zero);
    if (zero == nullptr) {
        return;
    }
    const units::LocalTime last = zero->after(log.rows.back().at);
    const Duration slack = units::hours(24);
    if (last.after(slack) < trip.from || *zero > trip.serve.after(slack)) {
        remarks.push_back(
            placed(problem::warning("log-other-day",
                                    fmt::format("the log runs from {} to {}, the trip from {} to {}", zero->iso(),
                                                last.iso(), trip.from.iso(), trip.serve.iso()),
                                    "is it the log of another trip?"),
                   log.rows.front().place));
    }
}

/// Celsius numbers under bath_f make a bath as cold as a lake. Remarked where the numbers, read as Celsius, would be a
/// bath that cooks; the verdict stays that of the log as it is headed.
void look_at_units(const trip::Trip& trip, const trip::Log& log, const std::vector<safety::Standard>& standards,
                   problem::Problems& remarks) {
    const trip::LogRow* hottest = nullptr;
    for (const trip::LogRow& row : log.rows) {
        if (row.bath && (hottest == nullptr || *row.bath > *hottest->bath)) {
            hottest = &row;
        }
    }
    if (hottest == nullptr) {
        return;
    }
    const units::Temperature as_celsius = units::celsius(hottest->bath->fahrenheit());
    const bool cooks = std::all_of(standards.begin(), standards.end(),
                                   [&](const safety::Standard& s) { return as_celsius >= s.cook_floor; });
    if (cooks && as_celsius <= units::celsius(100)) {  // water boils at no more
        remarks.push_back(placed(
            problem::warning(
                "mixed-units",
                fmt::format(
                    "the hottest reading is {}; numbers such as {:.0f} under bath_f look "
                    "like Celsius",
                    units::print(*hottest->bath, trip.units == units::System::us ? units::System::both : trip.units),
                    as_celsius.celsius()),
                "head the column bath_c if they are; as it stands the bath was far too cool"),
            hottest->place));
    }
}

/// A gap matters where the lowest path through it comes under a floor; else it is only worth knowing.
void look_at_gaps(const trip::Trip& trip, const trip::Log& log, const Review& review, problem::Problems& remarks) {
    for (const trip::LogGap& gap : log.gaps) {
        const auto lowest = review.bath_cautious.lowest(gap.from, gap.to);
        const bool harmless = std::all_of(review.foods.begin(), review.foods.end(), [&](const FoodReview& food) {
            return food.out <= gap.from || food.in >= gap.to ||
                   lowest >= std::max(food.standard.cook_floor, food.standard.hold_floor);
        });
        const std::string text = fmt::format(
            "no bath reading from {} to {}; left alone, this box comes down to {} at the lowest", watch(log, gap.from),
            watch(log, gap.to), units::print(lowest, trip.units, {0.1, units::Toward::down}));
        remarks.push_back(placed(harmless ? problem::note("log-gap", text, "still above the floor")
                                          : problem::warning("log-gap", text, "that lowest path counts"),
                                 gap.place));
    }
}

void look_at_cores(const trip::Trip& trip, const trip::Log& log, const Review& review, problem::Problems& remarks) {
    const auto degrees = [&](units::Temperature t) {
        return units::print(t, trip.units, {0.1, units::Toward::nearest});
    };
    const double far = facts::facts().difference("review.core-differs").si();
    bool any = false;
    for (const FoodReview& food : review.foods) {
        any = any || !food.core_readings.empty();
        for (const CoreReading& reading : food.core_readings) {
            const double difference = (reading.read - reading.likely).si();
            if (std::abs(difference) > far) {
                const auto row = std::find_if(log.rows.begin(), log.rows.end(),
                                              [&](const trip::LogRow& r) { return r.core && r.at == reading.at; });
                remarks.push_back(
                    placed(problem::warning("core-differs",
                                            fmt::format("{}: the core reads {} where {} is likely", food.food->name,
                                                        degrees(reading.read), degrees(reading.likely)),
                                            "the lower of both counts"),
                           row->place));
            }
        }
    }
    if (any && review.foods.size() > 1) {
        remarks.push_back(problem::warning("core-of-which", "the log has one core column and the trip several foods",
                                           "it is taken for every food"));
    }
}

problem::Result<Review> review_rows(const trip::Trip& trip, const trip::Log& log, Unpoured unpoured);

/// What the words "nothing poured" would change, where they may be true and the log does not say them.
void look_at_unpoured(const trip::Trip& trip, const trip::Log& log, const BathPaths& paths, Review& review) {
    IfUnpoured other;
    for (const OpenStretch& stretch : paths.open) {
        const bool matters = std::any_of(review.foods.begin(), review.foods.end(), [&](const FoodReview& food) {
            return food.out > stretch.from && food.in < stretch.to &&
                   stretch.lowest < std::max(food.standard.cook_floor, food.standard.hold_floor);
        });
        if (matters) {
            other.rows.push_back(stretch.row);
        }
    }
    if (other.rows.empty()) {
        return;
    }
    const auto closed = review_rows(trip, log, Unpoured::wherever_possible);
    if (closed && closed->verdict < review.verdict) {
        other.verdict = closed->verdict;
        other.below_floor = closed->below_floor;
        review.if_unpoured = std::move(other);
    }
}

/// The whole review, with or without the doubtful rows.
problem::Result<Review> review_rows(const trip::Trip& trip, const trip::Log& log, Unpoured unpoured) {
    Review review;
    const auto judged = standards_of(trip, review.remarks);
    if (!judged) {
        return judged.problems();
    }
    const Notes notes = read_notes(trip, log);
    append(review.remarks, notes.remarks);
    if (problem::has_error(notes.remarks)) {
        return notes.remarks;
    }
    const trip::Box& box = trip.boxes.front();
    const auto cooling = cooling_of(trip, box, log);
    if (!cooling) {
        return cooling.problems();
    }
    review.error = box.thermometer.value_or(facts::facts().difference("review.no-thermometer"));
    if (!box.thermometer) {
        review.remarks.push_back(placed(
            problem::warning("thermometer-unknown",
                             fmt::format("the trip has no thermometer, but the log has readings; they are taken to be "
                                         "off by up to {}",
                                         units::print(review.error, trip.units)),
                             "write the error of the one that was used: thermometer = \"1 K\""),
            box.place));
    }
    look_at_days(trip, log, review.remarks);
    look_at_units(trip, log, judged->standards, review.remarks);

    Duration from = log.rows.front().at;
    Duration to = log.rows.back().at;
    units::Temperature floor = judged->standards.front().cook_floor;
    for (std::size_t i = 0; i < notes.stays.size(); ++i) {
        from = std::min(from, notes.stays[i].in);
        to = std::max(to, notes.stays[i].out);
        floor = std::min(floor, judged->standards[i].cook_floor);
    }
    std::vector<WorstFood> foods;
    for (std::size_t i = 0; i < trip.foods.size(); ++i) {
        auto worst = worst_food(trip.foods[i], notes.stays[i]);
        if (!worst) {
            return worst.problems();
        }
        foods.push_back(std::move(worst).value());
    }
    const BathPaths paths = paths_of(log, *cooling, foods, review.error, floor, from, to, trip.units, unpoured);
    append(review.remarks, paths.remarks);
    review.bath_likely = paths.likely;
    review.bath_cautious = paths.cautious;
    for (std::size_t i = 0; i < trip.foods.size(); ++i) {
        auto food =
            review_food(trip, log, *judged->foods[i], judged->standards[i], notes.stays[i], paths, review.error);
        if (!food) {
            return food.problems();
        }
        review.foods.push_back(std::move(food).value());
    }
    for (std::size_t i = 0; i < review.foods.size(); ++i) {
        const FoodReview& food = review.foods[i];
        review.worst = food.verdict > review.foods[review.worst].verdict ? i : review.worst;
        review.below_floor = std::max(review.below_floor, food.fall.below_floor);
        review.growth = std::max(review.growth, food.growth.bound);
        if (food.come_up_verdict == safety::ComeUpVerdict::slow) {
            review.remarks.push_back(problem::warning(
                "come-up-slow",
                fmt::format("{}: the core was long on its way through the zone of growth", food.food->name),
                "thinner pieces or a hotter bath next time"));
        }
    }
    review.verdict = review.foods[review.worst].verdict;
    look_at_gaps(trip, log, review, review.remarks);
    look_at_cores(trip, log, review, review.remarks);
    review.timeline = timeline_of(log, review, paths, trip.units);
    if (unpoured == Unpoured::as_written && review.verdict != Verdict::eat) {
        look_at_unpoured(trip, log, paths, review);
    }
    if (!paths.doubtful.empty()) {
        trip::Log without = log;
        for (const std::size_t row : paths.doubtful) {
            without.rows[row].bath.reset();
        }
        const auto other = review_rows(trip, without, unpoured);
        if (other) {
            review.without_doubtful = WithoutDoubtful{other->verdict, other->below_floor};
        }
    }
    return review;
}

}  // namespace

problem::Result<Review> review(const trip::Trip& trip, const trip::Log& log) {
    if (trip.boxes.size() != 1) {
        return placed(problem::error("two-boxes", "a review covers one box, this trip has two",
                                     "write one trip file for each box, with its own foods, and keep a log for each"),
                      trip.boxes.back().place);
    }
    auto result = review_rows(trip, log, Unpoured::as_written);
    if (result) {
        auto& remarks = result.value().remarks;
        std::stable_sort(remarks.begin(), remarks.end(), [](const problem::Problem& a, const problem::Problem& b) {
            return (a.place ? a.place->line : 0) < (b.place ? b.place->line : 0);
        });
    }
    return result;
}

}  // namespace holdwater::answer
