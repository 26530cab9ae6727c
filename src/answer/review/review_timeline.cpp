// SPDX-License-Identifier: MIT
#include "answer/review/review_timeline.hpp"

#include "facts/facts.hpp"
#include "facts/published.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

std::string degrees(Temperature t, units::System system, units::Toward toward = units::Toward::nearest) {
    return units::print(t, system, {0.1, toward});
}

/// Adds the moments at which the cautious bath falls below a floor and comes back.
void add_breaches(std::vector<Noticed>& seen, const History& bath, Duration from, Duration to, Temperature floor,
                  const std::string& whose, units::System system) {
    const std::string printed = facts::printed_pair(floor) != nullptr ? units::written(facts::published(floor, system))
                                                                      : degrees(floor, system, units::Toward::up);
    if (!(to > from)) {
        return;
    }
    bool below = bath.at(from) < floor;
    if (below) {
        seen.push_back({from, fmt::format("{}: the bath may be below {} already", whose, printed)});
    }
    for (std::size_t i = 1; i < bath.points.size(); ++i) {
        const History::Point& a = bath.points[i - 1];
        const History::Point& b = bath.points[i];
        if (b.at <= from || a.at > to || (b.value < floor) == below) {
            continue;
        }
        below = b.value < floor;
        const double rise = (b.value - a.value).si();
        const Duration at = b.at > a.at ? a.at + (b.at - a.at) * ((floor - a.value).si() / rise) : b.at;
        if (at < from || at > to) {
            continue;
        }
        seen.push_back({at, below ? fmt::format("{}: the bath may have fallen below {}", whose, printed)
                                  : fmt::format("{}: the bath is surely above {} again", whose, printed)});
    }
}

void add_food(std::vector<Noticed>& seen, const FoodReview& food, const History& bath, units::System system) {
    const std::string& name = food.food->name;
    const safety::Standard& standard = food.standard;
    seen.push_back({food.in, name + " goes in"});
    if (standard.cook_floor == standard.hold_floor) {
        add_breaches(seen, bath, food.in, food.out, standard.cook_floor, name, system);
    } else {
        add_breaches(seen, bath, food.in, food.hold_from, standard.cook_floor, name, system);
        add_breaches(seen, bath, food.hold_from, food.out, std::max(standard.cook_floor, standard.hold_floor), name,
                     system);
    }
    if (food.ready_late) {
        seen.push_back({food.in + *food.ready_late, name + " is surely done"});
    }
    seen.push_back({food.out, name + (food.out_written ? " comes out" : " is last looked at: the log ends")});
}

}  // namespace

std::string watch(const trip::Log& log, Duration at) {
    if (const auto* clock = std::get_if<units::ClockTime>(&log.zero)) {
        return units::LocalTime{clock->second_of_day}.after(at).clock_24();
    }
    if (const auto* moment = std::get_if<units::LocalTime>(&log.zero)) {
        constexpr const char* days[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
        const units::LocalTime then = moment->after(at);
        return fmt::format("{} {}", days[then.weekday()], then.clock_24());
    }
    return fmt::format("minute {:.0f}", units::in_minutes(at));
}

std::vector<Noticed> timeline_of(const trip::Log& log, const Review& review, const BathPaths& paths,
                                 units::System system) {
    std::vector<Noticed> seen;
    const trip::LogRow* lowest = nullptr;
    for (const trip::LogRow& row : log.rows) {
        const bool with_food = std::any_of(review.foods.begin(), review.foods.end(), [&](const FoodReview& food) {
            return row.at >= food.in && row.at <= food.out;
        });
        if (row.bath && with_food) {
            lowest = lowest == nullptr || *row.bath < *lowest->bath ? &row : lowest;
        }
    }
    for (const FoodReview& food : review.foods) {
        add_food(seen, food, review.bath_cautious, system);
    }
    if (lowest != nullptr) {
        seen.push_back(
            {lowest->at, fmt::format("lowest reading with food in the bath: {}", degrees(*lowest->bath, system))});
    }
    for (const std::size_t row : paths.doubtful) {
        seen.push_back({log.rows[row].at, fmt::format("doubtful reading: {}", degrees(*log.rows[row].bath, system))});
    }
    for (const trip::LogGap& gap : log.gaps) {
        seen.push_back({gap.from, fmt::format("no reading until {}", watch(log, gap.to))});
    }
    std::stable_sort(seen.begin(), seen.end(), [](const Noticed& a, const Noticed& b) { return a.at < b.at; });
    return seen;
}

}  // namespace holdwater::answer
