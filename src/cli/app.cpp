// SPDX-License-Identifier: MIT
#include "cli/app.hpp"

#include "cli/commands/commands.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"
#include "cli/line/help.hpp"
#include "cli/line/options.hpp"
#include "problem/bounds.hpp"
#include "problem/in_text.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <string>
#include <system_error>
#include <vector>

namespace holdwater::cli {
namespace {

Exit refuse_line(const problem::Problems& faults) {
    tell(faults);
    return exit_for(faults);
}

/// What was printed may still be in memory only; nobody may take half an answer for a whole one.
Exit written_out(Exit exit) {
    errno = 0;
    if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) {
        return exit;
    }
    const std::string why = errno != 0 ? fmt::format(": {}", std::strerror(errno)) : "";
    return refuse_line({problem::error("output-lost", "the answer could not be written to standard output" + why,
                                       "is the disk full?")});
}

/// The command is acted upon only if nothing is wrong with its line.
Exit run_command(const Command& command, const std::vector<std::string>& words) {
    const auto line = read_words(command, words);
    if (!line) {
        return refuse_line(line.problems());
    }
    if (line->help) {
        fmt::print("{}", command_help(command));
        return Exit::done;
    }
    Options options(command, *line);
    const Act act = command.read(options);
    return options.faults().empty() ? act() : refuse_line(options.faults());
}

/// Nobody writes as much; who hands it over by a program is told how much there may be.
problem::Problems faults_of_size(const std::vector<std::string>& words) {
    if (words.size() > bounds::line_words) {
        return {problem::error("usage", fmt::format("{} words are too many for a command line", words.size()),
                               fmt::format("at most {}", bounds::line_words))};
    }
    for (const std::string& word : words) {
        if (word.size() > bounds::word_bytes) {
            return {problem::error("text-long", fmt::format("\"{}\" has {} bytes", problem::quoted(word), word.size()),
                                   fmt::format("a word of the command line has at most {}", bounds::word_bytes))};
        }
    }
    return {};
}

Exit run_words(const std::vector<std::string>& words) {
    if (const auto faults = faults_of_size(words); !faults.empty()) {
        return refuse_line(faults);
    }
    const std::vector<Command> commands = all_commands();
    if (words.empty() || words.front() == "--") {
        return refuse_line({problem::error("command-missing", "holdwater needs a command",
                                           fmt::format("one of: {}; see `holdwater --help`", names_of(commands)))});
    }
    if (words.front() == "--help" || words.front() == "-h") {
        fmt::print("{}", program_help(commands));
        return Exit::done;
    }
    if (words.front() == "--version") {
        fmt::print("holdwater {}\n", version());
        return Exit::done;
    }
    const auto command = command_named(commands, words.front());
    return command ? run_command(**command, {words.begin() + 1, words.end()}) : refuse_line(command.problems());
}

}  // namespace

Exit run(int argc, char** argv) {
    try {
        return written_out(run_words({argv + (argc > 0 ? 1 : 0), argv + argc}));
    } catch (const std::system_error&) {
        if (std::ferror(stdout) == 0) {
            throw;
        }
        return written_out(Exit::bad_input);
    }
}

}  // namespace holdwater::cli
