// SPDX-License-Identifier: MIT
#include "plan/advice/feasible.hpp"

#include "plan/advice/lever.hpp"
#include "plan/choose/start.hpp"
#include "plan/result/boxes.hpp"
#include "plan/search/setup.hpp"
#include "trip/read_trip.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>
#include <vector>

namespace holdwater::plan {
namespace {

using trip::Trip;
using units::Duration;
using units::LocalTime;

Effort only_whether(Draw search, Draw promise) {
    Effort effort;
    effort.search = search;
    effort.promise = promise;
    effort.advise = false;
    effort.ways = false;
    effort.what_ifs = false;
    effort.schedule_only = effort.whether = true;
    effort.for_cards = false;
    effort.diagnose = effort.compare = false;
    return effort;
}

/// Nobody lights a fire asleep.
bool is_asleep(const Trip& trip, LocalTime at) {
    const units::LocalTime bed = units::next(bedtime_of(trip), at.after(-units::hours(24)));
    return at < units::next(rising_of(trip), bed);
}

/// Later fires leave out those foods that have their own times.
bool may_be_lit_later(const Trip& trip) {
    return !trip.light_fire && std::none_of(trip.foods.begin(), trip.foods.end(),
                                            [](const trip::Food& food) { return food.in || food.out; });
}

/// The faults of the first box that does not hold; empty where all do.
problem::Problems faults_at(const Trip& trip, LocalTime start, const Effort& effort) {
    for (const Trip& part : one_trip_a_box(lit_at(trip, start))) {
        const auto plan = plan_as_given(std::make_shared<const Trip>(part), effort);
        if (!plan) {
            return plan.problems();
        }
    }
    return {};
}

bool has(const problem::Problems& faults, problem::Code code) {
    return std::any_of(faults.begin(), faults.end(), [code](const problem::Problem& one) { return one.code == code; });
}

/// When the fire may be lit, the latest first: a bath that need not be held for so long is the sooner held.
std::vector<LocalTime> few_starts_of(const Trip& trip) {
    constexpr double most = 6.0;  // besides the first moment
    constexpr double half_hour = 1800.0;
    std::vector<LocalTime> starts;
    if (may_be_lit_later(trip)) {
        const double whole = std::max(0.0, last_start(trip).since(trip.from).si());
        const double step = std::max(half_hour, units::round_to(whole / most, half_hour / 2.0, units::Toward::up));
        for (double later = step; later < whole; later += step) {
            const LocalTime start = trip.from.after(Duration{later});
            if (!is_asleep(trip, start)) {
                starts.insert(starts.begin(), start);
            }
        }
    }
    starts.push_back(trip.light_fire.value_or(trip.from));
    return starts;
}

}  // namespace

Against heaviest(const problem::Problems& problems) {
    using Codes = std::vector<problem::Code>;
    static const std::pair<Against, Codes> kinds[] = {
        {Against::bath, {"core-too-hot", "bath-falls-too-fast", "fill-impossible"}},
        {Against::slow, {"come-up-too-slow", "too-thick-to-finish", "finish-impossible"}},
        {Against::late, {"not-ready-in-time", "serve-too-early", "growth-not-undone"}},
    };
    Against heaviest = Against::nothing;
    for (const problem::Problem& one : problems) {
        if (one.severity != problem::Severity::error) {
            continue;
        }
        Against own = Against::input;
        for (const auto& [kind, codes] : kinds) {
            own = std::find(codes.begin(), codes.end(), one.code) != codes.end() ? kind : own;
        }
        heaviest = heaviest == Against::nothing ? own : std::min(heaviest, own);
    }
    return heaviest;
}

bool Feasible::is_allowed(const Trip& trip) {
    const std::vector<Trip> parts = one_trip_a_box(trip);
    return std::all_of(parts.begin(), parts.end(), [](const Trip& part) { return set_up(part).ok(); });
}

/// Halved: food that is late asks for an earlier fire, a bath that does not hold so long for a later one.
Feasible::Quick Feasible::try_starts(const Trip& trip, std::optional<double>& guess) const {
    const Effort effort = only_whether(search_, promise_);
    const std::vector<LocalTime> starts = few_starts_of(trip);
    const auto last = static_cast<double>(starts.size() - 1);
    std::size_t first = 0;
    std::size_t end = starts.size();
    auto at = static_cast<std::size_t>(std::lround(guess.value_or(0.5) * last));
    Quick quick;
    bool late = false;
    bool unheld = false;
    for (;;) {
        const problem::Problems faults = faults_at(trip, starts[at], effort);
        quick.against = heaviest(faults);
        late = late || quick.against == Against::late;
        if (quick.against == Against::late) {
            first = at + 1;
        } else if (quick.against == Against::bath && !has(faults, "fill-impossible")) {
            unheld = true;
            end = at;
        } else {
            break;
        }
        if (first >= end) {
            quick.against = late && unheld ? Against::torn : quick.against;
            break;
        }
        at = first + (end - first) / 2;
    }
    if (starts[at] != trip.light_fire.value_or(trip.from)) {
        quick.start = starts[at];
    }
    guess = guess.value_or(last > 0.0 ? static_cast<double>(at) / last : 0.5);
    return quick;
}

Feasible::Quick Feasible::try_quickly(const Trip& trip, std::optional<double>& guess) const {
    if (!is_allowed(trip)) {
        return {Against::input};
    }
    const Quick with_all = try_starts(trip, guess);
    const bool is_late = with_all.against == Against::late || with_all.against == Against::torn;
    const std::vector<units::Volume> waters = waters_of_fewer_rounds(trip);
    if (less_water_ && is_late && trip.boxes.size() == 1 && !trip.light_fire && waters.size() > 1) {
        // One of them stands for all: about half the rounds.
        Trip less = trip;
        less.boxes.front().water = waters[(waters.size() - 1) / 2];
        if (is_allowed(less)) {
            if (Quick quick = try_starts(less, guess); quick.against == Against::nothing) {
                quick.water = less.boxes.front().water;
                return quick;
            }
        }
    }
    return with_all;
}

Against Feasible::against(const Trip& trip) {
    const std::string text = trip::canonical(trip);
    std::optional<double> guess;
    Looked* looked = nullptr;
    {
        const std::scoped_lock lock(mutex_);
        looked = &quick_[text];
        guess = guess_;
    }
    std::call_once(looked->once, [&] {
        looked->quick = try_quickly(trip, guess);
        const std::scoped_lock lock(mutex_);
        guess_ = looked->quick.against == Against::input ? guess_ : guess;
    });
    return looked->quick.against;
}

Trip Feasible::chosen(const Trip& trip) {
    if (!quickly(trip)) {
        return trip;
    }
    const std::scoped_lock lock(mutex_);
    const Quick& quick = quick_.at(trip::canonical(trip)).quick;
    Trip chosen = trip;
    chosen.light_fire = quick.start || quick.water ? quick.start.value_or(trip.from) : trip.light_fire;
    if (quick.water) {
        chosen.boxes.front().water = *quick.water;
    }
    return chosen;
}

bool Feasible::fully(const Trip& trip) {
    const std::string text = trip::canonical(trip);
    {
        const std::scoped_lock lock(mutex_);
        if (const auto known = full_.find(text); known != full_.end()) {
            return known->second;
        }
    }
    const bool holds = holds_in_all(trip, only_whether(Effort{}.search, full_draw()));
    const std::scoped_lock lock(mutex_);
    return full_.emplace(text, holds).first->second;
}

bool Feasible::thoroughly(const Trip& trip) {
    Effort effort = only_whether(Effort{}.search, full_draw());
    effort.whether = false;
    return holds_in_all(trip, effort);
}

bool Feasible::holds_in_all(const Trip& trip, Effort effort) {
    const bool may_choose = !trip.light_fire && chosen(trip).light_fire;
    const std::vector<Trip> parts = one_trip_a_box(trip);
    return std::all_of(parts.begin(), parts.end(), [&effort, may_choose](const Trip& part) {
        const auto shared = std::make_shared<const Trip>(part);
        // As given it is soonest tried; what chooses comes back to that at last.
        Effort given = effort;
        given.choose = false;
        return make_plan(shared, given).ok() || (may_choose && make_plan(shared, effort).ok());
    });
}

void Feasible::look_closer() {
    search_ = Effort{}.search;
    promise_ = {2048, 1};
    const std::scoped_lock lock(mutex_);
    quick_.clear();
}

void Feasible::try_less_water() {
    less_water_ = true;
    const std::scoped_lock lock(mutex_);
    quick_.clear();
    full_.clear();  // what is chosen in few scenarios is what is tried in all
}

}  // namespace holdwater::plan
