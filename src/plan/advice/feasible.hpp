// SPDX-License-Identifier: MIT
// Whether a changed trip holds: first in few scenarios, then in as many as any plan. Every trip is tried once.
#pragma once

#include "plan/result/effort.hpp"

#include <map>
#include <mutex>
#include <optional>
#include <string>

namespace holdwater::plan {

/// What stands against a trip, the first that is looked at.
enum class Against {
    nothing,
    input,  // a food or a box as it is may not be planned at all
    bath,   // it cannot be held, or not be filled
    slow,   // food warms too slowly
    late,   // food is not ready for the meal
    torn,   // late with the fire lit late, and not held for so long with it lit early
};

/// The heaviest of what stands against a trip: what no other time or place mends comes first.
Against heaviest(const problem::Problems& problems);

/// May be asked from several threads at once.
class Feasible {
  public:
    /// In few scenarios, of one box or two, with the fire lit at the first moment or later.
    Against against(const trip::Trip& trip);
    bool quickly(const trip::Trip& trip) { return against(trip) == Against::nothing; }
    /// Without any scenario: whether it may be planned at all.
    static bool is_allowed(const trip::Trip& trip);
    /// A trip that holds quickly, with what it leaves open as it was found to: the start, and the water. The trip
    /// itself where nothing was chosen, or where it does not hold.
    trip::Trip chosen(const trip::Trip& trip);
    /// The trip as it stands holds in as many scenarios as any plan.
    bool fully(const trip::Trip& trip);
    /// The same, looked for as long as for any plan: at the edge it may be found only so.
    bool thoroughly(const trip::Trip& trip);
    /// From now on more scenarios are tried quickly: of a trip that the few take for better than it is.
    void look_closer();
    /// From now on a trip that is late is tried with less water too, which the planner may choose by itself.
    void try_less_water();

  private:
    struct Quick {
        Against against = Against::nothing;
        std::optional<units::LocalTime> start = std::nullopt;  // later than the trip's own
        std::optional<units::Volume> water = std::nullopt;     // less than the trip's own
    };
    /// `guess`: which of the starts is tried first, from 0, the latest, to 1, the first moment; if none, it is set to
    /// where this trip came to.
    Quick try_quickly(const trip::Trip& trip, std::optional<double>& guess) const;
    Quick try_starts(const trip::Trip& trip, std::optional<double>& guess) const;

    Draw search_{32, 1};
    Draw promise_{128, 1};
    bool less_water_ = false;
    /// Of two threads with the same trip one waits for the other: what is looked at hangs on no order of theirs.
    struct Looked {
        std::once_flag once;
        Quick quick;
    };
    std::mutex mutex_;                     // of those below
    std::map<std::string, Looked> quick_;  // by the trip's own text
    std::optional<double> guess_;          // of the first trip, so that it hangs on no order of threads
    std::map<std::string, bool> full_;

    bool holds_in_all(const trip::Trip& trip, Effort effort);
};

}  // namespace holdwater::plan
