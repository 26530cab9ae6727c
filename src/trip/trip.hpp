// SPDX-License-Identifier: MIT
// A trip as the user wrote it, in plain structs. Reading and checking: read_trip.hpp.
#pragma once

#include "facts/names.hpp"
#include "problem/problem.hpp"
#include "units/local_time.hpp"
#include "units/print.hpp"
#include "units/quantity.hpp"

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace holdwater::trip {

/// g per 100 g, given in the trip file instead of a known kind.
struct GivenComposition {
    double water = 0, protein = 0, fat = 0, carbohydrate = 0, fibre = 0, ash = 0;
};

/// Measured thermal properties given in the trip file; they win over the kind's.
struct GivenProperties {
    std::optional<units::Diffusivity> diffusivity;
    std::optional<units::Conductivity> conductivity;
};

struct Food {
    std::string name;
    std::string kind;  // key of a known food; checked
    std::optional<GivenComposition> composition;
    GivenProperties properties;
    facts::Use use = facts::Use::cook;
    facts::Cut cut = facts::Cut::intact;
    facts::Shape shape = facts::Shape::slab;
    units::Length thickness;
    std::optional<units::Length> width;
    std::optional<units::Length> length;
    units::Mass mass;  // of one piece
    int pieces = 1;
    units::Temperature start;
    units::Temperature target;               // what is kept hot has none of its own: its start
    units::TemperatureDifference tolerance;  // nor a tolerance: nothing is too warm for it
    facts::Contact contact = facts::Contact::free;
    bool contact_given = false;  // false: the shape's default was taken, which the card says
    bool bone = false;
    bool over_fire = false;  // finished over the fire after the bath, though kind, cut and eaters do not ask for it
    std::variant<facts::Bag, units::ThermalResistance> bag = facts::Bag::thin;
    std::string box;                      // name of its box; empty with one box
    std::optional<units::LocalTime> in;   // when it goes in; nothing: into the filled bath
    std::optional<units::LocalTime> out;  // when it comes out to be eaten; nothing: at serving
    problem::Place place;
    problem::Place out_place;
};

struct BoxReading {
    units::Duration after;
    units::Temperature bath;
};

/// Nobody knows how well the box holds heat: it is taken as an ordinary one.
struct Untested {};

struct Box {
    std::string name;
    std::array<units::Length, 3> inside;
    units::Volume water;
    std::optional<units::TemperatureDifference> thermometer;  // its error; nothing = there is none
    bool wax_tell_tale = false;
    units::TemperatureDifference reading_error;
    std::variant<std::vector<BoxReading>, units::HeatLoss, Untested> test;
    units::Temperature test_outside;
    units::Volume test_water;
    bool prewarmed = false;
    problem::Place place;
};

/// Clock times repeat daily, or date-times come once each; never both. Linear between, constant outside the dated ones.
struct Weather {
    facts::Wind wind = facts::Wind::breezy;
    struct Daily {
        units::ClockTime at;
        units::Temperature air;
    };
    struct Dated {
        units::LocalTime at;
        units::Temperature air;
    };
    std::variant<std::vector<Daily>, std::vector<Dated>> hours;

    units::Temperature air_at(units::LocalTime moment) const;
};

struct Fire {
    int pots = 1;
    units::Volume pot;
    double usable = 0.8;       // of a pot's volume
    units::Duration boils_in;  // one pot, with all pots on the fire
    facts::Fuel fuel = facts::Fuel::wood;
    std::optional<double> moisture;  // of wood, 0 to 1, wet basis
    units::Temperature cold_water;
};

struct Sleep {
    units::ClockTime from;
    units::ClockTime to;
};

struct Journey {
    units::Duration takes;
    units::Temperature air;
    /// What the raw food travels and waits in: one of the trip's boxes, or the loss of another; nothing: not said.
    std::variant<std::monostate, Box, units::HeatLoss> box;
};

/// Boiling water besides the bath's: for drinks, for washing-up.
struct HotWater {
    std::string name;
    units::Volume volume;  // as measured boiling; of each person, or of all
    bool per_person = false;
    std::optional<units::LocalTime> at;  // wanted boiling; nothing: at the meal
    problem::Place place;
};

struct Side {
    std::string name;
    units::Duration takes;
};

struct WhatIf {
    std::string name;
    std::optional<units::TemperatureDifference> colder;
    std::optional<units::Duration> later;
    std::optional<units::Duration> fire_out;
};

struct Trip {
    std::string name;
    int people = 0;
    bool at_risk = false;
    units::Length altitude;
    units::LocalTime from;  // first moment with fire and box; of a planned trip the moment at which its fire is lit
    std::optional<units::LocalTime> light_fire;  // then, and at no other time; nothing: the planner chooses
    /// Of a planned trip whose fire is lit later: the first moment, from which the raw food waits; not read from a
    /// file.
    std::optional<units::LocalTime> first;
    units::LocalTime serve;                         // the meal; of several sittings the last one
    std::vector<units::Duration> earlier_sittings;  // so long before serve, the longest first; empty: one sitting
    bool strict = false;                            // no wish is bent: refused rather than more done, or less even
    facts::Ruleset rules{};
    units::System units = units::System::both;
    std::string language = "en";
    std::vector<Food> foods;
    std::vector<Food> elsewhere;  // of the same trip, but in another box than this plan is for; not read from a file
    std::vector<Box> boxes;
    Weather weather;
    Fire fire;
    std::optional<Fire> whole_fire;  // of which fire is a box's share; nothing: there is one box; not read from a file
    std::optional<Sleep> sleep;
    std::optional<Journey> journey;
    std::vector<HotWater> hot_water;
    std::vector<Side> sides;
    std::vector<WhatIf> what_ifs;
    problem::Place place;  // of the [trip] table
    problem::Place serve_place;
    problem::Place light_fire_place;
    problem::Place weather_place;
    problem::Place fire_place;
};

/// When a food is to be eaten; at several sittings, the last of them.
inline units::LocalTime eaten(const Food& food, const Trip& trip) {
    return food.out.value_or(trip.serve);
}

/// When the meal begins.
inline units::LocalTime first_sitting(const Trip& trip) {
    return trip.earlier_sittings.empty() ? trip.serve : trip.serve.after(-trip.earlier_sittings.front());
}

/// A food that was cooked before and goes in so hot: it has no target, and the bath is not made hotter for it.
void keep_hot(Food& food, units::Temperature start);

/// By when a food must be ready: when it is eaten, or at the first sitting.
inline units::LocalTime first_eaten(const Food& food, const Trip& trip) {
    return food.out.value_or(first_sitting(trip));
}

/// So much boiling water in all.
inline units::Volume all_of(const HotWater& water, const Trip& trip) {
    return water.per_person ? water.volume * static_cast<double>(trip.people) : water.volume;
}

}  // namespace holdwater::trip
