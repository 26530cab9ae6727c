// SPDX-License-Identifier: MIT
#include "cli/text/told.hpp"

#include <fmt/format.h>

namespace holdwater::cli {

std::string day_time(units::LocalTime t) {
    constexpr const char* days[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    return fmt::format("{} {}", days[t.weekday()], t.clock_24());
}

Told::Told(const plan::Plan& one) : plan(one), figures_(card::trip_figures({one, words::Words::model()})) {}

std::string Told::operator()(std::string_view card, std::string_view key, const card::Which& which) const {
    return of(card).full(key, which);
}

std::string Told::when(std::string_view card, std::string_view key, const card::Which& which) const {
    return day_time(moment(card, key, which));
}

std::string Told::clock(std::string_view card, std::string_view key, const card::Which& which) const {
    return moment(card, key, which).clock_24();
}

units::LocalTime Told::moment(std::string_view card, std::string_view key, const card::Which& which) const {
    return of(card).moment(key, which);
}

bool Told::has(std::string_view card, std::string_view key, const card::Which& which) const {
    return of(card).has(key, which);
}

std::string Told::for_hold(std::string_view card, std::string_view key, const card::Which& which) const {
    return has(card, key, which) ? " for " + (*this)(card, key, which) : "";
}

}  // namespace holdwater::cli
