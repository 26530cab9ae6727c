// SPDX-License-Identifier: MIT
#include "plan/advice/remedy.hpp"

#include "plan/advice/changes.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <string_view>

namespace holdwater::plan {
namespace {

using trip::Trip;

constexpr std::size_t most_single = 4;
constexpr std::size_t most_double = 2;

Effort effort_of(Draw search, Draw promise) {
    Effort effort;
    effort.search = search;
    effort.promise = promise;
    effort.advise = false;
    effort.what_ifs = false;
    effort.schedule_only = true;
    effort.diagnose = false;
    return effort;
}

/// Few scenarios sort out what is hopeless; what is left must hold in as many as any plan.
bool holds(const Trip& trip) {
    static const Effort quick = effort_of({64, 1}, {256, 1});
    static const Effort full = effort_of(Effort{}.search, full_draw());
    return make_plan(trip, quick).ok() && make_plan(trip, full).ok();
}

Trip with(const Trip& trip, const Change& change) {
    Trip changed = trip;
    change.apply(changed);
    return changed;
}

/// The smallest change of each sort that is enough.
std::vector<Remedy> single(const Trip& trip, const std::vector<Change>& changes) {
    std::vector<Remedy> mends;
    std::optional<Change::Sort> mended;
    for (const Change& change : changes) {
        if (mended == change.sort) {
            continue;
        }
        Trip changed = with(trip, change);
        if (holds(changed)) {
            mended = change.sort;
            mends.push_back({change.advice, std::move(changed)});
            if (mends.size() == most_single) {
                break;
            }
        }
    }
    return mends;
}

/// The largest change of each sort with that of another: what no single change mends is far off.
std::vector<Remedy> pairs(const Trip& trip, const std::vector<Change>& changes) {
    std::vector<const Change*> largest;
    for (const Change& change : changes) {
        if (!largest.empty() && largest.back()->sort == change.sort) {
            largest.back() = &change;
        } else {
            largest.push_back(&change);
        }
    }
    std::vector<Remedy> mends;
    for (std::size_t b = 1; b < largest.size() && mends.size() < most_double; ++b) {
        for (std::size_t a = 0; a < b && mends.size() < most_double; ++a) {
            Trip changed = with(with(trip, *largest[a]), *largest[b]);
            if (holds(changed)) {
                mends.push_back({largest[a]->advice + ", and " + largest[b]->advice, std::move(changed)});
            }
        }
    }
    return mends;
}

}  // namespace

std::vector<Remedy> remedies_of(const Trip& trip) {
    const std::vector<Change> changes = changes_for(trip);
    std::vector<Remedy> mends = single(trip, changes);
    return mends.empty() ? pairs(trip, changes) : mends;
}

problem::Problems with_advice(const Trip& trip, problem::Problems problems) {
    // No change of time, size or box makes a refused food allowed.
    constexpr std::array<problem::Code, 3> final_refusals{"category-refused", "no-rule", "no-thermometer-refused"};
    const auto is_one_of = [&problems](auto codes) {
        return std::any_of(problems.begin(), problems.end(), [&codes](const problem::Problem& one) {
            return std::find(codes.begin(), codes.end(), one.code) != codes.end();
        });
    };
    // Nor is a change of the plan what mends a wrong input.
    const bool wrong_input = std::any_of(problems.begin(), problems.end(), [](const problem::Problem& one) {
        return one.severity == problem::Severity::error && one.code.whose() != problem::Whose::plan;
    });
    if (wrong_input || is_one_of(final_refusals)) {
        return problems;
    }
    const std::vector<Remedy> mends = remedies_of(trip);
    for (const Remedy& mend : mends) {
        problems.push_back(problem::note("mend", "this would hold: " + mend.advice));
    }
    if (mends.empty()) {
        const bool too_low = is_one_of(std::array<problem::Code, 2>{"target-too-low", "at-risk-target-too-low"});
        problems.push_back(problem::note("no-mend",
                                         "no change that was tried makes this trip hold, and no two together",
                                         too_low ? "raise the target to the lowest allowed first, then try again"
                                                 : "change more: thinner pieces, more time, a better box"));
    }
    return problems;
}

}  // namespace holdwater::plan
