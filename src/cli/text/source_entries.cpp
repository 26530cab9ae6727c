// SPDX-License-Identifier: MIT
#include "cli/text/source_entries.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

const char* to_text(facts::SpreadShape shape) {
    switch (shape) {
        case facts::SpreadShape::uniform:
            return "uniform";
        case facts::SpreadShape::normal:
            return "normal, 5 to 95 %";
        case facts::SpreadShape::lognormal:
            return "lognormal, 5 to 95 %";
        case facts::SpreadShape::triangular:
            return "triangular";
    }
    return "";
}

std::string celsius(units::Temperature t) {
    return fmt::format("{:.1f} C", t.celsius());
}

/// "15 s", "112.00 min": seconds below three minutes, as the tables print them.
std::string written_time(units::Duration t) {
    return t < units::minutes(3) ? fmt::format("{:g} s", t.si()) : fmt::format("{:.2f} min", units::in_minutes(t));
}

std::string core(units::Temperature t, units::Duration time) {
    return time.si() > 0 ? celsius(t) + " for " + written_time(time) : celsius(t);
}

/// "17 s", or what stands for a column without a figure.
std::string burn_time(const std::optional<units::Duration>& t) {
    return t ? fmt::format("{:g} s", t->si()) : "-";
}

std::string composition(const facts::Composition& c) {
    return fmt::format(
        "per 100 g: water {:g} g, protein {:g} g, fat {:g} g, carbohydrate {:g} g, fibre {:g} g, ash {:g} g", c.water,
        c.protein, c.fat, c.carbohydrate, c.fibre, c.ash);
}

/// Liver and shellfish have no figure of their own in most sets of rules: whose stands there instead is said.
std::string whose_advice(const facts::Rule& r) {
    const bool borrowed = r.category == facts::Category::liver || r.category == facts::Category::bivalve;
    return borrowed ? " (the figure of " + r.source + ", whatever the rules)" : "";
}

/// By the keys of figures, which have their sources.
std::string for_every_food(const facts::GeneralRules& r) {
    return fmt::format(
               "advice to consumers of {}{}; finished over the fire by {} (cut: {}, of poultry {}, stuffed {}, liver "
               "{}, "
               "bivalve {}); people at risk by {}, {}; hold floor of red meat that is no whole roast by {}; below the "
               "hold "
               "floor by {}, {}, {}{}; leftovers by {}, {}.",
               r.adviser, r.adviser_note.empty() ? "" : " (" + r.adviser_note + ")", r.finish_full, r.finish_cut,
               r.finish_cut_poultry, r.finish_stuffed, r.finish_liver, r.finish_bivalve, r.at_risk_red_meat,
               r.at_risk_fish, r.hold_floor_other_red_meat, r.eat_next, r.eat_now, r.fall_at_risk,
               r.fall_once ? ", " + *r.fall_once : "", r.leftovers_keep, r.leftovers_reheat) +
           (r.keep_hot
                ? fmt::format(" Cooked food is kept hot by {}, reheated by {}.", r.keep_hot->floor, r.keep_hot->reheat)
                : "") +
           (r.steak
                ? fmt::format(" Steaks: whole-muscle intact beef, up to {}, both faces to {} at the surface and every "
                              "outer face browned, nobody at risk.",
                              r.steak->thickest, r.steak->surface)
                : "");
}

std::string what_it_asks(const facts::Rule& r) {
    std::string text = fmt::format(
        "bath while cooking at least {} (without a thermometer {}), top up at {}, after done at least {}; kill {}; "
        "core at "
        "least {}; consumer advice {}{}; lowest target {}",
        celsius(r.cook_floor), celsius(r.cook_floor_no_thermometer), celsius(r.action_line), celsius(r.hold_floor),
        r.kill_standard, core(r.core_at_least, r.core_at_least_for), core(r.consumer_core, r.consumer_hold),
        whose_advice(r), celsius(r.lowest_target));
    if (r.pork_core) {
        text += "; pork: core, advice and target " + celsius(*r.pork_core);
    }
    return r.note.empty() ? text + "." : text + ". " + r.note;
}

}  // namespace

std::vector<SourceEntry> food_entries() {
    std::vector<SourceEntry> entries;
    for (const facts::FoodKind& f : facts::facts().foods()) {
        entries.push_back({"Kinds of food",
                           fmt::format("{:<20} {}; {}{}; growth as {}", f.key, f.name, facts::to_text(f.category),
                                       f.pork ? ", of the pig" : "", f.growth) +
                               (f.texture.empty() ? "" : "; held by " + f.texture),
                           composition(f.composition), f.source, f.provenance});
    }
    return entries;
}

std::vector<SourceEntry> rule_entries() {
    std::vector<SourceEntry> entries;
    for (const facts::GeneralRules& r : facts::facts().rulesets()) {
        entries.push_back(
            {"Rules: what each country asks", r.key + " every food", for_every_food(r), "", facts::Provenance::read});
    }
    for (const facts::Rule& r : facts::facts().rules()) {
        entries.push_back({"Rules: what each country asks",
                           fmt::format("{} {}", facts::to_name(r.ruleset), facts::to_text(r.category)), what_it_asks(r),
                           r.source, r.provenance});
    }
    for (const facts::KillStandard& k : facts::facts().kill_standards()) {
        for (const facts::KillRow& row : k.rows) {
            entries.push_back({"Kill rows: core held at a temperature for a time",
                               fmt::format("{:<18} core {} for {:.2f} min ({:g} s)", k.key, celsius(row.core),
                                           units::in_minutes(row.hold), row.hold.si()),
                               k.claim, k.source, k.provenance});
        }
    }
    return entries;
}

std::vector<SourceEntry> other_entries() {
    std::vector<SourceEntry> entries;
    for (const facts::GrowthModel& g : facts::facts().growth_models()) {
        entries.push_back({"Growth of C. perfringens",
                           fmt::format("growth {:<8} b {:g} 1/(K sqrt(h)), c {:g} 1/K, {:g} to {:g} C", g.key, g.b, g.c,
                                       g.lowest.celsius(), g.highest.celsius()),
                           fmt::format("q0 likely {:g}, cautious {:g}; see safety/growth.hpp for the equation",
                                       g.q0_likely, g.q0_cautious),
                           g.source, g.provenance});
    }
    for (const facts::BurnRow& b : facts::facts().burns()) {
        entries.push_back({"Hot water on skin: time to a burn",
                           fmt::format("burn at {}: second degree {}, third degree {}, infant {}", celsius(b.water),
                                       burn_time(b.second_degree), burn_time(b.third_degree), burn_time(b.infant)),
                           "adults unless said; the shortest where sources differ", b.source, b.provenance});
    }
    for (const facts::Spread& s : facts::facts().spreads()) {
        entries.push_back(
            {"Spreads: what is not known exactly",
             fmt::format("spread {:<16} {:g} to {:g} {}, {}", s.key, s.low, s.high, s.unit, to_text(s.shape)),
             s.meaning, s.source, s.provenance});
    }
    for (const facts::PrintedPair& p : facts::facts().printed_pairs()) {
        entries.push_back(
            {"Published limits in both systems", fmt::format("printed {:g} C as {:g} F", p.celsius, p.fahrenheit),
             "a published limit stands on cards and terminal as its publishers pair it", p.source, p.provenance});
    }
    for (const facts::Lever& lever : facts::facts().levers()) {
        entries.push_back({"Levers: a box that loses less",
                           fmt::format("lever {:<18} {}; {}: {:g} to {:g} m2 K/W", lever.key, lever.what,
                                       facts::to_name(lever.faces), lever.low.si(), lever.high.si()),
                           "no plan goes by it: measure it with gauge. " + lever.note, lever.source, lever.provenance});
    }
    for (const facts::Figure& f : facts::facts().figures()) {
        entries.push_back({"Figures: " + f.key.substr(0, f.key.find('.')),
                           fmt::format("{:<24} {:g} {} ({:g} to {:g})", f.key, f.value, f.unit, f.low, f.high),
                           f.meaning, f.source, f.provenance});
    }
    return entries;
}

std::vector<SourceEntry> work_entries() {
    std::vector<SourceEntry> entries;
    for (const facts::Source& s : facts::facts().sources()) {
        entries.push_back({"Works", s.key, s.citation, "", facts::Provenance::read});
    }
    return entries;
}

}  // namespace holdwater::cli
