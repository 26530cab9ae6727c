// SPDX-License-Identifier: MIT
#include "plan/choose/start.hpp"

#include "answer/hold/piece.hpp"
#include "answer/review/review_food.hpp"
#include "facts/facts.hpp"
#include "heat/driven.hpp"
#include "plan/search/setup.hpp"
#include "plan/search/sleep_window.hpp"
#include "plan/search/work.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <optional>

namespace holdwater::plan {
namespace {

using trip::Trip;
using units::Duration;
using units::LocalTime;

// How finely is looked, no figures of any science.
constexpr std::size_t most_starts = 24;  // of a first look over the day
constexpr double quarter_hour = 900.0;   // s, to which a start is chosen
constexpr double shares_of_water[] = {0.9, 0.8, 0.7, 0.6, 0.5, 0.4};

Effort quick_look() {
    Effort effort;
    effort.search = {64, 1};
    effort.promise = {128, 1};
    effort.advise = effort.what_ifs = effort.for_cards = effort.diagnose = effort.choose = false;
    effort.schedule_only = true;
    return effort;
}

/// What was looked at, each once.
class Looks {
  public:
    Looks(const Trip& trip, bool unwoken) : trip_(&trip), unwoken_(unwoken) {}

    /// The burden with the fire lit then and so much water; nothing where that does not hold.
    std::optional<Burden> at(LocalTime start, units::Volume water, std::optional<Duration> lighter_than) {
        const auto [known, is_new] = seen_.try_emplace({start.seconds(), water.si()});
        if (is_new) {
            known->second = look(start, water, lighter_than);
        }
        return known->second;
    }
    std::vector<Choice> take() && { return std::move(found_); }
    /// From the fire until the food is ready at the latest, of the quickest that was found.
    std::optional<Duration> quickest() const { return quickest_; }

  private:
    std::optional<Burden> look(LocalTime start, units::Volume water, std::optional<Duration> lighter_than) {
        auto tried = std::make_shared<Trip>(lit_at(*trip_, start));
        tried->boxes.front().water = water;
        Effort effort = quick_look();
        effort.lighter_than = lighter_than;
        effort.unwoken = unwoken_;
        const auto plan = plan_as_given(tried, effort);
        if (!plan) {
            return std::nullopt;
        }
        const Burden burden = burden_of(*plan);
        if (unwoken_ && burden.wakings > 0) {
            return std::nullopt;
        }
        found_.push_back({std::move(tried), burden});
        for (const FoodPlan& food : plan->foods) {
            const Duration takes = food.ready().since(start);
            quickest_ = quickest_ ? std::min(*quickest_, takes) : takes;
        }
        return burden;
    }

    const Trip* trip_;
    bool unwoken_;
    std::map<std::pair<std::int64_t, double>, std::optional<Burden>> seen_;
    std::vector<Choice> found_;
    std::optional<Duration> quickest_;
};

/// From food in until it may be done, at the soonest: the quickest piece in the hottest bath that is ever filled.
Duration soonest_done(const trip::Food& food, Duration within) {
    const facts::Facts& facts = facts::facts();
    const auto modes = answer::modes_for(answer::piece_of(food), heat::Bound::fast);
    if (!modes) {
        return Duration{0};
    }
    units::History hottest;
    hottest.add(Duration{0}, facts.temperature("fill.highest"));
    const units::Temperature start = food.start + units::kelvins(facts.spread("start").high);
    const units::History core = heat::driven(*modes, start, hottest, Duration{0}, within).core;
    return core.first_at_or_above(food.target - facts.difference("done.below-target")).value_or(within);
}

}  // namespace

LocalTime last_start(const Trip& trip) {
    const facts::Facts& facts = facts::facts();
    const Duration round = trip.fire.boils_in + facts.duration("pour.handling");
    const Duration filling = round * (trip.boxes.front().prewarmed ? 2.0 : 1.0) + facts.duration("fill.settle");
    LocalTime last = trip.serve;
    for (const trip::Food& food : trip.foods) {
        const LocalTime eaten = trip::first_eaten(food, trip);
        const Duration in_bath = food.in ? Duration{0} : soonest_done(food, eaten.since(trip.from)) + filling;
        last = std::min({last, food.in.value_or(last), eaten.after(-in_bath)});
    }
    return last;
}

namespace {

/// Starts by the clock, the latest first, and the first moment.
std::vector<LocalTime> starts_of(const Trip& trip) {
    const double whole = std::max(0.0, last_start(trip).since(trip.from).si());
    const double step = quarter_hour * std::ceil(whole / static_cast<double>(most_starts) / quarter_hour);
    std::vector<LocalTime> starts{trip.from};
    const double from = static_cast<double>(trip.from.second_of_day());
    for (double clock = units::round_to(from + 1.0, step, units::Toward::up); clock < from + whole; clock += step) {
        starts.insert(starts.begin(), trip.from.after(Duration{clock - from}));
    }
    return starts;
}

/// The weight of waiting alone that a start so early must have, where food is ready so soon.
Duration least_wait(const Trip& trip, LocalTime start, Duration quickest) {
    Duration most{0};
    for (const trip::Food& food : trip.foods) {
        most = std::max(most, trip::eaten(food, trip).since(start) - quickest);
    }
    Burden waiting;
    waiting.held = std::max(Duration{0}, most - facts::facts().duration("burden.slack") - units::hours(2));
    return waiting.weight();
}

}  // namespace

Trip lit_at(const Trip& trip, LocalTime at) {
    Trip lit = trip;
    lit.first = trip.first.value_or(trip.from);
    lit.from = at;
    lit.light_fire = at;
    return lit;
}

namespace {

/// Looks around for the lightest start and water.
class Choosing {
  public:
    Choosing(const Trip& trip, const Asked& asked)
        : trip_(&trip),
          asked_(asked),
          looks_(trip, asked.unwoken),
          last_(last_start(trip)),
          least_(asked.lighter_than) {}

    /// True if this is the lightest so far.
    bool look(LocalTime start, units::Volume water) {
        if (start < trip_->from || start >= last_ || (asked_.unwoken && in_the_night(start)) || work_is_enough()) {
            return false;
        }
        const Duration waits = looks_.quickest() ? least_wait(*trip_, start, *looks_.quickest()) : Duration{0};
        if (least_ && waits >= *least_) {
            return false;  // waiting alone weighs as much
        }
        const auto burden = looks_.at(start, water, least_ ? std::optional(*least_ - waits) : std::nullopt);
        if (!burden || (least_ && burden->weight() >= *least_)) {
            return false;
        }
        best_ = start;
        least_ = burden->weight();
        return true;
    }
    /// At all of these starts, the latest first, from the latest with which food may be ready: that is halved for.
    void look_around(const std::vector<LocalTime>& starts, units::Volume water) {
        std::size_t from = 0;
        for (std::size_t end = starts.size(); from < end && !work_is_enough();) {
            const std::size_t middle = from + (end - from) / 2;
            if (may_be_ready(starts[middle], water)) {
                end = middle;
            } else {
                from = middle + 1;
            }
        }
        for (; from < starts.size(); ++from) {
            look(starts[from], water);
        }
    }
    /// To the quarter of an hour, from the best start so far; true if one is lighter.
    bool climb(units::Volume water) {
        const std::optional<Duration> before = least_;
        for (const double quarters : {2.0, 1.0}) {
            while (look(best_->after(Duration{quarters * quarter_hour}), water) ||
                   look(best_->after(Duration{-quarters * quarter_hour}), water)) {
            }
        }
        return least_ != before;
    }
    bool found() const { return best_.has_value(); }
    LocalTime best() const { return best_.value(); }
    std::vector<Choice> take() && { return std::move(looks_).take(); }

  private:
    bool may_be_ready(LocalTime start, units::Volume water) const {
        auto tried = std::make_shared<Trip>(lit_at(*trip_, start));
        tried->boxes.front().water = water;
        return plan::may_be_ready(std::move(tried), quick_look());
    }
    bool in_the_night(LocalTime start) const {
        const auto night = SleepWindow(*trip_).night_after(start.since(trip_->from));
        return night && start.since(trip_->from) >= night->from;
    }

    const Trip* trip_;
    Asked asked_;
    Looks looks_;
    LocalTime last_;
    std::optional<LocalTime> best_;
    std::optional<Duration> least_;
};

}  // namespace

std::vector<units::Volume> waters_of_fewer_rounds(const Trip& trip) {
    const double whole = units::in_litres(trip.boxes.front().water);
    const double batch = units::in_litres(trip.fire.pot * (trip.fire.usable * trip.fire.pots));
    const auto rounds = static_cast<int>(std::ceil(whole / batch));
    std::vector<units::Volume> waters;
    for (int fewer = 1; fewer < rounds; ++fewer) {
        const double litres = std::floor(whole * (rounds - fewer) / rounds);
        if (waters.empty() || litres < units::in_litres(waters.back())) {
            waters.push_back(units::litres(litres));
        }
    }
    return waters;
}

std::vector<Choice> choices_of(const Trip& trip, const Asked& asked) {
    Choosing choosing(trip, asked);
    const std::vector<LocalTime> starts = starts_of(trip);
    units::Volume whole = trip.boxes.front().water;
    choosing.look_around(starts, whole);
    for (const units::Volume less : waters_of_fewer_rounds(trip)) {
        if (choosing.found() || !set_up(trip).ok()) {
            break;
        }
        whole = less;
        choosing.look_around(starts, whole);
    }
    if (!choosing.found()) {
        return {};
    }
    choosing.climb(whole);
    // With less water the pots are sooner through, and the fire may be lit later.
    int in_vain = 0;
    for (const double share : shares_of_water) {
        const units::Volume less = units::litres(std::ceil(units::in_litres(whole) * share));
        const bool lighter = choosing.look(choosing.best(), less);
        in_vain = choosing.climb(less) || lighter ? 0 : in_vain + 1;
        if (in_vain == 2) {
            break;
        }
    }
    std::vector<Choice> choices = std::move(choosing).take();
    std::stable_sort(choices.begin(), choices.end(),
                     [](const Choice& a, const Choice& b) { return a.burden.weight() < b.burden.weight(); });
    return choices;
}

}  // namespace holdwater::plan
