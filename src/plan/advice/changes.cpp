// SPDX-License-Identifier: MIT
#include "plan/advice/changes.hpp"

#include "answer/gauge/box_loss.hpp"
#include "heat/box.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::plan {
namespace {

using trip::Food;
using trip::Trip;
using Sort = Change::Sort;

/// The steps in which changes are tried are a matter of how finely advice is worth giving, not figures of any science.
constexpr double later_minutes[] = {30.0, 60.0, 90.0, 120.0, 180.0, 240.0, 360.0};
constexpr double targets[] = {55.0, 57.0, 60.0, 62.0, 63.0, 65.0, 66.0, 68.0, 71.0, 74.0};  // C
constexpr double tolerances[] = {3.0, 4.0, 5.0, 6.0, 8.0};                                  // K
constexpr double shares_of_water[] = {1.15, 1.3, 1.5};
constexpr double shares_of_thickness[] = {0.75, 0.5};
constexpr int pots_more[] = {1, 2, 3};
constexpr double shares_of_loss[] = {0.75, 0.5, 0.35};

template <class Apply>
std::function<void(Trip&)> for_each_food(Apply apply) {
    return [apply](Trip& t) { std::for_each(t.foods.begin(), t.foods.end(), apply); };
}

template <class Holds>
bool any_food(const Trip& trip, Holds holds) {
    return std::any_of(trip.foods.begin(), trip.foods.end(), holds);
}

void add_time_and_taste(const Trip& trip, std::vector<Change>& changes) {
    for (const double minutes : later_minutes) {
        const units::LocalTime later = trip.serve.after(units::minutes(minutes));
        changes.push_back(
            {Sort::later,
             fmt::format("serve = {} (serve {} later)", later.iso(), units::print(units::minutes(minutes))),
             [later](Trip& t) { t.serve = later; }});
    }
    for (const double degrees : targets) {
        const units::Temperature target = units::celsius(degrees);
        if (any_food(trip, [&](const Food& f) { return f.target < target; })) {
            changes.push_back({Sort::target, fmt::format("target = \"{:.0f} C\"", degrees),
                               for_each_food([target](Food& f) { f.target = std::max(f.target, target); })});
        }
    }
    for (const double kelvins : tolerances) {
        const units::TemperatureDifference tolerance = units::kelvins(kelvins);
        if (any_food(trip, [&](const Food& f) { return f.tolerance < tolerance; })) {
            changes.push_back(
                {Sort::tolerance, fmt::format("tolerance = \"{:.0f} K\" (a hotter bath; less even inside)", kelvins),
                 for_each_food([tolerance](Food& f) { f.tolerance = std::max(f.tolerance, tolerance); })});
        }
    }
}

void add_handling(const Trip& trip, std::vector<Change>& changes) {
    if (!trip.boxes.front().prewarmed) {
        changes.push_back({Sort::prewarmed, "prewarmed = true (warm the box with a hot rinse first)",
                           [](Trip& t) { t.boxes.front().prewarmed = true; }});
    }
    if (any_food(trip, [](const Food& f) { return f.contact != facts::Contact::free; })) {
        changes.push_back({Sort::off_the_floor, "contact = \"free\" (keep the pieces apart and off the floor)",
                           for_each_food([](Food& f) { f.contact = facts::Contact::free; })});
    }
    for (const double share : shares_of_water) {
        const units::Volume water = units::litres(std::floor(units::in_litres(trip.boxes.front().water) * share));
        if (water > trip.boxes.front().water) {
            changes.push_back({Sort::more_water, fmt::format("water = \"{:.0f} L\"", units::in_litres(water)),
                               [water](Trip& t) { t.boxes.front().water = water; }});
        }
    }
    for (const double share : shares_of_thickness) {
        // What is printed is what is tried: whole millimetres. The pieces are split, so that there are more of them.
        const auto thinner = [share](const Food& f) {
            return units::millimetres(std::floor(units::in_millimetres(f.thickness) * share));
        };
        std::string sizes;
        for (const Food& food : trip.foods) {
            sizes += (sizes.empty() ? "" : ", ") + fmt::format("{:.0f} mm", units::in_millimetres(thinner(food)));
        }
        changes.push_back({Sort::thinner, fmt::format("thickness = \"{}\" (thinner or split pieces)", sizes),
                           for_each_food([share, thinner](Food& f) {
                               f.thickness = thinner(f);
                               f.mass = f.mass * share;
                               f.pieces = static_cast<int>(std::lround(f.pieces / share));
                           })});
    }
}

void add_gear(const Trip& trip, std::vector<Change>& changes) {
    for (const int more : pots_more) {
        changes.push_back({Sort::more_pots,
                           fmt::format("pots = {} ({} more of {})", trip.fire.pots + more, more,
                                       units::print(trip.fire.pot, units::System::metric)),
                           [more](Trip& t) { t.fire.pots += more; }});
    }
    const trip::Box& box = trip.boxes.front();
    const auto loss = answer::loss_of(box, heat::liner_of(box.inside));
    for (const double part : shares_of_loss) {
        if (!loss) {
            return;
        }
        const units::HeatLoss wanted{units::round_to(loss->likely.si() * part, 0.05, units::Toward::down)};
        if (wanted.si() > 0.0) {
            changes.push_back(
                {Sort::better_box,
                 fmt::format("loss = \"{:.2f} W/K\" (a better box, or this one wrapped and its lid sealed)",
                             wanted.si()),
                 [wanted](Trip& t) { t.boxes.front().test = wanted; }});
        }
    }
}

}  // namespace

std::vector<Change> changes_for(const Trip& trip) {
    std::vector<Change> changes;
    add_time_and_taste(trip, changes);
    add_handling(trip, changes);
    add_gear(trip, changes);
    return changes;
}

}  // namespace holdwater::plan
