// SPDX-License-Identifier: MIT
#include "card/shared/shared_parts.hpp"

#include "facts/facts.hpp"

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

Text for_hold(const Telling& telling, const CardFigures& on, std::string_view key, const Which& which) {
    return on.has(key, which) ? telling.words.text("plan.finish-hold", {{"hold", on(key, which)}}) : "";
}

Text where_asked(const Telling& telling, std::string_view wording, std::string_view place, const CardFigures& on,
                 std::string_view key, const Which& which) {
    const auto text = telling.words.find(wording);
    return text && words::Words::places_of(*text).contains(std::string(place)) ? on(key, which) : "";
}

}  // namespace holdwater::card
