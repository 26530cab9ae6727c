// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>
#include <string>

#include "cli/app.hpp"
#include "facts/facts.hpp"

namespace holdwater::cli {
namespace {

struct SourcesOptions {
    bool foods = false;
    bool rules = false;
    std::string search;
};

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return text;
}

class Printer {
  public:
    explicit Printer(const std::string& search) : search_(lower(search)) {}

    void line(const std::string& text) {
        if (search_.empty() || lower(text).find(search_) != std::string::npos) {
            fmt::print("{}\n", text);
            ++shown_;
        }
    }
    int shown() const { return shown_; }

  private:
    std::string search_;
    int shown_ = 0;
};

void foods(Printer& out) {
    for (const facts::FoodKind& f : facts::facts().foods()) {
        out.line(fmt::format("{:22} {:40} {:12} [{}, {}]", f.key, f.name, facts::to_text(f.category), f.source,
                             facts::to_text(f.provenance)));
    }
}

void rules(Printer& out) {
    for (const facts::Rule& r : facts::facts().rules()) {
        out.line(fmt::format("{:5} {:12} bath at least {:.1f} C, top up at {:.1f} C, after done {:.1f} C, kill {} [{}, {}]{}",
                             facts::to_name(r.ruleset), facts::to_text(r.category), r.cook_floor.celsius(),
                             r.action_line.celsius(), r.hold_floor.celsius(), r.kill_standard, r.source,
                             facts::to_text(r.provenance), r.note.empty() ? "" : ": " + r.note));
    }
    for (const facts::KillStandard& k : facts::facts().kill_standards()) {
        for (const facts::KillRow& row : k.rows) {
            out.line(fmt::format("{:24} core {:5.1f} C for {:8.2f} min  {} [{}, {}]", k.key, row.core.celsius(),
                                 units::in_minutes(row.hold), k.claim, k.source, facts::to_text(k.provenance)));
        }
    }
}

void figures(Printer& out) {
    for (const facts::Figure& f : facts::facts().figures()) {
        out.line(fmt::format("{:28} {:g} {} ({:g} to {:g})  {} [{}, {}]", f.key, f.value, f.unit, f.low, f.high,
                             f.meaning, f.source, facts::to_text(f.provenance)));
    }
    for (const facts::Spread& s : facts::facts().spreads()) {
        out.line(fmt::format("spread {:21} {:g} to {:g} {}  {} [{}, {}]", s.key, s.low, s.high, s.unit, s.meaning,
                             s.source, facts::to_text(s.provenance)));
    }
    for (const facts::Source& s : facts::facts().sources()) {
        out.line(fmt::format("[{}] {}", s.key, s.citation));
    }
}

Exit list_sources(const SourcesOptions& options) {
    Printer out(options.search);
    const bool all = !options.foods && !options.rules;
    if (options.foods || all) {
        foods(out);
    }
    if (options.rules || all) {
        rules(out);
    }
    if (all) {
        figures(out);
    }
    if (out.shown() == 0) {
        fmt::print(stderr, "no entry contains \"{}\"\n", options.search);
        return Exit::bad_input;
    }
    return Exit::done;
}

}  // namespace

Command add_sources(CLI::App& program) {
    const auto given = std::make_shared<SourcesOptions>();
    CLI::App* line = program.add_subcommand("sources", "list every figure with its source and how far it was seen");
    line->add_flag("--foods", given->foods, "list the kinds of food");
    line->add_flag("--rules", given->rules, "list the rules and kill rows");
    line->add_option("--search", given->search, "only entries that contain this word");
    return {line, [given] { return list_sources(*given); }};
}

}  // namespace holdwater::cli
