// SPDX-License-Identifier: MIT
#include "card/shared/shared_parts.hpp"

#include "facts/facts.hpp"

#include <algorithm>
#include <cctype>
#include <string>

namespace holdwater::card {

Text full(const Telling& telling, const CardFigures& on) {
    units::Temperature core = facts::facts().temperature("reheat");
    int hottest = 0;
    int nth = 0;
    for (const plan::FoodPlan& food : telling.plan.foods) {
        ++nth;
        if (food.standard.finish && food.standard.finish->core > core) {
            core = food.standard.finish->core;
            hottest = nth;
        }
    }
    return hottest == 0 ? on("reheat") : on("finish", hottest) + for_hold(telling, on, "finish-hold", hottest);
}

Text name_of(const Telling& telling, const trip::Food& food) {
    const std::string& name = food.name;
    const bool number = !name.empty() && std::isdigit(static_cast<unsigned char>(name.front())) != 0;
    const bool quoted = number || name.find(',') != std::string::npos;
    return quoted ? telling.words.text("deck.quoted", {{"name", plain(name)}}) : plain(name);
}

bool has_bars(const plan::FoodPlan& food) {
    return food.own_hold.any_piece && !food.standard.kept_hot && !food.standard.finish &&
           !food.hold.thicknesses.empty();
}

Text contact_line(const Telling& writer) {
    switch (writer.plan.foods.front().food->contact) {
        case facts::Contact::free:
            return writer.words.text("plan.contact-free");
        case facts::Contact::bottom:
            return writer.words.text("plan.contact-bottom");
        case facts::Contact::stacked:
            return writer.words.text("plan.contact-stacked");
    }
    return {};
}

bool none_at_risk(const plan::Plan& plan) {
    return std::any_of(plan.foods.begin(), plan.foods.end(), [](const plan::FoodPlan& food) {
        const facts::FoodKind* kind = facts::facts().find_food(food.food->kind);
        return kind != nullptr &&
               (kind->category == facts::Category::liver || kind->category == facts::Category::bivalve);
    });
}

Text for_hold(const Telling& telling, const CardFigures& on, std::string_view key, const Which& which) {
    return on.has(key, which) ? telling.words.text("plan.finish-hold", {{"hold", on(key, which)}}) : "";
}

Text where_asked(const Telling& telling, std::string_view wording, std::string_view place, const CardFigures& on,
                 std::string_view key, const Which& which) {
    const auto text = telling.words.find(wording);
    return text && words::Words::places_of(*text).contains(std::string(place)) ? on(key, which) : "";
}

}  // namespace holdwater::card
