// SPDX-License-Identifier: MIT
#include "plan/advice/feasible.hpp"

#include "plan/advice/lever.hpp"
#include "plan/choose/start.hpp"
#include "plan/result/boxes.hpp"
#include "plan/search/setup.hpp"
#include "trip/read_trip.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <array>
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
    effort.schedule_only = true;
    effort.for_cards = false;
    effort.diagnose = false;
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

/// When the fire may be lit, the latest first: a bath that need not be held for so long is the sooner held.
std::vector<LocalTime> few_starts_of(const Trip& trip) {
    constexpr std::array shares{0.4, 0.65};  // of all the time that there is
    constexpr Duration enough = units::hours(6);
    constexpr double quarter = 900.0;
    const Duration whole = trip.serve.since(trip.from);
    std::vector<LocalTime> starts;
    if (may_be_lit_later(trip) && whole >= enough) {
        for (const double share : shares) {
            const LocalTime later =
                trip.serve.after(-Duration{units::round_to(whole.si() * share, quarter, units::Toward::nearest)});
            if (!is_asleep(trip, later)) {
                starts.push_back(later);
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

Feasible::Quick Feasible::try_quickly(const Trip& trip, std::optional<std::size_t>& guess) const {
    if (!is_allowed(trip)) {
        return {Against::input, trip.from};
    }
    const Effort effort = only_whether(search_, promise_);
    const std::vector<LocalTime> starts = few_starts_of(trip);
    std::vector<std::optional<Against>> known(starts.size());
    std::size_t at = std::min(guess.value_or(0), starts.size() - 1);
    for (;;) {
        known[at] = heaviest(faults_at(trip, starts[at], effort));
        // Food that is late asks for an earlier fire, a bath that does not hold so long for a later one.
        const bool earlier = known[at] == Against::late && at + 1 < starts.size() && !known[at + 1];
        const bool later = known[at] == Against::bath && at > 0 && !known[at - 1];
        if (!earlier && !later) {
            break;
        }
        at += earlier ? 1 : -1;
    }
    guess = guess.value_or(at);
    return {*known[at], starts[at]};
}

Against Feasible::against(const Trip& trip) {
    const std::string text = trip::canonical(trip);
    std::optional<std::size_t> guess;
    {
        const std::scoped_lock lock(mutex_);
        if (const auto known = quick_.find(text); known != quick_.end()) {
            return known->second.against;
        }
        guess = guess_;
    }
    const Quick quick = try_quickly(trip, guess);
    const std::scoped_lock lock(mutex_);
    guess_ = quick.against == Against::input ? guess_ : guess;
    return quick_.emplace(text, quick).first->second.against;
}

LocalTime Feasible::start_of(const Trip& trip) {
    if (!quickly(trip)) {
        return trip.from;
    }
    const std::scoped_lock lock(mutex_);
    return quick_.at(trip::canonical(trip)).start;
}

bool Feasible::fully(const Trip& trip) {
    const std::string text = trip::canonical(trip);
    {
        const std::scoped_lock lock(mutex_);
        if (const auto known = full_.find(text); known != full_.end()) {
            return known->second;
        }
    }
    const Effort effort = only_whether(Effort{}.search, full_draw());
    const bool may_choose = !trip.light_fire && start_of(trip) != trip.from;
    const std::vector<Trip> parts = one_trip_a_box(trip);
    const bool holds = std::all_of(parts.begin(), parts.end(), [&effort, may_choose](const Trip& part) {
        const auto shared = std::make_shared<const Trip>(part);
        // As given it is soonest tried; what chooses comes back to that at last.
        Effort given = effort;
        given.choose = false;
        return make_plan(shared, given).ok() || (may_choose && make_plan(shared, effort).ok());
    });
    const std::scoped_lock lock(mutex_);
    return full_.emplace(text, holds).first->second;
}

void Feasible::look_closer() {
    search_ = Effort{}.search;
    promise_ = {2048, 1};
    const std::scoped_lock lock(mutex_);
    quick_.clear();
}

}  // namespace holdwater::plan
