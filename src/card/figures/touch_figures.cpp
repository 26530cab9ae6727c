// SPDX-License-Identifier: MIT
// The figures of the card Without a thermometer.
#include "card/figures/dip.hpp"
#include "card/figures/fill_rounds.hpp"
#include "card/figures/kitchen_measures.hpp"
#include "card/figures/mixing.hpp"
#include "card/figures/parts.hpp"
#include "card/figures/provision_rounding.hpp"
#include "facts/facts.hpp"
#include "plan/result/reading_rows.hpp"
#include "safety/burn.hpp"

#include <cmath>

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

units::Figure tenth_up(double value) {
    return units::figure(value, 0.1, Toward::up);
}

/// How far down is scooped for a pour of so much, as the rows of Reading have it; the coldest has room for the most
/// that is poured at once.
units::Length depth_for(const plan::Plan& plan, units::Volume pour) {
    for (const int nth : plan::printed_rungs(plan)) {
        const plan::LadderRung& row = plan.ladder[static_cast<std::size_t>(nth) - 1];
        if (row.pour >= pour) {
            return row.below_rim;
        }
    }
    return plan.ladder.back().below_rim;
}

void add_mixing(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const plan::Fill& fill = of.plan().fill;
    const FigureMaker act = of.acted_on();
    const std::string balance = of.source("heat-balance");
    if (const auto mixing = mixing_of(of.plan())) {
        of.number("parts-boiling", mixing->parts, tenth_up(mixing->parts), {"likely-fill", "up-tenth", balance});
        if (mixing->with_ice_water) {
            of.number("parts-boiling-ice-water", *mixing->with_ice_water, tenth_up(*mixing->with_ice_water),
                      {"likely-fill", "up-tenth", balance});
            // As much water in all.
            const units::Volume ice = (fill.boiled + fill.cold) / (1.0 + *mixing->with_ice_water);
            const units::Volume boil = fill.boiled + fill.cold - ice;
            of.litres("ice-water", ice, safe.measured(ice, Toward::down), {"likely-fill", "down-tenth", balance});
            of.litres("ice-water-boil", boil, safe.measured(boil, Toward::up), {"likely-fill", "up-tenth", balance});
        }
    }
    if (of.reads() && !of.plan().top_ups.empty()) {
        const units::Volume most = most_of_a_pour(of.plan());
        act.litres("top-up-most", most, safe.measured(most, Toward::up),
                   {"share-95-largest", "up-tenth-litre", balance});
        // The depth of the row that pours so much.
        const units::Length below = depth_for(of.plan(), most);
        of.brief().length("top-up-below", below, safe.water_line(below), {"share-95", "up-mm", balance});
    }
    const FillSums sums = fill_sums(safe);
    of.brief().litres("boil", fill.boiled, of.reads() ? safe.litres(fill.boiled, Toward::up) : sums.all,
                      {"likely-fill", of.reads() ? "up-half-litre" : sums.rounding, balance});
    of.brief().litres("cold", fill.cold, safe.litres(fill.cold), {"likely-fill", "half-litre", balance});
}

}  // namespace

void add_wax_figures(const FigureMaker& of) {
    const FigureMaker act = of.acted_on();
    const facts::Figure& wax = facts::facts().figure("wax.floor");
    const units::Temperature clear = facts::facts().temperature(wax.key);
    act.degrees("wax", clear, of.safe().at_least(clear),
                {"rule", "up-degree", of.source("figure", wax.key + " [" + wax.source + "]")});
    act.brief().degrees("wax-sets", wax_sets(), of.safe().at_most(wax_sets()),
                        {"rule", "down-degree", of.source("figure", "wax.sets-below")});
}

void add_dips(const FigureMaker& of) {
    const SafeSide& safe = of.safe();
    const FigureMaker act = of.acted_on().brief();
    const std::string skin = of.source("skin", "hand.*, touch.*");
    for (const Dip& dip : dips()) {
        const std::string stung = std::string("stung-") + dip.key;
        act.degrees(stung + "-low", dip.band.p5, safe.at_most(dip.band.p5), {"baths-5", "down-degree", skin});
        act.degrees(stung + "-high", dip.band.p95, safe.at_least(dip.band.p95), {"baths-95", "up-degree", skin});
        of.degrees("low", dip.band.p5, safe.at_most(dip.band.p5), {"baths-5", "down-degree", skin}, dip.row);
        of.degrees("high", dip.band.p95, safe.at_least(dip.band.p95), {"baths-95", "up-degree", skin}, dip.row);
        for (const bool fahrenheit : {false, true}) {
            of.number(fahrenheit ? "span-f" : "span-c", fahrenheit ? dip.band.p95.fahrenheit() : dip.band.p95.celsius(),
                      span_of(dip.band, fahrenheit), {"baths-95", "up-degree", skin}, dip.row);
        }
        if (dip.burn) {
            of.number("burn", dip.burn->si(), hold_time(*dip.burn), {"rule", "none", of.source("figures", "burn.*")},
                      dip.row);
        }
    }
    of.count("cold-hand", cold_hand_later(), {"baths-95", "none", skin});
    // The scale of the picture: round degrees between its ends, and how soon each burns where that is published.
    const bool us = units::first_of(safe.system()) == units::System::us;
    const double step = us ? 20.0 : 10.0;
    const auto degree = [us](const char* key) {
        const units::Temperature t = facts::facts().temperature(key);
        return us ? t.fahrenheit() : t.celsius();
    };
    int nth = 0;
    for (double at = std::ceil(degree("touch.prior.low") / step) * step; at <= degree("touch.prior.high"); at += step) {
        of.count("scale", static_cast<int>(at), {"chosen", "none", skin}, ++nth);
        const auto burn = safety::burn_times(us ? units::fahrenheit(at) : units::celsius(at)).second;
        if (burn && *burn <= units::minutes(10)) {
            of.number("burns-in", burn->si(), hold_time(*burn), {"rule", "none", of.source("figures", "burn.*")}, nth);
        }
    }
}

void add_touch_figures(FigureList& list) {
    const FigureMaker of(list, "touch");
    add_mixing(of);
    add_wax_figures(of);
    add_dips(of);
    add_read_floor(of);
    of.degrees("fill", of.plan().fill.reading, of.safe().about(of.plan().fill.reading),
               {"chosen-hottest", "none-whole-degrees", of.source("heat-engine")});
}

}  // namespace holdwater::card
