// SPDX-License-Identifier: MIT
#include "card/shared/provision_figures.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/kitchen.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::card {
namespace {

using units::Toward;

bool ice_needed(const plan::Provisions& around) {
    return around.ice && around.ice->card.si() > 0.0;
}

/// What weighs most in the packs: water, fuel, ice.
KeyRow to_carry(const CardWriter& writer) {
    const plan::Provisions& around = writer.plan.around;
    const words::Words& w = writer.words;
    KeyRow row;
    row.numbers.push_back(writer.key(w.text("kitchen.water"), water_to_fetch(around.water, writer.system())));
    if (around.fuel) {
        row.numbers.push_back(writer.key(w.text("kitchen.fuel-" + std::string(facts::to_name(around.fuel->fuel))),
                                         fuel_mass(*around.fuel, writer.system())));
    }
    if (ice_needed(around)) {
        row.numbers.push_back(writer.key(w.text("kitchen.ice"), ice_to_carry(*around.ice, writer.system())));
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

Text portions_text(const CardWriter& writer) {
    using Verdict = plan::Portions::Verdict;
    const plan::Portions& p = writer.plan.around.portions;
    const bool enough = p.verdict == Verdict::hearty || p.verdict == Verdict::enough;
    return writer.words.text(enough ? "kitchen.portions" : "kitchen.portions-short",
                             {{"each", small_mass(p.each.low, writer.system(), Toward::down)},
                              {"people", writer.plan.trip->people},
                              {"missing", units::amount(p.missing, writer.system(), {0.1, Toward::up})}});
}

/// In which box the ice was reckoned.
Text ice_box(const CardWriter& writer, const plan::Ice& ice) {
    const words::Words& w = writer.words;
    switch (ice.box) {
        case plan::IceBox::named:
            return w.text("kitchen.ice-box-named", {{"name", plain(ice.name)}});
        case plan::IceBox::given:
            return w.text("kitchen.ice-box-given", {{"loss", ice_box_loss(ice)}});
        case plan::IceBox::planning:
            break;
    }
    return w.text("kitchen.ice-box-planning");
}

Text ice_text(const CardWriter& writer) {
    const plan::Ice& ice = *writer.plan.around.ice;
    const char* key = !ice_needed(writer.plan.around) ? "kitchen.ice-none"
                      : ice.fits                      ? "kitchen.ice-line"
                                                      : "kitchen.ice-too-much";
    return writer.words.text(key, {{"cold", writer.limit(facts::facts().temperature("raw.cold"), Toward::down)},
                                   {"takes", units::print(ice.takes, Toward::up)},
                                   {"box", ice_box(writer, ice)}});
}

/// What goes into the packs, one a line.
std::vector<Text> pack_list(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const int bags = all_pieces(plan);
    std::vector<Text> list;
    list.push_back(portions_text(writer));
    list.push_back(w.text("kitchen.bags", {{"count", bags}, {"doubled", 2 * bags}}));
    if (any_tied(plan)) {
        list.push_back(w.text("kitchen.string"));
    }
    list.push_back(
        w.text("kitchen.boil", {{"boil", most_to_boil(plan.around.water, units::first_of(writer.system()))}}));
    if (plan.around.ice) {
        list.push_back(ice_text(writer));
    }
    if (plan.around.frost) {
        list.push_back(w.text("kitchen.frost"));
    }
    if (writer.reads()) {
        list.push_back(w.text("kitchen.thermometer", {{"ends", slush_reads(writer)}}));
    }
    return list;
}

struct Timed {
    units::LocalTime at;
    Text text;
};

/// The sear of one meal and the meal.
void add_meal(const CardWriter& writer, const plan::Sear& sear, units::LocalTime meal, std::vector<Timed>& all) {
    const words::Words& w = writer.words;
    if (!sear.foods.empty()) {
        all.push_back({first_piece_out(writer.plan, sear, meal),
                       w.text("kitchen.sear",
                              {{"count", sear.pans}, {"side", units::figure(sear.side.si(), 1.0, Toward::nearest)}})});
    }
    all.push_back({meal, w.text(sear.foods.empty() ? "kitchen.serve-finished"
                                : sear.in_time     ? "kitchen.serve"
                                                   : "kitchen.serve-twice")});
}

/// What is finished over the fire: water on, then the food into it.
void add_finishing(const CardWriter& writer, const plan::Event& event, std::vector<Timed>& all) {
    const words::Words& w = writer.words;
    const plan::FoodPlan& food = writer.plan.foods[event.index];
    const std::string name = plain(food.food->name);
    if (event.kind == plan::Event::Kind::boil_finish) {
        all.push_back({event.at, w.text("kitchen.boil-finish", {{"food", name}})});
        return;
    }
    const plan::Finishing& finishing = *food.finishing;
    const auto& pan = finishing.one.pan;
    Text text = w.text(pan ? "kitchen.finish-pan" : "kitchen.finish",
                       {{"food", name},
                        {"boil", w.text(finishing.one.hard_boil ? "kitchen.hard-boil" : "kitchen.gentle-boil")},
                        {"takes", fire_time(finishing.one.simmering)},
                        {"pan", pan ? fire_time(*pan) : ""},
                        {"core", writer.limit(food.standard.finish->core)},
                        {"hold", writer.for_hold(food.standard.finish->hold)}});
    if (finishing.lots > 1) {
        text += " " + w.text("kitchen.finish-lots", {{"count", finishing.lots}});
    }
    all.push_back({event.at, std::move(text)});
}

/// Side dishes, sear, finish and serving by the clock.
Steps clock_steps(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    std::vector<Timed> all;
    for (const plan::SideStart& side : plan.around.sides.list) {
        all.push_back({side.begin, w.text("kitchen.side", {{"side", plain(side.name)},
                                                           {"takes", units::print(side.takes, Toward::up)}})});
    }
    for (const plan::PotClash& clash : plan.around.sides.clashes) {
        all.push_back({clash.from, w.text("kitchen.clash", {{"until", writer.clock_only(clash.until)}})});
    }
    for (const plan::Event& event : plan.events) {
        if (event.kind == plan::Event::Kind::boil_finish || event.kind == plan::Event::Kind::finish) {
            add_finishing(writer, event, all);
        }
    }
    for (const plan::Meal& meal : plan.around.earlier) {
        add_meal(writer, meal.sear, meal.serve, all);
    }
    add_meal(writer, plan.around.sear, plan.trip->serve, all);
    std::stable_sort(all.begin(), all.end(), [](const Timed& a, const Timed& b) { return a.at < b.at; });
    Steps steps;
    steps.numbered = false;
    for (Timed& timed : all) {
        steps.add(writer.clock(timed.at), std::move(timed.text));
    }
    return steps;
}

/// "ice slush 65 mm, loose snow 16 mm": every medium in which anything can be kept, cold on both faces of a slice.
Text slices(const CardWriter& writer) {
    const plan::Leftovers& leftovers = writer.plan.around.leftovers;
    constexpr std::pair<answer::Medium, const char*> media[] = {{answer::Medium::slush, "kitchen.left-slush"},
                                                                {answer::Medium::loose_snow, "kitchen.left-snow"},
                                                                {answer::Medium::still_air, "kitchen.left-air"}};
    Text all;
    for (const auto& [medium, key] : media) {
        if (const auto slice = thickest_slice(leftovers, medium, facts::Contact::free)) {
            all +=
                (all.empty() ? "" : ", ") + writer.words.text(key, {{"slice", slice_at_most(*slice, writer.system())},
                                                                    {"air", air_under(leftovers, writer.system())}});
        } else if (medium == answer::Medium::still_air && !all.empty()) {
            all += ", " + writer.words.text("kitchen.left-no-air");
        }
    }
    return all;
}

void add_leftovers(const CardWriter& writer, Card& card) {
    const words::Words& w = writer.words;
    const facts::Facts& facts = facts::facts();
    card.blocks.add(Heading{w.text("kitchen.left-heading")});
    const Text where = slices(writer);
    // Without a thermometer nobody can tell whether they were hot enough before, or cold in time.
    if (!writer.reads() || where.empty()) {
        card.blocks.add(Note{w.text("kitchen.left-none")});
        return;
    }
    const plan::Leftovers& leftovers = writer.plan.around.leftovers;
    const units::Amount end = writer.limit(facts.temperature("cooling.to"), Toward::down);
    Steps steps;
    steps.add(w.text("kitchen.left-slice", {{"begin", units::print(leftovers.begin, Toward::down)}, {"where", where}}));
    steps.add(w.text("kitchen.left-cold", {{"middle", writer.limit(facts.temperature("cooling.middle"), Toward::down)},
                                           {"first", units::print(leftovers.first)},
                                           {"end", end},
                                           {"all", units::print(leftovers.all)}}));
    steps.add(w.text("kitchen.left-bag"));
    steps.add(w.text("kitchen.left-keep", {{"count", days_to_keep(leftovers)}, {"end", end}}));
    steps.add(w.text("kitchen.left-heat", {{"full", writer.written(writer.limit(leftovers.reheat)) +
                                                        writer.for_hold(leftovers.reheat_hold)}}));
    card.blocks.add(std::move(steps));
}

}  // namespace

Card kitchen_card(const CardWriter& writer) {
    const words::Words& w = writer.words;
    Card card;
    const KeyRow carry = to_carry(writer);
    if (carry.numbers.size() > 1) {
        card.blocks.add(carry);
    } else {
        card.blocks.add(carry.numbers.front());
    }
    for (Text& text : pack_list(writer)) {
        card.blocks.add(Note{std::move(text)});
    }
    card.blocks.add(Turn{});
    card.blocks.add(Heading{w.text("kitchen.clock-heading")});
    card.blocks.add(clock_steps(writer));
    card.blocks.add(Note{w.text("kitchen.taste")});
    add_leftovers(writer, card);
    card.warn(w.text("kitchen.caution"));
    return card;
}

}  // namespace holdwater::card
