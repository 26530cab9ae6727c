// SPDX-License-Identifier: MIT
#include "plan/advice/lever.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::plan {
namespace {

/// So many digits as a value has that was rounded to a thousandth.
std::string with_unit(double value, const char* unit) {
    std::string text = fmt::format("{:.3f}", value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') {
        text.pop_back();
    }
    return text + " " + unit;
}

}  // namespace

std::string written(units::Temperature t) {
    return with_unit(t.celsius(), "C");
}
std::string written(units::TemperatureDifference d) {
    return with_unit(d.si(), "K");
}
std::string written(units::Length l) {
    return with_unit(units::in_millimetres(l), "mm");
}
std::string written(units::Mass m) {
    return with_unit(m.si(), "kg");
}
std::string written(units::Volume v) {
    return with_unit(units::in_litres(v), "L");
}
std::string written(units::HeatLoss loss) {
    return with_unit(loss.si(), "W/K");
}

std::vector<Lever> levers_of(const trip::Trip& trip) {
    std::vector<Lever> levers;
    add_rule_levers(trip, levers);
    add_time_levers(trip, levers);
    add_taste_levers(trip, levers);
    add_piece_levers(trip, levers);
    add_box_levers(trip, levers);
    std::stable_sort(levers.begin(), levers.end(), [](const Lever& a, const Lever& b) { return a.kind < b.kind; });
    return levers;
}

}  // namespace holdwater::plan
