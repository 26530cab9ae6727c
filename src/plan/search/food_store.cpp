// SPDX-License-Identifier: MIT
#include "plan/search/food_store.hpp"

#include "facts/kept.hpp"
#include "plan/search/parallel.hpp"

#include <algorithm>
#include <atomic>
#include <list>
#include <mutex>

namespace holdwater::plan {
namespace {

using Foods = std::vector<heat::FoodInBath>;

/// A piece in all scenarios of a draw, of which the first ones are made: others as soon as somebody asks for them.
struct Stored {
    Stored(const answer::Piece& of, const Draw& drawn)
        : piece(of), draw(drawn), foods(std::make_shared<Foods>(drawn.points * drawn.shifts)) {}

    answer::Piece piece;
    Draw draw;
    std::uint64_t facts = facts::facts_generation();
    std::shared_ptr<Foods> foods;
    std::atomic<std::size_t> made = 0;
    std::mutex making;
};

/// Makes those that are missing up to `count`. Whoever has asked before reads only what was there already.
void make_up_to(std::size_t count, Stored& stored, const FoodSetup& food, const std::vector<Scenario>& scenarios) {
    const std::scoped_lock lock(stored.making);
    if (stored.made >= count) {
        return;
    }
    // By whole lanes: what is side by side in a few scenarios must be so in many.
    const std::size_t from = stored.made;
    each_side_by_side(count - from, [&](const std::vector<std::size_t>& group) {
        std::vector<Scenario> some;
        for (const std::size_t i : group) {
            some.push_back(scenarios[from + i]);
        }
        std::vector<heat::FoodInBath> in = foods_in(food, some);
        for (std::size_t k = 0; k < group.size(); ++k) {
            (*stored.foods)[from + group[k]] = std::move(in[k]);
        }
    });
    stored.made = count;
}

}  // namespace

FoodsInBath foods_of(const FoodSetup& food, const Draw& draw, const std::vector<Scenario>& scenarios) {
    constexpr std::size_t most_scenarios = 36'000;    // kept at once, of all foods and draws: four foods in full
    static std::list<std::shared_ptr<Stored>> store;  // the one asked last first
    static std::mutex mutex;
    // A few scenarios are the first of the many that a plan promises by, wherever whole lanes of them are asked for.
    const Draw full = full_draw();
    const bool first_of_full = draw.shifts == 1 && draw.points <= full.points && draw.points % heat::lanes == 0;
    const Draw drawn = first_of_full ? full : draw;
    const auto same = [&](const std::shared_ptr<Stored>& one) {
        return one->facts == facts::facts_generation() && one->draw.points == drawn.points &&
               one->draw.shifts == drawn.shifts && answer::same_piece(one->piece, food.piece);
    };
    std::shared_ptr<Stored> stored;
    {
        const std::scoped_lock lock(mutex);
        if (const auto known = std::find_if(store.begin(), store.end(), same); known != store.end()) {
            store.splice(store.begin(), store, known);
        } else {
            store.push_front(std::make_shared<Stored>(food.piece, drawn));
        }
        stored = store.front();
    }
    make_up_to(scenarios.size(), *stored, food, scenarios);
    const std::scoped_lock lock(mutex);
    std::size_t sum = 0;
    for (auto one = store.begin(); one != store.end();) {
        sum += (*one)->made;
        one = sum > most_scenarios && *one != stored ? store.erase(one) : std::next(one);
    }
    return stored->foods;
}

}  // namespace holdwater::plan
