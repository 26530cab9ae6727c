// SPDX-License-Identifier: MIT
#include "card/figures/places.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/shared/shown_drawing.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/food_lines.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::card {
namespace {

constexpr double packing_drawn_mm = 15.0;  // on a hand card

bool ice_needed(const plan::Provisions& around) {
    return around.ice && around.ice->card.si() > 0.0;
}

/// What weighs most in the packs: water, fuel, ice.
KeyRow to_carry(const CardWriter& writer, const CardFigures& on) {
    const plan::Provisions& around = writer.plan.around;
    const words::Words& w = writer.words;
    KeyRow row;
    row.numbers.push_back(on.key(w.text("packing.water"), "fetch"));
    if (around.fuel) {
        row.numbers.push_back(on.key(w.text("packing.fuel-" + std::string(facts::to_name(around.fuel->fuel))), "fuel"));
    }
    if (ice_needed(around)) {
        row.numbers.push_back(on.key(w.text("packing.ice"), "ice"));
    }
    return row;
}

bool any_tied(const plan::Plan& plan) {
    return std::any_of(plan.foods.begin(), plan.foods.end(), [](const plan::FoodPlan& food) {
        return food.food->cut == facts::Cut::tied || food.food->cut == facts::Cut::rolled;
    });
}

/// The meal for which most pans are needed at once; none where nothing is seared.
Which meal_of_most_pans(const plan::Plan& plan) {
    Which found;
    int most = 0;
    int nth = 0;
    const auto look = [&](const plan::Sear& sear) {
        ++nth;
        if (!sear.foods.empty() && sear.pans > most) {
            most = sear.pans;
            found = nth;
        }
    };
    for (const plan::Meal& meal : plan.around.earlier) {
        look(meal.sear);
    }
    look(plan.around.sear);
    return found;
}

Text portions_text(const CardWriter& writer, const CardFigures& on) {
    using Verdict = plan::Portions::Verdict;
    const plan::Portions& p = writer.plan.around.portions;
    const bool enough = p.verdict == Verdict::hearty || p.verdict == Verdict::enough;
    const char* key = enough ? "packing.portions" : "packing.portions-short";
    return writer.words.text(key, {{"each", on("portion")},
                                   {"people", where_asked(writer, key, "people", on, "people", {})},
                                   {"missing", where_asked(writer, key, "missing", on, "missing", {})}});
}

/// In which box the ice was reckoned.
Text ice_box(const CardWriter& writer, const CardFigures& on, const plan::Ice& ice) {
    const words::Words& w = writer.words;
    switch (ice.box) {
        case plan::IceBox::named:
            return w.text("packing.ice-box-named", {{"name", plain(ice.name)}});
        case plan::IceBox::given:
            return w.text("packing.ice-box-given", {{"loss", on("ice-box-loss")}});
        case plan::IceBox::planning:
            break;
    }
    return w.text("packing.ice-box-planning");
}

Text ice_text(const CardWriter& writer, const CardFigures& on) {
    const plan::Ice& ice = *writer.plan.around.ice;
    const char* key = !ice_needed(writer.plan.around) ? "packing.ice-none"
                      : ice.fits                      ? "packing.ice-line"
                                                      : "packing.ice-too-much";
    const auto asked = [&](std::string_view place, std::string_view figure) {
        return where_asked(writer, key, place, on, figure, {});
    };
    return writer.words.text(key, {{"cold", asked("cold", "raw-cold")},
                                   {"takes", asked("takes", "ice-takes")},
                                   {"box", ice_needed(writer.plan.around) ? ice_box(writer, on, ice) : ""}});
}

Text joined(const std::vector<Text>& texts) {
    Text all;
    for (const Text& text : texts) {
        all += (all.empty() ? "" : " ") + text;
    }
    return all;
}

/// What goes into the packs.
std::vector<Text> pack_list(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    std::vector<Text> list;
    list.push_back(portions_text(writer, on));
    list.push_back(w.text("packing.bags", {{"count", on.count("bags")}, {"doubled", on.count("bags-doubled")}}));
    if (any_tied(plan)) {
        list.push_back(w.text("packing.string"));
    }
    if (const Which meal = meal_of_most_pans(plan); meal.nth) {
        list.push_back(w.text("packing.pans", {{"count", on.count("pans", meal)}}));
    }
    list.push_back(plan.around.hot_water.list.empty()
                       ? w.text("packing.boil", {{"boil", on("boil-most")}})
                       : w.text("packing.boil-all", {{"boil", on("boil-most")}, {"drinks", on("drinks")}}));
    return list;
}

/// What keeps raw food cold, and the thermometer that ice tests.
std::vector<Text> cold_list(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    std::vector<Text> list;
    if (plan.around.ice) {
        list.push_back(ice_text(writer, on));
    }
    if (plan.around.frost) {
        list.push_back(w.text("packing.frost"));
    }
    if (writer.reads() || writer.wax()) {  // by it goes on who lost the thermometer
        list.push_back(w.text("packing.wax"));
    }
    if (writer.reads()) {
        list.push_back(w.text("packing.thermometer", {{"ends", on("slush")}}));
    }
    return list;
}

/// "ice slush 65 mm, loose snow 16 mm": every medium in which anything can be kept, cold on both faces of a slice.
Text slices(const CardWriter& writer, const CardFigures& on) {
    struct Medium {
        const char* figure;
        const char* key;
    };
    const words::Words& w = writer.words;
    Text all;
    for (const Medium& medium : {Medium{"slice-slush", "packing.left-slush"}, Medium{"slice-snow", "packing.left-snow"},
                                 Medium{"slice-air", "packing.left-air"}}) {
        const bool air = medium.figure == std::string_view("slice-air");
        if (on.has(medium.figure)) {
            all += (all.empty() ? "" : ", ") +
                   w.text(medium.key, {{"slice", on(medium.figure)}, {"air", air ? on("left-air") : ""}});
        } else if (air && !all.empty()) {
            all += ", " + w.text("packing.left-no-air");
        }
    }
    return all;
}

void add_leftovers(const CardWriter& writer, const CardFigures& on, Card& card) {
    const words::Words& w = writer.words;
    card.blocks.add(Heading{w.text("packing.left-heading")});
    if (!plan::may_be_kept(writer.plan.around.leftovers, *writer.plan.trip)) {
        card.blocks.add(Note{w.text("packing.left-none")});
        return;
    }
    const Text slice = w.text("packing.left-slice", {{"begin", on("left-begin")}, {"where", slices(writer, on)}});
    Steps steps;
    if (on.has("slice-slush")) {
        card.blocks.add(Drawings{{shown_drawing(w, "slices-in-slush", slice)}, packing_drawn_mm});
    } else {
        steps.add(slice);
    }
    steps.add(w.text("packing.left-cold", {{"middle", on("left-middle")},
                                           {"first", on("left-first")},
                                           {"end", on("left-cold")},
                                           {"all", on("left-all")}}));
    steps.add(w.text("packing.left-bag"));
    steps.add(w.text("packing.left-keep", {{"count", on.count("left-days")}, {"end", on("left-cold")}}));
    steps.add(
        w.text("packing.left-heat", {{"full", on("left-reheat") + for_hold(writer, on, "left-reheat-hold", {})}}));
    card.blocks.add(std::move(steps));
}

}  // namespace

Card packing_card(const CardWriter& writer) {
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("packing");
    Card card;
    const KeyRow carry = to_carry(writer, on);
    if (carry.numbers.size() > 1) {
        card.blocks.add(carry);
    } else {
        card.blocks.add(carry.numbers.front());
    }
    const bool bars = std::any_of(writer.plan.foods.begin(), writer.plan.foods.end(), has_bars);
    if (bars) {  // to measure with
        card.blocks.add(Drawings{
            {shown_drawing(w, "thickness-and-split", w.text("packing.measure", {{"hold", writer.ref("hold")}}))},
            packing_drawn_mm});
    }
    for (Note& food : food_lines(writer, on)) {
        card.blocks.add(std::move(food));
    }
    for (const std::vector<Text>& texts : {pack_list(writer, on), cold_list(writer, on)}) {
        if (!texts.empty()) {
            card.blocks.add(Note{joined(texts)});
        }
    }
    add_leftovers(writer, on, card);
    card.warn_here(w.text("packing.caution"));
    card.blocks.add(Note{w.text("packing.stamp", {{"one", writer.ref("one")}})});
    return card;
}

}  // namespace holdwater::card
