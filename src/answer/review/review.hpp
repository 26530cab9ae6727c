// SPDX-License-Identifier: MIT
// What a written log of a real trip means: for each food its core, its kill, what may have grown, how long it was too
// cool, and whether to eat it.
#pragma once

#include "problem/problem.hpp"
#include "safety/clocks.hpp"
#include "safety/standard.hpp"
#include "trip/read_log.hpp"
#include "trip/trip.hpp"
#include "units/history.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdwater::answer {

/// From mild to severe. Food that is not done comes before food that has to be finished over the fire at once, because
/// the fire makes it done as well.
enum class Verdict { eat, not_done, finish_and_eat_next, finish_and_eat_now, throw_away };

/// Which figure decided, and whose it is.
struct Reason {
    std::string rule;    // "us/red-meat"
    std::string figure;  // "fall.eat-now", or the key of the kill standard
    std::string source;  // key of the source of that figure
};

/// log10 growth of C. perfringens.
struct Growth {
    double bound = 0.0;        // what decides: any layer of the food, no milder reading, cautious start of the cells
    double likely = 0.0;       // what the model gives along the likely core or bath, likely start of the cells
    double without_lag = 0.0;  // the bound for cells that grow at once
};

struct CoreReading {
    units::Duration at;
    units::Temperature read;
    units::Temperature likely;    // computed
    units::Temperature cautious;  // computed
};

struct FoodReview {
    const trip::Food* food = nullptr;
    safety::Standard standard;
    units::Duration in;        // on the clock of the log
    units::Duration out;       // or the last row
    bool out_written = false;  // a row says that it came out
    bool stay_known = true;    // false: the notes do not tell for how long it was in, and no kill is trusted
    units::History core_likely;
    units::History core_cautious;  // for the clocks: slow, in the cautious bath, and never above a written core
    std::vector<CoreReading> core_readings;

    units::Temperature core_peak;  // likely
    units::Temperature core_end;   // cautious
    std::optional<units::Duration> come_up;
    safety::ComeUpVerdict come_up_verdict = safety::ComeUpVerdict::fine;
    double adaptation = 1.0;
    double kill = 0.0;         // cautious, parts of the published hold; adaptation not counted in
    double kill_likely = 0.0;  // the same along the likely core
    double margin = 0.0;       // kill / adaptation; where that is not enough, of the way that decides ready_late
    std::optional<units::Duration> ready_likely;  // since it went in: kill and core met, and nothing left of what grew
    std::optional<units::Duration> ready_late;    // cautious; where that is never, in 95 of 100 ways
    units::Duration hold_from;                    // on the clock of the log: can have been done, the hold floor counts
    std::optional<units::Duration> missing;       // not done: so much longer at the bath of the last row
    bool consumer_met = false;  // the cautious core stood as warm and as long as the consumer advice asks
    bool credited = true;  // false: the bath of the last row is below the lowest published row, or the core would not
                           // get where it must

    safety::Fall fall;                 // cautious; growth = growth.bound
    units::Duration below_cook_floor;  // before done; part of fall
    units::Duration below_hold_floor;  // after done; part of fall
    units::Duration below_likely;      // the clock along the likely bath
    Growth come_up_growth;             // while it warmed: reported; what of it is left decides whether it is done
    double growth_left = 0.0;          // log10, all growth less kill at the end, in the way that decides ready
    bool waits_for_growth = false;     // kill and core are met; only what grew is not dead yet
    Growth growth;                     // that decides after a fall
    Verdict verdict = Verdict::eat;
    Reason reason;
};

/// Something seen on the way through the log.
struct Noticed {
    units::Duration at;
    std::string text;
};

/// What the verdict would be without the doubtful readings.
struct WithoutDoubtful {
    Verdict verdict = Verdict::eat;
    units::Duration below_floor;
};

/// What the verdict would be if nothing was poured but what the log says, where that may be true and changes it.
struct IfUnpoured {
    Verdict verdict = Verdict::eat;
    units::Duration below_floor;
    std::vector<std::size_t> rows;  // of the log, that would have to say "nothing poured"
};

struct Review {
    std::vector<FoodReview> foods;
    std::size_t worst = 0;  // leads the verdict
    Verdict verdict = Verdict::eat;
    units::Duration below_floor;  // longest of all foods
    double growth = 0.0;          // largest of all foods
    units::History bath_likely;
    units::History bath_cautious;
    units::TemperatureDifference error;  // of a reading
    std::vector<Noticed> timeline;       // in time order
    std::optional<WithoutDoubtful> without_doubtful;
    std::optional<IfUnpoured> if_unpoured;
    problem::Problems remarks;  // warnings and notes, with places in the log
};

/// Errors: two-boxes; the box test's; every refusal of a food, with its place in the trip file.
problem::Result<Review> review(const trip::Trip& trip, const trip::Log& log);

/// The watch at a moment of the log: "06:30", "Sat 06:30" where the log has dates, "minute 390" where it counts.
std::string watch(const trip::Log& log, units::Duration at);

}  // namespace holdwater::answer
