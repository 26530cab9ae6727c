// SPDX-License-Identifier: MIT
#include "card/figures/places.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::card {
namespace {

bool ice_needed(const plan::Provisions& around) {
    return around.ice && around.ice->card.si() > 0.0;
}

/// What weighs most in the packs: water, fuel, ice.
KeyRow to_carry(const CardWriter& writer, const CardFigures& on) {
    const plan::Provisions& around = writer.plan.around;
    const words::Words& w = writer.words;
    KeyRow row;
    row.numbers.push_back(on.key(w.text("kitchen.water"), "fetch"));
    if (around.fuel) {
        row.numbers.push_back(on.key(w.text("kitchen.fuel-" + std::string(facts::to_name(around.fuel->fuel))), "fuel"));
    }
    if (ice_needed(around)) {
        row.numbers.push_back(on.key(w.text("kitchen.ice"), "ice"));
    }
    return row;
}

bool any_tied(const plan::Plan& plan) {
    return std::any_of(plan.foods.begin(), plan.foods.end(), [](const plan::FoodPlan& food) {
        return food.food->cut == facts::Cut::tied || food.food->cut == facts::Cut::rolled;
    });
}

Text portions_text(const CardWriter& writer, const CardFigures& on) {
    using Verdict = plan::Portions::Verdict;
    const plan::Portions& p = writer.plan.around.portions;
    const bool enough = p.verdict == Verdict::hearty || p.verdict == Verdict::enough;
    const char* key = enough ? "kitchen.portions" : "kitchen.portions-short";
    return writer.words.text(key, {{"each", on("portion")},
                                   {"people", where_asked(writer, key, "people", on, "people", {})},
                                   {"missing", where_asked(writer, key, "missing", on, "missing", {})}});
}

/// In which box the ice was reckoned.
Text ice_box(const CardWriter& writer, const CardFigures& on, const plan::Ice& ice) {
    const words::Words& w = writer.words;
    switch (ice.box) {
        case plan::IceBox::named:
            return w.text("kitchen.ice-box-named", {{"name", plain(ice.name)}});
        case plan::IceBox::given:
            return w.text("kitchen.ice-box-given", {{"loss", on("ice-box-loss")}});
        case plan::IceBox::planning:
            break;
    }
    return w.text("kitchen.ice-box-planning");
}

Text ice_text(const CardWriter& writer, const CardFigures& on) {
    const plan::Ice& ice = *writer.plan.around.ice;
    const char* key = !ice_needed(writer.plan.around) ? "kitchen.ice-none"
                      : ice.fits                      ? "kitchen.ice-line"
                                                      : "kitchen.ice-too-much";
    const auto asked = [&](std::string_view place, std::string_view figure) {
        return where_asked(writer, key, place, on, figure, {});
    };
    return writer.words.text(key, {{"cold", asked("cold", "raw-cold")},
                                   {"takes", asked("takes", "ice-takes")},
                                   {"box", ice_needed(writer.plan.around) ? ice_box(writer, on, ice) : ""}});
}

/// What goes into the packs, one a line.
std::vector<Text> pack_list(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    std::vector<Text> list;
    list.push_back(portions_text(writer, on));
    list.push_back(w.text("kitchen.bags", {{"count", on.count("bags")}, {"doubled", on.count("bags-doubled")}}));
    if (any_tied(plan)) {
        list.push_back(w.text("kitchen.string"));
    }
    list.push_back(plan.around.hot_water.list.empty()
                       ? w.text("kitchen.boil", {{"boil", on("boil-most")}})
                       : w.text("kitchen.boil-all", {{"boil", on("boil-most")}, {"drinks", on("drinks")}}));
    if (plan.around.ice) {
        list.push_back(ice_text(writer, on));
    }
    if (plan.around.frost) {
        list.push_back(w.text("kitchen.frost"));
    }
    if (writer.reads()) {
        list.push_back(w.text("kitchen.thermometer", {{"ends", on("slush")}}));
    }
    return list;
}

struct Timed {
    units::LocalTime at;
    Text when;
    Text text;
};

class Clock {
  public:
    Clock(const CardWriter& writer, const CardFigures& on) : w_(writer.words), writer_(writer), on_(on) {}

    /// Side dishes, sear, finish and serving by the clock.
    Steps steps() {
        const plan::Plan& plan = writer_.plan;
        add_sides(plan.around.sides);
        for (std::size_t i = 0; i < plan.events.size(); ++i) {
            const plan::Event::Kind kind = plan.events[i].kind;
            if (kind == plan::Event::Kind::boil_finish || kind == plan::Event::Kind::finish) {
                add_finishing(plan.events[i], static_cast<int>(i) + 1);
            }
        }
        int nth = 0;
        for (const plan::Meal& meal : plan.around.earlier) {
            ++nth;
            add_meal(meal.sear, nth, nth);
        }
        add_meal(plan.around.sear, ++nth, {});
        std::stable_sort(all_.begin(), all_.end(), [](const Timed& a, const Timed& b) { return a.at < b.at; });
        Steps steps;
        steps.numbered = false;
        for (Timed& timed : all_) {
            steps.add(std::move(timed.when), std::move(timed.text));
        }
        return steps;
    }

  private:
    /// At the time of a figure.
    void add(std::string_view key, const Which& which, Text text) {
        all_.push_back({on_.moment(key, which), on_(key, which), std::move(text)});
    }

    void add_sides(const plan::Sides& sides) {
        for (std::size_t i = 0; i < sides.list.size(); ++i) {
            add("side", side_place(sides, i),
                w_.text("kitchen.side",
                        {{"side", plain(sides.list[i].name)}, {"takes", on_("side-takes", static_cast<int>(i) + 1)}}));
        }
        for (int nth = 1; nth <= static_cast<int>(sides.clashes.size()); ++nth) {
            add("clash-from", nth, w_.text("kitchen.clash", {{"until", on_.brief("clash-until", nth)}}));
        }
    }

    /// The sear of the nth meal and the meal; `sear_at`: the figure of its first piece.
    void add_meal(const plan::Sear& sear, int nth, const Which& sear_at) {
        if (!sear.foods.empty()) {
            add("first-piece-out", sear_at,
                w_.text("kitchen.sear", {{"count", on_.count("pans", nth)}, {"side", on_("sear-side", nth)}}));
        }
        add("meal", nth,
            w_.text(sear.foods.empty() && sear.finished.empty() ? "kitchen.serve-hot"
                    : sear.foods.empty()                        ? "kitchen.serve-finished"
                    : sear.in_time                              ? "kitchen.serve"
                                                                : "kitchen.serve-twice"));
    }

    /// What is finished over the fire: water on, then the food into it. `act`: the number of the event.
    void add_finishing(const plan::Event& event, int act) {
        const plan::FoodPlan& food = writer_.plan.foods[event.index];
        const int nth = static_cast<int>(event.index) + 1;
        const std::string& name = food.food->name;
        if (event.kind == plan::Event::Kind::boil_finish) {
            add("act", act, w_.text("kitchen.boil-finish", {{"food", plain(name)}}));
            return;
        }
        const plan::Finishing& finishing = *food.finishing;
        const bool pan = finishing.one.pan.has_value();
        Text text = w_.text(pan ? "kitchen.finish-pan" : "kitchen.finish",
                            {{"food", plain(name)},
                             {"boil", w_.text(finishing.one.hard_boil ? "kitchen.hard-boil" : "kitchen.gentle-boil")},
                             {"takes", on_("finish-takes", food_place(writer_.plan, food))},
                             {"pan", pan ? on_("finish-pan", nth) : ""},
                             {"core", on_("finish", nth)},
                             {"hold", for_hold(writer_, on_, "finish-hold", nth)}});
        if (finishing.lots > 1) {
            text += " " + w_.text("kitchen.finish-lots", {{"count", on_.count("finish-lots", nth)}});
        }
        add("finish-out", food_place(writer_.plan, food), std::move(text));
    }

    const words::Words& w_;
    const CardWriter& writer_;
    const CardFigures& on_;
    std::vector<Timed> all_;
};

/// "ice slush 65 mm, loose snow 16 mm": every medium in which anything can be kept, cold on both faces of a slice.
Text slices(const CardWriter& writer, const CardFigures& on) {
    struct Medium {
        const char* figure;
        const char* key;
    };
    const words::Words& w = writer.words;
    Text all;
    for (const Medium& medium : {Medium{"slice-slush", "kitchen.left-slush"}, Medium{"slice-snow", "kitchen.left-snow"},
                                 Medium{"slice-air", "kitchen.left-air"}}) {
        const bool air = medium.figure == std::string_view("slice-air");
        if (on.has(medium.figure)) {
            all += (all.empty() ? "" : ", ") +
                   w.text(medium.key, {{"slice", on(medium.figure)}, {"air", air ? on("left-air") : ""}});
        } else if (air && !all.empty()) {
            all += ", " + w.text("kitchen.left-no-air");
        }
    }
    return all;
}

void add_leftovers(const CardWriter& writer, const CardFigures& on, Card& card) {
    const words::Words& w = writer.words;
    card.blocks.add(Heading{w.text("kitchen.left-heading")});
    // Without a thermometer nobody can tell whether they were hot enough before, or cold in time.
    const Text where = writer.reads() ? slices(writer, on) : "";
    if (where.empty()) {
        card.blocks.add(Note{w.text("kitchen.left-none")});
        return;
    }
    Steps steps;
    steps.add(w.text("kitchen.left-slice", {{"begin", on("left-begin")}, {"where", where}}));
    steps.add(w.text("kitchen.left-cold", {{"middle", on("left-middle")},
                                           {"first", on("left-first")},
                                           {"end", on("left-cold")},
                                           {"all", on("left-all")}}));
    steps.add(w.text("kitchen.left-bag"));
    steps.add(w.text("kitchen.left-keep", {{"count", on.count("left-days")}, {"end", on("left-cold")}}));
    steps.add(
        w.text("kitchen.left-heat", {{"full", on("left-reheat") + for_hold(writer, on, "left-reheat-hold", {})}}));
    card.blocks.add(std::move(steps));
}

}  // namespace

Card kitchen_card(const CardWriter& writer) {
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("kitchen");
    Card card;
    const KeyRow carry = to_carry(writer, on);
    if (carry.numbers.size() > 1) {
        card.blocks.add(carry);
    } else {
        card.blocks.add(carry.numbers.front());
    }
    for (Text& text : pack_list(writer, on)) {
        card.blocks.add(Note{std::move(text)});
    }
    card.blocks.add(Turn{});
    card.blocks.add(Heading{w.text("kitchen.clock-heading")});
    card.blocks.add(Clock(writer, on).steps());
    card.blocks.add(Note{w.text("kitchen.taste")});
    add_leftovers(writer, on, card);
    card.warn(w.text("kitchen.caution"));
    return card;
}

}  // namespace holdwater::card
