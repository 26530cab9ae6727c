// SPDX-License-Identifier: MIT
#include "cli/line/man_page.hpp"

#include "cli/line/help.hpp"
#include "cli/text/wrap.hpp"
#include "trip/keys.hpp"

#include <fmt/format.h>

#include <string_view>

namespace holdwater::cli {
namespace {

/// Text as man(7) takes it: no character of it is a command, and what one may copy stays as it is.
std::string as_man(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const bool begins_line = out.empty() || out.back() == '\n';
        if (begins_line && (c == '.' || c == '\'')) {
            out += "\\&";
        }
        switch (c) {
            case '\\':
                out += "\\e";
                break;
            case '-':
                out += "\\-";
                break;
            case '\'':
                out += "\\(aq";
                break;
            case '`':
                out += "\\(ga";
                break;
            case '"':
                out += "\\(dq";
                break;
            default:
                out += c;
        }
    }
    return out;
}

class ManPage {
  public:
    ManPage(std::string_view title, std::string_view section, const Edition& edition) {
        line(fmt::format(".TH {} {} \"{}\" \"Holdwater {}\"", title, section, edition.date, edition.version));
    }
    void section(std::string_view heading) { line(fmt::format(".SH \"{}\"", as_man(heading))); }
    void part(std::string_view heading) { line(fmt::format(".SS \"{}\"", as_man(heading))); }
    void text(std::string_view words) {
        constexpr std::size_t short_lines = 48;  // escapes make them longer
        line(as_man(wrap(words, 0, short_lines)));
    }
    void paragraph(std::string_view words) {
        line(".PP");
        text(words);
    }
    void entry(std::string_view name, std::string_view words) {
        line(".TP\n.B \"" + as_man(name) + "\"");
        text(words);
    }
    /// Lines that stay as they are.
    void copy(std::string_view lines) {
        line(".PP\n.nf\n.RS");
        line(as_man(lines));
        line(".RE\n.fi");
    }
    void line(std::string_view written) {
        out_ += written;
        if (!out_.ends_with('\n')) {
            out_ += '\n';
        }
    }
    std::string take() && { return std::move(out_); }

  private:
    std::string out_;
};

std::string code_of(const ExitRow& row) {
    return fmt::format("{}", static_cast<int>(row.exit));
}

void tell_command(ManPage& page, const Command& command) {
    page.part(fmt::format("holdwater {}", usage_of(command)));
    page.text(fmt::format("{}.", command.summary));
    for (const std::string_view group : headings_of(command)) {
        if (group != headings_of(command).front()) {
            page.paragraph(fmt::format("{}:", group));
        }
        for (const OptionRow& row : command.rows) {
            if (stands_under(row, group)) {
                page.entry(shown(row), meaning(command, row));
            }
        }
    }
    page.paragraph("For example:");
    std::string examples;
    for (const std::string_view example : command.examples) {
        examples += fmt::format("holdwater {}\n", example);
    }
    page.copy(examples);
    page.paragraph("Exit codes:");
    for (const ExitRow& row : command.exits()) {
        page.entry(code_of(row), fmt::format("{}.", row.means));
    }
}

std::string first_large(std::string_view text) {
    std::string out(text);
    if (!out.empty() && out.front() >= 'a' && out.front() <= 'z') {
        out.front() = static_cast<char>(out.front() - 'a' + 'A');
    }
    return out;
}

std::string meaning_of_key(const trip::Key& key) {
    std::string words = first_large(key.means) + ".";
    if (!key.value.empty()) {
        words += fmt::format(" Written as {}", key.value);
        if (!key.choices.empty()) {
            words += fmt::format(": {}", fmt::join(key.choices, ", "));
        }
        words += key.limits.empty() ? "." : fmt::format("; {}.", key.limits);
    }
    words += key.required ? " Required." : fmt::format(" If not given: {}.", key.by_default);
    return words;
}

}  // namespace

std::string program_page(const std::vector<Command>& commands, const Edition& edition) {
    ManPage page("HOLDWATER", "1", edition);
    page.section("NAME");
    page.line("holdwater \\- plan a hot\\-water\\-bath meal in an insulated box");
    page.section("SYNOPSIS");
    page.line(".B holdwater\n.I COMMAND\n[options]");
    page.section("DESCRIPTION");
    page.text(what_it_is);
    page.text("A trip file goes in; a plan, a PDF of cards and a clear verdict come out.");
    page.text(about_dashes);
    for (const std::string_view group : headings_of(commands)) {
        page.section(group);
        for (const Command& command : commands) {
            if (command.group == group) {
                tell_command(page, command);
            }
        }
    }
    page.section("EXIT STATUS");
    for (const ExitRow& row : exit_rows) {
        page.entry(code_of(row), fmt::format("{}.", row.means));
    }
    page.section("ENVIRONMENT");
    page.entry("TERM", "Where it is dumb, or not set, nothing is shown while a plan is looked for.");
    page.entry("XDG_CONFIG_HOME, HOME", "Where your own kits are.");
    page.section("FILES");
    page.entry("~/.config/holdwater/kits/NAME.toml", "A box or a fire that is kept, for use = \"NAME\" in trip files.");
    page.section("SEE ALSO");
    page.line(".BR holdwater\\-trip (5)");
    return std::move(page).take();
}

std::string trip_page(const Edition& edition) {
    ManPage page("HOLDWATER\\-TRIP", "5", edition);
    page.section("NAME");
    page.line("holdwater\\-trip \\- the trip file of holdwater");
    page.section("DESCRIPTION");
    page.text(
        "A trip file is the whole input of a plan: who eats what, where and when, the box, the weather and the fire. "
        "It is a text in TOML.");
    page.line(".B holdwater new");
    page.text("writes one to fill in.");
    page.paragraph(
        "A value with a unit stands in quotes, the number first: \"85 mm\", \"3 1/4 in\", \"1.8 kg\", \"36 L\", \"63 "
        "C\", "
        "\"145 F\", \"25 min\". Units: mm cm m in ft; g kg oz lb; mL L cup qt gal; C F for temperatures and K for "
        "differences; s min h; W/K; %. A number without its unit is refused, and so is a key that is not known. What "
        "stands behind a # is a remark.");
    page.section("TABLES");
    for (const trip::KeyTable& table : trip::key_tables()) {
        page.part(table.heading);
        page.text(fmt::format("{} {}{}.", table.means, first_large(table.number), table.required ? ", required" : ""));
        for (const trip::Key& key : table.keys) {
            page.entry(key.name, meaning_of_key(key));
        }
    }
    page.section("KITS");
    page.text(
        "A kit is a file with [box], [fire] or both, whose keys are those of [[box]] and [fire] above without use. "
        "use = \"blue\" looks for kits/blue.toml beside the trip file, then in ~/.config/holdwater, or in "
        "$XDG_CONFIG_HOME/holdwater where that is set. A log that a kit names is looked up beside the kit.");
    page.section("EXAMPLES");
    page.text("The shortest trip file:");
    page.copy(trip::shortest_trip());
    page.section("SEE ALSO");
    page.line(".BR holdwater (1)");
    return std::move(page).take();
}

}  // namespace holdwater::cli
