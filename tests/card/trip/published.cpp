// SPDX-License-Identifier: MIT
// Published limits on cards are printed as their publishers pair them; Fill and Plan tell the same pours.
#include "card/figures/numbers.hpp"
#include "card/figures/rounding.hpp"
#include "card/texts.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/plan_timeline.hpp"
#include "facts/facts.hpp"
#include "support/borrowed.hpp"
#include "support/finding.hpp"

#include <doctest/doctest.h>

#include <regex>
#include <string>

using namespace holdwater;
using namespace holdwater::support;

namespace {

/// Published limits beside a °F that was rounded.
const std::regex& wrong_pair() {
    static const std::regex wrong(
        R"(21 °C \(69 °F\) in \d|69 °F( \(21 °C\))? in \d|[Cc]ore[^.\n]*(63 °C \(146|146 °F \(63|74 °C \(166|166 °F \(74)|)"
        R"(Reheat[^.\n]*(166 °F|76 °C)|55 °C \(131 °F\): throw|core under 131 °F)");
    return wrong;
}

/// With plain spaces and without stars, as texts_of has it.
std::string plain(std::string text) {
    const std::string space = "\u00A0";
    for (std::size_t at = text.find(space); at != std::string::npos; at = text.find(space)) {
        text.replace(at, space.size(), " ");
    }
    std::erase(text, '*');
    return text;
}

}  // namespace

TEST_CASE("no deck prints a published limit with another °F than its publisher") {
    for (const std::string& path : trip_paths()) {
        Dealt dealt(path);
        for (const units::System system :
             {units::System::metric, units::System::us, units::System::both, units::System::us_first}) {
            dealt.deal(system, "en");
            const std::string text = joined(texts_of(dealt.deck));
            CAPTURE(path);
            CAPTURE(units::name_of(system));
            std::smatch found;
            const bool wrong = std::regex_search(text, found, wrong_pair());
            CHECK_MESSAGE(!wrong, found.str());
            if (system == units::System::both && dealt.reads()) {
                CHECK(has(text, "21 °C (70 °F) in 2 h, 5 °C (41 °F) in 6 h"));
                CHECK(has(text, "Centre under 54.4 °C (130 °F)"));
            }
            if (system == units::System::us && dealt.reads()) {
                CHECK(has(text, "70 °F in 2 h, 41 °F in 6 h"));
            }
        }
    }
}

TEST_CASE("a target and an advice that are published limits are printed so, a reading of the same degrees is not") {
    Dealt dealt("tests/plan/trips/frosty-weekend.toml");  // pork to 63 C
    dealt.deal(units::System::both, "en");
    const std::string plan = joined(texts_of(dealt.card("packing")));
    CHECK(has(plan, "centre 63 °C (145 °F) to "));
    const card::SafeSide writer{dealt.plan, words::Words::model()};
    CHECK(writer.written(writer.at_least(units::celsius(63))) == "63\u00A0°C (146\u00A0°F)");
    CHECK(writer.written(writer.limit(units::celsius(63))) == "63\u00A0°C (145\u00A0°F)");
}

TEST_CASE("Fill and Plan tell of the same litres in the same pots") {
    const Dealt dealt("tests/plan/trips/frosty-weekend.toml");
    plan::Plan plan = dealt.plan;
    trip::Trip trip = dealt.trip;
    trip.units = units::System::metric;
    trip.fire.pots = 2;
    trip.fire.pot = units::litres(10);
    trip.fire.usable = 0.8;
    plan.trip = support::borrowed(trip);
    plan.fill.pours.clear();
    plan.events.clear();
    struct Round {
        double likely;
        double most;
        int pots;
        int whole;
    };
    for (const Round& round : {Round{16.0, 16.0, 2, 2}, Round{14.0, 15.0, 2, 1}, Round{4.0, 5.0, 1, 0}}) {
        const units::LocalTime at =
            trip.from.after(units::minutes(30.0 * (1.0 + static_cast<double>(plan.fill.pours.size()))));
        plan.events.push_back({at, plan::Event::Kind::pour, plan.fill.pours.size()});
        plan.fill.pours.push_back(
            {at, units::litres(round.likely), units::litres(round.most), round.pots, round.whole});
    }
    plan.fill.boiled = units::litres(34);
    plan.fill.boiled_most = units::litres(36);
    card::FigureList figures = card::trip_figures({plan, words::Words::model()});
    const card::CardWriter writer{{plan, words::Words::model()}, figures};
    const std::string fill = joined(texts_of(card::fill_card(writer)));
    CAPTURE(fill);
    // The rounds as on Plan.
    CHECK(has(fill, "Pour in, boiling hard: 16.0 L, " + trip.from.after(units::minutes(60)).clock_24() + " 15.0 L, " +
                        trip.from.after(units::minutes(90)).clock_24() + " 5.0 L."));
    CHECK(has(fill, "Stir, read after each pot."));
    std::string timeline;
    for (const card::Step& step : card::timeline_of(writer).steps) {
        timeline += step.text + "\n";
    }
    timeline = plain(timeline);
    CAPTURE(timeline);
    // All rounds in a line, each but the first with its time.
    CHECK(has(timeline, "Pour boiling: 16.0 L, " + trip.from.after(units::minutes(60)).clock_24() + " 15.0 L, " +
                            trip.from.after(units::minutes(90)).clock_24() + " 5.0 L. Stop at"));
}

TEST_CASE("wax that has not clouded yet is told to prove less than wax that has just turned clear") {
    const Dealt dealt("tests/card/trips/no-thermometer-chicken.toml");
    const std::string touch = joined(texts_of(dealt.card("touch")));
    CHECK(has(touch, "Clear all through: the bath reached 65 °C (149 °F)."));
    CHECK(has(touch, "Cooling, it stays clear to 62 °C."));
}

TEST_CASE("the ice says which box it was reckoned in, and frost that raw food must not freeze") {
    trip::Trip trip = Dealt("layouts/trips/paddling-day.toml").trip;
    trip.units = units::System::metric;
    trip.journey->box = {};
    CHECK(has(joined(texts_of(Dealt(trip).card("packing"))), "reckoned in a poor box"));
    trip.journey->box = units::HeatLoss{1.2};
    CHECK(has(joined(texts_of(Dealt(trip).card("packing"))), "reckoned in a box of 1.4 W/K"));
    CHECK_FALSE(has(joined(texts_of(Dealt(trip).card("packing"))), "must not freeze"));
    trip.journey->air = units::celsius(-8);
    const Dealt frost(trip);
    CHECK(has(joined(texts_of(frost.card("packing"))), "raw food must not freeze"));
    CHECK(has(joined(texts_of(frost.card("fill"))), "not in frost"));
    CHECK_FALSE(has(joined(texts_of(frost.card("fill"))), "Back on ice"));
}
