// SPDX-License-Identifier: MIT
#include "safety/net_growth.hpp"

#include "safety/clocks.hpp"
#include "safety/growth.hpp"

#include <algorithm>
#include <cmath>
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

/// The straight line from a to b, cut where it crosses a level, and at a moment that matters.
template <class Visit>
bool each_part(const VegetativeKill& kill, Duration cut, const Point& a, const Point& b, Visit visit) {
    std::vector<Point> points{a};
    for (const Temperature level : {kill.from, kill.reference}) {
        if ((a.value < level) != (b.value < level) && a.value != b.value) {
            points.push_back({a.at + (b.at - a.at) * ((level - a.value) / (b.value - a.value)), level});
        }
    }
    if (a.at < cut && cut < b.at) {
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
        : model_(model), q0_(q0), kill_(kill) {}

    double net() const { return net_; }

    /// Kill first, growth after it.
    void pass(const Point& a, const Point& b) {
        net_ = std::max(0.0, net_ - killed(kill_, a, b));
        History part;
        part.points = {a, b};
        const double before = lagged_growth(exponent_, q0_);
        exponent_ += growth_without_lag(model_, part);
        // The lag once over stays over: cells that were killed back do not fall asleep again.
        net_ += std::max(0.0, lagged_growth(exponent_, q0_) - before);
    }

    /// When, on the way from a to b, all of it is killed; only where nothing grows.
    std::optional<Duration> undone(const Point& a, const Point& b) const {
        History part;
        part.points = {a, b};
        if (growth_without_lag(model_, part) > 0.0 || killed(kill_, a, b) < net_) {
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

std::optional<Duration> moment_undone(const facts::GrowthModel& model, double q0, const VegetativeKill& kill,
                                      const History& core, Duration from) {
    if (core.empty()) {
        return std::nullopt;
    }
    Balance balance{model, q0, kill};
    std::optional<Duration> moment;
    if (core.points.front().at >= from) {
        return core.points.front().at;  // nothing has grown yet
    }
    for (std::size_t i = 1; i < core.points.size() && !moment; ++i) {
        each_part(kill, from, core.points[i - 1], core.points[i], [&](const Point& a, const Point& b) {
            if (b.at > from) {
                moment = balance.net() > 0.0 ? balance.undone(a, b) : std::optional{a.at};
            }
            balance.pass(a, b);
            if (!moment && b.at >= from && !(balance.net() > 0.0)) {
                moment = b.at;
            }
            return !moment.has_value();
        });
    }
    return moment;
}

}  // namespace holdwater::safety
