// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"
#include "card/trip/kitchen.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace holdwater::card {
namespace {

using units::Toward;

bool ice_needed(const plan::Provisions& around) {
    return around.ice && around.ice->card.si() > 0.0;
}

/// What weighs most in the packs: water, fuel, ice.
KeyRow to_carry(const CardWriter& hand) {
    const plan::Provisions& around = hand.plan.around;
    const words::Words& w = hand.words;
    KeyRow row;
    row.numbers.push_back(
        hand.key(w.text("kitchen.water"), units::print(around.water.fetch, hand.system(), {1.0, Toward::up})));
    if (around.fuel) {
        row.numbers.push_back(hand.key(w.text("kitchen.fuel-" + std::string(facts::to_name(around.fuel->fuel))),
                                       fuel_mass(hand, *around.fuel)));
    }
    if (ice_needed(around)) {
        row.numbers.push_back(
            hand.key(w.text("kitchen.ice"), units::print(around.ice->card, hand.system(), {0.5, Toward::up})));
    }
    return row;
}

int all_pieces(const plan::Plan& plan) {
    int pieces = 0;
    for (const plan::FoodPlan& food : plan.foods) {
        pieces += food.food->pieces;
    }
    return pieces;
}

bool any_tied(const plan::Plan& plan) {
    return std::any_of(plan.foods.begin(), plan.foods.end(), [](const plan::FoodPlan& food) {
        return food.food->cut == facts::Cut::tied || food.food->cut == facts::Cut::rolled;
    });
}

Text portions_text(const CardWriter& hand) {
    using Verdict = plan::Portions::Verdict;
    const plan::Portions& p = hand.plan.around.portions;
    const bool enough = p.verdict == Verdict::hearty || p.verdict == Verdict::enough;
    return hand.words.text(enough ? "kitchen.portions" : "kitchen.portions-short",
                           {{"each", small_mass(p.each.low, hand.system(), Toward::down)},
                            {"people", fmt::format("{}", hand.plan.trip->people)},
                            {"missing", units::print(p.missing, hand.system(), {0.1, Toward::up})}});
}

Text ice_text(const CardWriter& hand) {
    const plan::Ice& ice = *hand.plan.around.ice;
    const char* key = !ice_needed(hand.plan.around) ? "kitchen.ice-none"
                      : ice.fits                    ? "kitchen.ice-line"
                                                    : "kitchen.ice-too-much";
    return hand.words.text(key, {{"cold", hand.at_most(facts::facts().temperature("raw.cold"))},
                                 {"takes", units::print(hand.plan.around.ice->takes, Toward::up)}});
}

/// Between which readings ice slush proves that the thermometer errs no more than the plan allows: half degrees,
/// inwards.
Text thermometer_text(const CardWriter& hand, units::TemperatureDifference error) {
    const units::Temperature zero = units::celsius(0.0);
    const auto half = [](double value, Toward toward) {
        return fmt::format("{:g}", units::round_to(value, 0.5, toward) + 0.0);
    };
    const auto ends = [&](units::System one) {
        const auto in_unit = [&](units::Temperature t) {
            return one == units::System::us ? t.fahrenheit() : t.celsius();
        };
        return hand.words.text("kitchen.thermometer-ends", {{"low", half(in_unit(zero - error), Toward::up)},
                                                            {"high", half(in_unit(zero + error), Toward::down)},
                                                            {"unit", one == units::System::us ? "°F" : "°C"}});
    };
    const Text first = ends(units::first_of(hand.system()));
    const bool two = units::two(hand.system());
    return hand.words.text("kitchen.thermometer",
                           {{"ends", two ? first + " (" + ends(units::second_of(hand.system())) + ")" : first}});
}

/// What goes into the packs, one a line.
std::vector<Text> pack_list(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    const int bags = all_pieces(plan);
    std::vector<Text> list;
    list.push_back(portions_text(hand));
    list.push_back(
        w.text("kitchen.bags", {{"count", fmt::format("{}", bags)}, {"doubled", fmt::format("{}", 2 * bags)}}));
    if (any_tied(plan)) {
        list.push_back(w.text("kitchen.string"));
    }
    list.push_back(w.text("kitchen.boil", {{"boil", hand.litres_short(plan.around.water.boil_most, Toward::up)}}));
    if (plan.around.ice) {
        list.push_back(ice_text(hand));
    }
    if (hand.reads()) {
        list.push_back(thermometer_text(hand, *plan.trip->boxes.front().thermometer));
    }
    return list;
}

struct Timed {
    units::LocalTime at;
    Text text;
};

/// The sear of one meal and the meal.
void add_meal(const CardWriter& hand, const plan::Sear& sear, units::LocalTime meal, std::vector<Timed>& all) {
    const words::Words& w = hand.words;
    if (!sear.foods.empty()) {
        all.push_back(
            {first_piece_out(hand.plan, sear, meal),
             w.text(sear.pans > 1 ? "kitchen.sear-pans" : "kitchen.sear",
                    {{"pans", fmt::format("{}", sear.pans)}, {"side", fmt::format("{:.0f}", sear.side.si())}})});
    }
    all.push_back({meal, w.text(sear.foods.empty() ? "kitchen.serve-finished"
                                : sear.in_time     ? "kitchen.serve"
                                                   : "kitchen.serve-twice")});
}

/// Side dishes, sear and serving by the clock.
Steps clock_steps(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    std::vector<Timed> all;
    for (const plan::SideStart& side : plan.around.sides.list) {
        all.push_back({side.begin,
                       w.text("kitchen.side", {{"side", plain(side.name)}, {"takes", units::print(side.takes, Toward::up)}})});
    }
    for (const plan::PotClash& clash : plan.around.sides.clashes) {
        all.push_back({clash.from, w.text("kitchen.clash", {{"until", hand.clock_only(clash.until)}})});
    }
    for (const plan::Meal& meal : plan.around.earlier) {
        add_meal(hand, meal.sear, meal.serve, all);
    }
    add_meal(hand, plan.around.sear, plan.trip->serve, all);
    std::stable_sort(all.begin(), all.end(), [](const Timed& a, const Timed& b) { return a.at < b.at; });
    Steps steps;
    steps.numbered = false;
    for (Timed& timed : all) {
        steps.steps.push_back({hand.clock(timed.at), std::move(timed.text)});
    }
    return steps;
}

/// "ice slush 65 mm, loose snow 16 mm": every medium in which anything can be kept, cold on both faces of a slice.
Text slices(const CardWriter& hand) {
    const plan::Leftovers& leftovers = hand.plan.around.leftovers;
    constexpr std::pair<answer::Medium, const char*> media[] = {{answer::Medium::slush, "kitchen.left-slush"},
                                                                {answer::Medium::loose_snow, "kitchen.left-snow"},
                                                                {answer::Medium::still_air, "kitchen.left-air"}};
    Text all;
    for (const auto& [medium, key] : media) {
        if (const auto slice = thickest_slice(leftovers, medium, facts::Contact::free)) {
            all += (all.empty() ? "" : ", ") +
                   hand.words.text(key, {{"slice", hand.thickness(*slice)}, {"air", hand.at_most(leftovers.air)}});
        } else if (medium == answer::Medium::still_air && !all.empty()) {
            all += ", " + hand.words.text("kitchen.left-no-air");
        }
    }
    return all;
}

void add_leftovers(const CardWriter& hand, Card& card) {
    const words::Words& w = hand.words;
    const facts::Facts& facts = facts::facts();
    card.blocks.emplace_back(Heading{w.text("kitchen.left-heading")});
    const Text where = slices(hand);
    // Without a thermometer nobody can tell whether they were hot enough before, or cold in time.
    if (!hand.reads() || where.empty()) {
        card.blocks.emplace_back(Note{w.text("kitchen.left-none")});
        return;
    }
    Steps steps;
    const std::string begin = units::print(facts.duration("leftovers.begin"), Toward::down);
    steps.steps = {{"", w.text("kitchen.left-slice", {{"begin", begin}, {"where", where}})},
                   {"", w.text("kitchen.left-bag")},
                   {"", w.text("kitchen.left-cold", {{"middle", hand.at_most(facts.temperature("cooling.middle"))},
                                                     {"first", units::print(facts.duration("cooling.first"))},
                                                     {"end", hand.at_most(facts.temperature("cooling.to"))},
                                                     {"second", units::print(facts.duration("cooling.second"))}})},
                   {"", w.text("kitchen.left-heat", {{"full", hand.full()}})}};
    card.blocks.emplace_back(std::move(steps));
}

}  // namespace

Card kitchen_card(const CardWriter& hand) {
    const words::Words& w = hand.words;
    Card card;
    const KeyRow carry = to_carry(hand);
    if (carry.numbers.size() > 1) {
        card.blocks.emplace_back(carry);
    } else {
        card.blocks.emplace_back(carry.numbers.front());
    }
    for (Text& text : pack_list(hand)) {
        card.blocks.emplace_back(Note{std::move(text)});
    }
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(Heading{w.text("kitchen.clock-heading")});
    card.blocks.emplace_back(clock_steps(hand));
    card.blocks.emplace_back(Note{w.text("kitchen.taste")});
    add_leftovers(hand, card);
    card.cautions.push_back({SignalWord::warning, w.text("kitchen.caution")});
    return card;
}

}  // namespace holdwater::card
