// SPDX-License-Identifier: MIT
#include "facts/kept.hpp"
#include "safety/clocks.hpp"

namespace holdwater::safety {

std::optional<units::Duration> come_up(const units::History& core) {
    if (core.empty()) {
        return std::nullopt;
    }
    const units::Duration start = core.points.front().at;
    const auto cold = facts::kept([](const facts::Facts& facts) { return facts.temperature("come-up.from"); });
    const auto warm = facts::kept([](const facts::Facts& facts) { return facts.temperature("come-up.to"); });
    const std::optional<units::Duration> from = core.first_at_or_above(cold, start);
    const std::optional<units::Duration> to = core.first_at_or_above(warm, start);
    if (!from || !to) {
        return std::nullopt;
    }
    return *to - *from;
}

ComeUpVerdict judge_come_up(std::optional<units::Duration> come_up) {
    const facts::Facts& facts = facts::facts();
    if (!come_up || !(*come_up <= facts.duration("come-up.refuse"))) {
        return ComeUpVerdict::refused;
    }
    return *come_up < facts.duration("come-up.warn") ? ComeUpVerdict::fine : ComeUpVerdict::slow;
}

}  // namespace holdwater::safety
