// SPDX-License-Identifier: MIT
#include "safety/sting.hpp"

#include "facts/facts.hpp"
#include "safety/population.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace holdwater::safety {
namespace {

// Step of the baths over which the inverse band is summed; a tenth of what the bands are asked to keep.
constexpr double bath_step = 0.25;  // K

std::optional<units::Duration> quantile(const std::vector<double>& sorted, double share) {
    const auto at = static_cast<std::size_t>(std::lround(share * static_cast<double>(sorted.size() - 1)));
    return std::isfinite(sorted[at]) ? std::optional{units::seconds(sorted[at])} : std::nullopt;
}

}  // namespace

std::optional<units::Duration> first_sting(const SkinResponse& response, const HandModel& hand,
                                           units::Temperature water) {
    if (hand.start >= hand.threshold) {
        return units::Duration{0};
    }
    if (water <= hand.threshold) {
        return std::nullopt;
    }
    return response.reaches(hand.depth, (hand.threshold - hand.start) / (water - hand.start));
}

StingBand sting_band(units::Temperature water, HandState hand, Stirring stirring) {
    std::vector<double> times = Population::of(hand, stirring).sting_seconds(water);
    std::sort(times.begin(), times.end());
    const auto never = std::count_if(times.begin(), times.end(), [](double t) { return !std::isfinite(t); });
    return {quantile(times, 0.05), quantile(times, 0.50), quantile(times, 0.95),
            static_cast<double>(never) / static_cast<double>(times.size())};
}

Prior usual_prior() {
    return {facts::facts().temperature("touch.prior.low"), facts::facts().temperature("touch.prior.high")};
}

std::optional<BathBand> bath_band(units::Duration from, std::optional<units::Duration> to, HandState hand,
                                  Stirring stirring, Prior prior) {
    const Population& population = Population::of(hand, stirring);
    std::vector<double> baths;
    for (double bath = prior.low.celsius() + bath_step / 2.0; bath < prior.high.celsius(); bath += bath_step) {
        baths.push_back(bath);
    }
    // Stung from one moment to another: those stung before the later less those stung before the earlier one.
    const std::vector<double> sooner = population.stung_before(from.si(), baths);
    std::vector<double> weights(baths.size(), static_cast<double>(population.size()));
    if (to) {
        weights = population.stung_before(to->si(), baths);
    }
    double total = 0.0;
    for (std::size_t i = 0; i < baths.size(); ++i) {
        weights[i] -= sooner[i];
        total += weights[i];
    }
    if (!(total > 0.0)) {
        return std::nullopt;
    }
    const auto bath_at = [&](double share) {
        double sum = 0.0;
        for (std::size_t i = 0; i < baths.size(); ++i) {
            if (sum + weights[i] >= share * total && weights[i] > 0.0) {
                const double part = (share * total - sum) / weights[i];
                return units::celsius(baths[i] + (part - 0.5) * bath_step);
            }
            sum += weights[i];
        }
        return units::celsius(baths.back());
    };
    return BathBand{bath_at(0.05), bath_at(0.50), bath_at(0.95)};
}

std::optional<BathBand> bath_band(DipRow row, HandState hand, Stirring stirring) {
    const facts::Facts& facts = facts::facts();
    const units::Duration one = facts.duration("touch.at-once");
    const units::Duration two = facts.duration("touch.by-one");
    const units::Duration end = facts.duration("touch.by-two");
    switch (row) {
        case DipRow::at_once:
            return bath_band(units::Duration{0}, one, hand, stirring, usual_prior());
        case DipRow::by_one:
            return bath_band(one, two, hand, stirring, usual_prior());
        case DipRow::by_two:
            return bath_band(two, end, hand, stirring, usual_prior());
        case DipRow::not_by_two:
            return bath_band(end, std::nullopt, hand, stirring, usual_prior());
    }
    return std::nullopt;
}

BathBand dip_band(DipRow row) {
    const auto kept = [](const char* key) {
        const facts::Figure& band = facts::facts().figure(key);
        return BathBand{units::celsius(band.low), units::celsius(band.value), units::celsius(band.high)};
    };
    switch (row) {
        case DipRow::at_once:
            return kept("touch.band.at-once");
        case DipRow::by_one:
            return kept("touch.band.by-one");
        case DipRow::by_two:
            return kept("touch.band.by-two");
        case DipRow::not_by_two:
            break;
    }
    return kept("touch.band.not-by-two");
}

std::optional<BathBand> bath_band(units::Duration sting, HandState hand, Stirring stirring) {
    const facts::Facts& facts = facts::facts();
    const units::Duration half = std::max(sting * facts.value("touch.window"), facts.duration("touch.window.least"));
    return bath_band(sting - half, sting + half, hand, stirring, usual_prior());
}

}  // namespace holdwater::safety
