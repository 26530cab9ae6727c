// SPDX-License-Identifier: MIT
#include "facts/read_facts.hpp"

#include "facts/read_entries.hpp"
#include "units/toml_bounds.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cstdint>
#include <initializer_list>
#include <set>
#include <utility>

namespace holdwater::facts {

void FactsReader::fault(problem::Code code, std::string message) {
    problems_.push_back(problem::error(code, std::move(message)));
}

void FactsReader::read_all(const toml::table& document, std::string_view file, std::string_view kind,
                           ReadOne read_one) {
    const toml::node* node = document.get(kind);
    if (node == nullptr) {
        return;
    }
    const toml::array* entries = node->as_array();
    if (entries == nullptr || !entries->is_homogeneous<toml::table>()) {
        fault("facts-type", fmt::format("{}: write each {} as [[{}]]", file, kind, kind));
        return;
    }
    for (const toml::node& one : *entries) {
        Entry entry{*one.as_table(), file, problems_};
        entry.name(kind, {});
        (this->*read_one)(entry);
        entry.finish();
    }
}

void FactsReader::read(const toml::table& document, std::string_view file) {
    const std::pair<std::string_view, ReadOne> kinds[] = {
        {"source", &FactsReader::source},
        {"figure", &FactsReader::figure},
        {"food", &FactsReader::food},
        {"kill_standard", &FactsReader::kill_standard},
        {"ruleset", &FactsReader::ruleset},
        {"spread", &FactsReader::spread},
        {"burn", &FactsReader::burn},
        {"growth_model", &FactsReader::growth_model},
        {"printed_pair", &FactsReader::printed_pair},
        {"lever", &FactsReader::lever},
    };
    std::set<std::string_view> known;
    for (const auto& [kind, read_one] : kinds) {
        read_all(document, file, kind, read_one);
        known.insert(kind);
    }
    for (const auto& [key, node] : document) {
        if (!known.contains(key.str())) {
            fault("facts-key-unknown", fmt::format("{}: [[{}]] is not a kind of entry", file, key.str()));
        }
    }
}

void FactsReader::need_source(std::string_view kind, std::string_view key, std::string_view source) {
    for (const Source& one : facts_.sources_) {
        if (one.key == source) {
            return;
        }
    }
    fault("facts-source-unknown", fmt::format("{} \"{}\": source \"{}\" does not exist", kind, key, source));
}

/// Every figure that a set of rules names is there, in its kind of unit, a finish with its time.
void FactsReader::check_ruleset(const GeneralRules& rules) {
    const auto figure = [&](const std::string& key, std::initializer_list<std::string_view> units) {
        const auto found = std::find_if(facts_.figures_.begin(), facts_.figures_.end(),
                                        [&key](const Figure& one) { return one.key == key; });
        if (found == facts_.figures_.end() || std::find(units.begin(), units.end(), found->unit) == units.end()) {
            fault("facts-reference-unknown", fmt::format("ruleset \"{}\": there is no figure \"{}\" in {}", rules.key,
                                                         key, fmt::join(units, ", ")));
        }
    };
    const auto time = [&](const std::string& key) { figure(key, {"s", "min", "h"}); };
    for (const std::string& finish :
         {rules.finish_full, rules.finish_cut, rules.finish_cut_poultry, rules.finish_stuffed, rules.finish_liver,
          rules.finish_bivalve, rules.at_risk_red_meat}) {
        figure(finish, {"C"});
        time(finish + ".hold");
    }
    figure(rules.at_risk_fish, {"C"});
    figure(rules.hold_floor_other_red_meat, {"C"});
    for (const std::string& key : {rules.eat_next, rules.eat_now, rules.fall_at_risk, rules.leftovers_keep}) {
        time(key);
    }
    figure(rules.leftovers_reheat, {"C"});
    time(rules.leftovers_reheat + ".hold");
    if (rules.fall_once) {
        time(*rules.fall_once);
    }
    const auto none_asked = [&](const std::string& key) {
        const auto found = std::find_if(facts_.kill_standards_.begin(), facts_.kill_standards_.end(),
                                        [&key](const KillStandard& one) { return one.key == key; });
        if (found == facts_.kill_standards_.end() || !found->none_asked) {
            fault("facts-reference-unknown",
                  fmt::format("ruleset \"{}\": there is no kill standard \"{}\" that asks for none", rules.key, key));
        }
    };
    if (rules.steak) {
        figure(rules.steak->surface, {"C"});
        figure(rules.steak->thickest, {"mm"});
        none_asked(rules.steak->kill_standard);
    }
    if (rules.keep_hot) {
        figure(rules.keep_hot->floor, {"C"});
        figure(rules.keep_hot->reheat, {"C"});
        time(rules.keep_hot->reheat + ".hold");
        none_asked(rules.keep_hot->kill_standard);
    }
}

void FactsReader::check_references() {
    const auto check = [this](std::string_view kind, const auto& entries) {
        std::set<std::string_view> seen;
        for (const auto& entry : entries) {
            if (!seen.insert(entry.key).second) {
                fault("facts-twice", fmt::format("{} \"{}\" is there twice", kind, entry.key));
            }
            if constexpr (requires { entry.source; }) {
                need_source(kind, entry.key, entry.source);
            }
        }
        return seen;
    };
    check("source", facts_.sources_);
    check("figure", facts_.figures_);
    check("food", facts_.foods_);
    check("spread", facts_.spreads_);
    check("ruleset", facts_.rulesets_);
    check("lever", facts_.levers_);
    const auto standards = check("kill_standard", facts_.kill_standards_);
    const auto growth_models = check("growth_model", facts_.growth_models_);

    for (const FoodKind& food : facts_.foods_) {
        if (!growth_models.contains(food.growth)) {
            fault("facts-reference-unknown",
                  fmt::format("food \"{}\": growth model \"{}\" does not exist", food.key, food.growth));
        }
        for (const std::string& key : {food.texture, food.keeps}) {
            const auto named = std::find_if(facts_.figures_.begin(), facts_.figures_.end(),
                                            [&key](const Figure& one) { return one.key == key; });
            if (!key.empty() && (named == facts_.figures_.end() || named->unit != "h")) {
                fault("facts-reference-unknown",
                      fmt::format("food \"{}\": there is no figure \"{}\" in h", food.key, key));
            }
        }
    }
    for (const BurnRow& row : facts_.burns_) {
        need_source("burn", fmt::format("{}", row.water.celsius()), row.source);
    }
    for (const GeneralRules& rules : facts_.rulesets_) {
        check_ruleset(rules);
    }
    std::set<std::pair<Ruleset, Category>> rules;
    for (const Rule& rule : facts_.rules_) {
        const std::string name = fmt::format("{} {}", facts_.rules_of(rule.ruleset).key, to_name(rule.category));
        need_source("rule", name, rule.source);
        if (!standards.contains(rule.kill_standard)) {
            fault("facts-reference-unknown",
                  fmt::format("rule \"{}\": kill standard \"{}\" does not exist", name, rule.kill_standard));
        }
        if (!rules.emplace(rule.ruleset, rule.category).second) {
            fault("facts-twice", fmt::format("rule \"{}\" is there twice", name));
        }
    }
}

Facts FactsReader::take(std::string checksum) {
    facts_.checksum_ = std::move(checksum);
    for (const GeneralRules& rules : facts_.rulesets_) {
        facts_.ruleset_names_.push_back({Ruleset{facts_.ruleset_names_.size()}, rules.key});
    }
    return std::move(facts_);
}

std::string checksum_of(std::span<const Document> documents) {
    // FNV-1a, 64 bits: offset basis and prime as its authors publish them.
    std::uint64_t hash = 0xcbf29ce484222325U;
    const auto add = [&hash](std::string_view text) {
        for (const char c : text) {
            hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
        }
        hash = (hash ^ 0U) * 0x100000001b3U;  // a zero byte ends each text, so that texts cannot run together
    };
    for (const Document& document : documents) {
        add(document.name);
        add(document.text);
    }
    return fmt::format("{:016x}", hash);
}

problem::Result<Facts> read_facts(std::span<const Document> documents) {
    problem::Problems problems;
    FactsReader reader{problems};
    for (const Document& document : documents) {
        if (auto beyond = units::beyond_toml_bounds(document.text, std::string{document.name})) {
            beyond->code = "facts-toml";
            problems.push_back(*std::move(beyond));
            continue;
        }
        try {
            const toml::table table = toml::parse(document.text, document.name);
            reader.read(table, document.name);
        } catch (const toml::parse_error& error) {
            problem::Problem problem = problem::error("facts-toml", std::string{error.description()});
            problem.place = problem::Place{std::string{document.name}, static_cast<int>(error.source().begin.line),
                                           static_cast<int>(error.source().begin.column)};
            problems.push_back(std::move(problem));
        }
    }
    reader.check_references();
    if (problem::has_error(problems)) {
        return problems;
    }
    return reader.take(checksum_of(documents));
}

}  // namespace holdwater::facts
