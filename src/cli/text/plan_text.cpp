// SPDX-License-Identifier: MIT
#include "cli/text/plan_text.hpp"

#include "card/figures/pan_fire.hpp"
#include "card/figures/places.hpp"
#include "cli/text/told.hpp"
#include "facts/facts.hpp"
#include "plan/search/burden.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace holdwater::cli {
namespace {

using plan::Event;

/// How the nth food is finished over the fire, and how to tell.
std::string finish_words(const Told& told, const plan::FoodPlan& food, int nth) {
    const plan::Finishing& finishing = *food.finishing;
    return fmt::format(
        "{}: out of the bath and the bag, into water at a {} boil, about {}{}{}; done when the "
        "thermometer in the centre of each piece reads {}{}",
        food.food->name, finishing.one.hard_boil ? "hard" : "gentle", told("plan", "finish-takes", nth),
        finishing.one.pan ? ", or into a pan, turned every minute, " + told("plan", "finish-pan", nth) : "",
        finishing.lots > 1 ? fmt::format(", in {} lots one after the other", told("plan", "finish-lots", nth)) : "",
        told("plan", "finish", nth), told.for_hold("plan", "finish-hold", nth));
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

std::string pour_words(const Told& told, const plan::Pour& pour, int nth) {
    const std::string litres = told("plan", "pour", nth);
    const std::string pots = fmt::format("({} {})", told("plan", "pots", nth), pour.pots == 1 ? "pot" : "pots");
    if (pour.trims() && told.reads()) {
        return fmt::format("pour up to {} boiling {}; stop at a reading of {}", litres, pots, told("plan", "fill"));
    }
    return fmt::format("pour {} boiling {}{}", litres, pots, pour.trims() ? ", measured, no more" : "");
}

std::string top_up_words(const Told& told, const plan::TopUp& top_up, int nth) {
    const std::string in = told("plan", "top-up", nth);
    const std::string out =
        top_up.below_rim ? fmt::format("water down to {} below the rim, ", told("plan", "below-rim", nth)) : "";
    if (!told.reads()) {
        return fmt::format("{}pour {} boiling", out, in);
    }
    return fmt::format("top up to {} by the row of card Reading for what it reads (should be {} or more), likely {}",
                       told("reading", "mark"), told("plan", "top-up-reads", nth), in);
}

std::string ready_words(const Told& told, const plan::FoodPlan& food) {
    const std::string& name = food.food->name;
    const std::string likely = day_time(food.ready_likely.value());
    return food.standard.finish ? fmt::format("{}: done in the bath, not safe until the fire (likely {})", name, likely)
           : told.reads()       ? fmt::format("{} ready, if no reading was under {} (likely {})", name,
                                              told("plan", "ready-if", card::food_place(told.plan, food)), likely)
                                : fmt::format("{} ready, if every pour was on time (likely {})", name, likely);
}

std::string what(const Told& told, const Event& event) {
    const plan::Plan& plan = told.plan;
    const int nth = static_cast<int>(event.index) + 1;
    switch (event.kind) {
        case Event::Kind::light_fire:
            return fmt::format(
                "light the fire ({}); {}boil {}",
                plan.fill.latest_fire > plan.fill.light_fire
                    ? fmt::format("later, up to {}: all times move with it, more ice; past that a new plan",
                                  told.when("plan", "latest-fire"))
                    : "no later: past that a new plan",
                plan.fill.warming.si() > 0.0 || plan.fill.cold.si() <= 0.0
                    ? ""
                    : fmt::format("{} of cold water into the box; ", told("plan", "cold")),
                told("plan", "boil"));
        case Event::Kind::warm_box:
            return fmt::format(
                "warm the box: {} boiling in, lid on, some minutes, tip it out; then {} of cold water in",
                told("plan", "warming"), told("plan", "cold"));
        case Event::Kind::pour:
            return pour_words(told, plan.fill.pours[event.index], nth);
        case Event::Kind::food_in:
            return plan::all_in_at_once(plan) ? "food in" : plan::names_at(plan, &plan::FoodPlan::in, event.at) + " in";
        case Event::Kind::take_out:
            return fmt::format("{}: eat", plan.foods[event.index].food->name);
        case Event::Kind::boil_finish:
            return fmt::format("fire on, {} to the boil to finish {}", told("plan", "finish-water", nth),
                               plan.foods[event.index].food->name);
        case Event::Kind::finish:
            return finish_words(told, plan.foods[event.index], nth);
        case Event::Kind::top_up:
            return top_up_words(told, plan.top_ups[event.index], nth);
        case Event::Kind::ready:
            return ready_words(told, plan.foods[event.index]);
        case Event::Kind::hot_water:
            return fmt::format("fire on: {} to the boil for {}, {}", told("plan", "hot-water", nth),
                               plan.around.hot_water.list[event.index].name, told.clock("plan", "hot-water-at", nth));
        case Event::Kind::sitting:
            return fmt::format(
                "first pieces out for the sitting at {}, seared as for the last; lid on, the rest stays in",
                told.clock("plan", "sitting", nth));
        case Event::Kind::serve:
            return "eat";
    }
    return {};
}

using Line = std::pair<units::LocalTime, std::string>;

/// The pan, and the first piece of the nth meal out of the bath.
void add_sear(const Told& told, const plan::Sear& sear, int nth, std::vector<Line>& lines) {
    if (sear.foods.empty()) {
        return;
    }
    const units::LocalTime out = told.moment("plan", "first-piece-out", nth);
    const bool after_another = sear.foods.front().elsewhere;  // the other box has the pan on by then
    if (!after_another) {
        const bool apart = card::pan_fire(told.plan, sear, sear.serve)->apart;
        lines.emplace_back(told.moment("plan", "pan-fire", nth),
                           apart ? "a second fire on for the pan: the pots have this one" : "fire on for the pan");
    }
    lines.emplace_back(out, fmt::format("{}; first piece out of the bath, sear, on the plates at {}",
                                        after_another ? "pan free after the other box" : "pan very hot",
                                        told.clock("plan", "meal", nth)));
}

/// All that is done when, in time order: the bath, and what is around it.
std::vector<Line> timeline(const Told& told) {
    const plan::Plan& plan = told.plan;
    std::vector<Line> lines;
    for (const Event& event : plan.events) {
        if (event.kind == Event::Kind::top_up) {
            const plan::TopUp& top_up = plan.top_ups[event.index];
            lines.emplace_back(top_up.light_fire,
                               fmt::format("{}fire on for the top-up: boil {}", top_up.wakes ? "WAKE, " : "",
                                           told("plan", "top-up-boil", static_cast<int>(event.index) + 1)));
        }
        lines.emplace_back(event.at, what(told, event));
    }
    for (const plan::SideStart& side : plan.around.sides.list) {
        lines.emplace_back(side.begin, fmt::format("fire on, begin {}", side.name));
    }
    int nth = 0;
    for (const plan::Meal& meal : plan.around.earlier) {
        add_sear(told, meal.sear, ++nth, lines);
    }
    add_sear(told, plan.around.sear, ++nth, lines);
    std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) { return a.first < b.first; });
    return lines;
}

/// Without a thermometer: what to do about a pour that came later than the plan allows for.
std::string what_was_late(const Told& told) {
    if (!told.plan.late_pour) {
        return fmt::format("food whose pour was over {} late is thrown away", told("trouble", "late"));
    }
    return fmt::format(
        "a pour over {} late, up to {}: the food\nat once into a pot at a hard boil for {}, eat it now, keep none; "
        "later "
        "still: throw it away",
        told("trouble", "late"), told("trouble", "boil-until"), told("trouble", "boil"));
}

/// The line with which the way that was planned takes less water than the trip file has; empty where it does not.
std::string less_water(const plan::Plan& plan) {
    for (const std::string& line : plan.ways.empty() ? std::vector<std::string>{} : plan.ways.front().lines) {
        if (line.find("water = ") != std::string::npos) {
            return line;
        }
    }
    return {};
}

}  // namespace

std::string plan_text(const plan::Plan& plan, std::optional<units::LocalTime> since) {
    const Told told(plan);
    std::string out = fmt::format("{}: the plan holds in {:.0f} of 100 scenarios\n", plan.trip->name,
                                  std::floor(100.0 * plan.promise.share));
    for (const problem::Problem& note : plan.notes) {
        out += note.code == "wish-bent" ? note.message + "\n" : std::string{};
    }
    if (const std::string water = less_water(plan); !water.empty()) {
        out += fmt::format("with less water than the trip file has, which is sooner boiled: {}\n", water);
    }
    if (const std::size_t wakes = plan::wakes_of(plan); wakes > 0) {
        out += fmt::format(
            "somebody must wake {}: set the alarm to the times marked WAKE; before each sleep fill the pots and bank "
            "the fire\n",
            wakes == 1 ? "once" : fmt::format("{} times", wakes));
    }
    out += "\n";
    for (const auto& [at, line] : timeline(told)) {
        if (!since || at >= *since) {
            out += fmt::format("{}  {}\n", day_time(at), line);
        }
    }
    const bool any_raw = std::any_of(plan.foods.begin(), plan.foods.end(),
                                     [](const plan::FoodPlan& food) { return !food.standard.kept_hot; });
    out +=
        !any_raw || since
            ? std::string("\n")
            : fmt::format(
                  "\nUntil it goes into the bath raw food stays at {} or below: in another cold box or bag "
                  "with its ice, since "
                  "this box\nis full of hot water.{}\n\n",
                  told("packing", "raw-cold"),
                  plan.around.frost ? " In this frost keep it from freezing: a frozen start is not worked out." : "");
    int nth = 0;
    for (const plan::FoodPlan& food : plan.foods) {
        ++nth;
        const card::Which name = card::food_place(plan, food);
        // A food that still needs the fire gets no figure that could be taken for safety.
        if (food.standard.kept_hot) {
            out += fmt::format("{}: cooked through before, goes in at {} or more, never below {} until it is eaten\n",
                               food.food->name, told("plan", "goes-in", nth), told("plan", "hot-floor", nth));
            continue;
        }
        out += fmt::format(
            "{}: core peaks at {} at the most{}, {} to {} in {}\n", food.food->name, told("plan", "core-peak", name),
            food.standard.finish || food.standard.sear
                ? ""
                : fmt::format(", kill {} times what is asked", told("plan", "kill-margin", name)),
            told("terminal", "come-up-from"), told("terminal", "come-up-to"), told("terminal", "come-up", name));
        out += "  " + growth_words(food) + "\n";
        if (food.standard.sear) {
            out += fmt::format(
                "  steak rule: no kill is asked inside, both faces reach {} at the surface in the pan and every outer "
                "face "
                "is browned;\n  only whole-muscle intact beef that its label calls so, and nobody at risk\n",
                told("plan", "steak-surface", nth));
        }
        if (food.standard.finish) {
            out += fmt::format("  never eaten from the bath alone: finish over the fire to {}{}. {}\n",
                               told("plan", "finish", nth), told.for_hold("plan", "finish-hold", nth),
                               food.standard.finish->why);
        }
        if (food.standard.below_consumer_advice) {
            out += fmt::format("  {}; consumer advice asks more: {}{}\n",
                               food.standard.sear
                                   ? std::string("meets that rule")
                                   : fmt::format("meets the published rows ({})", food.standard.kill->claim),
                               told("plan", "advice", nth), told.for_hold("plan", "advice-hold", nth));
        }
        if (food.thickest) {
            out += food.own_hold.any_piece
                       ? fmt::format(
                             "  planned for pieces up to {} thick; thicker ones by card Hold, over {} cut "
                             "thinner (over {} the middle warms too slowly to be safe)\n",
                             told("hold", "own", nth), told("hold", "last-row", nth), told("hold", "thickest", name))
                       : fmt::format("  planned for pieces up to {} thick; thicker ones cut thinner\n",
                                     told("hold", "own", nth));
        }
    }
    if (plan.trip->at_risk) {
        out += "people at risk eat: this plan gives them what they need as long as the bath keeps to it\n";
    }
    const std::string longest = told("night", "longest-alone");
    out +=
        told.reads()
            ? fmt::format(
                  "bath never to read below {}; top up {}at {} or below; topped up to {} it keeps {} in wind and cold; "
                  "after {} it may be left {}\n",
                  told("reading", "read-floor"), plan.top_ups.empty() ? "" : "by the clock, or sooner ",
                  told("reading", "action-line"), told("reading", "mark"), told("reading", "interval-rough"),
                  told("night", "mark"), longest)
        : plan.top_ups.empty()
            ? fmt::format("no thermometer: lid shut until the meal\n")
            : fmt::format("no thermometer: pour by the clock alone; after each pour it may be left {}; {}\n", longest,
                          what_was_late(told));
    out += plan.waits_until > plan.trip->serve
               ? fmt::format(
                     "if the meal slips, it may wait in the bath until {} without another top-up, {}, and no longer, "
                     "whatever is said above\n",
                     told.when("plan", "waits-until"),
                     told.reads()           ? fmt::format("if it reads {} or more at serving", told("plan", "waits-if"))
                     : plan.top_ups.empty() ? std::string("lid shut")
                                            : std::string("if every pour was on time"))
           : told.reads() ? fmt::format("if the meal slips, top up before {}\n", day_time(plan.trip->serve))
                          : std::string("the meal does not keep: eat on time\n");
    out += "\n" + curve_text(plan);
    return out;
}

std::string explain_text(const plan::Plan& plan, const std::vector<card::CardNumber>& numbers) {
    std::string out = fmt::format(
        "\nHow the card numbers are made safe: {} scenarios over every entry of the spreads; the share that holds,\n"
        "{:.1f} of 100, is known to {:.1f}. Box loss {:.2f} W/K ({:.2f} to {:.2f}), still air, lid closed.\n",
        plan.promise.scenarios, 100.0 * plan.promise.share, 100.0 * plan.promise.error, plan.loss.likely.si(),
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
