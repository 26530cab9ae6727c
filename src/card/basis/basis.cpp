// SPDX-License-Identifier: MIT
#include "card/basis/basis.hpp"

#include "card/basis/basis_parts.hpp"
#include "card/basis/fill_strip.hpp"
#include "card/figures/night_curve.hpp"
#include "card/figures/numbers.hpp"
#include "card/figures/rounding.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

namespace holdwater::card {
namespace {

units::Figure millimetres(double v) {
    return units::significant(units::round_to(v, 0.01, units::Toward::nearest));
}

}  // namespace

void BasisMaker::hand() {
    heading("hand-heading");
    note("hand-note");
    note("hand-model");
    for (Table& table : hand_tables(trip_, words_)) {
        put(std::move(table));
    }
}

/// How the box cools when it is left alone: of trips that read it.
void BasisMaker::cooling() {
    for (const plan::Plan& plan : plans_) {
        const Telling telling{plan, words_};
        if (!telling.reads()) {
            continue;
        }
        const SafeSide safe{telling};
        Curve curve = night_curve(telling);
        curve.title = words_.text("night.curve-title",
                                  {{"mark", safe.at_least(plan.night.reading)}, {"air", safe.at_most(plan.night.air)}});
        curve.floor_label = words_.text("night.curve-floor",
                                        {{"floor", safe.short_degrees(plan.levels.read_floor, units::Toward::up)}});
        curve.x_title = words_.text("night.curve-x");
        curve.y_title = words_.text(telling.us_first() ? "night.curve-y-us" : "night.curve-y");
        put(std::move(curve));
    }
}

void BasisMaker::sources() {
    heading("sources-heading");
    note("sources-note");
    put(source_table(trip_, plans_, words_));
}

Steps BasisMaker::print_steps() const {
    const facts::Facts& all = facts::facts();
    Steps steps;
    const auto step = [&](const std::string& key, Places places = {}) { steps.add(word(key, places)); };
    step("print-1");
    step("print-2");
    step("print-3", {{"format", printing_.format}, {"sheet", printing_.sheet}, {"sides", printing_.sides}});
    if (printing_.sides == "duplex") {
        const facts::Figure& shift = all.figure("duplex.shift");
        const Text span = word("span", {{"low", millimetres(shift.low)}, {"high", millimetres(shift.high)}});
        step("print-duplex", {{"shift", span}});
    } else {
        step("print-" + printing_.sides);
    }
    step("print-4");
    step("print-5",
         {{"film", millimetres(all.value("laminate.film"))}, {"border", millimetres(all.value("laminate.border"))}});
    step("print-6");
    step("print-7", {{"softens", units::amount(all.temperature("laminate.softens"), trip_.units)}});
    return steps;
}

void BasisMaker::print() {
    heading("print-heading");
    put(print_steps());
}

void BasisMaker::film() {
    LaminateTemplate film;
    film.paper_width_mm = printing_.paper_width_mm;
    film.paper_height_mm = printing_.paper_height_mm;
    film.border_mm = facts::facts().value("laminate.border");
    film.corner_mm = facts::facts().value("laminate.corner");
    film.label = word("film-label", {{"format", printing_.format},
                                     {"width", millimetres(film.paper_width_mm + 2.0 * film.border_mm)},
                                     {"height", millimetres(film.paper_height_mm + 2.0 * film.border_mm)},
                                     {"corner", millimetres(film.corner_mm)},
                                     {"paper-width", millimetres(film.paper_width_mm)},
                                     {"paper-height", millimetres(film.paper_height_mm)}});
    put(Turn{});
    heading("film-heading");
    note("film-note");
    put(film);
}

void BasisMaker::strips() {
    for (const plan::Plan& plan : plans_) {
        const auto& inside = plan.trip->boxes.front().inside;
        heading("strip-heading");
        note("strip-note", {{"length", millimetres(units::in_millimetres(inside[0]))},
                            {"width", millimetres(units::in_millimetres(inside[1]))},
                            {"depth", millimetres(units::in_millimetres(inside[2]))}});
        Steps steps;
        for (const char* key : {"strip-1", "strip-2", "strip-3", "strip-4"}) {
            steps.add(word(key));
        }
        put(std::move(steps));
        for (Strip& strip : fill_strips(trip_figures({plan, words_}), stamp_)) {
            put(std::move(strip));
        }
    }
}

SheetBlocks BasisMaker::all() {
    note("intro");
    verdict();
    inputs();
    model();
    numbers();
    assumed();
    spreads();
    cooling();
    hand();
    sources();
    print();
    film();
    strips();
    return std::move(blocks_);
}

Sheets basis(const trip::Trip& trip, const std::vector<plan::Plan>& plans, const problem::Problems& remarks,
             const Printing& printing, const words::Words& words, const std::string& stamp) {
    Sheets sheets;
    sheets.name = words.text("basis.name");
    sheets.title = trip.name;
    sheets.stamp = stamp;
    sheets.language = trip.language;
    sheets.footer = words.text("deck.footer");
    sheets.blocks = BasisMaker(trip, plans, remarks, printing, words, stamp).all();
    return sheets;
}

}  // namespace holdwater::card
