// SPDX-License-Identifier: MIT
// What a cook takes from the printed cards of a trip: nothing here comes from a plan, everything out of their texts.
#pragma once

#include "card/content.hpp"
#include "trip/trip.hpp"
#include "units/local_time.hpp"
#include "words/words.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdwater::support {

struct PrintedPour {
    units::LocalTime at;
    double litres = 0.0;          // boiling
    std::optional<double> until;  // C: pour until it reads this, and no more than the litres where they are a bound
};

struct PrintedTopUp {
    units::LocalTime at;
    double litres = 0.0;
    double out = 0.0;  // litres, first
    bool swap = false;
    std::optional<double> below;  // mm under the rim, to which water is taken out first
    std::optional<units::LocalTime> wake;
    std::optional<double> reads;  // C, "should read"
};

struct PrintedRung {
    double reading = 0.0;       // C
    std::optional<double> add;  // litres
    std::optional<double> swap;
    std::optional<double> below;  // mm under the rim, to which water is taken out first
    std::optional<double> pour;   // litres at the most, until it reads the mark
};

struct PrintedLeave {
    double reading = 0.0;  // C, last seen
    double longest = 0.0;  // s
};

struct PrintedLook {
    double reading = 0.0;  // C, this or more; of the last row: anything over the line of the fire
    double again = 0.0;    // s, until the next look
};

struct PrintedFood {
    std::string name;
    std::optional<units::LocalTime> ready;  // "surely ready"
    std::optional<double> ready_if;         // C: ready if no reading was under this
    std::optional<units::LocalTime> out;    // to the fire, before the meal
    std::optional<double> peak;             // C, "at most"
};

struct PrintedPlan {
    bool reads = true;
    units::LocalTime fire;
    double cold = 0.0;                    // litres
    std::vector<PrintedPour> pours;       // boiling, of the fill
    bool pours_bounded = false;           // the litres of those by reading are "up to"
    std::optional<double> food_in_below;  // mm under the rim, to which water is taken out before the food goes in
    std::optional<double> fill_to;        // C, card Fill
    units::LocalTime food_in;
    std::vector<PrintedTopUp> top_ups;  // Plan, by the clock
    units::LocalTime serve;
    units::LocalTime waits_until;                // "meal late": no later than this without a top-up
    std::optional<double> waits_if;              // C, read at the meal
    std::vector<PrintedFood> foods;              // in the order of the Plan card
    std::optional<double> mark;                  // C, card Top-up
    std::optional<double> action;                // C
    std::optional<double> read_floor;            // C
    std::vector<PrintedLook> looks;              // card Reading, falling
    std::vector<PrintedRung> ladder;             // falling
    double at_once = 0.0;                        // litres that the pots give
    double boils_in = 0.0;                       // s, fire on before the pour
    std::optional<double> room;                  // litres that may be added before the first that must come out
    std::vector<PrintedLeave> leave;             // card Night, its rows and its big number
    std::optional<units::LocalTime> leave_from;  // readings since then
    std::optional<double> leave_by_clock;        // s, without a reading: after every pour
    std::optional<std::pair<double, double>> after_food;  // C, an hour after the food
    std::optional<units::LocalTime> after_food_at;
};

/// Reads a deck in the language of its words. `trip` gives only the day on which the clock times begin and the names of
/// the foods. Throws std::runtime_error, naming the card and the line, where something cannot be understood.
PrintedPlan read_deck(const card::Deck& deck, const words::Words& words, const trip::Trip& trip);

const card::Card& card_named(const card::Deck& deck, const std::string& key);

}  // namespace holdwater::support
