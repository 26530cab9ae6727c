// SPDX-License-Identifier: MIT
#include "plan/choose/ways.hpp"

#include "answer/gauge/box_loss.hpp"
#include "heat/box.hpp"
#include "trip/written.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace holdwater::plan {
namespace {

using trip::Trip;

// How many, and how far they must lie apart to be worth a line; no figures of any science.
constexpr std::size_t most_ways = 3;
constexpr units::Duration apart_in_time = units::hours(2);
constexpr double apart_in_water = 0.2;  // of the larger
constexpr int most_tolerance = 3;       // K more than the trip's, for an undisturbed night

/// The lines of a trip file in which one trip differs from another.
std::vector<std::string> lines_between(const Trip& written, const Trip& planned) {
    std::vector<std::string> lines{fmt::format("[trip] light_fire = {}", planned.from.iso())};
    if (planned.boxes.front().water != written.boxes.front().water) {
        lines.push_back(fmt::format("[[box]] water = \"{:.0f} L\"", units::in_litres(planned.boxes.front().water)));
    }
    for (std::size_t i = 0; i < planned.foods.size(); ++i) {
        const trip::Food& was = written.foods[i];
        const trip::Food& is = planned.foods[i];
        if (is.tolerance != was.tolerance) {
            lines.push_back(fmt::format("[[food]] \"{}\": tolerance = \"{:.1f} K\"", is.name, is.tolerance.si()));
        }
        if (is.pieces != was.pieces) {
            lines.push_back(fmt::format("[[food]] \"{}\": thickness = \"{:.0f} mm\", mass = \"{:.3g} kg\", pieces = {}",
                                        is.name, units::in_millimetres(is.thickness), is.mass.si(), is.pieces));
        }
    }
    const auto* const loss = std::get_if<units::HeatLoss>(&planned.boxes.front().test);
    const auto* const own = std::get_if<units::HeatLoss>(&written.boxes.front().test);
    if (loss != nullptr && (own == nullptr || *own != *loss)) {
        lines.push_back(fmt::format("[[box]] loss = \"{}\" in place of its test or loss", trip::written(*loss)));
    }
    return lines;
}

Way way_of(Way::Kind kind, const Trip& written, const Plan& plan) {
    Way way;
    way.kind = kind;
    way.lines = lines_between(written, *plan.trip);
    way.light_fire = plan.fill.light_fire;
    way.ready = plan.foods.front().ready();
    for (const FoodPlan& food : plan.foods) {
        way.ready = std::max(way.ready, food.ready());
    }
    way.burden = burden_of(plan);
    way.top_ups = plan.top_ups.size();
    way.share = plan.promise.share;
    return way;
}

bool differ(const Way& a, const Way& b) {
    const units::Volume more = std::max(a.burden.boiled, b.burden.boiled);
    const units::Volume less = std::min(a.burden.boiled, b.burden.boiled);
    const auto [early, late] = std::minmax(a.light_fire, b.light_fire);
    return a.burden.wakings != b.burden.wakings || a.top_ups != b.top_ups || late.since(early) >= apart_in_time ||
           less < more * (1.0 - apart_in_water);
}

/// The best of some choices that holds in full.
std::optional<Plan> first_that_holds(const std::vector<Choice>& choices, const Effort& effort) {
    constexpr std::size_t most = 2;
    for (std::size_t i = 0; i < std::min(choices.size(), most); ++i) {
        if (auto plan = plan_as_given(choices[i].trip, effort)) {
            return std::move(plan).value();
        }
    }
    return std::nullopt;
}

/// An undisturbed night: by another start alone, or by a little more tolerance, as little as does.
std::optional<Plan> unwoken(const Trip& trip, const Effort& effort, units::Duration lighter_than) {
    Effort asleep = effort;
    asleep.unwoken = true;
    const auto with = [&](int more) -> std::optional<Plan> {
        Trip bent = trip;
        for (trip::Food& food : bent.foods) {
            food.tolerance += units::kelvins(more);
        }
        auto plan = first_that_holds(choices_of(bent, {.unwoken = true, .lighter_than = lighter_than}), asleep);
        return plan && burden_of(*plan).wakings == 0 ? std::move(plan) : std::nullopt;
    };
    const int most = trip.strict ? 0 : most_tolerance;
    auto plan = with(0);
    if (plan || most == 0) {
        return plan;
    }
    // Where all of it is not enough, less is not either: nights that nothing mends are the longest to look through.
    auto widest = with(most);
    for (int more = 1; widest && more < most; ++more) {
        if (auto narrower = with(more)) {
            return narrower;
        }
    }
    return widest;
}

std::optional<Plan> at_once(const Trip& trip, const Effort& effort) {
    auto plan = plan_as_given(std::make_shared<const Trip>(lit_at(trip, trip.from)), effort);
    return plan ? std::optional(std::move(plan).value()) : std::nullopt;
}

std::optional<Plan> halved(const Trip& trip, const Effort& effort, units::Duration lighter_than) {
    Trip split = trip;
    for (trip::Food& food : split.foods) {
        if (food.shape != facts::Shape::slab && food.shape != facts::Shape::block) {
            return std::nullopt;  // half a roll is none
        }
        food.thickness = units::millimetres(std::floor(units::in_millimetres(food.thickness) / 2.0));
        food.mass = food.mass * 0.5;
        food.pieces *= 2;
    }
    return first_that_holds(choices_of(split, {.lighter_than = lighter_than}), effort);
}

/// With a box that loses less, the fire lit then: the poorest one with fewer top-ups or wakings. What box that is, only
/// a test of it says.
std::optional<Plan> in_a_better_box(const Plan& plan, const Effort& effort) {
    const Trip& trip = *plan.trip;
    const auto loss = answer::loss_of(trip.boxes.front(), heat::liner_of(trip.boxes.front().inside));
    if (!loss || plan.top_ups.empty()) {
        return std::nullopt;
    }
    constexpr double step = 0.05;            // W/K
    constexpr double tries[] = {0.75, 0.5};  // of the loss: how finely is looked, no figures of any science
    const Burden own = burden_of(plan);
    for (const double share : tries) {
        auto better = std::make_shared<Trip>(lit_at(trip, trip.from));
        better->first = trip.first;
        better->boxes.front().test =
            units::HeatLoss{std::max(step, units::round_to(loss->likely.si() * share, step, units::Toward::down))};
        auto other = plan_as_given(std::move(better), effort);
        if (other && (other->top_ups.size() < plan.top_ups.size() || burden_of(*other).wakings < own.wakings)) {
            return std::move(other).value();
        }
    }
    return std::nullopt;
}

}  // namespace

std::vector<Way> ways_of(const Trip& trip, const Plan& plan, const Effort& effort) {
    Effort only = effort;
    only.schedule_only = true;
    only.diagnose = false;
    only.search = {128, 1};
    only.promise.shifts = 1;
    std::vector<Way> ways{way_of(Way::Kind::planned, trip, plan)};
    const auto add = [&](Way::Kind kind, const std::optional<Plan>& other) {
        if (!other || ways.size() >= most_ways) {
            return;
        }
        Way way = way_of(kind, trip, *other);
        if (std::all_of(ways.begin(), ways.end(), [&](const Way& one) { return differ(one, way); })) {
            ways.push_back(std::move(way));
        }
    };
    if (ways.front().burden.wakings > 0) {
        add(Way::Kind::unwoken, unwoken(trip, only, ways.front().burden.weight()));
    }
    add(Way::Kind::halved, halved(trip, only, ways.front().burden.weight()));
    if (ways.size() < most_ways) {
        add(Way::Kind::better_box, in_a_better_box(plan, only));
    }
    if (ways.size() < most_ways && plan.trip->from != trip.from) {  // the same line would choose both
        add(Way::Kind::at_once, at_once(trip, only));
    }
    return ways;
}

}  // namespace holdwater::plan
