// SPDX-License-Identifier: MIT
#include "answer/leftovers/leftovers.hpp"

#include "answer/hold/piece.hpp"
#include "safety/clocks.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::answer {
namespace {

// The thicknesses that heat::modes_of takes.
constexpr int thinnest_slice = 1;  // mm

units::FilmCoefficient air_film() {
    return units::FilmCoefficient{facts::facts().value("leftovers.air-film")};
}

/// When a core that only falls comes down to a level; nothing if it stays above.
std::optional<units::Duration> falls_to(const units::History& core, units::Temperature level) {
    const units::Duration end = core.points.back().at;
    if (core.points.back().value > level) {
        return std::nullopt;
    }
    return end - core.time_below(level, units::Duration{0}, end);
}

}  // namespace

Cold slush(heat::Bound reading) {
    Piece bagged;
    bagged.bag = units::ThermalResistance{facts::facts().value("bag.thin")};
    return {facts::facts().temperature("leftovers.slush"), film_of(bagged, reading)};
}

Cold still_air(units::Temperature air) {
    const facts::Facts& facts = facts::facts();
    return {std::max(air + facts.difference("leftovers.air-margin"), facts.temperature("leftovers.coldest-air")),
            air_film()};
}

Cold loose_snow() {
    return {facts::facts().temperature("leftovers.snow"), air_film()};
}

problem::Result<SliceCooling> cool_slice(units::Length thickness, facts::Contact contact,
                                         const facts::Composition& composition, units::Temperature start,
                                         const Cold& cold, heat::Bound reading) {
    const facts::Facts& facts = facts::facts();
    const units::Temperature hot = std::max(start, facts.temperature("cooling.from"));
    HoldQuestion question;
    question.body.shape = facts::Shape::slab;
    question.body.thickness = thickness;
    question.body.contact = contact;
    // Properties at the mean of the way, as for food in a bath; food conducts a little worse when cold, which the slow
    // reading's quarter below the bound covers.
    question.properties = heat::reading_of(composition, hot + (facts.temperature("cooling.to") - hot) / 2.0, reading);
    question.film = cold.film;
    question.bath = cold.temperature;
    question.start = hot;
    question.target = cold.temperature;
    auto core = core_in_constant_bath(question);
    if (!core) {
        return core.problems();
    }
    SliceCooling slice;
    slice.to_middle = falls_to(*core, facts.temperature("cooling.middle"));
    slice.to_end = falls_to(*core, facts.temperature("cooling.to"));
    // The face cools from the moment at which the piece leaves the bath, so the clocks run at table too.
    const units::Duration table = facts.duration("leftovers.begin");
    slice.in_time = safety::judge_cooling(*core).in_time &&
                    table + *slice.to_middle <= facts.duration("cooling.first") &&
                    table + *slice.to_end <= facts.duration("cooling.all");
    return slice;
}

ThickestSlice thickest_slice(Medium medium, const Cold& cold, facts::Contact contact,
                             const facts::Composition& composition, units::Temperature start, heat::Bound reading) {
    ThickestSlice answer;
    answer.medium = medium;
    answer.contact = contact;
    const auto try_slice = [&](int millimetres) {
        const auto slice = cool_slice(units::millimetres(millimetres), contact, composition, start, cold, reading);
        if (!slice || !slice->in_time) {
            return false;
        }
        answer.thickest = units::millimetres(millimetres);
        answer.to_middle = slice->to_middle;
        answer.to_end = slice->to_end;
        return true;
    };
    if (!try_slice(thinnest_slice)) {
        return answer;
    }
    // A thicker slice never cools sooner, so the limit is found by halving.
    int good = thinnest_slice;
    int bad = static_cast<int>(std::floor(facts::facts().value("leftovers.thickest"))) + 1;
    while (bad - good > 1) {
        const int middle = (good + bad) / 2;
        (try_slice(middle) ? good : bad) = middle;
    }
    return answer;
}

std::vector<ThickestSlice> thickest_slices(const facts::Composition& composition, units::Temperature start,
                                           units::Temperature air) {
    std::vector<ThickestSlice> all;
    for (const Medium medium : {Medium::slush, Medium::still_air, Medium::loose_snow}) {
        const Cold cold = medium == Medium::slush       ? slush()
                          : medium == Medium::still_air ? still_air(air)
                                                        : loose_snow();
        for (const facts::Contact contact : {facts::Contact::free, facts::Contact::bottom}) {
            all.push_back(thickest_slice(medium, cold, contact, composition, start));
        }
    }
    return all;
}

}  // namespace holdwater::answer
