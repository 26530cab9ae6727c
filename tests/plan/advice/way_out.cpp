// SPDX-License-Identifier: MIT
// Random trips: each ends in a plan, in one whose wishes were bent, in a mended one that holds from its written file,
// or in a proof that nothing mends it. HOLDWATER_WAY_OUT=1000 build/tests/test_plan -tc='*way out*' draws many and
// prints each with its time, and the shares; HOLDWATER_WAY_OUT_FROM=500 begins there.
#include "plan/advice/mend.hpp"
#include "plan/advice/proof.hpp"
#include "plan/choose/bend_wishes.hpp"
#include "plan/result/boxes.hpp"
#include "support/efforts.hpp"
#include "support/random_trips.hpp"
#include "trip/amend.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <map>
#include <string>
#include <vector>

using namespace holdwater;

namespace {

int number_of(const char* name, int usual) {
    const char* const given = std::getenv(name);
    return given != nullptr ? std::atoi(given) : usual;
}

/// Processor time of all threads.
double seconds_since(std::clock_t start) {
    return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

/// Median and worst.
std::string times_of(std::vector<double> seconds) {
    if (seconds.empty()) {
        return "none";
    }
    std::sort(seconds.begin(), seconds.end());
    return fmt::format("{:.2f} s in the median, {:.2f} s at worst", seconds[seconds.size() / 2], seconds.back());
}

/// How a random trip ends, and what is said of it.
struct End {
    std::string kind;
    std::string said;
};

/// The mended trip as it would be written, read again and planned.
End end_of_mended(const std::string& text, const trip::Trip& trip, const plan::Mend& mend,
                  const plan::Effort& whether) {
    CAPTURE(mend.advice());
    const auto written = trip::amended(text, trip, mend.changed);
    REQUIRE(written.has_value());
    const auto read = support::read_trip_text(*written, "mended.toml");
    REQUIRE(read.ok());
    CHECK(trip::canonical(*read) == trip::canonical(mend.changed));
    for (const trip::Trip& part : plan::one_trip_a_box(*read)) {
        CHECK(plan::make_plan(part, whether).ok());
    }
    constexpr std::size_t few = 3;
    return {mend.changes.size() > few ? "mended by more than three" : "mended", mend.advice()};
}

End end_of(std::uint64_t number) {
    plan::Effort whether = support::full_effort();
    whether.choose = true;  // a mend may rest on a later fire
    whether.schedule_only = true;
    whether.diagnose = false;
    const trip::Trip trip = support::wide_trip(number);
    const auto plan = plan::make_plan(trip, whether);
    if (plan) {
        return {"plan", ""};
    }
    plan::Feasible feasible;
    if (const auto bent = plan::plan_of_bent_wishes(trip, plan.problems(), whether, feasible)) {
        return {"bent", bent->notes.front().message};
    }
    if (const auto mend = plan::mend_of(trip, feasible)) {
        return end_of_mended(support::wide_trip_text(number), trip, *mend, whether);
    }
    const problem::Problem proof = plan::proof_of_none(trip);
    CHECK(proof.message.find("still: ") != std::string::npos);
    return {"proof", proof.message};
}

}  // namespace

TEST_CASE(
    "every random trip has a way out: a plan, one with bent wishes, a mended plan that holds as written, or a proof") {
    const int from = number_of("HOLDWATER_WAY_OUT_FROM", 1);
    const int count = number_of("HOLDWATER_WAY_OUT", 6);
    const bool is_long = std::getenv("HOLDWATER_WAY_OUT") != nullptr;
    std::map<std::string, int> ends;
    std::vector<double> times;
    for (int number = from; number < from + count; ++number) {
        CAPTURE(number);
        const std::clock_t start = std::clock();
        const End end = end_of(static_cast<std::uint64_t>(number));
        times.push_back(seconds_since(start));
        ++ends[end.kind];
        if (is_long) {
            fmt::print("{} {} {:.1f} s: {}\n", number, end.kind, times.back(), end.said);
            std::fflush(stdout);
        }
    }
    std::string shares;
    for (const auto& [kind, many] : ends) {
        shares += fmt::format("{} {}, ", many, kind);
    }
    MESSAGE(fmt::format("{} trips: {}{}", count, shares, times_of(times)));
    CHECK(ends["plan"] + ends["bent"] + ends["mended"] + ends["mended by more than three"] + ends["proof"] == count);
}
