// SPDX-License-Identifier: MIT
// Trips as people would write them: each file is valid, and each ends in a plan, in a mended trip or in a proof.
// HOLDWATER_PEOPLE_TRIPS=FROM,COUNT draws others and prints what becomes of each; HOLDWATER_PEOPLE_TEXT=SEED prints
// one.
#include "support/people_trips.hpp"

#include "plan/advice/mend.hpp"
#include "plan/advice/proof.hpp"
#include "plan/result/boxes.hpp"
#include "plan/result/effort.hpp"
#include "support/trips.hpp"
#include "trip/amend.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <numeric>
#include <set>
#include <utility>
#include <vector>

using namespace holdwater;

namespace {

trip::Trip drawn_trip(std::uint64_t seed) {
    auto trip = support::read_trip_text(support::people_trip(seed), fmt::format("people-{}.toml", seed));
    for (const problem::Problem& one : trip.problems()) {
        INFO(problem::to_line(one));
        CHECK(one.severity != problem::Severity::error);
    }
    REQUIRE(trip.ok());
    return std::move(trip).value();
}

/// Of the whole process, all threads.
double cpu_seconds() {
    return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

struct Outcome {
    enum class Kind { plan, bent, mended, proof, none };
    Kind kind = Kind::none;
    std::size_t changes = 0;
    double plan_s = 0;  // CPU
    double mend_s = 0;
    bool sound = true;  // nothing was our own fault, and what was mended holds as it was written
    std::string told;
};

constexpr std::size_t most_changes = 3;

void note_own_faults(const problem::Problems& problems, Outcome& outcome) {
    for (const problem::Problem& one : problems) {
        if (one.code.whose() == problem::Whose::ours) {
            outcome.sound = false;
            outcome.told += problem::to_line(one) + "; ";
        }
    }
}

/// As `holdwater plan` does it. All boxes: planned as wished, planned with a wish bent, or what is against it.
problem::Problems planned(const trip::Trip& trip, Outcome& outcome) {
    problem::Problems against;
    bool bent = false;
    for (const trip::Trip& part : plan::one_trip_a_box(trip)) {
        const auto made = plan::make_plan(part);
        note_own_faults(made ? made->notes : made.problems(), outcome);
        if (made) {
            bent = bent || !made->bent.empty();
        } else {
            against.insert(against.end(), made.problems().begin(), made.problems().end());
        }
    }
    if (against.empty()) {
        outcome.kind = bent ? Outcome::Kind::bent : Outcome::Kind::plan;
    }
    return against;
}

bool holds_as_written(const std::string& text, std::string& told) {
    const auto trip = support::read_trip_text(text, "mended.toml");
    if (!trip) {
        told += "the mended file cannot be read; ";
        return false;
    }
    Outcome again;
    for (const problem::Problem& one : planned(*trip, again)) {
        told += "again: " + problem::to_line(one) + "; ";
    }
    return again.kind == Outcome::Kind::plan && again.sound;
}

/// As `holdwater mend` does it.
void mended(const std::string& text, const trip::Trip& trip, Outcome& outcome) {
    plan::Feasible feasible;
    const auto mend = plan::mend_of(trip, feasible);
    if (!mend) {
        const problem::Problem proof = plan::proof_of_none(trip);
        const bool proves = proof.message.find("still: ") != std::string::npos;
        outcome.kind = proves ? Outcome::Kind::proof : Outcome::Kind::none;
        outcome.told += proof.message;
        return;
    }
    outcome.changes = mend->changes.size();
    outcome.kind = outcome.changes <= most_changes ? Outcome::Kind::mended : Outcome::Kind::none;
    outcome.told += mend->advice() + "; ";
    const auto read_back = [](const std::string& file) { return support::read_trip_text(file, "mended.toml"); };
    outcome.sound =
        holds_as_written(trip::mended_text(text, trip, mend->changed, read_back), outcome.told) && outcome.sound;
}

Outcome outcome_of(std::uint64_t seed) {
    const trip::Trip trip = drawn_trip(seed);
    Outcome outcome;
    const double start = cpu_seconds();
    const problem::Problems against = planned(trip, outcome);
    outcome.plan_s = cpu_seconds() - start;
    if (!against.empty()) {
        outcome.told = problem::to_line(against.front()) + " | ";
        mended(support::people_trip(seed), trip, outcome);
        outcome.mend_s = cpu_seconds() - start - outcome.plan_s;
    }
    return outcome;
}

std::string word_of(const Outcome& outcome) {
    switch (outcome.kind) {
        case Outcome::Kind::plan:
            return "plan";
        case Outcome::Kind::bent:
            return "bent";
        case Outcome::Kind::mended:
            return fmt::format("mended {}", outcome.changes);
        case Outcome::Kind::proof:
            return "proof";
        case Outcome::Kind::none:
            return fmt::format("NO WAY ({} changes)", outcome.changes);
    }
    return {};
}

struct Drawn {
    std::vector<std::uint64_t> seeds;
    bool many = false;
};

/// FROM,COUNT of the environment, or those seeds.
Drawn asked_for(std::vector<std::uint64_t> otherwise) {
    const char* const given = std::getenv("HOLDWATER_PEOPLE_TRIPS");
    if (given == nullptr) {
        return {std::move(otherwise)};
    }
    char* rest = nullptr;
    const std::uint64_t from = std::strtoull(given, &rest, 10);
    Drawn drawn{std::vector<std::uint64_t>(*rest == ',' ? std::strtoull(rest + 1, nullptr, 10) : 1), true};
    std::iota(drawn.seeds.begin(), drawn.seeds.end(), from);
    return drawn;
}

void print_summary(const std::vector<Outcome>& all) {
    using Kind = Outcome::Kind;
    std::string text;
    for (const auto& [kind, name] :
         {std::pair{Kind::plan, "plan"}, std::pair{Kind::bent, "bent"}, std::pair{Kind::mended, "mended"},
          std::pair{Kind::proof, "proof"}, std::pair{Kind::none, "no way"}}) {
        const auto of_kind = std::count_if(all.begin(), all.end(), [&](const Outcome& o) { return o.kind == kind; });
        text += fmt::format("{} {} ({:.1f} %), ", name, of_kind,
                            100.0 * static_cast<double>(of_kind) / static_cast<double>(all.size()));
    }
    std::vector<double> times;
    for (const Outcome& one : all) {
        times.push_back(one.plan_s + one.mend_s);
    }
    std::sort(times.begin(), times.end());
    fmt::print("{} trips: {}CPU median {:.2f} s, worst {:.2f} s\n", all.size(), text, times[times.size() / 2],
               times.back());
}

}  // namespace

TEST_CASE("people trip: the same for a seed, another for another") {
    CHECK(support::people_trip(7) == support::people_trip(7));
    CHECK(support::people_trip(7) != support::people_trip(8));
    if (const char* const seed = std::getenv("HOLDWATER_PEOPLE_TEXT")) {
        fmt::print("{}", support::people_trip(std::strtoull(seed, nullptr, 10)));
    }
}

TEST_CASE("people trip: every file is valid, and together they know all that a trip file can say") {
    constexpr std::uint64_t count = 300;
    std::set<facts::Ruleset> rules;
    std::set<facts::Use> uses;
    std::set<facts::Shape> shapes;
    std::set<facts::Cut> cuts;
    std::set<facts::Fuel> fuels;
    std::set<std::string> kinds;
    std::set<std::size_t> boxes;
    int blind = 0, at_risk = 0, strict = 0, lit = 0, sittings = 0, ice = 0, hot_water = 0, over_fire = 0, nights = 0;
    for (std::uint64_t seed = 0; seed < count; ++seed) {
        CAPTURE(seed);
        const trip::Trip trip = drawn_trip(seed);
        rules.insert(trip.rules);
        fuels.insert(trip.fire.fuel);
        boxes.insert(trip.boxes.size());
        for (const trip::Food& food : trip.foods) {
            uses.insert(food.use);
            shapes.insert(food.shape);
            cuts.insert(food.cut);
            kinds.insert(food.kind);
            over_fire += int{food.over_fire};
        }
        blind += int{!trip.boxes.front().thermometer};
        at_risk += int{trip.at_risk};
        strict += int{trip.strict};
        lit += int{trip.light_fire.has_value()};
        sittings += int{!trip.earlier_sittings.empty()};
        ice += int{trip.journey.has_value()};
        hot_water += int{!trip.hot_water.empty()};
        nights += int{trip.sleep.has_value()};
    }
    CHECK(rules.size() == facts::names<facts::Ruleset>().size());
    CHECK(uses.size() == facts::names<facts::Use>().size());
    CHECK(shapes.size() == facts::names<facts::Shape>().size());
    CHECK(cuts.size() == facts::names<facts::Cut>().size());
    CHECK(fuels.size() == facts::names<facts::Fuel>().size());
    CHECK(boxes == std::set<std::size_t>{1, 2});
    // Of over 70 kinds nearly all come up in 300 trips; none is left out for good.
    CHECK(kinds.size() * 10 > facts::facts().foods().size() * 9);
    for (const int times : {blind, at_risk, strict, lit, sittings, ice, hot_water, over_fire, nights}) {
        CHECK(times >= 10);
        CHECK(times < static_cast<int>(count) * 2 / 3);
    }
}

TEST_CASE("people trip: every one ends in a plan, in a mended trip that holds as written, or in a proof") {
    const Drawn drawn = asked_for({0, 2, 12, 13});  // a plan, two mended, a proof; none takes long
    std::vector<Outcome> all;
    for (const std::uint64_t seed : drawn.seeds) {
        CAPTURE(seed);
        const Outcome outcome = outcome_of(seed);
        if (drawn.many) {
            fmt::print("{:6} {:22} plan {:6.2f} s, mend {:6.2f} s{}  {}\n", seed, word_of(outcome), outcome.plan_s,
                       outcome.mend_s, outcome.sound ? "" : "  UNSOUND", outcome.told);
            std::fflush(stdout);
        }
        CAPTURE(outcome.told);
        CHECK(outcome.kind != Outcome::Kind::none);
        CHECK(outcome.sound);
        all.push_back(outcome);
    }
    if (drawn.many && !all.empty()) {
        print_summary(all);
    }
}
