// SPDX-License-Identifier: MIT
// `sources` lists every entry of the facts with where it comes from.
#include "cli/program.hpp"
#include "facts/facts.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

using namespace holdwater;
using namespace holdwater::support;

namespace {

/// What `sources` says, with runs of spaces and line feeds as one space, so that padding and breaks do not matter.
std::string listed(const std::string& arguments) {
    const Said said = holdwater_says("sources " + arguments, fresh_folder("sources-list"));
    REQUIRE(said.exit == 0);
    std::string text;
    for (const char c : said.out) {
        const bool space = c == ' ' || c == '\n';
        if (!space || text.empty() || text.back() != ' ') {
            text += space ? ' ' : c;
        }
    }
    return text;
}

/// The text of the entry that begins with `title`, up to the end of its origin in square brackets; empty if not there.
std::string entry_of(const std::string& all, const std::string& title) {
    const auto at = all.find(" " + title);
    return at == std::string::npos ? "" : all.substr(at + 1, all.find(']', at) - at);
}

std::string origin(const std::string& source, facts::Provenance provenance) {
    const std::string_view seen = facts::to_text(provenance);
    return source == seen ? fmt::format("[{}]", seen) : fmt::format("[{}, {}]", source, seen);
}

void check_entry(const std::string& all, const std::string& title, const std::string& source,
                 facts::Provenance provenance, std::initializer_list<std::string> parts) {
    const std::string entry = entry_of(all, title);
    INFO(title, " -> ", entry);
    CHECK(entry.find(origin(source, provenance)) != std::string::npos);
    for (const std::string& part : parts) {
        CHECK_MESSAGE(entry.find(part) != std::string::npos, part);
    }
    if (provenance == facts::Provenance::memory) {
        CHECK(entry.find("from memory") != std::string::npos);
    }
}

}  // namespace

TEST_CASE("every figure and every spread is listed with value, unit, range, meaning, source and provenance") {
    const std::string all = listed("");
    for (const facts::Figure& f : facts::facts().figures()) {
        check_entry(all, fmt::format("{} {:g} {} (", f.key, f.value, f.unit), f.source, f.provenance,
                    {fmt::format("({:g} to {:g})", f.low, f.high), f.meaning});
    }
    for (const facts::Spread& s : facts::facts().spreads()) {
        check_entry(all, "spread " + s.key + " ", s.source, s.provenance,
                    {fmt::format("{:g} to {:g} {}", s.low, s.high, s.unit), s.meaning});
    }
    for (const facts::PrintedPair& p : facts::facts().printed_pairs()) {
        check_entry(all, fmt::format("printed {:g} C as {:g} F", p.celsius, p.fahrenheit), p.source, p.provenance, {});
    }
    CHECK(entry_of(all, "spread thickness ").find("uniform") != std::string::npos);
    CHECK(entry_of(all, "spread film ").find("lognormal") != std::string::npos);
}

TEST_CASE("every lever is listed with what it adds, and that it is to be measured") {
    const std::string all = listed("");
    for (const facts::Lever& lever : facts::facts().levers()) {
        check_entry(all, "lever " + lever.key, lever.source, lever.provenance,
                    {lever.what, fmt::format("{:g} to {:g} m2 K/W", lever.low.si(), lever.high.si()),
                     "measure it with gauge", lever.note});
    }
    CHECK(entry_of(all, "us every food").find("steak.surface") != std::string::npos);
    CHECK(entry_of(all, "uk every food").find("teak") == std::string::npos);
    CHECK(entry_of(all, "uk every food").find("keep-hot.uk") != std::string::npos);
}

TEST_CASE("every food, rule, kill row, burn row, growth model and work is listed") {
    const std::string all = listed("");
    for (const facts::FoodKind& f : facts::facts().foods()) {
        check_entry(
            all, f.key + " " + f.name, f.source, f.provenance,
            {fmt::format("water {:g} g", f.composition.water), fmt::format("protein {:g} g", f.composition.protein),
             fmt::format("fat {:g} g", f.composition.fat), fmt::format("ash {:g} g", f.composition.ash)});
    }
    for (const facts::Rule& r : facts::facts().rules()) {
        const auto degrees = [](units::Temperature t) { return fmt::format("{:.1f} C", t.celsius()); };
        check_entry(
            all, fmt::format("{} {} bath", facts::to_name(r.ruleset), facts::to_text(r.category)), r.source,
            r.provenance,
            {"cooking at least " + degrees(r.cook_floor),
             "without a thermometer " + degrees(r.cook_floor_no_thermometer), "top up at " + degrees(r.action_line),
             "after done at least " + degrees(r.hold_floor), "kill " + r.kill_standard,
             "core at least " + degrees(r.core_at_least), "consumer advice " + degrees(r.consumer_core),
             "lowest target " + degrees(r.lowest_target), r.pork_core ? "pork: core" : "bath", r.note});
    }
    for (const facts::KillStandard& k : facts::facts().kill_standards()) {
        for (const facts::KillRow& row : k.rows) {
            check_entry(
                all,
                fmt::format("{} core {:.1f} C for {:.2f} min", k.key, row.core.celsius(), units::in_minutes(row.hold)),
                k.source, k.provenance, {k.claim});
        }
    }
    for (const facts::BurnRow& b : facts::facts().burns()) {
        check_entry(all, fmt::format("burn at {:.1f} C:", b.water.celsius()), b.source, b.provenance,
                    {b.second_degree ? fmt::format("second degree {:g} s", b.second_degree->si()) : "second degree -",
                     b.third_degree ? fmt::format("third degree {:g} s", b.third_degree->si()) : "third degree -",
                     b.infant ? fmt::format("infant {:g} s", b.infant->si()) : "infant -"});
    }
    for (const facts::GrowthModel& g : facts::facts().growth_models()) {
        check_entry(all, "growth " + g.key + " b", g.source, g.provenance,
                    {fmt::format("b {:g}", g.b),
                     fmt::format("c {:g} 1/K, {:g} to {:g} C", g.c, g.lowest.celsius(), g.highest.celsius()),
                     fmt::format("likely {:g}", g.q0_likely), fmt::format("cautious {:g}", g.q0_cautious)});
    }
    for (const facts::Source& s : facts::facts().sources()) {
        INFO(s.key);
        CHECK(all.find(s.key + " " + s.citation) != std::string::npos);
    }
}

TEST_CASE("a search finds keys, meanings, source keys and the words of a citation, and tells the citation") {
    CHECK(listed("--search film.likely").find("film.likely 300 W/m2/K") != std::string::npos);
    CHECK(listed("--search 'FILM around'").find("film.likely") != std::string::npos);
    const std::string by_author = listed("--search huang");
    CHECK(by_author.find("cardinal.beef.optimum") != std::string::npos);
    CHECK(by_author.find("Source: " + facts::facts().source("huang-2020").citation) != std::string::npos);
    CHECK(by_author.find("hand.warm ") == std::string::npos);
    // A word that stands only in the citation finds the entries of that work.
    CHECK(listed("--search 'Pathol'").find("burn.damage.p ") != std::string::npos);
    CHECK(listed("--search 'from memory'").find("film 95") != std::string::npos);
}

TEST_CASE("each listing has its headings and fits a terminal") {
    const auto folder = fresh_folder("sources-width");
    for (const std::string arguments : {"", "--foods", "--rules", "--search water"}) {
        const Said said = holdwater_says("sources " + arguments, folder);
        CHECK(said.exit == 0);
        std::size_t line = 0;
        for (std::size_t end = said.out.find('\n'); end != std::string::npos; end = said.out.find('\n', line)) {
            const std::string text = said.out.substr(line, end - line);
            CHECK_MESSAGE(text.size() <= 100, text);
            line = end + 1;
        }
    }
    const std::string all = listed("");
    for (const std::string heading : {"Kinds of food", "Rules: what each country asks", "Kill rows", "Growth of C.",
                                      "Hot water on skin", "Spreads", "Figures: film", "Works"}) {
        INFO(heading);
        CHECK(all.find(heading) != std::string::npos);
    }
    CHECK(listed("--foods").find("Kill rows") == std::string::npos);
    CHECK(listed("--rules").find("Kinds of food") == std::string::npos);
    CHECK(holdwater_says("sources --search no-such-word-at-all", folder).exit == 2);
}
