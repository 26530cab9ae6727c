// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/files/files.hpp"
#include "cli/files/progress.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/json/mend_json.hpp"
#include "cli/line/options.hpp"
#include "facts/facts.hpp"
#include "plan/advice/mend.hpp"
#include "plan/advice/proof.hpp"
#include "plan/choose/bend_wishes.hpp"
#include "plan/result/boxes.hpp"
#include "plan/search/work.hpp"
#include "trip/amend.hpp"

#include <fmt/format.h>

#include <optional>

namespace holdwater::cli {
namespace {

struct MendOptions {
    std::string trip;
    bool json = false;
};

/// What stands against a trip as it is, of all its boxes.
problem::Problems faults_of(const trip::Trip& trip) {
    plan::Effort effort;
    effort.advise = false;
    effort.what_ifs = effort.ways = false;
    effort.schedule_only = true;
    effort.for_cards = false;
    problem::Problems faults;
    for (const trip::Trip& part : plan::one_trip_a_box(trip)) {
        if (const auto made = plan::make_plan(part, effort); !made) {
            faults.insert(faults.end(), made.problems().begin(), made.problems().end());
        }
    }
    return faults;
}

/// Where wishes alone are bent, as `plan` bends them: the two say the same.
std::optional<plan::Mend> mend_of(const trip::Trip& trip, const problem::Problems& faults, plan::Feasible& feasible) {
    if (trip.boxes.size() == 1) {
        plan::Effort effort;
        effort.what_ifs = effort.ways = effort.for_cards = false;
        if (const auto bent = plan::plan_of_bent_wishes(trip, faults, effort, feasible)) {
            return plan::mend_of_bent(trip, *bent);
        }
    }
    return plan::mend_of(trip, feasible);
}

std::string mended_path(const std::string& path) {
    const std::string name = stem_of(path) + "-mended.toml";
    const std::string folder = folder_of(path);
    return folder == "." && path.find('/') == std::string::npos ? name : folder + "/" + name;
}

Exit say(const MendOptions& options, const trip::Trip& trip, const Mended& mended) {
    const Exit exit = mended.holds_already || mended.file ? Exit::done : exit_for(mended.problems);
    if (options.json) {
        fmt::print("{}", mend_json(trip.name, mended));
        return exit;
    }
    if (mended.holds_already) {
        fmt::print("{}: the plan holds as it is; nothing was written\n", trip.name);
    } else if (mended.file) {
        fmt::print("{}\n", *mended.file);
        for (const std::string& change : mended.changes) {
            fmt::print("  {}\n", change);
        }
        for (const problem::Problem& one : mended.problems) {
            if (one.code == "mend") {
                fmt::print("{}\n", problem::to_line(one));
            }
        }
        fmt::print("It holds. Then: holdwater plan {}\n", *mended.file);
    } else {
        fmt::print("{}: nothing was written\n\n", trip.name);
        for (const problem::Problem& one : mended.problems) {
            fmt::print("{}\n", problem::to_line(one));
        }
    }
    return exit;
}

Exit mend(const MendOptions& options) {
    const auto text = read_file(options.trip);
    if (!text) {
        tell(text.problems());
        return exit_for(text.problems());
    }
    const auto trip = trip_of(*text, options.trip);
    tell(trip.problems());
    if (!trip) {
        return exit_for(trip.problems());
    }
    const std::string path = mended_path(options.trip);
    Mended mended;
    std::optional<Progress> waiting(std::in_place, !options.json);
    const plan::WorkBound bound(facts::facts().value("search.most-work"));
    mended.problems = faults_of(*trip);
    mended.holds_already = mended.problems.empty();
    if (!mended.holds_already) {
        if (const auto is_free = not_there_yet(path); !is_free) {  // said before anybody waits for the rest
            tell(is_free.problems());
            return exit_for(is_free.problems());
        }
        plan::Feasible feasible;
        const std::optional<plan::Mend> mend = mend_of(*trip, mended.problems, feasible);
        if (!mend) {
            mended.problems.push_back(plan::proof_of_none(*trip));
        } else {
            const auto read_back = [&](const std::string& mended_file) { return trip_of(mended_file, options.trip); };
            const auto written = write_file(path, trip::mended_text(*text, *trip, mend->changed, read_back), false);
            if (!written) {
                tell(written.problems());
                return exit_for(written.problems());
            }
            mended.file = path;
            mended.changes = mend->changes;
            if (bound.reached()) {
                mended.problems.push_back(problem::note("mend", plan::stopped_before_the_least));
            }
        }
    }
    waiting.reset();
    return worse(exit_for(trip.problems()), say(options, *trip, mended));
}

Act read_mend(Options& options) {
    const MendOptions given{options.file(trip_row), options.has(json_row)};
    return [given] { return mend(given); };
}

}  // namespace

Command mend_command() {
    return {.name = "mend",
            .group = headings::trip,
            .summary = "write a trip file that holds beside one that does not: NAME-mended.toml",
            .rows = {trip_row, json_row},
            .examples = {"mend my-trip.toml", "mend my-trip.toml --json"},
            .refuses = "nothing mends it, and why; nothing is written",
            .checks = "it holds, or its mended file does, but something in the trip should be checked",
            .read = read_mend};
}

}  // namespace holdwater::cli
