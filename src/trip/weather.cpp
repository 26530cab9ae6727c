// SPDX-License-Identifier: MIT
#include "trip/trip.hpp"

#include <stdexcept>

namespace holdwater::trip {
namespace {

units::Temperature between(units::Temperature a, units::Temperature b, double share) {
    return a + share * (b - a);
}

/// Of hours in any order: the last at or before the moment and the first after it, by the distance in seconds that
/// `behind` and `ahead` give; either may be missing.
struct Neighbours {
    std::optional<double> since;
    units::Temperature before;
    std::optional<double> until;
    units::Temperature after;

    void before_at(double seconds, units::Temperature air) {
        if (!since || seconds < *since) {
            since = seconds;
            before = air;
        }
    }
    void after_at(double seconds, units::Temperature air) {
        if (!until || seconds < *until) {
            until = seconds;
            after = air;
        }
    }
    units::Temperature value() const {
        if (!since && !until) {
            throw std::logic_error("weather without hours");
        }
        if (!since || !until) {
            return since ? before : after;
        }
        const double span = *since + *until;
        return span > 0 ? between(before, after, *since / span) : before;
    }
};

units::Temperature air_daily(const std::vector<Weather::Daily>& hours, units::LocalTime moment) {
    constexpr int day = 86400;
    Neighbours near;
    for (const Weather::Daily& hour : hours) {
        const int since = (moment.second_of_day() - hour.at.second_of_day + day) % day;
        near.before_at(since, hour.air);
        near.after_at(day - since, hour.air);  // its next return, today or tomorrow
    }
    return near.value();
}

units::Temperature air_dated(const std::vector<Weather::Dated>& hours, units::LocalTime moment) {
    Neighbours near;
    for (const Weather::Dated& hour : hours) {
        const double since = moment.since(hour.at).si();
        if (since >= 0) {
            near.before_at(since, hour.air);
        } else {
            near.after_at(-since, hour.air);
        }
    }
    return near.value();
}

}  // namespace

units::Temperature Weather::air_at(units::LocalTime moment) const {
    if (const auto* const daily = std::get_if<std::vector<Daily>>(&hours)) {
        return air_daily(*daily, moment);
    }
    return air_dated(std::get<std::vector<Dated>>(hours), moment);
}

}  // namespace holdwater::trip
