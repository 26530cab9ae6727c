// SPDX-License-Identifier: MIT
#include "safety/net_growth.hpp"

#include "facts/kept.hpp"
#include "safety/growth.hpp"
#include "safety/standard.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace holdwater::safety {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

using Point = History::Point;

/// Log10 killed between two points whose temperatures lie on one side of the reference and of `from`. Exact for a
/// temperature that runs straight: the integral of 10^(x / z) is 10^(x / z) z / ln 10.
double killed(const VegetativeKill& kill, const Point& a, const Point& b) {
    const Temperature middle = a.value + (b.value - a.value) / 2.0;
    const double logs_at_reference = (b.at - a.at).si() / kill.d.si();
    if (middle < kill.from) {
        return 0.0;
    }
    const double z = (middle < kill.reference ? kill.z_below : kill.z_above).si();
    const double from = (a.value - kill.reference).si() / z * std::log(10.0);
    const double step = (b.value - a.value).si() / z * std::log(10.0);
    return logs_at_reference * std::exp(from) * (step == 0.0 ? 1.0 : std::expm1(step) / step);
}

bool crosses(const Point& a, const Point& b, Temperature level) {
    return (a.value < level) != (b.value < level);
}

/// The straight line from a to b, cut where it crosses a level, and at a moment that matters.
template <class Visit>
bool each_part(const VegetativeKill& kill, Duration cut, const Point& a, const Point& b, Visit visit) {
    const bool cut_here = a.at < cut && cut < b.at;
    if (!cut_here && !crosses(a, b, kill.from) && !crosses(a, b, kill.reference)) {
        return !(b.at > a.at) || visit(a, b);  // nearly always
    }
    std::vector<Point> points{a};
    for (const Temperature level : {kill.from, kill.reference}) {
        if (crosses(a, b, level)) {
            points.push_back({a.at + (b.at - a.at) * ((level - a.value) / (b.value - a.value)), level});
        }
    }
    if (cut_here) {
        points.push_back({cut, a.value + (b.value - a.value) * ((cut - a.at) / (b.at - a.at))});
    }
    points.push_back(b);
    std::stable_sort(points.begin(), points.end(), [](const Point& x, const Point& y) { return x.at < y.at; });
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (points[i].at > points[i - 1].at && !visit(points[i - 1], points[i])) {
            return false;
        }
    }
    return true;
}

/// What is there [log10], carried from part to part.
class Balance {
  public:
    Balance(const facts::GrowthModel& model, double q0, const VegetativeKill& kill)
        : model_(model), q0_(q0), kill_(kill), grown_(lagged_growth(0.0, q0)) {}

    double net() const { return net_; }

    /// Kill first, growth after it.
    void pass(const Point& a, const Point& b) {
        if (net_ > 0.0) {
            net_ = std::max(0.0, net_ - killed(kill_, a, b));
        }
        const double more = growth_between(model_, a.value, b.value, b.at - a.at);
        if (more > 0.0) {
            // The lag once over stays over: cells that were killed back do not fall asleep again.
            exponent_ += more;
            const double before = std::exchange(grown_, lagged_growth(exponent_, q0_));
            net_ += std::max(0.0, grown_ - before);
        }
    }

    /// When, on the way from a to b, all of it is killed; only where nothing grows.
    std::optional<Duration> undone(const Point& a, const Point& b) const {
        if (growth_between(model_, a.value, b.value, b.at - a.at) > 0.0 || killed(kill_, a, b) < net_) {
            return std::nullopt;
        }
        double low = 0.0;
        double high = 1.0;
        constexpr int halvings = 50;  // down to rounding
        for (int i = 0; i < halvings; ++i) {
            const double half = (low + high) / 2.0;
            const Point there{a.at + (b.at - a.at) * half, a.value + (b.value - a.value) * half};
            (killed(kill_, a, there) < net_ ? low : high) = half;
        }
        return a.at + (b.at - a.at) * high;
    }

  private:
    const facts::GrowthModel& model_;
    double q0_;
    const VegetativeKill& kill_;
    double exponent_ = 0.0;
    double grown_;  // log10 that this exponent gives
    double net_ = 0.0;
};

}  // namespace

VegetativeKill likely_kill() {
    const facts::Facts& facts = facts::facts();
    return {facts.temperature("perfringens.reference"), facts.duration("perfringens.d.likely"),
            facts.difference("perfringens.z.likely"), facts.difference("perfringens.z.likely"),
            facts.temperature("perfringens.from")};
}

VegetativeKill cautious_kill() {
    const facts::Facts& facts = facts::facts();
    return {facts.temperature("perfringens.reference"), facts.duration("perfringens.d.cautious"),
            facts.difference("perfringens.z.below"), facts.difference("perfringens.z.above"),
            facts.temperature("perfringens.from")};
}

double kill_rate(const VegetativeKill& kill, Temperature core) {
    if (core < kill.from) {
        return 0.0;
    }
    const double z = (core < kill.reference ? kill.z_below : kill.z_above).si();
    return std::pow(10.0, (core - kill.reference).si() / z) / units::in_hours(kill.d);
}

double net_growth(const facts::GrowthModel& model, double q0, const VegetativeKill& kill, const History& core) {
    Balance balance{model, q0, kill};
    for (std::size_t i = 1; i < core.points.size(); ++i) {
        each_part(kill, Duration{0}, core.points[i - 1], core.points[i], [&balance](const Point& a, const Point& b) {
            balance.pass(a, b);
            return true;
        });
    }
    return balance.net();
}

LeftOver left_over(const facts::GrowthModel& model, double q0, const VegetativeKill& kill, const History& core,
                   Duration from) {
    LeftOver left;
    if (core.empty()) {
        return left;
    }
    if (core.points.front().at >= from) {
        left.undone = core.points.front().at;  // nothing has grown yet
        return left;
    }
    Balance balance{model, q0, kill};
    std::optional<double> at_from;
    for (std::size_t i = 1; i < core.points.size() && !left.undone; ++i) {
        each_part(kill, from, core.points[i - 1], core.points[i], [&](const Point& a, const Point& b) {
            if (b.at > from) {
                at_from = at_from.value_or(balance.net());
                left.undone = balance.net() > 0.0 ? balance.undone(a, b) : std::optional{a.at};
            }
            balance.pass(a, b);
            if (!left.undone && b.at >= from && !(balance.net() > 0.0)) {
                left.undone = b.at;
            }
            return !left.undone.has_value();
        });
    }
    left.log10 = at_from.value_or(balance.net());
    return left;
}

LeftOver cautious_left_over(const facts::GrowthModel& model, const History& core, Duration from) {
    const VegetativeKill& kill = facts::kept([](const facts::Facts&) { return cautious_kill(); });
    return left_over(model, model.q0_cautious, kill, core, from);
}

namespace {

/// The fastest growth of a model at any temperature [log10/h].
double peak_of(const facts::GrowthModel& model) {
    using Peak = std::pair<const facts::GrowthModel*, double>;
    const std::vector<Peak>& peaks = facts::kept([](const facts::Facts& facts) {
        std::vector<Peak> all;
        for (const facts::GrowthModel& one : facts.growth_models()) {
            all.emplace_back(&one, FastestAbove(one).peak());
        }
        return all;
    });
    const auto known = std::find_if(peaks.begin(), peaks.end(), [&](const Peak& one) { return one.first == &model; });
    return known != peaks.end() ? known->second : FastestAbove(model).peak();
}

/// True where it can be seen at a glance that nothing is left at `from` of what grew: even with the fastest growth all
/// the time until the core was too hot for any, more is killed from then on. Never true where something is left.
bool surely_undone(const facts::GrowthModel& model, double q0, const VegetativeKill& kill, const History& core,
                   Duration from) {
    const std::vector<Point>& points = core.points;
    const auto hot = std::find_if(points.begin(), points.end(),
                                  [&](const Point& p) { return p.value >= std::max(model.highest, kill.from); });
    if (hot == points.end() || hot->at >= from) {
        return false;
    }
    const double most = lagged_growth(peak_of(model) * units::in_hours(hot->at - points.front().at), q0);
    double gone = 0.0;
    for (auto b = hot + 1; b != points.end() && b->at <= from; ++b) {
        if (b->value < model.highest || b->value < kill.from) {
            return false;
        }
        const bool one_side = ((b - 1)->value < kill.reference) == (b->value < kill.reference);
        gone += one_side ? killed(kill, *(b - 1), *b) : 0.0;
        if (gone >= most) {
            break;
        }
    }
    return gone >= most &&
           std::all_of(hot, points.end(), [&](const Point& p) { return p.at > from || p.value >= model.highest; });
}

}  // namespace

LeftOver ready_after(const Standard& standard, const History& core, Duration done) {
    if (standard.growth == nullptr) {
        return {0.0, done};
    }
    const VegetativeKill& kill = facts::kept([](const facts::Facts&) { return cautious_kill(); });
    if (surely_undone(*standard.growth, standard.growth->q0_cautious, kill, core, done)) {
        return {0.0, done};
    }
    LeftOver left = cautious_left_over(*standard.growth, core, done);
    if (standard.finish) {
        left.undone = done;
    }
    return left;
}

std::optional<Duration> moment_undone(const facts::GrowthModel& model, double q0, const VegetativeKill& kill,
                                      const History& core, Duration from) {
    return left_over(model, q0, kill, core, from).undone;
}

}  // namespace holdwater::safety
