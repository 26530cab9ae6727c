// SPDX-License-Identifier: MIT
#include "safety/kill.hpp"

#include "facts/kept.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdwater::safety {
namespace {

using units::History;

/// A stretch of a history within one row: from `begin` on, the standard is met at `rate` [1/s] for `span` [s].
struct Stretch {
    double begin;
    double span;
    double rate;
};

/// Walks along a history, row by row, in time order, until `visit` returns false. Steps between rows make the integrand
/// piecewise constant, so cutting each segment at the rows' temperatures makes the integral exact.
template <class Visit>
void walk(const facts::KillStandard& standard, const History& core, Visit visit) {
    const std::vector<facts::KillRow>& rows = standard.rows;
    // How many rows lie at or under a temperature; a core moves by few rows from one point to the next.
    const auto rows_up_to = [&rows](double t, std::size_t near) {
        while (near < rows.size() && rows[near].core.celsius() <= t) {
            ++near;
        }
        while (near > 0 && rows[near - 1].core.celsius() > t) {
            --near;
        }
        return near;
    };
    std::size_t above_b = core.empty() ? 0 : rows_up_to(core.points.front().value.celsius(), 0);
    for (std::size_t i = 1; i < core.points.size(); ++i) {
        const History::Point& a = core.points[i - 1];
        const History::Point& b = core.points[i];
        const std::size_t above_a = above_b;
        above_b = rows_up_to(b.value.celsius(), above_b);
        const double span = (b.at - a.at).si();
        if (!(span > 0.0)) {
            continue;
        }
        const double from = a.value.celsius();
        const double to = b.value.celsius();
        const double low = std::min(from, to);
        const double high = std::max(from, to);
        // Only the rows from the one that holds the lower end to the one that holds the higher end.
        const std::size_t end = std::max(above_a, above_b);
        const std::size_t below = std::min(above_a, above_b);
        const std::size_t first = below == 0 ? 0 : below - 1;
        const std::size_t count = rows.size();
        for (std::size_t k = first; k < end; ++k) {
            const std::size_t row = to >= from ? k : first + end - 1 - k;
            const double bottom = rows[row].core.celsius();
            const double top = row + 1 < count ? rows[row + 1].core.celsius() : std::numeric_limits<double>::infinity();
            Stretch stretch{a.at.si(), span, 1.0 / rows[row].hold.si()};
            if (high == low) {
                if (low < bottom || low >= top) {
                    continue;
                }
            } else {
                const double in_row_low = std::max(low, bottom);
                const double in_row_high = std::min(high, top);
                if (!(in_row_high > in_row_low)) {
                    continue;
                }
                const double start = to > from ? in_row_low - from : from - in_row_high;
                stretch.begin = a.at.si() + span * (start / (high - low));
                stretch.span = span * ((in_row_high - in_row_low) / (high - low));
            }
            if (!visit(stretch)) {
                return;
            }
        }
    }
}

}  // namespace

std::optional<units::Duration> hold_time(const facts::KillStandard& standard, units::Temperature core) {
    std::optional<units::Duration> hold;
    for (const facts::KillRow& row : standard.rows) {
        if (core >= row.core) {
            hold = row.hold;
        }
    }
    return hold;
}

double kill_fraction(const facts::KillStandard& standard, const History& core) {
    double fraction = 0.0;
    walk(standard, core, [&fraction](const Stretch& stretch) {
        fraction += stretch.rate * stretch.span;
        return true;
    });
    return fraction;
}

std::optional<units::Duration> moment_met(const facts::KillStandard& standard, const History& core, double times) {
    double fraction = 0.0;
    std::optional<units::Duration> moment;
    walk(standard, core, [&](const Stretch& stretch) {
        const double missing = times - fraction;
        fraction += stretch.rate * stretch.span;
        if (fraction < times) {
            return true;
        }
        moment = units::Duration{stretch.begin + std::max(0.0, missing) / stretch.rate};
        return false;
    });
    return moment;
}

double adaptation_factor(std::optional<units::Duration> come_up) {
    const auto limit = facts::kept([](const facts::Facts& facts) { return facts.duration("adaptation.limit"); });
    const bool fast = come_up && *come_up <= limit;
    return fast ? 1.0 : facts::kept([](const facts::Facts& facts) { return facts.value("adaptation.factor"); });
}

}  // namespace holdwater::safety
