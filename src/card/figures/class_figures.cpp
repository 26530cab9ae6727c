// SPDX-License-Identifier: MIT
#include "card/figures/class_figures.hpp"

#include "answer/water/mix.hpp"
#include "card/figures/parts.hpp"
#include "facts/facts.hpp"

#include <algorithm>
#include <string>

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

void add_class_hold(FigureList& list) {
    add_hold_figures(list);
    const FigureMaker of(list, "hold");
    int nth = 0;
    for (const plan::FoodPlan& food : of.plan().foods) {
        add_food(of, food, ++nth);
    }
}

/// Boiling litres by reading and by the water in the box. Their columns have no room for units: the card says them.
void add_class_pours(const FigureMaker& of, const ClassFrame& frame, bool full) {
    const SafeSide& safe = of.safe();
    const units::System first = units::first_of(safe.system());
    const How chosen{"chosen", "none-whole-degrees", of.source("figures", "class.*")};
    const How pour{"share-95", "up-half-litre", of.source("heat-balance")};
    const std::vector<units::Temperature> rungs = frame.rungs();
    const std::vector<units::Volume>& waters = common_litres();
    for (std::size_t column = 0; column < waters.size(); ++column) {
        // More water asks for more: a column's figure in quarts is rounded down.
        of.litres("water", waters[column], units::amount(waters[column], first, {1.0, Toward::down}), chosen,
                  class_cell(0, column, waters.size()));
    }
    for (std::size_t row = 0; row < rungs.size(); ++row) {
        of.degrees("rung", rungs[row], safe.about(rungs[row]), chosen, class_cell(row, 0, 1));
        for (std::size_t column = 0; column < waters.size(); ++column) {
            const units::Volume litres = frame.pour(waters[column], rungs[row], of.plan().levels.mark, full);
            of.litres("pour", litres, safe.litres_short(litres, Toward::up).without_units(), pour,
                      class_cell(row, column, waters.size()));
        }
    }
}

void add_class_reading(FigureList& list, const ClassFrame& frame) {
    const FigureMaker of(list, "reading");
    add_falls(of);
    add_class_pours(of, frame, false);
}

void add_class_full(FigureList& list, const ClassFrame& frame) {
    const FigureMaker of(list, "full");
    add_top_up_mark(of);
    add_class_pours(of, frame, true);
}

void add_class_mix(FigureList& list, const ClassFrame& frame) {
    const FigureMaker of(list, "mix");
    const SafeSide& safe = of.safe();
    const std::string balance = of.source("heat-balance");
    const How chosen{"chosen", "up-degree", of.source("figures", "class.*")};
    const std::vector<units::Temperature>& baths = frame.baths();
    for (std::size_t row = 0; row < baths.size(); ++row) {
        of.degrees("bath", baths[row], safe.at_least(baths[row]), chosen, class_cell(row, 0, 1));
        for (const bool ice : {false, true}) {
            if (const auto mix = class_mix(frame, baths[row], ice)) {
                of.number("parts", mix->parts, parts_to_mix(mix->parts), {"likely-fill", "up-tenth", balance},
                          class_cell(row, ice ? 1 : 0, 2));
            }
        }
    }
    if (const auto mix = class_mix(frame, baths.back(), false)) {
        of.brief().degrees("low", mix->low, safe.at_most(mix->low), {"pouring-errors", "down-degree", balance});
        of.brief().degrees("high", mix->high, safe.at_least(mix->high), {"nothing-lost", "up-degree", balance});
    }
    const units::Temperature cold = facts::facts().temperature("class.cold-water");
    of.brief().degrees("cold", cold, safe.about(cold), {"rule", "none", of.source("figure", "class.cold-water")});
    of.degrees("boiling", frame.boiling(), safe.about(frame.boiling()), {"rule", "none", balance});
    constexpr double feet = 0.3048;  // m, exact by definition
    const double metres = frame.wish().altitude.si();
    // To ten, as nobody knows their height better.
    of.number("altitude", metres,
              units::in_order(safe.system(), units::figure(metres, 10.0, Toward::nearest, "m"),
                              units::figure(metres / feet, 10.0, Toward::nearest, "ft")),
              {"as-given", "none", of.source("figures", "class.*")});
}

void add_class_touch(FigureList& list) {
    const FigureMaker of(list, "touch");
    add_wax_figures(of);
    add_dips(of);
}

/// How soon leftovers must be cold.
void add_class_leftovers(const FigureMaker& of) {
    const facts::Facts& facts = facts::facts();
    const auto limit = [&](std::string_view name, const char* key) {
        const units::Temperature t = facts.temperature(key);
        of.brief().degrees(name, t, of.safe().limit(t), {"rule", "none", of.source("figure", key)});
    };
    const auto span = [&](std::string_view name, const char* key) {
        of.span(name, facts.duration(key), units::print(facts.duration(key)),
                {"rule", "none", of.source("figure", key)});
    };
    limit("left-middle", "cooling.middle");
    span("left-first", "cooling.first");
    limit("left-end", "cooling.to");
    span("left-all", "cooling.all");
}

/// Each kind of food has its own floor: as readings.
void add_class_floors(const FigureMaker& of, const ClassFrame& frame) {
    using facts::Category;
    for (const auto& [name, category] :
         {std::pair{"floor-red-meat", Category::red_meat}, std::pair{"floor-poultry", Category::poultry},
          std::pair{"floor-fish", Category::fish}}) {
        const facts::Rule* rule = facts::facts().find_rule(frame.wish().rules, category);
        const units::Temperature read = std::max(rule->cook_floor, rule->hold_floor) + frame.wish().thermometer;
        of.brief().degrees(name, read, of.safe().at_least(read),
                           {"rule-thermometer", "up-degree", of.source("rules", rule->source)});
    }
}

}  // namespace

FigureList class_figures(const ClassFrame& frame, const words::Words& words) {
    FigureList list({frame.plan(), words});
    add_class_hold(list);
    add_class_reading(list, frame);
    add_class_full(list, frame);
    add_class_mix(list, frame);
    add_class_touch(list);
    const FigureMaker trouble(list, "trouble");
    add_full(trouble);
    add_come_up(trouble);
    add_class_leftovers(trouble);
    add_class_floors(trouble, frame);
    return list;
}

const std::vector<units::Volume>& common_litres() {
    static const std::vector<units::Volume> litres{units::litres(20), units::litres(30), units::litres(40)};
    return litres;
}

units::Figure parts_to_mix(double parts) {
    return units::figure(parts, 0.1, Toward::up);
}

std::optional<ClassMix> class_mix(const ClassFrame& frame, units::Temperature bath, bool with_ice_water) {
    answer::MixQuestion question{bath, frame.boiling(), facts::facts().temperature("class.cold-water"),
                                 answer::Measure::volume};
    if (with_ice_water) {
        question.cold = answer::Frozen::slush;
    }
    // What a mixture loses hardly changes with its aim, so a few steps find the aim that likely comes out right.
    constexpr int steps = 6;
    std::optional<ClassMix> found;
    for (int i = 0; i < steps; ++i) {
        const auto answer = answer::mix(question);
        if (!answer) {
            return std::nullopt;
        }
        found = ClassMix{answer->hot_parts, answer->mixed.low, answer->mixed.high};
        question.target = question.target + (bath - answer->mixed.likely);
    }
    return found;
}

}  // namespace holdwater::card
