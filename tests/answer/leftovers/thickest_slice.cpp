// SPDX-License-Identifier: MIT
// How thick leftovers may be: the limit itself, and what must never make it looser.
#include "answer/hold/piece.hpp"
#include "answer/leftovers/leftovers.hpp"
#include "safety/clocks.hpp"
#include "safety/growth.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using namespace holdwater::answer;
using facts::Contact;
using heat::Bound;
using support::near_abs;
using support::near_rel;
using units::celsius;
using units::Duration;
using units::hours;
using units::millimetres;

namespace {

const facts::Composition& beef() {
    return facts::facts().find_food("beef-top-round")->composition;
}

constexpr Contact contacts[] = {Contact::free, Contact::bottom};

heat::Modes modes_of_slice(double mm, Contact contact, const Cold& cold, units::Temperature start) {
    heat::Body body;
    body.shape = facts::Shape::slab;
    body.thickness = millimetres(mm);
    body.contact = contact;
    const auto mean = start + (celsius(5) - start) / 2.0;
    const auto modes = heat::modes_of(body, heat::reading_of(beef(), mean, Bound::slow), cold.film);
    REQUIRE(modes.ok());
    return *modes;
}

/// Excess of the core over the cold [K] at a moment.
double core_excess(const heat::Modes& modes, const Cold& cold, units::Temperature start, Duration t) {
    return heat::core_at(modes, t) * (start - cold.temperature).si();
}

double thickness_or_zero(const ThickestSlice& slice) {
    return slice.thickest ? units::in_millimetres(*slice.thickest) : 0.0;
}

double thickest(const Cold& cold, Contact contact, double start = 60, Bound reading = Bound::slow) {
    return thickness_or_zero(thickest_slice(Medium::still_air, cold, contact, beef(), celsius(start), reading));
}

}  // namespace

TEST_CASE("the moments of a slice are those of the exact series") {
    for (const Cold& cold : {slush(), still_air(celsius(-8)), loose_snow()}) {
        for (const Contact contact : contacts) {
            for (const double mm : {5.0, 20.0, 45.0}) {
                for (const double start : {57.0, 60.0, 68.0}) {
                    const auto slice = cool_slice(millimetres(mm), contact, beef(), celsius(start), cold);
                    REQUIRE(slice.ok());
                    REQUIRE(slice->to_middle);
                    REQUIRE(slice->to_end);
                    INFO(mm, " mm from ", start, " C in ", cold.temperature.celsius(), " C, floor ",
                         contact == Contact::bottom);
                    const heat::Modes modes = modes_of_slice(mm, contact, cold, celsius(start));
                    const auto at = [&](Duration t) {
                        return cold.temperature.celsius() + core_excess(modes, cold, celsius(start), t);
                    };
                    CHECK(near_abs(at(*slice->to_middle), 21.0, 0.02));
                    CHECK(near_abs(at(*slice->to_end), 5.0, 0.02));
                }
            }
        }
    }
}

TEST_CASE("the thickest slice is in time by the exact series, and 1 mm more is not") {
    for (const Cold& cold : {slush(), still_air(celsius(2)), still_air(celsius(-10)), loose_snow()}) {
        for (const Contact contact : contacts) {
            for (const double start : {57.0, 60.0, 65.0}) {
                INFO("from ", start, " C in ", cold.temperature.celsius(), " C, floor ", contact == Contact::bottom);
                const ThickestSlice slice = thickest_slice(Medium::slush, cold, contact, beef(), celsius(start));
                REQUIRE(slice.thickest);
                const double table = hours(1).si();  // at table, the clocks running since the bath
                const auto in_time = [&](double mm) {
                    if (mm > 50.0) {
                        return false;
                    }
                    const heat::Modes modes = modes_of_slice(mm, contact, cold, celsius(start));
                    const auto core_below = [&](double level, Duration t) {
                        return cold.temperature.celsius() + core_excess(modes, cold, celsius(start), t) <= level;
                    };
                    // 21 C within 2 h and 5 C within 6 h of the bath, and no more than 4 h between the two.
                    double early = 0.0;
                    double late = 7200.0 - table;
                    if (!core_below(21, Duration{late})) {
                        return false;
                    }
                    while (late - early > 0.01) {
                        const double middle = (early + late) / 2;
                        (core_below(21, Duration{middle}) ? late : early) = middle;
                    }
                    return core_below(5, std::min(Duration{late} + hours(4), hours(6) - Duration{table}));
                };
                CHECK(in_time(thickness_or_zero(slice)));
                CHECK_FALSE(in_time(thickness_or_zero(slice) + 1.0));
                CHECK(*slice.to_middle + Duration{table} <= hours(2));
                CHECK(*slice.to_end + Duration{table} <= hours(6));
                CHECK(*slice.to_end <= *slice.to_middle + hours(4));
                const auto thicker =
                    cool_slice(*slice.thickest + millimetres(1), contact, beef(), celsius(start), cold);
                REQUIRE(thicker.ok());
                CHECK((!thicker->in_time || *slice.thickest == millimetres(50)));
            }
        }
    }
}

TEST_CASE("a thicker slice never cools sooner, a free one never later than one on a floor") {
    for (const Cold& cold : {slush(), loose_snow()}) {
        Duration before{0};
        for (double mm = 2; mm <= 60; mm += 2) {
            const auto free = cool_slice(millimetres(mm), Contact::free, beef(), celsius(60), cold);
            const auto floor = cool_slice(millimetres(mm), Contact::bottom, beef(), celsius(60), cold);
            REQUIRE(free->to_middle);
            REQUIRE(floor->to_middle);
            CHECK(*free->to_middle > before);
            CHECK(*free->to_middle <= *floor->to_middle);
            before = *free->to_middle;
        }
        CHECK(thickest(cold, Contact::bottom) <= thickest(cold, Contact::free));
        // One cooled face is half of a slice with two: 1 mm for the rounding of each.
        CHECK(near_abs(2 * thickest(cold, Contact::bottom), thickest(cold, Contact::free), 2.0));
    }
}

TEST_CASE("no slice is thicker than 50 mm, however fast it cools, and the time at table makes it thinner") {
    const Cold ideal{celsius(0), units::FilmCoefficient{1e4}};
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        const ThickestSlice slice =
            thickest_slice(Medium::slush, ideal, Contact::free, kind.composition, celsius(57), Bound::fast);
        CAPTURE(kind.key);
        REQUIRE(slice.thickest);
        CHECK(*slice.thickest <= millimetres(50));
    }
    // 21 C within 2 h of the cold alone would allow about 65 mm in slush; an hour of the two is spent at table.
    CHECK(thickest(slush(), Contact::free) < 50.0);
    const auto late = cool_slice(millimetres(60), Contact::free, beef(), celsius(60), slush());
    REQUIRE(late.ok());
    CHECK(*late->to_middle <= hours(2));
    CHECK_FALSE(late->in_time);
}

TEST_CASE("a colder medium, a better film, a cooler start never make the slice thinner") {
    for (const Contact contact : contacts) {
        double before = 1000.0;
        for (double air = -30; air <= 6; air += 1) {
            const double mm = thickest(still_air(celsius(air)), contact);
            INFO(air, " C");
            CHECK(mm <= before);
            before = mm;
        }
        before = 0.0;
        for (const double film : {2.0, 5.0, 10.0, 30.0, 95.0, 300.0, 1000.0}) {
            const double mm = thickest({celsius(0), units::FilmCoefficient{film}}, contact);
            INFO(film, " W/m2/K");
            CHECK(mm >= before);
            before = mm;
        }
        before = 1000.0;
        for (double start = 50; start <= 80; start += 2) {
            const double mm = thickest(slush(), contact, start);
            INFO(start, " C at the start");
            CHECK(mm <= before);
            before = mm;
        }
    }
}

TEST_CASE("the slow reading never allows a thicker slice than the likely one, nor likely than fast") {
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        double before = 0.0;
        for (const Bound reading : {Bound::slow, Bound::likely, Bound::fast}) {
            const double mm = thickness_or_zero(
                thickest_slice(Medium::slush, slush(reading), Contact::free, kind.composition, celsius(60), reading));
            INFO(kind.key);
            CHECK(mm > 0.0);
            CHECK(mm >= before);
            before = mm;
        }
    }
}

TEST_CASE("air that is not cold enough lets no slice through") {
    for (const double air : {4.0, 5.0, 6.0, 12.0, 30.0}) {
        CHECK(thickest(still_air(celsius(air)), Contact::free) == 0.0);
    }
    // Air counts as 1 K warmer than it was read.
    CHECK(thickest(still_air(celsius(-1)), Contact::free) == thickest(loose_snow(), Contact::free));
    CHECK(thickest(still_air(celsius(3)), Contact::free) > 0.0);
}

TEST_CASE("a start below 57 C gains nothing: what came before is not known") {
    CHECK(thickest(slush(), Contact::free, 30) == thickest(slush(), Contact::free, 57));
}

TEST_CASE("a thickness that no series covers is refused") {
    CHECK_FALSE(cool_slice(millimetres(0.5), Contact::free, beef(), celsius(60), slush()).ok());
    CHECK_FALSE(cool_slice(millimetres(500), Contact::free, beef(), celsius(60), slush()).ok());
}

TEST_CASE("no ice forms in air as cold as is credited before the core is cold") {
    const Cold coldest = still_air(celsius(-60));
    const ThickestSlice slice = thickest_slice(Medium::still_air, coldest, Contact::free, beef(), celsius(60));
    REQUIRE(slice.thickest);
    for (const double mm : {1.0, units::in_millimetres(*slice.thickest)}) {
        const auto cooled = cool_slice(millimetres(mm), Contact::free, beef(), celsius(60), coldest);
        const heat::Modes modes = modes_of_slice(mm, Contact::free, coldest, celsius(60));
        const double face = coldest.temperature.celsius() +
                            heat::surface_at(modes, *cooled->to_end) * (celsius(60) - coldest.temperature).si();
        CHECK(face > 0.0);
    }
}

TEST_CASE("slices that cool in time let C. perfringens grow less than was seen and allowed") {
    // juneja-2008: beef from 54.4 to 27 C along a line in 1.5 h, 0.43 and 0.90 log observed; at most 1 log is allowed.
    // The core of a thickest slice takes no longer than that through the same span.
    const facts::GrowthModel& model = facts::facts().growth("beef");
    for (const ThickestSlice& slice : thickest_slices(beef(), celsius(60), celsius(-5))) {
        REQUIRE(slice.thickest);
        const Cold cold = slice.medium == Medium::slush       ? slush()
                          : slice.medium == Medium::still_air ? still_air(celsius(-5))
                                                              : loose_snow();
        const heat::Modes modes =
            modes_of_slice(units::in_millimetres(*slice.thickest), slice.contact, cold, celsius(60));
        units::History core;
        std::optional<Duration> from;
        Duration to{0};
        for (double t = 0; t <= hours(8).si(); t += 30) {
            const units::Temperature value =
                cold.temperature + units::kelvins(core_excess(modes, cold, celsius(60), Duration{t}));
            core.add(Duration{t}, value);
            if (value <= celsius(54.4) && !from) {
                from = Duration{t};
            }
            if (value > celsius(27)) {
                to = Duration{t};
            }
        }
        INFO("medium ", static_cast<int>(slice.medium), " floor ", slice.contact == Contact::bottom);
        CHECK(units::in_hours(to - *from) <= 1.5);
        CHECK(safety::growth_with_lag(model, core, model.q0_likely) <= 0.90);
    }
}

TEST_CASE("the table has every medium with both faces and with one, and says how long its slices take") {
    const auto table = thickest_slices(beef(), celsius(60), celsius(8));
    REQUIRE(table.size() == 6);
    for (std::size_t i = 0; i < table.size(); ++i) {
        CHECK(static_cast<std::size_t>(table[i].medium) == i / 2);
        CHECK(table[i].contact == (i % 2 == 0 ? Contact::free : Contact::bottom));
        CHECK(table[i].thickest.has_value() == (table[i].medium != Medium::still_air));
        CHECK(table[i].to_end.has_value() == table[i].thickest.has_value());
    }
    // A slice much thinner than film and depth ask cools as one lump: t = (rho c thickness / 2 h) ln(start / end).
    const heat::FoodProperties food = heat::reading_of(beef(), celsius(32.5), Bound::slow);
    const auto lump = cool_slice(millimetres(2), Contact::free, beef(), celsius(60), loose_snow());
    const double seconds =
        food.density.si() * food.specific_heat.si() * 0.001 / loose_snow().film.si() * std::log(60.0 / 21.0);
    CHECK(near_rel(lump->to_middle->si(), seconds, 0.02));
}
