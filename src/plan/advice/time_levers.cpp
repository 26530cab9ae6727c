// SPDX-License-Identifier: MIT
// Changes of the day and of how done the food is wished.
#include "facts/facts.hpp"
#include "plan/advice/lever.hpp"
#include "trip/ranges.hpp"
#include "units/parse.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::plan {
namespace {

using trip::Food;
using trip::Trip;
using units::Duration;
using Kind = Lever::Kind;

/// Times are changed by quarters of an hour: as finely as a cook goes by them.
constexpr Duration quarter = units::minutes(15);

double cost_of(const char* key) {
    return facts::facts().value(key);
}

int whole_steps(Duration d, Duration step) {
    return static_cast<int>(std::floor(d.si() / step.si() + 1e-9));
}

units::ClockTime at_hour(const char* key) {
    constexpr int hour = 3600;
    constexpr int last_second = 86399;
    return {std::min(last_second, static_cast<int>(facts::facts().value(key)) * hour)};
}

/// How long it still is until everybody goes to bed.
Duration until_bed(const Trip& trip) {
    return units::next(bedtime_of(trip), trip.serve).since(trip.serve);
}

/// How long everybody has been up at the first moment.
Duration since_rising(const Trip& trip) {
    return trip.from.since(units::next(rising_of(trip), trip.from.after(-units::hours(24))));
}

/// The most that a trip file can say.
template <class Q>
Q most_of(const trip::Range& range) {
    return units::parse<Q>(range.high).value();
}

Lever later(const Trip& trip) {
    const Duration room = most_of<Duration>(trip::ranges::trip_length) - trip.serve.since(trip.from);
    const Duration most = std::min({facts::facts().duration("mend.latest"), room, until_bed(trip)});
    Lever lever;
    lever.kind = Kind::later;
    lever.rises = false;  // a bath that is held for longer is harder to hold
    lever.steps = whole_steps(most, quarter);
    lever.a_step = cost_of("bend.later") * units::in_hours(quarter);
    lever.pull = [](Trip& t, int step) {
        t.serve = t.serve.after(quarter * step);
        for (Food& food : t.foods) {
            food.out = food.out ? std::optional(food.out->after(quarter * step)) : std::nullopt;
        }
    };
    lever.words = [](const Trip& before, const Trip& after) {
        return fmt::format("serve = {} (serve {} later)", after.serve.iso(),
                           units::print(after.serve.since(before.serve)));
    };
    return lever;
}

Lever earlier(const Trip& trip) {
    const Duration room = most_of<Duration>(trip::ranges::trip_length) - trip.serve.since(trip.from);
    const Duration most = std::min({facts::facts().duration("mend.earliest"), room, since_rising(trip)});
    Lever lever;
    lever.kind = Kind::earlier;
    lever.rises = false;  // a bath that is held for longer is harder to hold
    lever.steps = trip.light_fire ? 0 : whole_steps(most, quarter);
    lever.a_step = cost_of("bend.earlier") * units::in_hours(quarter);
    lever.pull = [](Trip& t, int step) { t.from = t.from.after(-(quarter * step)); };
    lever.words = [](const Trip& before, const Trip& after) {
        return fmt::format("from = {} (begin {} earlier)", after.from.iso(),
                           units::print(before.from.since(after.from)));
    };
    return lever;
}

/// To a tenth of a kelvin, up: what is tried is what is written.
units::TemperatureDifference tenth_up(units::TemperatureDifference d) {
    return units::kelvins(units::round_to(d.si(), 0.1, units::Toward::up));
}
units::Temperature tenth_up(units::Temperature t) {
    return units::celsius(units::round_to(t.celsius(), 0.1, units::Toward::up));
}

/// The food that must stay the coolest.
const Food& coolest_of(const Trip& trip) {
    return *std::min_element(trip.foods.begin(), trip.foods.end(), [](const Food& a, const Food& b) {
        return a.target + a.tolerance < b.target + b.tolerance;
    });
}

/// "target = "63 C"" of those foods of which the key has changed.
template <class Q>
std::string changed(const Trip& before, const Trip& after, const char* key, Q Food::*member) {
    std::string text;
    for (const Food& food : after.foods) {
        const auto own = std::find_if(before.foods.begin(), before.foods.end(),
                                      [&food](const Food& f) { return f.name == food.name; });
        if (own == before.foods.end() || food.*member - (*own).*member < units::kelvins(1e-6)) {
            continue;
        }
        text += fmt::format("{}{} = \"{}\"", text.empty() ? "" : ", ", key, written(food.*member));
        text += before.foods.size() > 1 ? " for " + food.name : "";
    }
    return text;
}

}  // namespace

units::ClockTime bedtime_of(const Trip& trip) {
    return trip.sleep ? trip.sleep->from : at_hour("mend.bedtime");
}

units::ClockTime rising_of(const Trip& trip) {
    return trip.sleep ? trip.sleep->to : at_hour("mend.rising");
}

void add_time_levers(const Trip& trip, std::vector<Lever>& levers) {
    levers.push_back(later(trip));
    levers.push_back(earlier(trip));
    if (trip.light_fire) {
        Lever lever;
        lever.kind = Kind::start;
        lever.at_once = cost_of("bend.start");
        lever.pull = [](Trip& t, int) { t.light_fire.reset(); };
        lever.words = [](const Trip&, const Trip&) {
            return std::string("light_fire left out (the plan says when the fire is lit)");
        };
        levers.push_back(std::move(lever));
    }
    std::erase_if(levers, [](const Lever& lever) { return lever.steps < 1; });
}

void add_taste_levers(const Trip& trip, std::vector<Lever>& levers) {
    if (trip.foods.empty()) {
        return;
    }
    // The bath is as hot as the coolest food may get: that food is let get hotter, and others that then are as cool.
    const Food& coolest = coolest_of(trip);
    const auto widest = most_of<units::TemperatureDifference>(trip::ranges::tolerance);
    Lever tolerance;
    tolerance.kind = Kind::tolerance;
    tolerance.steps = static_cast<int>(std::floor((widest - coolest.tolerance).si() + 1e-9));
    tolerance.a_step = cost_of("bend.tolerance");
    tolerance.pull = [widest](Trip& t, int step) {
        const Food& least = coolest_of(t);
        const units::Temperature cap = least.target + least.tolerance + units::kelvins(step);
        for (Food& food : t.foods) {
            food.tolerance = std::max(food.tolerance, std::min(widest, tenth_up(cap - food.target)));
        }
    };
    tolerance.words = [](const Trip& before, const Trip& after) {
        return changed(before, after, "tolerance", &Food::tolerance) + " (a hotter bath; less even inside)";
    };
    const units::Temperature hottest = facts::facts().temperature("mend.target");
    Lever target;
    target.kind = Kind::target;
    target.steps = static_cast<int>(std::floor((hottest - coolest.target).si() + 1e-9));
    target.rises = false;  // what shall be more done is done later
    target.a_step = cost_of("bend.target");
    target.pull = [hottest](Trip& t, int step) {
        const Food& least = coolest_of(t);
        const units::Temperature cap = least.target + least.tolerance + units::kelvins(step);
        for (Food& food : t.foods) {
            food.target = std::max(food.target, std::min(hottest, tenth_up(cap - food.tolerance)));
        }
    };
    target.words = [](const Trip& before, const Trip& after) {
        return changed(before, after, "target", &Food::target) + " (more done)";
    };
    for (Lever* lever : {&tolerance, &target}) {
        if (lever->steps > 0) {
            levers.push_back(std::move(*lever));
        }
    }
}

}  // namespace holdwater::plan
