// SPDX-License-Identifier: MIT
// Random trips: each ends in a plan, in a mended one that holds from its written file, or in a proof that nothing
// mends it. HOLDWATER_WAY_OUT=1000 build/tests/test_plan -tc='*way out*' draws many and prints shares and times;
// HOLDWATER_WAY_OUT_FROM=500 begins there.
#include "plan/advice/mend.hpp"
#include "plan/advice/proof.hpp"
#include "plan/result/boxes.hpp"
#include "support/efforts.hpp"
#include "support/random_trips.hpp"
#include "trip/amend.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <string>
#include <vector>

using namespace holdwater;

namespace {

int number_of(const char* name, int usual) {
    const char* const given = std::getenv(name);
    return given != nullptr ? std::atoi(given) : usual;
}

double seconds_since(std::chrono::steady_clock::time_point start) {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

/// Median and worst.
std::string times_of(std::vector<double> seconds) {
    if (seconds.empty()) {
        return "none";
    }
    std::sort(seconds.begin(), seconds.end());
    return fmt::format("{:.2f} s in the median, {:.2f} s at worst", seconds[seconds.size() / 2], seconds.back());
}

}  // namespace

TEST_CASE("every random trip has a way out: a plan, a mended plan that holds as written, or a proof") {
    const int from = number_of("HOLDWATER_WAY_OUT_FROM", 1);
    const int count = number_of("HOLDWATER_WAY_OUT", 6);
    plan::Effort whether = support::full_effort();
    whether.choose = true;  // a mend may rest on a later fire
    whether.schedule_only = true;
    whether.diagnose = false;
    int plans = 0;
    int many = 0;
    int proofs = 0;
    std::vector<double> mending;
    for (int number = from; number < from + count; ++number) {
        CAPTURE(number);
        const std::string text = support::wide_trip_text(static_cast<std::uint64_t>(number));
        const trip::Trip trip = support::wide_trip(static_cast<std::uint64_t>(number));
        if (plan::make_plan(trip, whether).ok()) {
            ++plans;
            continue;
        }
        const auto start = std::chrono::steady_clock::now();
        plan::Feasible feasible;
        const std::optional<plan::Mend> mend = plan::mend_of(trip, feasible);
        if (!mend) {
            ++proofs;
            const problem::Problem proof = plan::proof_of_none(trip);
            MESSAGE(number << ": " << proof.message);
            CHECK(proof.message.find("still: ") != std::string::npos);
            continue;
        }
        mending.push_back(seconds_since(start));
        CAPTURE(mend->advice());
        many += mend->changes.size() > 3 ? 1 : 0;
        const auto written = trip::amended(text, trip, mend->changed);
        REQUIRE(written.has_value());
        const auto read = support::read_trip_text(*written, "mended.toml");
        REQUIRE(read.ok());
        CHECK(trip::canonical(*read) == trip::canonical(mend->changed));
        for (const trip::Trip& part : plan::one_trip_a_box(*read)) {
            CHECK(plan::make_plan(part, whether).ok());
        }
    }
    const int mended = static_cast<int>(mending.size());
    MESSAGE(fmt::format("{} trips: {} plans, {} mended by up to three changes, {} by more, {} proofs; mended in {}",
                        count, plans, mended - many, many, proofs, times_of(mending)));
    CHECK(plans + mended + proofs == count);
}
