// SPDX-License-Identifier: MIT
#include "safety/population.hpp"

#include "facts/kept.hpp"
#include "safety/skin.hpp"

#include <boost/math/special_functions/erf.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <memory>
#include <numeric>
#include <string>

namespace holdwater::safety {
namespace {

// Responses are worked out once for these film coefficients; hands lie between two of them.
constexpr double lowest_film = 150.0;     // W/(m2 K)
constexpr double highest_film = 15000.0;  // W/(m2 K)
constexpr std::size_t film_count = 41;

double film_at(std::size_t i) {
    return lowest_film *
           std::pow(highest_film / lowest_film, static_cast<double>(i) / static_cast<double>(film_count - 1));
}

const std::vector<SkinResponse>& responses() {
    return facts::kept([](const facts::Facts& facts) {
        std::vector<SkinResponse> made;
        const Skin skin = typical_skin();
        const units::Duration horizon = facts.duration("hand.horizon");
        for (std::size_t i = 0; i < film_count; ++i) {
            made.emplace_back(skin, units::FilmCoefficient{film_at(i)}, horizon);
        }
        return made;
    });
}

constexpr std::size_t dimensions = 5;

/// Point n of an evenly filling sequence in [0, 1)^5: multiples of powers of 1/phi, with phi the root of
/// x^(d+1) = x + 1 (a Kronecker sequence).
std::array<double, dimensions> even_point(std::size_t n) {
    static const double phi = [] {
        double x = 1.0;
        for (int i = 0; i < 100; ++i) {
            x = std::pow(1.0 + x, 1.0 / (static_cast<double>(dimensions) + 1.0));
        }
        return x;
    }();
    std::array<double, dimensions> point{};
    double alpha = 1.0;
    for (double& coordinate : point) {
        alpha /= phi;
        const double value = 0.5 + alpha * static_cast<double>(n);
        coordinate = value - std::floor(value);
    }
    return point;
}

/// Standard normal deviate of a probability, cut off at four standard deviations.
double normal(double probability) {
    constexpr double tail = 3.2e-5;
    const double p = std::clamp(probability, tail, 1.0 - tail);
    return std::sqrt(2.0) * boost::math::erf_inv(2.0 * p - 1.0);
}

}  // namespace

Population::Population(HandState hand, Stirring stirring) {
    const facts::Facts& facts = facts::facts();
    const std::string film_key = stirring == Stirring::stirred ? "hand.film.stirred" : "hand.film.still";
    const std::string start_key = hand == HandState::warm ? "hand.warm" : "hand.cold";
    const std::vector<SkinResponse>& skins = responses();
    seconds_ = skins.front().seconds();
    const auto people = static_cast<std::size_t>(facts.value("hand.people"));
    const double usual_film = facts.value(film_key);
    const double film_sd = facts.value(film_key + ".ln-sd");
    const double usual_depth = facts.value("hand.depth");
    const double depth_sd = facts.value("hand.depth.ln-sd");
    const units::Temperature threshold = facts.temperature("hand.threshold");
    const units::TemperatureDifference threshold_sd = facts.difference("hand.threshold.sd");
    const units::Temperature start = facts.temperature(start_key);
    const units::TemperatureDifference start_sd = facts.difference(start_key + ".sd");
    const double reaction_least = facts.value("hand.reaction.least");
    const double reaction = facts.value("hand.reaction");
    const double reaction_sd = facts.value("hand.reaction.sd");
    for (std::size_t n = 0; n < people; ++n) {
        const std::array<double, dimensions> point = even_point(n);
        Draw draw;
        const double film = usual_film * std::exp(film_sd * normal(point[0]));
        draw.hand.depth = units::metres(usual_depth * std::exp(depth_sd * normal(point[1])) * metres_per_micrometre);
        draw.hand.threshold = threshold + threshold_sd * normal(point[2]);
        draw.hand.start = start + start_sd * normal(point[3]);
        draw.reaction = std::max(reaction_least, reaction + reaction_sd * normal(point[4]));
        const double place = std::clamp(std::log(film / lowest_film) / std::log(highest_film / lowest_film), 0.0, 1.0) *
                             static_cast<double>(film_count - 1);
        const std::size_t lower = std::min(static_cast<std::size_t>(place), film_count - 2);
        const double part = place - static_cast<double>(lower);
        const std::vector<double> before = skins[lower].over_time(draw.hand.depth);
        const std::vector<double> after = skins[lower + 1].over_time(draw.hand.depth);
        draw.share.reserve(seconds_.size());
        for (std::size_t moment = 0; moment < seconds_.size(); ++moment) {
            draw.share.push_back(static_cast<float>(before[moment] + (after[moment] - before[moment]) * part));
        }
        draws_.push_back(std::move(draw));
    }
}

const Population& Population::of(HandState hand, Stirring stirring) {
    using Made = std::array<std::unique_ptr<const Population>, 4>;
    Made& made = *facts::kept([](const facts::Facts&) { return std::make_unique<Made>(); });
    const std::size_t which = (hand == HandState::warm ? 0U : 1U) + (stirring == Stirring::stirred ? 0U : 2U);
    if (!made[which]) {
        made[which].reset(new Population(hand, stirring));
    }
    return *made[which];
}

double Population::sting_of(const Draw& draw, double water) const {
    const double start = draw.hand.start.celsius();
    const double threshold = draw.hand.threshold.celsius();
    if (start >= threshold) {
        return draw.reaction;
    }
    const double share = water > threshold ? (threshold - start) / (water - start) : 2.0;
    const auto reached = std::lower_bound(draw.share.begin(), draw.share.end(), static_cast<float>(share));
    if (reached == draw.share.end()) {
        return std::numeric_limits<double>::infinity();
    }
    const auto right = static_cast<std::size_t>(std::max<std::ptrdiff_t>(1, reached - draw.share.begin()));
    const auto before = static_cast<double>(draw.share[right - 1]);
    const auto after = static_cast<double>(draw.share[right]);
    const double part = std::clamp((share - before) / (after - before), 0.0, 1.0);
    return seconds_[right - 1] + (seconds_[right] - seconds_[right - 1]) * part + draw.reaction;
}

/// The bath [C] above which this hand is stung before a moment [s]; infinity if no bath does that. The other way round
/// from sting_of: what share of the way the skin has gone by then says how far away the water must be.
double Population::coolest_that_stings(const Draw& draw, double moment) const {
    constexpr double never = std::numeric_limits<double>::infinity();
    const double start = draw.hand.start.celsius();
    const double threshold = draw.hand.threshold.celsius();
    const double left = moment - draw.reaction;
    if (start >= threshold) {
        return left > 0.0 ? -never : never;
    }
    if (left <= seconds_.front()) {
        return never;
    }
    const auto after = std::lower_bound(seconds_.begin(), seconds_.end(), left);
    auto share = static_cast<double>(draw.share.back());
    if (after != seconds_.end()) {
        const auto right = static_cast<std::size_t>(std::max<std::ptrdiff_t>(1, after - seconds_.begin()));
        const double part = (left - seconds_[right - 1]) / (seconds_[right] - seconds_[right - 1]);
        const auto before = static_cast<double>(draw.share[right - 1]);
        share = before + part * (static_cast<double>(draw.share[right]) - before);
    }
    return share > 0.0 ? start + (threshold - start) / share : never;
}

std::vector<double> Population::stung_before(double moment, const std::vector<double>& baths) const {
    std::vector<double> stung(baths.size(), 0.0);
    for (const Draw& draw : draws_) {
        const auto first = std::upper_bound(baths.begin(), baths.end(), coolest_that_stings(draw, moment));
        if (first != baths.end()) {
            stung[static_cast<std::size_t>(first - baths.begin())] += 1.0;
        }
    }
    std::partial_sum(stung.begin(), stung.end(), stung.begin());
    return stung;
}

std::vector<double> Population::sting_seconds(units::Temperature water) const {
    std::vector<double> times;
    times.reserve(draws_.size());
    for (const Draw& draw : draws_) {
        times.push_back(sting_of(draw, water.celsius()));
    }
    return times;
}

}  // namespace holdwater::safety
