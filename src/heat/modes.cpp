// SPDX-License-Identifier: MIT
#include "heat/modes.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::heat {
namespace {

// How far the series is carried. Numerical settings, not figures; tests/heat/modes.cpp holds the result to 6 % of a
// bath step in the core within the first minute and to 2 % after it, when a real core has hardly begun to move, to 0.3
// % once it moves, and the mean to 0.3 % after the first minute.
constexpr double fastest_over_slowest = 150.0;  // modes of a higher rate than this many times the slowest are cut off
constexpr double fastest_rate = 0.25;           // 1/s; what dies within seconds is cut off in thin pieces too
constexpr double least_core = 1e-4;             // weight times lifetime, as a share of the slowest mode's
constexpr double least_mean = 1e-5;
constexpr double fade_time = 0.02;     // in lifetimes of the slowest mode
constexpr double merge_above = 4.0;    // times the slowest rate: from there modes of like rate become one
constexpr double merge_within = 1.15;  // ratio of rates

/// Terms of one direction up to a rate, each with its share in fading (below).
struct Ladder {
    std::vector<double> rate;
    std::vector<double> faded;  // e^(-fade_time rate / slowest); a product over directions like the weights
    Series series;
    // From each term on, the most that one can have.
    std::vector<double> most_core;
    std::vector<double> most_mean;
};

std::vector<double> most_from(const std::vector<double>& values, std::size_t count) {
    std::vector<double> most(count);
    double so_far = 0.0;
    for (std::size_t n = count; n-- > 0;) {
        so_far = std::max(so_far, std::abs(values[n]));
        most[n] = so_far;
    }
    return most;
}

double rate_per_zeta(const Direction& direction, const FoodProperties& properties) {
    return properties.diffusivity.si() / (direction.half * direction.half);
}

Series series_of(const Direction& direction, const FoodProperties& properties, double film, int terms) {
    return series(direction.b, film * direction.half / properties.conductivity.si(), terms);
}

Ladder ladder_of(const Direction& direction, const FoodProperties& properties, double film, double slowest,
                 double fastest) {
    const double per_zeta = rate_per_zeta(direction, properties);
    // One eigenvalue lies in each stretch of about pi.
    const int terms = 1 + static_cast<int>(std::sqrt(fastest / per_zeta) / 3.14159);
    Ladder ladder{{}, {}, series_of(direction, properties, film, terms), {}, {}};
    for (const double zeta : ladder.series.zeta) {
        const double rate = per_zeta * zeta * zeta;
        if (rate > fastest) {
            break;
        }
        ladder.rate.push_back(rate);
        ladder.faded.push_back(std::exp(-fade_time * rate / slowest));
    }
    ladder.most_core = most_from(ladder.series.centre, ladder.rate.size());
    ladder.most_mean = most_from(ladder.series.mean, ladder.rate.size());
    return ladder;
}

/// Takes the modes of a product as they come, drops what does not matter and makes one mode of several whose rates lie
/// close together and whose core weights have one sign: the weights add up, the rate keeps the core's lag, the integral
/// over time. Slow modes stay as they are.
class Collector {
  public:
    Collector(const Mode& first, double fastest, bool merging) : first_(first), merging_(merging) {
        for (double edge = merge_above * first.rate * merge_within; merging; edge *= merge_within) {
            edges_.push_back(edge);
            if (edge >= fastest) {
                break;
            }
        }
        groups_.resize(2 * edges_.size());
    }

    /// Whether a mode of such weights, never negative, is worth keeping.
    bool matters(double core, double mean, double rate) const {
        const double life = first_.rate / rate;
        return core * life >= least_core * std::abs(first_.core) || mean * life >= least_mean * first_.mean;
    }

    /// faded: the product of the directions' shares. The core's series alternates: cut off sharply it would swing by
    /// several per cent after each jump. 1 - (1 - faded)^3 fades its last terms out, leaves slow modes alone, and the
    /// core at rest while it has not begun to move.
    void add(Mode mode, double faded) {
        const double rest = 1.0 - faded;
        mode.core *= 1.0 - rest * rest * rest;
        if (!matters(std::abs(mode.core), mode.mean, mode.rate)) {
            return;
        }
        if (!merging_ || mode.rate < merge_above * first_.rate) {
            modes_.push_back(mode);
            return;
        }
        const auto edge = std::lower_bound(edges_.begin(), edges_.end(), mode.rate);
        const auto index = static_cast<std::size_t>(std::min(edge - edges_.begin(), edges_.end() - edges_.begin() - 1));
        Group& group = groups_[2 * index + (mode.core > 0.0 ? 0 : 1)];
        group.sum.core += mode.core;
        group.sum.surface += mode.surface;
        group.sum.mean += mode.mean;
        group.lag += mode.core / mode.rate;
    }

    /// Slowest first.
    std::vector<Mode> finish() {
        for (Group& group : groups_) {
            if (group.lag != 0.0) {
                group.sum.rate = group.sum.core / group.lag;
                modes_.push_back(group.sum);
            }
        }
        std::sort(modes_.begin(), modes_.end(), [](const Mode& a, const Mode& b) { return a.rate < b.rate; });
        return std::move(modes_);
    }

  private:
    struct Group {
        Mode sum;
        double lag = 0.0;
    };
    Mode first_;
    bool merging_;
    std::vector<double> edges_;
    std::vector<Group> groups_;
    std::vector<Mode> modes_;
};

/// The most, and the slowest, that the directions after each can add to a product.
struct Rest {
    double core = 1.0;
    double mean = 1.0;
    double rate = 0.0;
};

std::vector<Rest> rests_of(const std::vector<Ladder>& ladders) {
    std::vector<Rest> rests(ladders.size());
    for (std::size_t i = ladders.size(); i-- > 1;) {
        const Ladder& next = ladders[i];
        if (!next.rate.empty()) {
            rests[i - 1] = {rests[i].core * next.most_core[0], rests[i].mean * next.most_mean[0],
                            rests[i].rate + next.rate[0]};
        }
    }
    return rests;
}

/// The products of all terms of the directions, with a rate up to `fastest`.
class Products {
  public:
    Products(const std::vector<Ladder>& ladders, std::size_t nearest, double fastest, Collector& collector)
        : ladders_(&ladders), rests_(rests_of(ladders)), nearest_(nearest), fastest_(fastest), collector_(&collector) {}

    void multiply() { multiply(0, {0.0, 1.0, 1.0, 1.0}, 1.0); }

  private:
    void multiply(std::size_t direction, const Mode& so_far, double faded) {
        if (direction == ladders_->size()) {
            collector_->add(so_far, faded);
            return;
        }
        constexpr double rounding = 1.0 + 1e-9;
        const Ladder& ladder = (*ladders_)[direction];
        const Rest& rest = rests_[direction];
        const std::vector<double>& surface = direction == nearest_ ? ladder.series.surface : ladder.series.centre;
        for (std::size_t n = 0; n < ladder.rate.size() && so_far.rate + ladder.rate[n] <= fastest_; ++n) {
            // Of a block thousands of products would be made, and nine in ten dropped.
            if (!collector_->matters(std::abs(so_far.core) * ladder.most_core[n] * rest.core * rounding,
                                     so_far.mean * ladder.most_mean[n] * rest.mean * rounding,
                                     (so_far.rate + ladder.rate[n] + rest.rate) / rounding)) {
                return;  // nor does any that follows
            }
            const Mode next = {so_far.rate + ladder.rate[n], so_far.core * ladder.series.centre[n],
                               so_far.surface * surface[n], so_far.mean * ladder.series.mean[n]};
            multiply(direction + 1, next, faded * ladder.faded[n]);
        }
    }

    const std::vector<Ladder>* ladders_;
    std::vector<Rest> rests_;
    std::size_t nearest_;
    double fastest_;
    Collector* collector_;
};

}  // namespace

Modes product_of(const std::vector<Direction>& directions, const FoodProperties& properties,
                 units::FilmCoefficient film) {
    Mode first{0.0, 1.0, 1.0, 1.0};
    std::size_t nearest = 0;
    for (std::size_t i = 0; i < directions.size(); ++i) {
        const Series s = series_of(directions[i], properties, film.si(), 1);
        first.rate += rate_per_zeta(directions[i], properties) * s.zeta[0] * s.zeta[0];
        first.core *= s.centre[0];
        first.mean *= s.mean[0];
        if (directions[i].half < directions[nearest].half) {
            nearest = i;
        }
    }
    const double fastest = std::max(std::min(fastest_over_slowest * first.rate, fastest_rate), 4.0 * first.rate);
    std::vector<Ladder> ladders;
    for (const Direction& direction : directions) {
        ladders.push_back(ladder_of(direction, properties, film.si(), first.rate, fastest));
    }
    Collector collector(first, fastest, directions.size() > 1);
    Products(ladders, nearest, fastest, collector).multiply();

    Modes result{collector.finish(), 1.0};
    double core = 1.0;
    for (const Mode& mode : result.modes) {
        core -= mode.core;
        result.mean_at_once -= mode.mean;
    }
    result.modes.push_back({1.5 * fastest, core, 0.0, 0.0});
    return result;
}

}  // namespace holdwater::heat
