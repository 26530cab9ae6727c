// SPDX-License-Identifier: MIT
#include "answer/hold/kept_hold_times.hpp"

#include "facts/kept.hpp"

#include <algorithm>
#include <list>

namespace holdwater::answer {
namespace {

struct Entry {
    Piece piece;
    safety::Standard standard;
    units::TemperatureDifference thermometer;
    std::uint64_t facts = 0;  // generation
    std::shared_ptr<const KeptHoldTimes> times;
};

/// In all that hold times go by.
bool same_standard(const safety::Standard& a, const safety::Standard& b) {
    const auto finish = [](const safety::Standard& one) {
        return one.finish ? std::optional(std::pair{one.finish->core, one.finish->hold}) : std::nullopt;
    };
    return a.kill == b.kill && a.growth == b.growth && a.core_at_least == b.core_at_least &&
           a.core_at_least_for == b.core_at_least_for && finish(a) == finish(b) && a.kept_hot == b.kept_hot &&
           a.sear.has_value() == b.sear.has_value() && a.cook_floor == b.cook_floor && a.hold_floor == b.hold_floor;
}

}  // namespace

HoldTime KeptHoldTimes::at(units::Temperature reading) const {
    const std::scoped_lock lock(mutex_);
    const auto [known, is_new] = known_.try_emplace(reading);
    if (is_new) {
        known->second = times_.at(reading);
    }
    return known->second;
}

std::optional<int> KeptHoldTimes::dip_factor(units::Temperature reading, units::Temperature floor) const {
    const std::scoped_lock lock(mutex_);
    const auto [known, is_new] = dips_.try_emplace({reading, floor});
    if (is_new) {
        known->second = times_.dip_factor(reading, floor);
    }
    return known->second;
}

problem::Result<std::shared_ptr<const KeptHoldTimes>> kept_hold_times(const Piece& piece,
                                                                      const safety::Standard& standard,
                                                                      units::TemperatureDifference thermometer) {
    constexpr std::size_t most = 24;  // rows and ticks of one Hold card; each takes up to a megabyte
    static std::list<Entry> entries;  // the one asked last first
    static std::mutex mutex;
    {
        const std::scoped_lock lock(mutex);
        const auto known = std::find_if(entries.begin(), entries.end(), [&](const Entry& one) {
            return one.facts == facts::facts_generation() && one.thermometer == thermometer &&
                   same_piece(one.piece, piece) && same_standard(one.standard, standard);
        });
        if (known != entries.end()) {
            entries.splice(entries.begin(), entries, known);
            return known->times;
        }
    }
    auto times = HoldTimes::of(piece, standard, thermometer);
    if (!times) {
        return times.problems();
    }
    auto made = std::make_shared<const KeptHoldTimes>(std::move(times).value());
    const std::scoped_lock lock(mutex);
    entries.push_front({piece, standard, thermometer, facts::facts_generation(), made});
    entries.resize(std::min(entries.size(), most));
    return std::shared_ptr<const KeptHoldTimes>(made);
}

}  // namespace holdwater::answer
