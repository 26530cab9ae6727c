// SPDX-License-Identifier: MIT
#include "answer/review/review_ready.hpp"

#include "answer/review/review_verdict.hpp"
#include "answer/spread/draw.hpp"
#include "facts/kept.hpp"
#include "heat/driven.hpp"
#include "safety/kill.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::History;
using units::TemperatureDifference;

/// One way in which piece, thermometer and box may turn out.
struct LoggedWay {
    VariedPiece piece;
    TemperatureDifference error;  // of the thermometer: reading less bath
    TemperatureDifference layer;

    History core(const Written& written) const {
        History bath = written.bath;
        const TemperatureDifference off = written.error - error;
        for (History::Point& point : bath.points) {
            // Before the first reading nothing is known that a better thermometer would make warmer.
            if (point.at > written.read_from || off < units::kelvins(0)) {
                point.value = point.value + off;
            }
        }
        const Duration in = written.stay.in;
        return not_above(
            heat::driven(piece.modes, piece.start, seen_by_food(bath, in, layer), in, written.stay.out).core,
            written.core_readings, written.error);
    }
};

problem::Result<std::vector<LoggedWay>> ways_of(const Written& written) {
    const facts::Facts& facts = facts::facts();
    std::vector<LoggedWay> ways;
    for (const std::vector<double>& share : even_shares(6, static_cast<std::size_t>(facts.value("review.ways")))) {
        auto turned_out = varied(
            written.piece,
            {place_at(facts.spread("thickness"), share[0]), place_at(facts.spread("diffusivity"), share[1]),
             place_at(facts.spread("film"), share[2]), units::kelvins(value_at(facts.spread("start"), share[3]))});
        if (!turned_out) {
            return turned_out.problems();
        }
        ways.push_back({std::move(turned_out).value(), written.error * place_at(facts.spread("thermometer"), share[4]),
                        units::kelvins(std::max(0.0, value_at(facts.spread("unstirred"), share[5])))});
    }
    return ways;
}

}  // namespace

History seen_by_food(const History& bath, Duration in, TemperatureDifference layer) {
    const double ramp = facts::kept([](const facts::Facts& facts) { return facts.value("unstirred.ramp") * 60.0; });
    const auto colder = [&](Duration t) { return layer * std::clamp((t - in).si() / ramp, 0.0, 1.0); };
    const Duration bend = in + Duration{ramp};
    History seen;
    for (const History::Point& point : bath.points) {
        if (!seen.empty() && seen.points.back().at < bend && bend < point.at) {
            seen.add(bend, bath.at(bend) - colder(bend));
        }
        seen.add(point.at, point.value - colder(point.at));
    }
    return seen;
}

History not_above(History core, const std::vector<CoreReading>& readings, TemperatureDifference error) {
    History lower;
    lower.add(core.points.front().at, units::celsius(0));
    for (const CoreReading& reading : readings) {
        const double difference = (reading.read - error - core.at(reading.at)).si();
        lower.add(reading.at, units::celsius(std::min(0.0, difference)));
    }
    for (History::Point& point : core.points) {
        point.value = point.value + units::kelvins(lower.at(point.at).celsius());
    }
    return core;
}

problem::Result<DecidingWay> deciding_way(const Written& written) {
    const auto ways = ways_of(written);
    if (!ways) {
        return ways.problems();
    }
    struct Reached {
        double ready = std::numeric_limits<double>::infinity();
        double met = 0.0;  // of the kill asked, which tells apart what is never ready
        Done done;
        std::size_t way = 0;
    };
    std::vector<Reached> all;
    for (std::size_t i = 0; i < ways->size(); ++i) {
        const History core = (*ways)[i].core(written);
        Reached one;
        one.way = i;
        one.done = done_along(core, written.standard);
        if (one.done.ready) {
            one.ready = one.done.ready->si();
        } else {
            one.met = safety::kill_fraction(*written.standard.kill, core) / safety::adaptation_factor(one.done.come_up);
        }
        all.push_back(one);
    }
    const double tail = 1.0 - facts::facts().value("quantile.cautious");
    const auto index = static_cast<std::ptrdiff_t>(std::ceil((1.0 - tail) * static_cast<double>(all.size() - 1)));
    std::nth_element(all.begin(), all.begin() + index, all.end(), [](const Reached& a, const Reached& b) {
        return a.ready != b.ready ? a.ready < b.ready : a.met > b.met;
    });
    const Reached& deciding = all[static_cast<std::size_t>(index)];
    return DecidingWay{deciding.done.safe, deciding.done.ready, (*ways)[deciding.way].core(written)};
}

}  // namespace holdwater::answer
