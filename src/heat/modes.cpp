// SPDX-License-Identifier: MIT
#include "heat/modes.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::heat {
namespace {

// How far the series is carried. Numerical settings, not figures; tests/heat/modes.cpp holds the result to 6 % of a bath
// step in the core within the first minute and to 2 % after it, when a real core has hardly begun to move, to 0.3 % once
// it moves, and the mean to 0.3 % after the first minute.
constexpr double fastest_over_slowest = 150.0;  // modes of a higher rate than this many times the slowest are cut off
constexpr double fastest_rate = 0.25;           // 1/s; what dies within seconds is cut off in thin pieces too
constexpr double least_core = 1e-4;             // weight times lifetime, as a share of the slowest mode's
constexpr double least_mean = 1e-5;
constexpr double fade_time = 0.02;              // in lifetimes of the slowest mode
constexpr int fade_order = 3;
constexpr double merge_above = 4.0;             // times the slowest rate: from there modes of like rate become one
constexpr double merge_within = 1.15;           // ratio of rates

/// Terms of one direction up to a rate.
struct Ladder {
    std::vector<double> rate;
    Series series;
};

Ladder ladder_of(const Direction& direction, const FoodProperties& properties, double film, double up_to) {
    const double per_zeta = properties.diffusivity.si() / (direction.half * direction.half);
    const double biot = film * direction.half / properties.conductivity.si();
    // One eigenvalue lies in each stretch of about pi.
    const int terms = 1 + static_cast<int>(std::sqrt(std::max(up_to, 0.0) / per_zeta) / 3.14159);
    Ladder ladder{{}, series(direction.b, biot, terms)};
    for (const double zeta : ladder.series.zeta) {
        ladder.rate.push_back(per_zeta * zeta * zeta);
    }
    return ladder;
}

Mode times(const Mode& mode, const Ladder& ladder, std::size_t n, bool nearest_face) {
    return {mode.rate + ladder.rate[n], mode.core * ladder.series.centre[n],
            mode.surface * (nearest_face ? ladder.series.surface[n] : ladder.series.centre[n]),
            mode.mean * ladder.series.mean[n]};
}

/// The core's series alternates: cut off sharply it would swing by several per cent after each jump. Its last terms are
/// faded out, which leaves slow modes alone (to the order below) and the core at rest while it has not begun to move.
double fade(double rate_over_slowest) {
    return 1.0 - std::pow(-std::expm1(-fade_time * rate_over_slowest), fade_order);
}

/// One mode for several whose rates lie close together and whose core weights have one sign: the weights add up, the rate
/// keeps the core's lag, the integral over time.
class Merger {
  public:
    void add(const Mode& mode, std::vector<Mode>& finished) {
        if (first_rate_ > 0.0 && mode.rate > merge_within * first_rate_) {
            flush(finished);
        }
        if (first_rate_ == 0.0) {
            first_rate_ = mode.rate;
        }
        sum_.core += mode.core;
        sum_.surface += mode.surface;
        sum_.mean += mode.mean;
        lag_ += mode.core / mode.rate;
    }
    void flush(std::vector<Mode>& finished) {
        if (first_rate_ > 0.0) {
            sum_.rate = sum_.core / lag_;
            finished.push_back(sum_);
        }
        *this = {};
    }

  private:
    Mode sum_;
    double lag_ = 0.0;
    double first_rate_ = 0.0;
};

/// A product has many modes of nearly the same rate; they are told apart by nobody. Sorted in, sorted out.
std::vector<Mode> merged(const std::vector<Mode>& modes) {
    std::vector<Mode> result;
    Merger rising;
    Merger falling;
    for (const Mode& mode : modes) {
        if (mode.rate < merge_above * modes.front().rate) {
            result.push_back(mode);
        } else {
            (mode.core > 0.0 ? rising : falling).add(mode, result);
        }
    }
    rising.flush(result);
    falling.flush(result);
    std::sort(result.begin(), result.end(), [](const Mode& a, const Mode& b) { return a.rate < b.rate; });
    return result;
}

}  // namespace

Modes product_of(const std::vector<Direction>& directions, const FoodProperties& properties,
                 units::FilmCoefficient film) {
    std::vector<Ladder> ladders;
    double slowest = 0.0;
    for (const Direction& direction : directions) {
        slowest += ladder_of(direction, properties, film.si(), 0.0).rate.front();
    }
    const double fastest = std::max(std::min(fastest_over_slowest * slowest, fastest_rate), 4.0 * slowest);
    std::size_t nearest = 0;
    for (std::size_t i = 0; i < directions.size(); ++i) {
        ladders.push_back(ladder_of(directions[i], properties, film.si(), fastest));
        if (directions[i].half < directions[nearest].half) {
            nearest = i;
        }
    }

    std::vector<Mode> modes = {{0.0, 1.0, 1.0, 1.0}};
    for (std::size_t i = 0; i < ladders.size(); ++i) {
        std::vector<Mode> longer;
        for (const Mode& mode : modes) {
            for (std::size_t n = 0; n < ladders[i].rate.size(); ++n) {
                if (mode.rate + ladders[i].rate[n] > fastest) {
                    break;
                }
                longer.push_back(times(mode, ladders[i], n, i == nearest));
            }
        }
        modes = std::move(longer);
    }
    std::sort(modes.begin(), modes.end(), [](const Mode& a, const Mode& b) { return a.rate < b.rate; });
    for (Mode& mode : modes) {
        mode.core *= fade(mode.rate / slowest);
    }
    const Mode first = modes.front();
    std::erase_if(modes, [&](const Mode& mode) {
        const double life = first.rate / mode.rate;
        return std::abs(mode.core) * life < least_core * std::abs(first.core) &&
               mode.mean * life < least_mean * first.mean;
    });

    Modes result{directions.size() > 1 ? merged(modes) : modes, 1.0};
    double core = 1.0;
    for (const Mode& mode : result.modes) {
        core -= mode.core;
        result.mean_at_once -= mode.mean;
    }
    result.modes.push_back({1.5 * fastest, core, 0.0, 0.0});
    return result;
}

}  // namespace holdwater::heat
