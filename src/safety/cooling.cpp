// SPDX-License-Identifier: MIT
#include "safety/clocks.hpp"

namespace holdwater::safety {
namespace {

/// Last moment at which the value is above the level, so that a second warming counts too; nothing if it ends above.
std::optional<units::Duration> last_above(const units::History& history, units::Temperature level) {
    using units::History;
    if (history.points.back().value > level) {
        return std::nullopt;
    }
    for (std::size_t i = history.points.size() - 1; i > 0; --i) {
        const History::Point& a = history.points[i - 1];
        const History::Point& b = history.points[i];
        if (a.value > level) {
            const double share = (a.value - level).si() / (a.value - b.value).si();
            return a.at + (b.at - a.at) * share;
        }
    }
    return history.points.front().at;
}

}  // namespace

Cooling judge_cooling(const units::History& slowest) {
    Cooling cooling;
    if (slowest.empty()) {
        return cooling;
    }
    const facts::Facts& facts = facts::facts();
    // The first clock starts with the first fall below 57 C; until then the food counts as held hot.
    units::Duration from = slowest.points.front().at;
    for (std::size_t i = 0; i + 1 < slowest.points.size(); ++i) {
        const units::History::Point& a = slowest.points[i];
        const units::History::Point& b = slowest.points[i + 1];
        const units::Temperature level = facts.temperature("cooling.from");
        if (a.value < level) {
            break;
        }
        from = b.value < level ? a.at + (b.at - a.at) * ((a.value - level).si() / (a.value - b.value).si()) : b.at;
        if (b.value < level) {
            break;
        }
    }
    const std::optional<units::Duration> middle = last_above(slowest, facts.temperature("cooling.middle"));
    const std::optional<units::Duration> to = last_above(slowest, facts.temperature("cooling.to"));
    if (middle) {
        cooling.first = *middle - from;
        if (to) {
            cooling.second = *to - *middle;
        }
    }
    cooling.in_time = cooling.first && cooling.second && *cooling.first <= facts.duration("cooling.first") &&
                      *cooling.second <= facts.duration("cooling.second");
    return cooling;
}

}  // namespace holdwater::safety
