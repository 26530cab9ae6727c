// SPDX-License-Identifier: MIT
#include "card/basis/fill_strip.hpp"

#include "answer/hold/piece.hpp"
#include "card/figures/fill_rounds.hpp"
#include "card/figures/rounding.hpp"
#include "heat/level.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::card {
namespace {

using units::Toward;

struct Level {
    Text label;
    double at_mm = 0.0;
};

struct Scale {
    units::Volume unit;  // a litre or a quart
    std::string_view name;
    double mm = 0.0;  // height of one unit
};

Scale scale_of(const Telling& telling, const heat::Inside& inside) {
    constexpr double quart = 231.0 * 0.0254 * 0.0254 * 0.0254 / 4.0;  // 231 cubic inches a gallon, exact by definition
    const bool us = telling.us_first();
    Scale scale;
    scale.unit = us ? units::Volume{quart} : units::litres(1);
    scale.name = us ? "qt" : "L";
    scale.mm = units::in_millimetres(heat::level_of(inside, scale.unit, units::Volume{}));
    return scale;
}

/// The finest step of units whose marks are at least so far apart.
double step_for(const Scale& scale, std::initializer_list<double> steps, double least_mm) {
    for (const double step : steps) {
        if (step * scale.mm >= least_mm) {
            return step;
        }
    }
    return *(steps.end() - 1);
}

Strip strip_of(const Telling& telling, const heat::Inside& inside, units::Volume food, units::Volume most,
               const std::vector<Level>& levels) {
    constexpr double ticks_apart = 2.0;    // mm: to be read apart on a wet stick
    constexpr double figures_apart = 8.0;  // mm: a line of figures and air
    const Scale scale = scale_of(telling, inside);
    const double fine = step_for(scale, {0.1, 0.5, 1.0, 5.0, 10.0}, ticks_apart);
    const double coarse = std::max(fine, step_for(scale, {0.5, 1.0, 2.0, 5.0, 10.0, 20.0}, figures_apart));
    Strip strip;
    for (int i = 1; i * fine * scale.unit <= most; ++i) {
        const double amount = i * fine;
        const double turns = amount / coarse;
        const bool figure = std::abs(turns - std::round(turns)) < 1e-9;
        strip.marks.push_back(
            {units::in_millimetres(heat::level_of(inside, amount * scale.unit, food)),
             figure ? telling.words.written(units::Figure{amount, coarse < 1.0 ? 1 : 0, scale.name}) : "", false});
    }
    for (const Level& level : levels) {
        strip.marks.push_back({level.at_mm, level.label, true});
    }
    std::stable_sort(strip.marks.begin(), strip.marks.end(),
                     [](const Strip::Mark& a, const Strip::Mark& b) { return a.at_mm < b.at_mm; });
    strip.length_mm = units::in_millimetres(heat::level_of(inside, heat::room_in(inside), units::Volume{}));
    strip.foot_label = telling.words.text("basis.strip-foot");
    strip.joint_lower = telling.words.text("basis.strip-joint-lower");
    strip.joint_upper = telling.words.text("basis.strip-joint-upper");
    return strip;
}

}  // namespace

std::vector<Strip> fill_strips(const FigureList& figures, const std::string& stamp) {
    const SafeSide safe{figures.telling()};
    const plan::Plan& plan = safe.plan;
    const words::Words& w = safe.words;
    const trip::Box& box = plan.trip->boxes.front();
    const heat::Inside& inside = box.inside;
    std::vector<heat::Lying> lying;
    units::Volume food;
    for (const plan::FoodPlan& one : plan.foods) {
        lying.push_back(answer::lying(one.piece));
        food += lying.back().volume;
    }
    const auto height = [&](units::Volume water, units::Volume in_it) {
        return units::in_millimetres(heat::level_of(inside, water, in_it));
    };
    const units::Volume full = heat::room_in(inside);
    const units::Volume nothing;

    std::vector<Level> empty;
    if (worth_a_pour(plan.fill.cold)) {
        empty.push_back({w.text("basis.strip-cold", {{"litres", figures.of("fill").brief("cold")}}),
                         height(plan.fill.cold, nothing)});
    }
    const units::Amount litres = safe.litres_short(box.water);
    empty.push_back({w.text("basis.strip-fill", {{"litres", litres}}), height(box.water, nothing)});
    empty.push_back({w.text("basis.strip-room"), height(full - food, nothing)});
    const std::vector<Level> filled{
        {w.text("basis.strip-floor"), units::in_millimetres(heat::level_needed(inside, lying))},
        {w.text("basis.strip-filled", {{"litres", litres}}), height(box.water, food)},
        {w.text("basis.strip-full"), height(full, nothing)}};

    std::vector<Strip> strips{strip_of(safe, inside, nothing, full - food, empty),
                              strip_of(safe, inside, food, full - food, filled)};
    const char* titles[] = {"basis.strip-title-empty", "basis.strip-title-food"};
    for (std::size_t i = 0; i < strips.size(); ++i) {
        strips[i].title = w.text(titles[i], {{"trip", plain(plan.trip->name)}, {"stamp", stamp}});
    }
    return strips;
}

}  // namespace holdwater::card
