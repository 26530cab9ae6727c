// SPDX-License-Identifier: MIT
#include "plan/search/food_store.hpp"

#include "facts/kept.hpp"
#include "plan/search/parallel.hpp"

#include <algorithm>
#include <list>
#include <mutex>

namespace holdwater::plan {
namespace {

struct Stored {
    answer::Piece piece;
    Draw draw;
    std::uint64_t facts = 0;  // generation
    FoodsInBath foods;
};

FoodsInBath make(const FoodSetup& food, const std::vector<Scenario>& scenarios) {
    std::vector<heat::FoodInBath> all(scenarios.size());
    each_side_by_side(scenarios.size(), [&](const std::vector<std::size_t>& group) {
        std::vector<Scenario> some;
        for (const std::size_t i : group) {
            some.push_back(scenarios[i]);
        }
        std::vector<heat::FoodInBath> in = foods_in(food, some);
        for (std::size_t k = 0; k < group.size(); ++k) {
            all[group[k]] = std::move(in[k]);
        }
    });
    return std::make_shared<const std::vector<heat::FoodInBath>>(std::move(all));
}

}  // namespace

FoodsInBath foods_of(const FoodSetup& food, const Draw& draw, const std::vector<Scenario>& scenarios) {
    constexpr std::size_t most_scenarios = 12'000;  // kept at once, of all foods and draws
    static std::list<Stored> store;                 // the one asked last first
    static std::mutex mutex;
    const auto same = [&](const Stored& one) {
        return one.facts == facts::facts_generation() && one.draw.points == draw.points &&
               one.draw.shifts == draw.shifts && answer::same_piece(one.piece, food.piece);
    };
    {
        const std::scoped_lock lock(mutex);
        if (const auto known = std::find_if(store.begin(), store.end(), same); known != store.end()) {
            store.splice(store.begin(), store, known);
            return known->foods;
        }
    }
    FoodsInBath made = make(food, scenarios);
    const std::scoped_lock lock(mutex);
    store.push_front({food.piece, draw, facts::facts_generation(), made});
    std::size_t sum = 0;
    for (auto one = store.begin(); one != store.end();) {
        sum += one->foods->size();
        one = sum > most_scenarios ? store.erase(one) : std::next(one);
    }
    return made;
}

}  // namespace holdwater::plan
