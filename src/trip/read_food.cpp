// SPDX-License-Identifier: MIT
// [[food]]: what is cooked, how big a piece is, and how done it shall be.
#include "trip/parts.hpp"
#include "units/parse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace holdwater::trip {
namespace {

void read_kind(Table& table, const Known& known, std::string& kind) {
    const std::vector<std::string_view> kinds(known.kinds.begin(), known.kinds.end());
    table.word("kind", kind, kinds, "`holdwater sources --foods` lists the kinds; kind decides the safety rules");
}

void read_composition(Table& food_table, std::optional<GivenComposition>& composition) {
    constexpr std::string_view due = "write it like { water = 72, protein = 21, fat = 5.7, ash = 1 }, g in 100 g";
    const toml::table* const inner = food_table.inner("composition", due, Need::optional);
    if (inner == nullptr) {
        return;
    }
    Table table(food_table.report(), *inner, "composition");
    GivenComposition parts;
    bool good = true;
    const auto part = [&](std::string_view key, double& into) {
        const bool read = table.number(key, into, 0, 100, Need::optional);
        good = good && (read || !table.has(key));
    };
    part("water", parts.water);
    part("protein", parts.protein);
    part("fat", parts.fat);
    part("carbohydrate", parts.carbohydrate);
    part("fibre", parts.fibre);
    part("ash", parts.ash);
    table.finish();
    if (!good) {
        return;
    }
    const double sum = parts.water + parts.protein + parts.fat + parts.carbohydrate + parts.fibre + parts.ash;
    if (sum < ranges::composition_low || sum > ranges::composition_high) {
        food_table.error("composition", "composition-sum",
                         fmt::format("composition: the parts add up to {:.4g} g", sum),
                         fmt::format("they are g in 100 g and add up to {} to {}", ranges::composition_low,
                                     ranges::composition_high));
        return;
    }
    composition = parts;
}

void read_bag(Table& table, std::variant<facts::Bag, units::ThermalResistance>& bag) {
    const toml::node* const found = table.node("bag");
    if (found == nullptr) {
        return;
    }
    const auto* const text = found->as_string();
    if (text != nullptr && (text->get().empty() || text->get().find_first_of("0123456789") == std::string::npos)) {
        facts::Bag named = facts::Bag::thin;
        if (table.choice("bag", named, Need::optional)) {
            bag = named;
        }
        return;
    }
    units::ThermalResistance resistance;
    if (table.quantity("bag", resistance, ranges::bag, Need::optional)) {
        bag = resistance;
    }
}

/// A measure that the shape does not have would be left out of the sums without a word.
bool check_measures(Table& table, const Food& food) {
    const bool needs_both = food.shape == facts::Shape::block;
    const bool has_width = food.shape == facts::Shape::slab || food.shape == facts::Shape::block;
    const bool has_length = food.shape != facts::Shape::ball;
    const std::string_view shape = facts::to_name(food.shape);
    bool good = true;
    for (const std::string_view key : {"width", "length"}) {
        const bool wanted = key == "width" ? has_width : has_length;
        if (table.has(key) && !wanted) {
            good = false;
            table.error(key, "measure-not-of-shape", fmt::format("{}: a {} has none", key, shape),
                        "its thickness is the diameter");
        } else if (!table.has(key) && needs_both) {
            table.missing(key, "a block needs thickness, width and length");
        }
    }
    return good;
}

/// Slabs and blocks warm through their smallest measure, which is the thickness by definition.
bool check_thickness_smallest(Table& table, const Food& food) {
    if (food.shape != facts::Shape::slab && food.shape != facts::Shape::block) {
        return true;
    }
    bool good = true;
    const auto check = [&](std::string_view key, const std::optional<units::Length>& measure) {
        if (measure && food.thickness > *measure) {
            good = false;
            table.error(
                "thickness", "measures-order",
                fmt::format("thickness: {:.0f} mm is more than the {}, {:.0f} mm",
                            units::in_millimetres(food.thickness), key, units::in_millimetres(*measure)),
                fmt::format("thickness is the smallest measure of a {}: swap them", facts::to_name(food.shape)));
        }
    };
    check("width", food.width);
    check("length", food.length);
    return good;
}

/// Frozen food is no slip of the pen: it takes its own answer. Its mass must have been read.
void read_start(Table& table, const Known& known, Food& food) {
    const toml::node* const found = table.node("start");
    const auto written = found != nullptr ? found->value<std::string_view>() : std::nullopt;
    const auto value = units::parse<units::Temperature>(written.value_or(std::string_view{}));
    if (value && *value < limit<units::Temperature>(ranges::frozen.high) &&
        *value >= limit<units::Temperature>(ranges::frozen.low)) {
        table.error(
            "start", "out-of-range",
            fmt::format("start: \"{}\" is frozen, and how frozen food warms is not worked out", quoted(*written)),
            known.thawing && food.mass > units::Mass{} ? std::string(ranges::thaw) + "; " + known.thawing(food.mass)
                                                       : std::string(ranges::thaw));
        return;
    }
    table.quantity("start", food.start, food.use == facts::Use::keep_hot ? ranges::hot_start : ranges::start);
}

void read_target(Table& table, Food& food) {
    if (food.use != facts::Use::keep_hot) {
        table.quantity("target", food.target, ranges::target);
        food.tolerance = limit<units::TemperatureDifference>(ranges::tolerance.example);
        table.quantity("tolerance", food.tolerance, ranges::tolerance, Need::optional);
        return;
    }
    keep_hot(food, food.start);
    for (const std::string_view key : {"target", "tolerance"}) {
        if (table.has(key)) {
            table.warning(key, "key-unused", fmt::format("{} is not used: this food is only kept hot", key),
                          "leave it out; start says how hot it goes in");
        }
    }
}

void warn_thick(Table& table, const Food& food) {
    if (food.thickness > limit<units::Length>(ranges::odd_thickness.high)) {
        table.warning(
            "thickness", "thick",
            fmt::format("thickness: {:.0f} mm takes very long to warm through", units::in_millimetres(food.thickness)),
            fmt::format("check it; split pieces over {}", ranges::odd_thickness.high));
    }
}

}  // namespace

void keep_hot(Food& food, units::Temperature start) {
    food.use = facts::Use::keep_hot;
    food.start = food.target = start;
    food.tolerance = limit<units::TemperatureDifference>(ranges::hot_tolerance.example);
    food.over_fire = false;
}

void read_food(Table& table, const Known& known, Food& food) {
    food.place = table.place();
    table.name("name", food.name);
    read_kind(table, known, food.kind);
    read_composition(table, food.composition);
    table.choice("use", food.use, Need::optional);
    table.quantity("diffusivity", food.properties.diffusivity, ranges::diffusivity);
    table.quantity("conductivity", food.properties.conductivity, ranges::conductivity);
    if (!table.choice("cut", food.cut, Need::optional) && !table.has("cut")) {
        table.warning("cut", "cut-not-said", "cut is not said and taken as intact",
                      "write cut = \"intact\" if nobody has pierced, minced, rolled or stuffed it");
    }
    const bool has_shape = table.choice("shape", food.shape);
    const bool has_thickness = table.quantity("thickness", food.thickness, ranges::thickness);
    table.quantity("width", food.width, ranges::length);
    table.quantity("length", food.length, ranges::length);
    const bool has_mass = table.quantity("mass", food.mass, ranges::mass);
    table.count("pieces", food.pieces, ranges::pieces, Need::optional);
    read_start(table, known, food);
    read_target(table, food);
    food.contact_given = table.choice("contact", food.contact, Need::optional);
    if (!food.contact_given) {
        food.contact = food.shape == facts::Shape::slab ? facts::Contact::bottom : facts::Contact::free;
    }
    table.truth("bone", food.bone, Need::optional);
    table.truth("over_fire", food.over_fire, Need::optional);
    read_bag(table, food.bag);
    table.text("box", food.box, Need::optional);
    for (const auto& [key, moment] : {std::pair{"in", &food.in}, std::pair{"out", &food.out}}) {
        if (units::LocalTime read; table.has(key) && table.moment(key, read)) {
            *moment = read;
        }
    }
    food.out_place = table.has("out") ? table.place("out") : food.place;
    const bool measures_good = has_shape && check_measures(table, food);
    if (has_thickness) {
        warn_thick(table, food);
    }
    if (measures_good && has_thickness && check_thickness_smallest(table, food) && has_mass) {
        check_mass(food, table);
    }
    table.finish();
}

}  // namespace holdwater::trip
