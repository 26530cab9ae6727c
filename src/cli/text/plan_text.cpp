// SPDX-License-Identifier: MIT
#include "cli/text/plan_text.hpp"

#include "card/shared/figures.hpp"
#include "card/shared/water_line.hpp"
#include "facts/facts.hpp"
#include "facts/published.hpp"
#include "plan/search/later_start.hpp"
#include "safety/refusals.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace holdwater::cli {
namespace {

using plan::Event;
using units::System;
using units::Toward;

std::string day_time(units::LocalTime t) {
    constexpr const char* days[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    return fmt::format("{} {}", days[t.weekday()], t.clock_24());
}

/// The figures of the cards, in the program's own English: what is printed here is made there.
card::CardWriter writer_of(const plan::Plan& plan) {
    return {plan, words::Words::model()};
}

std::string litres(const plan::Plan& plan, units::Volume v, Toward toward = Toward::nearest) {
    return units::written(card::half_litres(v, plan.trip->units, toward));
}
std::string measured(const plan::Plan& plan, units::Volume v) {
    return units::written(card::tenth_litres(v, plan.trip->units));
}
std::string at_least(const plan::Plan& plan, units::Temperature t) {
    return units::written(writer_of(plan).at_least(t));
}
std::string about(const plan::Plan& plan, units::Temperature t) {
    return units::written(writer_of(plan).about(t));
}
std::string limit(const plan::Plan& plan, units::Temperature t, Toward otherwise = Toward::up) {
    return units::written(facts::published(t, plan.trip->units, otherwise));
}

bool reads(const plan::Plan& plan) {
    return writer_of(plan).reads();
}

std::string for_hold(units::Duration hold) {
    return hold.si() > 0 ? " for " + card::hold_time(hold) : "";
}

/// How food is finished over the fire, and how to tell.
std::string finish_words(const plan::Plan& plan, const plan::FoodPlan& food) {
    const plan::Finishing& finishing = *food.finishing;
    const auto minutes = [](units::Duration d) { return units::print(d, Toward::up); };
    return fmt::format(
        "{}: out of the bath and the bag, into water at a {} boil, about {}{}{}; done when the "
        "thermometer in the centre of each piece reads {}{}",
        food.food->name, finishing.one.hard_boil ? "hard" : "gentle", minutes(finishing.one.simmering),
        finishing.one.pan ? ", or into a pan, turned every minute, " + minutes(*finishing.one.pan) : "",
        finishing.lots > 1 ? fmt::format(", in {} lots one after the other", finishing.lots) : "",
        limit(plan, food.standard.finish->core), for_hold(food.standard.finish->hold));
}

/// What became of the germs that grew while a food warmed.
std::string growth_words(const plan::FoodPlan& food) {
    constexpr double no_growth = 0.005;  // prints as none
    const std::string left = fmt::format("{:.2f} log10", food.growth_left.high);
    if (food.standard.finish) {
        return fmt::format("growth less kill of C. perfringens when it leaves the bath: {}{}", left,
                           food.growth_left.high < no_growth ? "" : " at the most; the fire kills it");
    }
    return fmt::format("growth less kill of C. perfringens when ready: {:.2f} log10{}", food.net_growth(),
                       food.waits_for_growth() ? fmt::format("; ready waits for that, up to {} are left at {}", left,
                                                             day_time(*food.done_late))
                                               : "");
}

std::string what(const plan::Plan& plan, const Event& event) {
    switch (event.kind) {
        case Event::Kind::light_fire:
            return fmt::format(
                "light the fire (later, up to {}: all times move with it, more ice; past that a new plan); "
                "{}boil {}",
                day_time(plan.fill.latest_fire),
                plan.fill.warming.si() > 0.0
                    ? ""
                    : fmt::format("{} of cold water into the box; ", litres(plan, plan.fill.cold)),
                litres(plan, plan.fill.boiled_most + plan.fill.warming, Toward::up));
        case Event::Kind::warm_box:
            return fmt::format(
                "warm the box: {} boiling in, lid on, some minutes, tip it out; then {} of cold water in",
                litres(plan, plan.fill.warming, Toward::down), litres(plan, plan.fill.cold));
        case Event::Kind::pour: {
            const plan::Pour& pour = plan.fill.pours[event.index];
            const std::string pots = fmt::format("({} {})", pour.pots, pour.pots == 1 ? "pot" : "pots");
            if (pour.trims() && reads(plan)) {
                return fmt::format("pour up to {} boiling {}; stop at a reading of {}",
                                   units::written(writer_of(plan).one_boil(pour.most)), pots,
                                   about(plan, plan.fill.reading));
            }
            return fmt::format("pour {} boiling {}{}", measured(plan, pour.boiling), pots,
                               pour.trims() ? ", measured, no more" : "");
        }
        case Event::Kind::food_in:
            return plan::all_in_at_once(plan) ? "food in" : plan::names_at(plan, &plan::FoodPlan::in, event.at) + " in";
        case Event::Kind::take_out:
            return fmt::format("{}: eat", plan.foods[event.index].food->name);
        case Event::Kind::boil_finish:
            return fmt::format("fire on, water to the boil to finish {}", plan.foods[event.index].food->name);
        case Event::Kind::finish:
            return finish_words(plan, plan.foods[event.index]);
        case Event::Kind::top_up: {
            const plan::TopUp& t = plan.top_ups[event.index];
            const card::CardWriter writer = writer_of(plan);
            const std::string in = writer.written(writer.one_boil(t.boiling));
            const std::string out = t.below_rim ? fmt::format("water down to {} below the rim, ",
                                                              units::written(card::water_line(writer, *t.below_rim)))
                                                : "";
            if (!reads(plan)) {
                return fmt::format("{}pour {} boiling", out, in);
            }
            return fmt::format("top up to {}: {}about {} boiling (reads about {})", at_least(plan, plan.top_up_mark),
                               out, in, about(plan, t.reading.likely));
        }
        case Event::Kind::ready: {
            const plan::FoodPlan& food = plan.foods[event.index];
            const std::string likely = day_time(food.ready_likely.value());
            return food.standard.finish ? fmt::format("{}: done in the bath, not safe until the fire (likely {})",
                                                      food.food->name, likely)
                   : reads(plan)
                       ? fmt::format("{} ready, if no reading was under {} (likely {})", food.food->name,
                                     at_least(plan, food.ready_if), likely)
                       : fmt::format("{} ready, if every pour was on time (likely {})", food.food->name, likely);
        }
        case Event::Kind::serve:
            return "eat";
    }
    return {};
}

using Line = std::pair<units::LocalTime, std::string>;

int pots_of(const plan::TopUp& top_up, const trip::Fire& fire) {
    return std::clamp(static_cast<int>(std::ceil(top_up.boiling_most / (fire.pot * fire.usable) - 1e-9)), 1, fire.pots);
}

/// The pan, and the first piece of a meal out of the bath. A pan takes no longer to heat than a pot to boil.
void add_sear(const plan::Plan& plan, const plan::Sear& sear, std::vector<Line>& lines) {
    if (sear.foods.empty()) {
        return;
    }
    const units::LocalTime out = sear.own_out();
    const bool after_another = sear.foods.front().elsewhere;  // the other box has the pan on by then
    if (!after_another) {
        units::LocalTime pan = out.after(-plan.round);
        const char* where = "fire on for the pan";
        for (const plan::TopUp& top_up : plan.top_ups) {
            const bool full = pots_of(top_up, plan.trip->fire) == plan.trip->fire.pots;
            if (!full || top_up.light_fire >= out || top_up.at <= pan) {
                continue;
            }
            // The pots have every place until they are poured.
            if (top_up.at < out) {
                pan = top_up.at;
            } else {
                where = "a second fire on for the pan: the pots have this one";
            }
        }
        lines.emplace_back(pan, where);
    }
    lines.emplace_back(
        out, fmt::format("{}; first piece out of the bath, sear, on the plates at {}",
                         after_another ? "pan free after the other box" : "pan very hot", sear.serve.clock_24()));
}

/// All that is done when, in time order: the bath, and what is around it.
std::vector<Line> timeline(const plan::Plan& plan) {
    std::vector<Line> lines;
    for (const Event& event : plan.events) {
        if (event.kind == Event::Kind::top_up) {
            const plan::TopUp& top_up = plan.top_ups[event.index];
            const int pots = pots_of(top_up, plan.trip->fire);
            lines.emplace_back(top_up.light_fire,
                               fmt::format("{}fire on for the top-up, {} {}", top_up.wakes ? "WAKE, " : "", pots,
                                           pots == 1 ? "pot" : "pots"));
        }
        lines.emplace_back(event.at, what(plan, event));
    }
    for (const plan::SideStart& side : plan.around.sides.list) {
        lines.emplace_back(side.begin, fmt::format("fire on, begin {}", side.name));
    }
    for (const plan::Meal& meal : plan.around.earlier) {
        add_sear(plan, meal.sear, lines);
    }
    add_sear(plan, plan.around.sear, lines);
    std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) { return a.first < b.first; });
    return lines;
}

/// Without a thermometer: what to do about a pour that came later than the plan allows for.
std::string what_was_late(const plan::Plan& plan) {
    const card::CardWriter writer = writer_of(plan);
    if (!plan.late_pour) {
        return fmt::format("food whose pour was over {} late is thrown away", writer.latest_pour());
    }
    return fmt::format(
        "a pour over {} late, up to {}: the food\nat once into a pot at a hard boil for {}, eat it now, keep none; "
        "later "
        "still: throw it away",
        writer.latest_pour(), units::print(plan.late_pour->until, Toward::down),
        writer.must_hold(plan.late_pour->boil));
}

}  // namespace

std::string plan_text(const plan::Plan& plan) {
    std::string out = fmt::format("{}: the plan holds in {:.0f} of 100 scenarios\n", plan.trip->name,
                                  std::floor(100.0 * plan.share_that_holds));
    if (const std::size_t wakes = plan::wakes_of(plan); wakes > 0) {
        out += fmt::format(
            "somebody must wake {}: set the alarm to the times marked WAKE; before each sleep fill the pots and bank "
            "the fire\n",
            wakes == 1 ? "once" : fmt::format("{} times", wakes));
    }
    out += "\n";
    for (const auto& [at, line] : timeline(plan)) {
        out += fmt::format("{}  {}\n", day_time(at), line);
    }
    out += fmt::format(
        "\nUntil it goes into the bath raw food stays at {} or below: in another cold box or bag with its ice, since "
        "this box\nis full of hot water.{}\n\n",
        limit(plan, facts::facts().temperature("raw.cold"), Toward::down),
        plan.around.frost ? " In this frost keep it from freezing: a frozen start is not worked out." : "");
    for (const plan::FoodPlan& food : plan.foods) {
        // A food that still needs the fire gets no figure that could be taken for safety.
        out += fmt::format("{}: core peaks at {} at the most{}, {} to {} in {}\n", food.food->name,
                           at_least(plan, food.core_peak.high),
                           food.standard.finish
                               ? ""
                               : fmt::format(", kill {} times what is asked", units::written(card::kill_margin(food))),
                           safety::in_both(facts::facts().temperature("come-up.from")),
                           safety::in_both(facts::facts().temperature("come-up.to")),
                           units::print(food.come_up.high.value(), Toward::up));
        out += "  " + growth_words(food) + "\n";
        if (food.standard.finish) {
            out += fmt::format("  never eaten from the bath alone: finish over the fire to {}{}. {}\n",
                               limit(plan, food.standard.finish->core), for_hold(food.standard.finish->hold),
                               food.standard.finish->why);
        }
        if (food.standard.below_consumer_advice) {
            out += fmt::format("  meets the published rows ({}); consumer advice asks more: {}{}\n",
                               food.standard.kill->claim, limit(plan, food.standard.consumer_core),
                               for_hold(food.standard.consumer_hold));
        }
        if (food.thickest) {
            out += fmt::format("  thickest piece for this bath: {}\n",
                               units::print(*food.thickest, plan.trip->units, {1.0, Toward::down}));
        }
    }
    if (plan.trip->at_risk) {
        out += "people at risk eat: this plan gives them what they need as long as the bath keeps to it\n";
    }
    const card::CardWriter writer = writer_of(plan);
    const std::string longest = writer.may_leave(writer.alone());
    out += reads(plan) ? fmt::format(
                             "bath never to read below {}; top up by the clock, or sooner at {} or below; after {} it "
                             "may be left {}\n",
                             at_least(plan, plan.read_floor), at_least(plan, plan.action_line),
                             at_least(plan, plan.night.reading), longest)
           : plan.top_ups.empty()
               ? fmt::format("no thermometer: lid shut until the meal\n")
               : fmt::format("no thermometer: pour by the clock alone; after each pour it may be left {}; {}\n",
                             longest, what_was_late(plan));
    out += plan.waits_until > plan.trip->serve
               ? fmt::format(
                     "if the meal slips, it may wait in the bath until {} without another top-up, {}, and no longer, "
                     "whatever is said above\n",
                     day_time(plan.waits_until),
                     reads(plan) ? fmt::format("if it reads {} or more at serving", at_least(plan, plan.waits_if))
                     : plan.top_ups.empty() ? std::string("lid shut")
                                            : std::string("if every pour was on time"))
               : fmt::format("if the meal slips, top up before {}\n", day_time(plan.trip->serve));
    out += "\n" + curve_text(plan);
    return out;
}

std::string explain_text(const plan::Plan& plan, const std::vector<card::CardNumber>& numbers) {
    std::string out = fmt::format(
        "\nHow the card numbers are made safe: {} scenarios over every entry of the spreads; the share that holds,\n"
        "{:.1f} of 100, is known to {:.1f}. Box loss {:.2f} W/K ({:.2f} to {:.2f}), still air, lid closed.\n",
        plan.scenarios, 100.0 * plan.share_that_holds, 100.0 * plan.share_error, plan.loss.likely.si(),
        plan.loss.low.si(), plan.loss.high.si());
    std::string card;
    for (const card::CardNumber& n : numbers) {
        if (n.detail) {
            continue;
        }
        if (n.card != card) {
            card = n.card;
            out += "\n" + card + "\n";
        }
        out += fmt::format("  {}: {}, from {:.4g}{}\n      {}; rounded {}; {}\n", n.name, n.printed, n.value,
                           n.error && *n.error > 0 ? fmt::format(" (sampling error {:.2g})", *n.error) : "", n.quantile,
                           n.rounding, n.source);
    }
    out += "\nRules and figures by name: `holdwater sources --search NAME`.\n";
    return out;
}

}  // namespace holdwater::cli
