// SPDX-License-Identifier: MIT
#include "cli/line/completion.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace holdwater::cli {
namespace {

std::string file_head(std::string_view shell) {
    return fmt::format("# Completes the words of holdwater; made by `holdwater help --completion {}`.\n", shell);
}

/// What can stand at a place, for all shells.
struct Fitting {
    std::vector<std::string_view> words = {};
    bool list = false;             // several of them, with commas between
    std::string_view ending = {};  // of files that can stand there; empty: none
    bool folders = false;
};

class Places {
  public:
    Places(const std::vector<Command>& commands, const std::vector<std::string_view>& food_kinds)
        : commands_(commands), food_kinds_(food_kinds) {}

    Fitting of(const OptionRow& row) const {
        Fitting can{row.choices, row.takes == Takes::list};
        switch (row.holds) {
            case Holds::trip_file:
                can.ending = ".toml";
                break;
            case Holds::log_file:
                can.ending = ".csv";
                break;
            case Holds::folder:
                can.folders = true;
                break;
            case Holds::food_kind:
                can.words = food_kinds_;
                break;
            case Holds::command:
                can.words = commands();
                break;
            case Holds::text:
                break;
        }
        return can;
    }

    std::vector<std::string_view> commands() const {
        std::vector<std::string_view> names;
        for (const Command& command : commands_) {
            names.push_back(command.name);
        }
        return names;
    }

    /// What can stand where no option waits for its value: the words of rows that stand by themselves, and options.
    static std::vector<std::string_view> options(const Command& command) {
        std::vector<std::string_view> names;
        for (const OptionRow& row : command.rows) {
            if (row.is_option()) {
                names.push_back(row.name);
            }
        }
        names.push_back("--help");
        return names;
    }

    Fitting by_itself(const Command& command) const {
        Fitting can;
        for (const OptionRow& row : command.rows) {
            if (row.is_option()) {
                continue;
            }
            const Fitting more = of(row);
            can.words.insert(can.words.end(), more.words.begin(), more.words.end());
            // Two rows with files of two endings: any file.
            const bool differ = !can.ending.empty() && !more.ending.empty() && can.ending != more.ending;
            can.ending = differ ? "." : more.ending.empty() ? can.ending : more.ending;
        }
        return can;
    }

  private:
    const std::vector<Command>& commands_;
    const std::vector<std::string_view>& food_kinds_;
};

std::string with_blanks(const std::vector<std::string_view>& words) {
    return fmt::format("{}", fmt::join(words, " "));
}

/// A text between single quotes, as all three shells read it.
std::string in_quotes(std::string_view text) {
    std::string quoted = "'";
    for (const char c : text) {
        quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
    }
    return quoted + "'";
}

/// A place of a bash script: sets what can stand there.
std::string bash_place(const std::string& pattern, const Fitting& can) {
    std::string sets;
    if (!can.words.empty()) {
        sets += fmt::format(" words='{}'", with_blanks(can.words));
    }
    if (can.list) {
        sets += " list=yes";
    }
    if (!can.ending.empty()) {
        sets += fmt::format(" files='*{}'", can.ending == "." ? "" : can.ending);
    }
    if (can.folders) {
        sets += " folders=yes";
    }
    return fmt::format("        {})\n           {} ;;\n", pattern, sets.empty() ? " :" : sets);
}

constexpr std::string_view bash_frame_begin = R"(_holdwater() {
    local word="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}" command="${COMP_WORDS[1]}"
    local words='' list='' files='' folders='' done='' IFS=$' \t\n'
    COMPREPLY=()
    if [ "$COMP_CWORD" -gt 1 ]; then
        case "$command $before" in
)";

constexpr std::string_view bash_frame_options = R"(        *)
            done=no ;;
        esac
    else
        words="$commands"
    fi
    if [ -n "$done" ]; then
        case "$command" in
)";

constexpr std::string_view bash_frame_end = R"(        esac
    fi
    if [ -n "$list" ]; then  # the words before the last comma stay
        local begin=''
        case "$word" in *,*) begin="${word%,*}," ;; esac
        mapfile -t COMPREPLY < <(compgen -P "$begin" -W "$words" -- "${word##*,}")
        compopt -o nospace 2>/dev/null
        return
    fi
    if [ -n "$files$folders" ]; then
        compopt -o filenames 2>/dev/null
    fi
    mapfile -t COMPREPLY < <(
        compgen -W "$words" -- "$word"
        if [ -n "$files" ]; then compgen -f -X "!$files" -- "$word"; fi
        if [ -n "$files$folders" ]; then compgen -d -- "$word"; fi
    )
}
complete -F _holdwater holdwater
)";

std::string for_bash(const std::vector<Command>& commands, const Places& rows) {
    std::string values;
    std::string places;
    for (const Command& command : commands) {
        for (const OptionRow& row : command.rows) {
            if (row.is_option() && !row.is_switch()) {
                values += bash_place(fmt::format("'{} {}'", command.name, row.name), rows.of(row));
            }
        }
        Fitting can = rows.by_itself(command);
        const auto options = Places::options(command);
        can.words.insert(can.words.end(), options.begin(), options.end());
        places += bash_place(std::string(command.name), can);
    }
    const std::string names = with_blanks(rows.commands()) + " --help --version";
    std::string begin(bash_frame_begin);
    begin.insert(begin.find("    COMPREPLY"), fmt::format("    local commands='{}'\n", names));
    return begin + values + std::string(bash_frame_options) + places + std::string(bash_frame_end);
}

/// Inside "NAME[TEXT]:WHAT:ACTION", brackets and colons of a text are written with a backslash.
std::string zsh_text(std::string_view text) {
    std::string escaped;
    for (const char c : text) {
        if (c == '[' || c == ']' || c == ':' || c == '\\') {
            escaped += '\\';
        }
        escaped += c;
    }
    return escaped;
}

std::string zsh_action(const Fitting& can) {
    if (can.list) {
        return fmt::format("_values -s , card {}", with_blanks(can.words));
    }
    if (!can.words.empty()) {
        return fmt::format("({})", with_blanks(can.words));
    }
    if (can.folders) {
        return "_files -/";
    }
    return can.ending.empty() ? " " : fmt::format("_files -g \"*{}\"", can.ending == "." ? "" : can.ending);
}

std::string zsh_row(const OptionRow& row, const Places& rows) {
    if (!row.is_option()) {
        return in_quotes(fmt::format("{}:{}:{}", row.takes == Takes::several ? "*" : "", zsh_text(row.name),
                                     zsh_action(rows.of(row))));
    }
    const std::string again = row.takes == Takes::one || row.is_switch() ? "" : "*";
    const std::string value =
        row.is_switch() ? "" : fmt::format(":{}:{}", zsh_text(row.value), zsh_action(rows.of(row)));
    return in_quotes(fmt::format("{}{}[{}]{}", again, row.name, zsh_text(row.help), value));
}

std::string for_zsh(const std::vector<Command>& commands, const Places& rows) {
    std::string text = "_holdwater() {\n    local -a commands\n    commands=(\n";
    for (const Command& command : commands) {
        text += fmt::format("        {}\n", in_quotes(fmt::format("{}:{}", command.name, zsh_text(command.summary))));
    }
    text +=
        "    )\n    if (( CURRENT == 2 )); then\n        _describe -t commands command commands\n        return\n"
        "    fi\n    local command=$words[2]\n    shift words\n    (( CURRENT-- ))\n    case $command in\n";
    for (const Command& command : commands) {
        text += fmt::format("        {})\n            _arguments \\\n", command.name);
        for (const OptionRow& row : command.rows) {
            text += fmt::format("                {} \\\n", zsh_row(row, rows));
        }
        text += "                '--help[tell the options]' ;;\n";
    }
    // Read as a file of completions it is the function; read by `source` it is made known.
    return text +
           "    esac\n}\nif [ \"$funcstack[1]\" = _holdwater ]; then\n    _holdwater \"$@\"\nelse\n"
           "    compdef _holdwater holdwater\nfi\n";
}

std::string for_fish(const std::vector<Command>& commands, const Places& rows) {
    std::string text = "complete -c holdwater -f\n";
    const auto line = [&](const std::string& condition, const std::string& rest) {
        text += fmt::format("complete -c holdwater -n '{}' {}\n", condition, rest);
    };
    for (const Command& command : commands) {
        line("__fish_use_subcommand", fmt::format("-a {} -d {}", command.name, in_quotes(command.summary)));
    }
    for (const Command& command : commands) {
        const std::string behind = fmt::format("__fish_seen_subcommand_from {}", command.name);
        const auto what = [](const Fitting& can) {
            if (!can.words.empty()) {
                return fmt::format(" -a '{}'", with_blanks(can.words));
            }
            if (can.folders) {
                return std::string(" -a '(__fish_complete_directories)'");
            }
            return can.ending.empty()  ? std::string()
                   : can.ending == "." ? std::string(" -F")
                                       : fmt::format(" -k -a '(__fish_complete_suffix {})'", can.ending);
        };
        for (const OptionRow& row : command.rows) {
            if (row.is_option()) {
                line(behind, fmt::format("-l {} -d {}{}{}", row.name.substr(2), in_quotes(row.help),
                                         row.is_switch() ? "" : " -x", row.is_switch() ? "" : what(rows.of(row))));
            }
        }
        if (const std::string alone = what(rows.by_itself(command)); !alone.empty()) {
            line(behind, alone.substr(1));
        }
    }
    return text;
}

constexpr std::pair<std::string_view, Shell> shells[] = {
    {"bash", Shell::bash}, {"zsh", Shell::zsh}, {"fish", Shell::fish}};

}  // namespace

std::vector<std::string_view> shell_names() {
    std::vector<std::string_view> names;
    for (const auto& [name, shell] : shells) {
        names.push_back(name);
    }
    return names;
}

Shell shell_named(std::string_view name) {
    return std::find_if(std::begin(shells), std::end(shells), [&](const auto& one) { return one.first == name; })
        ->second;
}

std::string completion(Shell shell, const std::vector<Command>& commands,
                       const std::vector<std::string_view>& food_kinds) {
    const Places rows(commands, food_kinds);
    switch (shell) {
        case Shell::bash:
            return file_head("bash") + for_bash(commands, rows);
        case Shell::zsh:  // its first line says whose words these are
            return "#compdef holdwater\n" + file_head("zsh") + for_zsh(commands, rows);
        case Shell::fish:
            return file_head("fish") + for_fish(commands, rows);
    }
    return {};
}

}  // namespace holdwater::cli
