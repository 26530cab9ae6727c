// SPDX-License-Identifier: MIT
#include "plan/mend.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <string>
#include <string_view>

#include "answer/box_loss.hpp"
#include "units/print.hpp"

namespace holdwater::plan {
namespace {

using trip::Trip;

struct Change {
    std::string advice;
    std::function<void(Trip&)> apply;
};

constexpr std::size_t most_advice = 4;

/// Changes from the cheapest for a cook to the dearest.
std::vector<Change> changes_for(const Trip& trip) {
    std::vector<Change> changes;
    for (const double minutes : {30.0, 60.0, 90.0, 120.0, 180.0, 240.0, 360.0}) {
        const units::LocalTime later = trip.serve.after(units::minutes(minutes));
        changes.push_back({fmt::format("serve = {} (serve {} later)", later.iso(), units::print(units::minutes(minutes))),
                           [later](Trip& t) { t.serve = later; }});
    }
    for (const double target : {55.0, 57.0, 60.0, 62.0, 63.0, 65.0, 66.0, 68.0, 71.0, 74.0}) {
        const bool raises = std::any_of(trip.foods.begin(), trip.foods.end(),
                                        [&](const trip::Food& f) { return f.target.celsius() < target; });
        if (raises) {
            changes.push_back({fmt::format("target = \"{:.0f} C\"", target), [target](Trip& t) {
                                   for (trip::Food& food : t.foods) {
                                       food.target = std::max(food.target, units::celsius(target));
                                   }
                               }});
        }
    }
    for (const double tolerance : {3.0, 4.0, 5.0, 6.0}) {
        changes.push_back({fmt::format("tolerance = \"{:.0f} K\"", tolerance), [tolerance](Trip& t) {
                               for (trip::Food& food : t.foods) {
                                   food.tolerance = std::max(food.tolerance, units::kelvins(tolerance));
                               }
                           }});
    }
    if (!trip.boxes.front().prewarmed) {
        changes.push_back({"prewarmed = true (warm the box with a hot rinse first)",
                           [](Trip& t) { t.boxes.front().prewarmed = true; }});
    }
    for (const int more : {1, 2, 3}) {
        changes.push_back({fmt::format("pots = {} ({} more of {})", trip.fire.pots + more, more,
                                       units::print(trip.fire.pot, units::System::metric)),
                           [more](Trip& t) { t.fire.pots += more; }});
    }
    changes.push_back({"contact = \"free\" (keep the pieces apart and off the floor)", [](Trip& t) {
                           for (trip::Food& food : t.foods) {
                               food.contact = facts::Contact::free;
                           }
                       }});
    for (const double share : {0.75, 0.5}) {
        std::string sizes;
        for (const trip::Food& food : trip.foods) {
            sizes += (sizes.empty() ? "" : ", ") +
                     units::print(food.thickness * share, units::System::metric, {1.0, units::Toward::down});
        }
        changes.push_back({fmt::format("thickness = \"{}\" (thinner or split pieces)", sizes), [share](Trip& t) {
                               for (trip::Food& food : t.foods) {
                                   food.thickness = food.thickness * share;
                                   food.mass = food.mass * share;
                                   food.pieces = static_cast<int>(food.pieces / share);
                               }
                           }});
    }
    for (const double part : {0.75, 0.5, 0.35}) {
        const trip::Box& box = trip.boxes.front();
        const auto loss = answer::loss_of(box, heat::liner_of(box.inside));
        if (!loss) {
            break;
        }
        // What is printed is what is tried.
        const units::HeatLoss wanted{units::round_to(loss->likely.si() * part, 0.05, units::Toward::down)};
        changes.push_back({fmt::format("loss = \"{:.2f} W/K\" (a better box, or this one wrapped and its lid sealed)",
                                       wanted.si()),
                           [wanted](Trip& t) { t.boxes.front().test = wanted; }});
    }
    return changes;
}

}  // namespace

problem::Problems with_advice(const Trip& trip, problem::Problems problems) {
    // No change of time, size or box makes a refused food allowed.
    constexpr std::array<std::string_view, 3> final_refusals{"category-refused", "no-rule", "no-thermometer-refused"};
    const auto is_one_of = [&problems](auto codes) {
        return std::any_of(problems.begin(), problems.end(), [&codes](const problem::Problem& one) {
            return std::find(codes.begin(), codes.end(), one.code) != codes.end();
        });
    };
    if (is_one_of(final_refusals)) {
        return problems;
    }
    Effort quick;
    quick.search = {64, 1};
    quick.promise = {256, 1};
    quick.advise = false;
    quick.what_ifs = false;
    std::size_t found = 0;
    std::string kind_tried;
    for (const Change& change : changes_for(trip)) {
        // One advice of each sort (the part before the sign) is enough: the smallest change that mends.
        const std::string sort = change.advice.substr(0, change.advice.find(' '));
        if (sort == kind_tried) {
            continue;
        }
        Trip changed = trip;
        change.apply(changed);
        if (make_plan(changed, quick)) {
            kind_tried = sort;
            problems.push_back(problem::note("mend", "this would hold: " + change.advice));
            if (++found == most_advice) {
                break;
            }
        }
    }
    if (found == 0) {
        const bool too_low = is_one_of(std::array<std::string_view, 2>{"target-too-low", "at-risk-target-too-low"});
        problems.push_back(problem::note("no-mend", "no single change that was tried makes this trip hold",
                                         too_low ? "raise the target to the lowest allowed first, then try again"
                                                 : "change more than one thing: thinner pieces, more time, a better box"));
    }
    return problems;
}

}  // namespace holdwater::plan
