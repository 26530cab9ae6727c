// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/files/files.hpp"
#include "cli/line/options.hpp"
#include "cli/text/source_entries.hpp"
#include "cli/text/wrap.hpp"
#include "problem/in_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

namespace holdwater::cli {
namespace {

const OptionRow sources_foods{.name = "--foods", .help = "list the kinds of food"};
const OptionRow sources_rules{.name = "--rules", .help = "list the rules and kill rows"};
const OptionRow sources_word{.name = "--search",
                             .value = "WORD",
                             .help = "only entries that contain this word, or whose source does",
                             .example = "film"};

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return text;
}

/// "[huang-2020, read]"; own judgement names no work.
std::string origin(const SourceEntry& entry) {
    if (entry.source.empty()) {
        return "";
    }
    const std::string_view provenance = facts::to_text(entry.provenance);
    return entry.source == provenance ? fmt::format(" [{}]", provenance)
                                      : fmt::format(" [{}, {}]", entry.source, provenance);
}

std::string citation(const SourceEntry& entry) {
    return entry.source.empty() ? "" : facts::facts().source(entry.source).citation;
}

/// Prints entries under their headings, all or those that contain a word in any of their texts or in the citation of
/// their source. Whoever searches sees that citation at once.
class Printer {
  public:
    explicit Printer(const std::string& search) : search_(lower(search)) {}

    void print(const std::vector<SourceEntry>& entries) {
        for (const SourceEntry& entry : entries) {
            if (matches(entry)) {
                print(entry);
            }
        }
    }
    bool printed_any() const { return !heading_.empty(); }

  private:
    bool matches(const SourceEntry& entry) const {
        if (search_.empty()) {
            return true;
        }
        const std::string all =
            entry.heading + "\n" + entry.title + "\n" + entry.detail + "\n" + origin(entry) + "\n" + citation(entry);
        return lower(all).find(search_) != std::string::npos;
    }

    void print(const SourceEntry& entry) {
        if (entry.heading != heading_) {
            fmt::print("{}{}\n", heading_.empty() ? "" : "\n", entry.heading);
            heading_ = entry.heading;
        }
        // Keys that are padded into a column keep their spaces, which wrap would take out.
        if (entry.title.size() <= terminal_columns - 2) {
            fmt::print("  {}\n", entry.title);
        } else {
            fmt::print("{}", wrap(entry.title, 2));
        }
        fmt::print("{}", wrap(entry.detail + origin(entry), 6));
        if (!search_.empty() && !entry.source.empty()) {
            fmt::print("{}", wrap("Source: " + citation(entry), 6));
        }
    }

    std::string search_;
    std::string heading_;
};

Exit list_sources(bool foods, bool rules, const std::string& search) {
    Printer printer(search);
    const bool all = !foods && !rules;
    if (foods || all) {
        printer.print(food_entries());
    }
    if (rules || all) {
        printer.print(rule_entries());
    }
    if (all) {
        printer.print(other_entries());
        printer.print(work_entries());
    }
    if (!printer.printed_any()) {
        tell({problem::error("word-unknown", fmt::format("no entry contains \"{}\"", problem::quoted(search)),
                             "try a shorter word; `holdwater sources` lists everything")});
        return Exit::bad_input;
    }
    return Exit::done;
}

Act read_sources(Options& options) {
    return [foods = options.has(sources_foods), rules = options.has(sources_rules),
            search = options.text(sources_word).value_or("")] { return list_sources(foods, rules, search); };
}

}  // namespace

Command sources_command() {
    return {.name = "sources",
            .group = headings::teaching,
            .summary = "list every figure with its source and how far it was seen",
            .rows = {sources_foods, sources_rules, sources_word},
            .examples = {"sources --foods", "sources --search film"},
            .read = read_sources};
}

}  // namespace holdwater::cli
