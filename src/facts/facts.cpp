// SPDX-License-Identifier: MIT
#include "facts/facts.hpp"

#include "facts/kept.hpp"
#include "facts/read_facts.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdint>
#include <stdexcept>

namespace holdwater::facts {
namespace {

constexpr std::array categories{Name<Category>{Category::red_meat, "red-meat"},
                                Name<Category>{Category::poultry, "poultry"},
                                Name<Category>{Category::fish, "fish"},
                                Name<Category>{Category::farmed_game, "farmed-game"},
                                Name<Category>{Category::wild_game, "wild-game"},
                                Name<Category>{Category::boar_or_bear, "boar-or-bear"},
                                Name<Category>{Category::liver, "liver"},
                                Name<Category>{Category::bivalve, "bivalve"},
                                Name<Category>{Category::egg, "egg"},
                                Name<Category>{Category::vegetable, "vegetable"},
                                Name<Category>{Category::cooked_dish, "cooked-dish"}};
constexpr std::array faces{Name<Faces>{Faces::bottom, "bottom"}, Name<Faces>{Faces::lid, "lid"},
                           Name<Faces>{Faces::walls, "walls"}, Name<Faces>{Faces::over, "over"},
                           Name<Faces>{Faces::all, "all"}};

template <class Entry>
const Entry* find(const std::vector<Entry>& entries, std::string_view key) {
    for (const Entry& entry : entries) {
        if (entry.key == key) {
            return &entry;
        }
    }
    return nullptr;
}

template <class Entry>
const Entry& need(const std::vector<Entry>& entries, std::string_view key, std::string_view kind) {
    const Entry* entry = find(entries, key);
    if (entry == nullptr) {
        throw std::logic_error(fmt::format("facts: there is no {} \"{}\"", kind, key));
    }
    return *entry;
}

const Facts* in_force = nullptr;  // see FactsInForce
std::uint64_t generation = 0;

Facts read_embedded() {
    problem::Result<Facts> result = read_facts(embedded_documents());
    if (!result.ok()) {
        std::string faults = "facts: the compiled-in data are faulty";
        for (const problem::Problem& problem : result.problems()) {
            faults += "\n" + problem::to_line(problem);
        }
        throw std::logic_error(faults);
    }
    return std::move(result).value();
}

[[noreturn]] void wrong_unit(const Figure& figure, std::string_view wanted) {
    throw std::logic_error(
        fmt::format("facts: figure \"{}\" is in {}, wanted was {}", figure.key, figure.unit, wanted));
}

}  // namespace

template <>
std::span<const Name<Category>> names() {
    return categories;
}

template <>
std::span<const Name<Faces>> names() {
    return faces;
}

const Facts& facts() {
    static const Facts all = read_embedded();
    return in_force != nullptr ? *in_force : all;
}

FactsInForce::FactsInForce(const Facts& other) : before_(in_force) {
    in_force = &other;
    ++generation;
}
FactsInForce::~FactsInForce() {
    in_force = before_;
    ++generation;
}

std::uint64_t facts_generation() {
    return generation;
}

const Figure& Facts::figure(std::string_view key) const {
    return need(figures_, key, "figure");
}
const Spread& Facts::spread(std::string_view key) const {
    return need(spreads_, key, "spread");
}
const KillStandard& Facts::kill_standard(std::string_view key) const {
    return need(kill_standards_, key, "kill standard");
}
const GrowthModel& Facts::growth(std::string_view key) const {
    return need(growth_models_, key, "growth model");
}
const Source& Facts::source(std::string_view key) const {
    return need(sources_, key, "source");
}
const FoodKind* Facts::find_food(std::string_view key) const {
    return find(foods_, key);
}

std::optional<units::Duration> Facts::longest_for_texture(const FoodKind& kind) const {
    return kind.texture.empty() ? std::nullopt : std::optional(duration(kind.texture));
}

const Rule* Facts::find_rule(Ruleset ruleset, Category category) const {
    for (const Rule& rule : rules_) {
        if (rule.ruleset == ruleset && rule.category == category) {
            return &rule;
        }
    }
    return nullptr;
}

units::Temperature Facts::temperature(std::string_view key) const {
    const Figure& one = figure(key);
    if (one.unit != "C") {
        wrong_unit(one, "C");
    }
    return units::celsius(one.value);
}

units::TemperatureDifference Facts::difference(std::string_view key) const {
    const Figure& one = figure(key);
    if (one.unit != "K") {
        wrong_unit(one, "K");
    }
    return units::kelvins(one.value);
}

units::Duration Facts::duration(std::string_view key) const {
    const Figure& one = figure(key);
    if (one.unit == "h") {
        return units::hours(one.value);
    }
    if (one.unit == "min") {
        return units::minutes(one.value);
    }
    if (one.unit != "s") {
        wrong_unit(one, "s, min or h");
    }
    return units::seconds(one.value);
}

std::string_view to_text(Provenance provenance) {
    switch (provenance) {
        case Provenance::read:
            return "read";
        case Provenance::memory:
            return "from memory";
        case Provenance::computed:
            return "computed";
        case Provenance::measured:
            return "measured";
        case Provenance::judgement:
            return "judgement";
    }
    return {};
}

std::string_view to_text(Category category) {
    switch (category) {
        case Category::red_meat:
            return "red meat";
        case Category::poultry:
            return "poultry";
        case Category::fish:
            return "fish";
        case Category::farmed_game:
            return "farmed game, bison or goat";
        case Category::wild_game:
            return "game";
        case Category::boar_or_bear:
            return "wild boar or bear";
        case Category::liver:
            return "liver";
        case Category::bivalve:
            return "mussels, clams or oysters";
        case Category::egg:
            return "eggs";
        case Category::vegetable:
            return "vegetables";
        case Category::cooked_dish:
            return "cooked dishes";
    }
    return {};
}

}  // namespace holdwater::facts
