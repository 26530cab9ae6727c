// SPDX-License-Identifier: MIT
#include "cli/app.hpp"

#include "cli/files/files.hpp"
#include "cli/line/unknown_words.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <string>
#include <system_error>
#include <vector>

namespace holdwater::cli {
namespace {

/// The command that is being read; nothing before its name.
const Command* command_of(const std::vector<Command>& commands) {
    for (const Command& command : commands) {
        if (command.line->parsed()) {
            return &command;
        }
    }
    return nullptr;
}

std::string help_of(const CLI::App& line) {
    return fmt::format("see `holdwater {} --help`", line.get_name());
}

/// A first word that is no command, or none at all.
void tell_command(const CLI::App& program, const std::vector<Command>& commands, Options& options) {
    std::vector<std::string> names;
    for (const Command& command : commands) {
        names.push_back(command.line->get_name());
    }
    const std::vector<std::string_view> known(names.begin(), names.end());
    const std::vector<std::string> words = program.remaining();
    if (words.empty()) {
        options.fault("holdwater", "command-missing", "needs a command",
                      fmt::format("one of: {}; see `holdwater --help`", fmt::join(names, ", ")));
    } else {
        unknown_word(options, "command", words.front(), known);
    }
}

/// What CLI11 found, in our own words: what is missing, given twice or without a value.
void tell_fault(const CLI::ParseError& fault, const CLI::App& line, Options& options) {
    const std::string said = fault.what();
    for (const CLI::Option* option : line.get_options()) {
        const std::string name = option->get_name();
        if (option->get_required() && option->count() == 0) {
            options.fault(name, "option-missing", "is missing",
                          fmt::format("holdwater {} {}; {}", line.get_name(), name, help_of(line)));
        } else if (!said.starts_with(name + ":")) {
            continue;
        } else if (fault.get_name() != "ArgumentMismatch") {
            options.fault(name, "value-unusable", "cannot be used:" + said.substr(name.size() + 1), help_of(line));
        } else if (option->count() > 1) {
            options.fault(name, "option-twice", "is given more than once", "leave one out");
        } else {
            options.fault(name, "value-missing", "has no value after it", help_of(line));
        }
    }
    if (options.problems().empty()) {
        options.fault("holdwater " + line.get_name() + ":", "usage", said, help_of(line));
    }
}

/// An empty name of a folder would be that of the root folder once a file name is put behind it.
void tell_empty_folder(const CLI::App& line, Options& options) {
    const CLI::Option* out = line.get_option_no_throw("--out");
    if (out != nullptr && out->count() > 0 && out->as<std::string>().empty()) {
        options.fault("--out", "folder-missing", "names no folder", "--out . is the folder that you are in");
    }
}

/// The command is acted upon only if nothing is wrong with the line itself.
Exit act(const Command& command) {
    Options options;
    tell_empty_folder(*command.line, options);
    if (!command.tells_unknown_words) {
        tell_unknown_words(*command.line, options);
    }
    if (!options.problems().empty()) {
        tell(options.problems());
        return Exit::bad_input;
    }
    return command.act();
}

/// What was printed may still be in memory only; nobody may take half an answer for a whole one.
Exit written(Exit exit) {
    errno = 0;
    if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) {
        return exit;
    }
    const std::string why = errno != 0 ? fmt::format(": {}", std::strerror(errno)) : "";
    tell({problem::error("output-lost", "the answer could not be written to standard output" + why,
                         "is the disk full?")});
    return Exit::bad_input;
}

}  // namespace

Exit run(int argc, char** argv) {
    CLI::App program{"Plans a hot-water-bath meal in an insulated box and prints the plan as pocket cards.",
                     "holdwater"};
    program.set_version_flag("--version", "holdwater " HOLDWATER_VERSION);
    program.require_subcommand(0, 1);
    program.allow_extras();
    std::vector<Command> commands;
    for (const auto add :
         {add_cards, add_plan, add_class, add_review, add_gauge, add_hold, add_boil, add_mix, add_touch, add_new, add_sources}) {
        commands.push_back(add(program));
        commands.back().line->allow_extras();
    }
    Options options;
    try {
        program.parse(argc, argv);
    } catch (const CLI::ParseError& stop) {
        if (stop.get_exit_code() == 0) {
            program.exit(stop);  // help and version
            return written(Exit::done);
        }
        const Command* command = command_of(commands);
        tell_fault(stop, command != nullptr ? *command->line : program, options);
        tell(options.problems());
        return Exit::bad_input;
    }
    const Command* command = command_of(commands);
    if (command == nullptr) {
        tell_command(program, commands, options);
        tell(options.problems());
        return Exit::bad_input;
    }
    try {
        return written(act(*command));
    } catch (const std::system_error&) {
        if (std::ferror(stdout) == 0) {
            throw;
        }
        return written(Exit::bad_input);
    }
}

}  // namespace holdwater::cli
