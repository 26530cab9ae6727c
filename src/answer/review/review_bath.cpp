// SPDX-License-Identifier: MIT
#include "answer/review/review_bath.hpp"

#include "answer/review/review_notes.hpp"
#include "facts/kept.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

constexpr double look_every = 600.0;  // s; a box falls by well under 1 K in the meantime, and the curve is smooth

struct Reading {
    double at = 0.0;    // s
    double bath = 0.0;  // C, as read
    std::size_t row = 0;
    bool poured = false;                  // its row says so
    bool before = false;                  // read before a pour, as its row says
    bool unpoured = false;                // nothing was poured since the last written pour, as its row says
    std::optional<double> closed_from;    // nothing was poured from then on: the reading before, or a pour without one
    std::optional<double> poured_before;  // a row without a reading between the reading before and this one says so
    bool doubtful = false;
};

std::vector<Reading> readings_of(const trip::Log& log) {
    std::vector<Reading> readings;
    std::optional<double> poured;
    for (std::size_t i = 0; i < log.rows.size(); ++i) {
        const trip::LogRow& row = log.rows[i];
        if (!row.bath) {
            if (says_poured(row.note)) {
                poured = row.at.si();
            }
            continue;
        }
        Reading reading;
        reading.at = row.at.si();
        reading.bath = row.bath->celsius();
        reading.row = i;
        reading.poured = says_poured(row.note);
        reading.before = says_before(row.note);
        reading.unpoured = says_unpoured(row.note);
        reading.poured_before = poured;
        poured.reset();
        readings.push_back(reading);
    }
    // Two readings at one moment, the second of them after a pour: the first was read before it.
    for (std::size_t i = 1; i < readings.size(); ++i) {
        Reading& first = readings[i - 1];
        if (first.at == readings[i].at && readings[i].poured && !first.poured) {
            first.before = first.unpoured = true;
        }
    }
    return readings;
}

/// A reading far from both its neighbours on the same side, while they agree, within minutes and with nothing poured:
/// no box does that. Two readings at one moment are before and after a top-up.
void mark_doubtful(std::vector<Reading>& readings) {
    const double jump = facts::kept([](const facts::Facts& facts) { return facts.difference("review.jump").si(); });
    const double within =
        facts::kept([](const facts::Facts& facts) { return facts.duration("review.jump-within").si(); });
    for (std::size_t i = 1; i + 1 < readings.size(); ++i) {
        const Reading& a = readings[i - 1];
        Reading& b = readings[i];
        const Reading& c = readings[i + 1];
        const double down = a.bath - b.bath;
        const double up = c.bath - b.bath;
        const bool same_side = down * up > 0.0 && std::min(std::abs(down), std::abs(up)) >= jump;
        const bool poured = b.poured || c.poured || b.poured_before || c.poured_before;
        b.doubtful = same_side && std::abs(a.bath - c.bath) <= jump / 2.0 && c.at - a.at <= within && a.at < b.at &&
                     b.at < c.at && !poured && !a.doubtful;
    }
}

/// Whether a box left alone between two readings would have come down further: then somebody poured.
class TooWarm {
  public:
    TooWarm(const BoxCooling& box, double floor) : box_(box), floor_(floor) {}
    bool operator()(const Reading& a, const Reading& b) const {
        const double scatter =
            facts::kept([](const facts::Facts& facts) { return facts.difference("review.scatter").si(); });
        // At the floor a box loses least of all that matters; with that loss the test does not depend on the readings.
        const double air = box_.air_high.at(Duration{(a.at + b.at) / 2.0}).celsius();
        const double least = std::max(0.0, floor_ - air) * (1.0 - std::exp(-box_.slow * (b.at - a.at)));
        return a.bath - b.bath < least - scatter;
    }

  private:
    const BoxCooling& box_;
    double floor_;
};

/// From when on nothing speaks for a pour before the second reading: the first one, or a written pour after it.
std::optional<double> unpoured_from(const Reading& a, const Reading& b, const TooWarm& too_warm) {
    if (b.poured) {
        return std::nullopt;
    }
    if (b.poured_before) {
        return std::max(a.at, *b.poured_before);
    }
    return a.before || too_warm(a, b) ? std::nullopt : std::optional(a.at);
}

void mark_closed(std::vector<Reading>& readings, const TooWarm& too_warm, Unpoured unpoured) {
    bool unpoured_after = false;
    for (std::size_t i = readings.size(); i-- > 1;) {
        unpoured_after = unpoured_after || readings[i].unpoured || unpoured == Unpoured::wherever_possible;
        if (unpoured_after) {
            readings[i].closed_from = unpoured_from(readings[i - 1], readings[i], too_warm);
        }
        unpoured_after = unpoured_after && readings[i].closed_from == readings[i - 1].at && !readings[i - 1].poured;
    }
}

class Builder {
  public:
    Builder(const trip::Log& log, const BoxCooling& box, const std::vector<WorstFood>& foods, double error,
            double floor, units::System system, double from, const Reading& first)
        : log_(log),
          box_(box),
          error_(error),
          floor_(floor),
          system_(system),
          too_warm_(box, floor),
          lowest_(box.worst, foods, units::kelvins(error), Duration{std::min(from, first.at)},
                  Temperature{first.bath}) {}

    void start(double from, const Reading& first) {
        if (from < first.at) {
            const double unknown = before_first(from, first);
            put(paths_.likely, from, first.bath);
            put(paths_.cautious, from, unknown);
            put(paths_.cautious, first.at, unknown);
            lowest_.stay_until(Duration{first.at}, Temperature{unknown + error_});
        }
        lowest_.read(Temperature{first.bath});
        add(first);
    }

    void between(const Reading& a, const Reading& b) {
        if (b.at > a.at) {
            const bool rises = b.bath > a.bath;
            likely_between(a, b, rises);
            cautious_between(a, b, rises);
        }
        lowest_.read(Temperature{b.bath});
        add(b);
    }

    void end(double to, const Reading& last) {
        if (to > last.at) {
            if (to - last.at > unread()) {
                remark(last, "unread-end",
                       fmt::format("the last {:.0f} min have no reading; the bath is taken to have fallen as fast as "
                                   "this box can",
                                   (to - last.at) / 60.0),
                       "read the bath as the food comes out");
            }
            curve(last.at, last.bath, to);
            lowest_.run_to(Duration{to}, paths_.cautious);
        }
    }

    BathPaths take() { return std::move(paths_); }

  private:
    static double unread() { return facts::facts().duration("review.unread").si(); }

    /// A box left alone only cools, so shortly before its first reading it was no colder. Longer before, nobody knows:
    /// then it counts as just below the floor, where the clock runs and no kill is credited.
    double before_first(double from, const Reading& first) {
        const double scatter =
            facts::kept([](const facts::Facts& facts) { return facts.difference("review.scatter").si(); });
        if (first.at - from <= unread()) {
            return first.bath - error_;
        }
        remark(first, "unread-start",
               fmt::format("the food was in for {:.0f} min before the first reading; for that time the bath is taken "
                           "to have been just below the floor",
                           (first.at - from) / 60.0),
               "read the bath before the food goes in");
        return std::min(first.bath - error_, floor_ - scatter);
    }

    void add(const Reading& reading) {
        put(paths_.likely, reading.at, reading.bath);
        put(paths_.cautious, reading.at, lowest_.lowest().celsius());
    }

    static void put(History& history, double at, double value) {
        const History::Point point{Duration{at}, Temperature{value}};
        if (history.empty() || history.points.back().at != point.at || history.points.back().value != point.value) {
            history.points.push_back(point);
        }
    }

    /// The box left alone from a moment on.
    void curve(double from, double bath, double to) {
        double t = from;
        double value = bath;
        while (t < to) {
            const double next = std::min(t + look_every, to);
            value = box_.after(value, t, next);
            t = next;
            put(paths_.likely, t, value);
        }
    }

    void likely_between(const Reading& a, const Reading& b, bool rises) {
        if (!rises) {
            return;  // a straight line
        }
        double poured = b.at;
        if (b.poured_before) {
            poured = *b.poured_before;
        } else if (a.before || (a.poured && !b.poured)) {
            poured = a.at;  // read before pouring
        }
        curve(a.at, a.bath, poured);
        put(paths_.likely, poured, b.bath);
    }

    void cautious_between(const Reading& a, const Reading& b, bool rises) {
        const double scatter =
            facts::kept([](const facts::Facts& facts) { return facts.difference("review.scatter").si(); });
        const double to = b.bath - error_;
        History alone;
        LowestBath before = lowest_;
        if (b.closed_from && *b.closed_from > a.at) {
            lowest_.run_to(Duration{*b.closed_from}, alone);
        }
        lowest_.run_to(Duration{b.at}, alone);
        if (b.bath < lowest_.lowest_reading().celsius() - scatter) {
            // The lowest of all ways down: at once.
            put(paths_.cautious, a.at, to);
            lowest_ = std::move(before);
            lowest_.stay_until(Duration{b.at}, Temperature{b.bath});
            if (!a.doubtful && !b.doubtful) {
                remark(b, "fell-fast",
                       fmt::format("the bath fell by {} within {:.0f} min, faster than this box loses heat; it may "
                                   "have fallen right after the reading before",
                                   kelvins(a.bath - b.bath), (b.at - a.at) / 60.0),
                       "lid open, leak or cold water?");
            }
            return;
        }
        // No heat came in since closed_from: from there on it was no colder than it is now.
        const double never_below = b.closed_from == a.at ? std::min(a.bath - error_, to) : to;
        double least = a.bath;
        for (const History::Point& point : alone.points) {
            const double t = point.at.si();
            const double low = point.value.celsius();
            const bool closed = b.closed_from && (t > *b.closed_from || (t == a.at && t == *b.closed_from));
            const double value = closed ? std::max(low, never_below) : low;
            put(paths_.cautious, t, value);
            if (b.closed_from == t && t > a.at) {
                put(paths_.cautious, t, std::max(low, never_below));
            }
            least = std::min(least, value);
        }
        const bool warm = too_warm_(a, b);
        if (!b.closed_from && unpoured_from(a, b, too_warm_)) {
            paths_.open.push_back({Duration{a.at}, Duration{b.at}, b.row, Temperature{least}});
        }
        const bool written = a.poured || a.before || b.poured || b.poured_before;
        const bool unwritten = warm && !written && !a.doubtful && !b.doubtful;
        if (unwritten && rises) {
            remark(b, "rise-without-top-up",
                   fmt::format("the bath rose by {} and no row says that water was poured", kelvins(b.bath - a.bath)),
                   "it may have fallen until just before; write \"top-up\" in a row of its own");
        }
        if (unwritten && !rises) {
            remark(b, "warmer-than-box",
                   fmt::format("the bath fell by only {} in {:.1f} h, less than this box loses; hot water must have "
                               "been poured at a time that nobody wrote down",
                               kelvins(a.bath - b.bath), (b.at - a.at) / 3600.0),
                   "it may have fallen until just before");
        }
    }

    std::string kelvins(double difference) const {
        return units::print(units::kelvins(difference), system_, {0.1, units::Toward::nearest});
    }

    void remark(const Reading& reading, problem::Code code, std::string text, std::string hint) {
        problem::Problem warning = problem::warning(code, std::move(text), std::move(hint));
        warning.place = log_.rows[reading.row].place;
        paths_.remarks.push_back(std::move(warning));
    }

    const trip::Log& log_;
    const BoxCooling& box_;
    double error_;
    double floor_;
    units::System system_;
    TooWarm too_warm_;
    LowestBath lowest_;
    BathPaths paths_;
};

}  // namespace

BathPaths paths_of(const trip::Log& log, const BoxCooling& box, const std::vector<WorstFood>& foods,
                   units::TemperatureDifference error, Temperature floor, Duration from, Duration to,
                   units::System system, Unpoured unpoured) {
    std::vector<Reading> readings = readings_of(log);
    mark_doubtful(readings);
    mark_closed(readings, TooWarm(box, floor.celsius()), unpoured);
    Builder builder(log, box, foods, error.si(), floor.celsius(), system, from.si(), readings.front());
    builder.start(from.si(), readings.front());
    for (std::size_t i = 1; i < readings.size(); ++i) {
        builder.between(readings[i - 1], readings[i]);
    }
    builder.end(to.si(), readings.back());
    BathPaths paths = builder.take();
    for (const Reading& reading : readings) {
        if (!reading.doubtful) {
            continue;
        }
        paths.doubtful.push_back(reading.row);
        problem::Problem doubt = problem::warning(
            "doubtful-reading",
            fmt::format("the bath cannot have gone to {} and back within minutes; the reading is doubtful, and used as "
                        "read all the same",
                        units::print(Temperature{reading.bath}, system, {0.1, units::Toward::nearest})),
            "was the thermometer in the water and stirred?");
        doubt.place = log.rows[reading.row].place;
        paths.remarks.push_back(doubt);
    }
    std::stable_sort(
        paths.remarks.begin(), paths.remarks.end(),
        [](const problem::Problem& a, const problem::Problem& b) { return a.place->line < b.place->line; });
    return paths;
}

}  // namespace holdwater::answer
