// SPDX-License-Identifier: MIT
// Two small changes that ask for less together than a single large one.
#include "plan/advice/solver_parts.hpp"
#include "plan/search/parallel.hpp"
#include "plan/search/work.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::plan {
namespace {

constexpr std::size_t pairs_tried = 20;  // how long is looked: no figure of any science
constexpr int thirds = 3;

struct Pair {
    std::size_t a = 0;
    std::size_t b = 0;
    double least = 0.0;  // cost
    int far = thirds;    // thirds of what may be spent on a lever of which more can be worse
};

/// 1 for a change that seldom decides: tried last.
int moves_little(Lever::Kind kind) {
    const bool little = kind == Lever::Kind::more_water || kind == Lever::Kind::less_water ||
                        kind == Lever::Kind::prewarmed || kind == Lever::Kind::wind || kind == Lever::Kind::free;
    return little ? 1 : 0;
}

}  // namespace

/// The levers that help each other: what stands against it once one is pulled is what the other helps with.
std::vector<std::pair<std::size_t, std::size_t>> Solver::mates(const Steps& base) {
    const Against first = against(base);
    std::vector<Against> then(levers_.size(), first);
    for (std::size_t i = 0; i < levers_.size(); ++i) {
        if (base[i] == 0 && helps(levers_[i].kind, first) && !work_is_enough()) {
            Steps steps = base;
            steps[i] = levers_[i].steps;
            then[i] = against(steps);
        }
    }
    std::vector<std::pair<std::size_t, std::size_t>> pairs;
    for (std::size_t a = 0; a < levers_.size(); ++a) {
        for (std::size_t b = a + 1; b < levers_.size(); ++b) {
            const bool use = helps(levers_[a].kind, then[b]) && helps(levers_[b].kind, then[a]);
            if (base[a] == 0 && base[b] == 0 && use) {
                pairs.emplace_back(a, b);
            }
        }
    }
    return pairs;
}

/// Nothing where no two hold for less than so much.
std::optional<Steps> Solver::with_two_more(const Steps& base, double than) {
    const double own = cost(base);
    std::vector<Pair> pairs;
    for (const auto& [a, b] : mates(base)) {
        const bool rise = levers_[a].rises && levers_[b].rises;
        for (int far = rise ? thirds : 1; far <= thirds; ++far) {
            pairs.push_back({a, b, own + levers_[a].cost(1) + levers_[b].cost(1), far});
        }
    }
    std::erase_if(pairs, [than](const Pair& pair) { return pair.least >= than; });
    std::stable_sort(pairs.begin(), pairs.end(), [this](const Pair& x, const Pair& y) {
        const auto order = [this](const Pair& pair) {
            return std::pair{moves_little(levers_[pair.a].kind) + moves_little(levers_[pair.b].kind), pair.least};
        };
        return order(x) < order(y);
    });
    pairs.resize(std::min(pairs.size(), pairs_tried));
    std::optional<Steps> best;
    for (std::size_t from = 0; from < pairs.size() && !work_is_enough(); from += tries_at_once) {
        const std::size_t count = std::min(tries_at_once, pairs.size() - from);
        std::vector<Steps> tried(count, base);
        std::vector<char> hold(count, 0);
        for_each_index(
            count,
            [&](std::size_t k) {
                const Pair& pair = pairs[from + k];
                const auto place = [&](std::size_t lever, std::size_t other) {
                    const int most = affordable(lever, than - own - levers_[other].cost(1));
                    return std::max(1, levers_[lever].rises ? most : most * pair.far / thirds);
                };
                tried[k][pair.a] = place(pair.a, pair.b);
                tried[k][pair.b] = place(pair.b, pair.a);
                hold[k] = pair.least < than && quickly(tried[k]) ? 1 : 0;
            },
            1);
        for (std::size_t k = 0; k < count; ++k) {
            if (hold[k] == 0) {
                continue;
            }
            reduce(tried[k]);
            if (cost(tried[k]) < than) {
                than = cost(tried[k]);
                best = tried[k];
            }
        }
    }
    return best;
}

}  // namespace holdwater::plan
