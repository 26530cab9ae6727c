// SPDX-License-Identifier: MIT
#include "facts/read_entries.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <utility>

namespace holdwater::facts {
namespace {

constexpr std::array spread_shapes{
    Name<SpreadShape>{SpreadShape::uniform, "uniform"}, Name<SpreadShape>{SpreadShape::normal, "normal"},
    Name<SpreadShape>{SpreadShape::lognormal, "lognormal"}, Name<SpreadShape>{SpreadShape::triangular, "triangular"}};

// Printed compositions add up to 97 to 102; a row outside these bounds was copied wrongly.
constexpr double least_sum = 95.0;
constexpr double greatest_sum = 105.0;

Composition composition_of(Entry& entry) {
    Composition composition;
    composition.water = entry.number("water");
    composition.protein = entry.number("protein");
    composition.fat = entry.number("fat");
    composition.carbohydrate = entry.number_or("carbohydrate", 0.0);
    composition.fibre = entry.number_or("fibre", 0.0);
    composition.ash = entry.number("ash");
    double sum = 0.0;
    for (const double part : {composition.water, composition.protein, composition.fat, composition.carbohydrate,
                              composition.fibre, composition.ash}) {
        if (part < 0.0) {
            entry.fault("facts-range", "a part of the composition is negative");
        }
        sum += part;
    }
    if (!(sum >= least_sum && sum <= greatest_sum)) {
        entry.fault("facts-range", fmt::format("the composition adds up to {:.2f} g per 100 g", sum));
    }
    return composition;
}

}  // namespace

void FactsReader::source(Entry& entry) {
    Source source;
    source.key = entry.text("key");
    entry.name("source", source.key);
    source.citation = entry.text("citation");
    facts_.sources_.push_back(std::move(source));
}

void FactsReader::figure(Entry& entry) {
    Figure figure;
    figure.key = entry.text("key");
    entry.name("figure", figure.key);
    figure.value = entry.number("value");
    figure.unit = entry.text("unit");
    figure.low = entry.number("low");
    figure.high = entry.number("high");
    figure.provenance = entry.provenance();
    figure.source = entry.source(figure.provenance);
    figure.meaning = entry.text("meaning");
    if (!(figure.low <= figure.value && figure.value <= figure.high)) {
        entry.fault("facts-range", fmt::format("the value {} does not lie in its range, {} to {}", figure.value,
                                               figure.low, figure.high));
    }
    facts_.figures_.push_back(std::move(figure));
}

std::optional<Category> FactsReader::category(Entry& entry) {
    const std::string given = entry.text("category");
    const std::optional<Category> category = from_name<Category>(given);
    if (!category && !given.empty()) {
        entry.fault("facts-name-unknown", fmt::format("category \"{}\" is not known", given));
    }
    return category;
}

void FactsReader::food(Entry& entry) {
    FoodKind food;
    food.key = entry.text("key");
    entry.name("food", food.key);
    food.name = entry.text("name");
    food.category = category(entry).value_or(Category::boar_or_bear);
    food.pork = entry.flag_or("pork", false);
    food.beef = entry.flag_or("beef", false);
    food.texture = entry.text_or("texture", "");
    food.keeps = entry.text_or("keeps", "");
    food.growth = entry.text("growth");
    food.provenance = entry.provenance();
    food.source = entry.source(food.provenance);
    if (const toml::table* parts = entry.table("composition")) {
        Entry composition{*parts, entry.file(), problems_};
        composition.name("food", food.key);
        food.composition = composition_of(composition);
        composition.finish();
    }
    facts_.foods_.push_back(std::move(food));
}

void FactsReader::kill_standard(Entry& entry) {
    KillStandard standard;
    standard.key = entry.text("key");
    entry.name("kill_standard", standard.key);
    standard.claim = entry.text("claim");
    standard.germ = entry.text_or("germ", "");
    standard.none_asked = entry.flag_or("none_asked", false);
    standard.provenance = entry.provenance();
    standard.source = entry.source(standard.provenance);
    const toml::array* rows = entry.array("rows");
    for (std::size_t i = 0; rows != nullptr && i < rows->size(); ++i) {
        const toml::table* row = rows->get(i)->as_table();
        if (row == nullptr) {
            entry.fault("facts-type", "each row must be a table such as { core = 60.0, min = 12 }");
            continue;
        }
        Entry one{*row, entry.file(), problems_};
        one.name("kill_standard", standard.key);
        const units::Temperature core = one.celsius("core");
        const std::optional<double> minutes = one.optional_number("min");
        const units::Duration hold = minutes ? units::minutes(*minutes) : units::seconds(one.number("s"));
        one.finish();
        if (!(hold.si() > 0.0)) {
            one.fault("facts-range", "a hold time must be longer than nothing");
        }
        if (!standard.rows.empty() && !(core > standard.rows.back().core && hold <= standard.rows.back().hold)) {
            one.fault("facts-range", "rows must rise in temperature, and their times must not");
        }
        standard.rows.push_back({core, hold});
    }
    if (standard.rows.empty()) {
        entry.fault("facts-range", "a kill standard needs rows");
    }
    facts_.kill_standards_.push_back(std::move(standard));
}

void FactsReader::ruleset(Entry& entry) {
    GeneralRules general;
    general.key = entry.text("key");
    entry.name("ruleset", general.key);
    general.adviser = entry.text("adviser");
    general.adviser_note = entry.text_or("adviser_note", {});
    general.hold_floor_other_red_meat = entry.text("hold_floor_other_red_meat");
    const auto part = [&](std::string_view key, const auto& read) {
        if (const toml::table* table = entry.table(key)) {
            Entry one{*table, entry.file(), problems_};
            one.name("ruleset", general.key);
            read(one);
            one.finish();
        }
    };
    part("finish", [&general](Entry& finish) {
        general.finish_full = finish.text("full");
        general.finish_cut = finish.text("cut");
        general.finish_cut_poultry = finish.text("cut_poultry");
        general.finish_stuffed = finish.text("stuffed");
        general.finish_liver = finish.text("liver");
        general.finish_bivalve = finish.text("bivalve");
    });
    part("at_risk", [&general](Entry& at_risk) {
        general.at_risk_red_meat = at_risk.text("red_meat");
        general.at_risk_fish = at_risk.text("fish");
    });
    part("fall", [&general](Entry& fall) {
        general.eat_next = fall.text("eat_next");
        general.eat_now = fall.text("eat_now");
        general.fall_at_risk = fall.text("at_risk");
        if (std::string once = fall.text_or("once", {}); !once.empty()) {
            general.fall_once = std::move(once);
        }
    });
    part("leftovers", [&general](Entry& leftovers) {
        general.leftovers_keep = leftovers.text("keep");
        general.leftovers_reheat = leftovers.text("reheat");
    });
    if (entry.has("steak")) {
        part("steak", [&general](Entry& steak) {
            general.steak = SteakRule{steak.text("surface"), steak.text("thickest"), steak.text("kill_standard")};
        });
    }
    if (entry.has("keep_hot")) {
        part("keep_hot", [&general](Entry& hot) {
            general.keep_hot = KeepHotRule{hot.text("floor"), hot.text("reheat"), hot.text("kill_standard")};
        });
    }
    const Ruleset ruleset{facts_.rulesets_.size()};
    facts_.rulesets_.push_back(std::move(general));
    const toml::array* rules = entry.array("rule");
    for (std::size_t i = 0; rules != nullptr && i < rules->size(); ++i) {
        if (const toml::table* table = rules->get(i)->as_table()) {
            Entry one{*table, entry.file(), problems_};
            rule(one, ruleset);
            one.finish();
        } else {
            entry.fault("facts-type", "write each rule as [[ruleset.rule]]");
        }
    }
}

void FactsReader::rule(Entry& entry, Ruleset ruleset) {
    Rule rule;
    rule.ruleset = ruleset;
    const std::string& key = facts_.rulesets_.back().key;
    entry.name("rule", key);
    rule.category = category(entry).value_or(Category::boar_or_bear);
    entry.name("rule", fmt::format("{} {}", key, to_name(rule.category)));
    rule.cook_floor = entry.celsius("cook_floor");
    rule.action_line = entry.celsius("action_line");
    rule.cook_floor_no_thermometer = entry.celsius("cook_floor_no_thermometer");
    rule.kill_standard = entry.text("kill_standard");
    rule.core_at_least = entry.celsius("core_at_least");
    rule.core_at_least_for = entry.seconds_or_zero("core_at_least_for_s");
    rule.hold_floor = entry.celsius("hold_floor");
    rule.consumer_core = entry.celsius("consumer_core");
    rule.consumer_hold = entry.seconds_or_zero("consumer_hold_s");
    rule.lowest_target = entry.celsius("lowest_target");
    if (const std::optional<double> pork = entry.optional_number("pork_core")) {
        rule.pork_core = units::celsius(*pork);
    }
    rule.provenance = entry.provenance();
    rule.source = entry.source(rule.provenance);
    rule.note = entry.text_or("note", {});
    if (!(rule.cook_floor < rule.action_line)) {
        entry.fault("facts-range", "the action line must lie above the cook floor");
    }
    if (!(rule.cook_floor_no_thermometer >= rule.cook_floor)) {
        entry.fault("facts-range", "the floor without a thermometer must not lie below the cook floor");
    }
    if (!(rule.lowest_target >= rule.cook_floor)) {
        entry.fault("facts-range", "the lowest target must not lie below the cook floor");
    }
    if (rule.pork_core && !(*rule.pork_core >= rule.core_at_least)) {
        entry.fault("facts-range", "pork must not be asked less than other meat");
    }
    facts_.rules_.push_back(std::move(rule));
}

void FactsReader::spread(Entry& entry) {
    Spread spread;
    spread.key = entry.text("key");
    entry.name("spread", spread.key);
    const std::string shape = entry.text("shape");
    bool known = false;
    for (const Name<SpreadShape>& name : spread_shapes) {
        if (name.text == shape) {
            spread.shape = name.value;
            known = true;
        }
    }
    if (!known) {
        entry.fault("facts-name-unknown", fmt::format("shape \"{}\" is not known", shape),
                    "uniform, normal, lognormal or triangular");
    }
    spread.low = entry.number("low");
    spread.high = entry.number("high");
    spread.unit = entry.text("unit");
    spread.provenance = entry.provenance();
    spread.source = entry.source(spread.provenance);
    spread.meaning = entry.text("meaning");
    if (!(spread.low < spread.high)) {
        entry.fault("facts-range", "a spread without width would claim that a thing is known exactly");
    }
    if (spread.shape == SpreadShape::lognormal && !(spread.low > 0.0)) {
        entry.fault("facts-range", "a lognormal spread must lie above zero");
    }
    facts_.spreads_.push_back(std::move(spread));
}

void FactsReader::burn(Entry& entry) {
    BurnRow row;
    row.water = entry.celsius("water");
    entry.name("burn", fmt::format("{}", row.water.celsius()));
    const auto time = [&entry](std::string_view key) -> std::optional<units::Duration> {
        const std::optional<double> value = entry.optional_number(key);
        if (value && !(*value > 0.0)) {
            entry.fault("facts-range", fmt::format("\"{}\" must be longer than nothing", key));
        }
        return value ? std::optional{units::seconds(*value)} : std::nullopt;
    };
    row.second_degree = time("second_degree_s");
    row.third_degree = time("third_degree_s");
    row.infant = time("infant_s");
    row.provenance = entry.provenance();
    row.source = entry.source(row.provenance);
    if (row.second_degree && row.third_degree && *row.second_degree > *row.third_degree) {
        entry.fault("facts-range", "a third-degree burn cannot come before a second-degree burn");
    }
    if (!facts_.burns_.empty() && !(row.water > facts_.burns_.back().water)) {
        entry.fault("facts-range", "burn rows must rise in temperature");
    }
    facts_.burns_.push_back(std::move(row));
}

void FactsReader::growth_model(Entry& entry) {
    GrowthModel model;
    model.key = entry.text("key");
    entry.name("growth_model", model.key);
    model.b = entry.number("b");
    model.lowest = entry.celsius("lowest");
    model.c = entry.number("c");
    model.highest = entry.celsius("highest");
    model.q0_likely = entry.number("q0_likely");
    model.q0_cautious = entry.number("q0_cautious");
    model.provenance = entry.provenance();
    model.source = entry.source(model.provenance);
    if (!(model.b > 0.0 && model.c > 0.0 && model.lowest < model.highest)) {
        entry.fault("facts-range", "b and c must be positive, and the highest temperature above the lowest");
    }
    if (!(model.q0_likely > 0.0 && model.q0_cautious >= model.q0_likely)) {
        entry.fault("facts-range", "the cautious q0 must not be less than the likely one");
    }
    facts_.growth_models_.push_back(std::move(model));
}

void FactsReader::printed_pair(Entry& entry) {
    PrintedPair pair;
    pair.celsius = entry.number("celsius");
    entry.name("printed_pair", fmt::format("{:g}", pair.celsius));
    pair.fahrenheit = entry.number("fahrenheit");
    pair.provenance = entry.provenance();
    pair.source = entry.source(pair.provenance);
    // A publisher rounds each of the two to a whole degree at the most.
    if (!(std::abs(units::celsius(pair.celsius).fahrenheit() - pair.fahrenheit) < 1.0)) {
        entry.fault("facts-range", "the two are not one temperature");
    }
    for (const PrintedPair& other : facts_.printed_pairs_) {
        if (other.celsius == pair.celsius || other.fahrenheit == pair.fahrenheit) {
            entry.fault("facts-twice", "one of the two stands in another pair already");
        }
    }
    facts_.printed_pairs_.push_back(std::move(pair));
}

void FactsReader::lever(Entry& entry) {
    Lever lever;
    lever.key = entry.text("key");
    entry.name("lever", lever.key);
    lever.what = entry.text("what");
    const std::string faces = entry.text("faces");
    if (const std::optional<Faces> known = from_name<Faces>(faces)) {
        lever.faces = *known;
    } else if (!faces.empty()) {
        entry.fault("facts-name-unknown", fmt::format("faces \"{}\" are not known", faces),
                    "bottom, lid, walls, over or all");
    }
    lever.low = units::ThermalResistance{entry.number("low")};
    lever.high = units::ThermalResistance{entry.number("high")};
    lever.provenance = entry.provenance();
    lever.source = entry.source(lever.provenance);
    lever.note = entry.text_or("note", {});
    if (!(lever.low.si() >= 0.0 && lever.low <= lever.high)) {
        entry.fault("facts-range", "a lever adds no less than nothing, and its low end is not above its high end");
    }
    facts_.levers_.push_back(std::move(lever));
}

}  // namespace holdwater::facts
