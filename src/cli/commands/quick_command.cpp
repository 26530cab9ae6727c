// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/printing_rows.hpp"
#include "cli/commands/quick_meal.hpp"
#include "cli/commands/quick_rows.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"
#include "cli/files/local_clock.hpp"
#include "cli/files/trip_deck.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/line/options.hpp"
#include "cli/text/wrap.hpp"
#include "trip/form.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

/// Each value that the line did not say, with what it is taken for.
void list_defaults(const trip::Form& form, const QuickMeal& meal) {
    fmt::print("Not said, and taken cautiously; what you know better makes it easier:\n");
    for (const trip::Form::Entry& entry : form.entries()) {
        if (entry.chosen && !entry.remark.empty()) {
            constexpr std::size_t means_column = 6;
            fmt::print("  {} = {}\n{}", entry.key, entry.value, wrap(entry.remark, means_column));
        }
    }
    fmt::print("Each stands in {} with its reason, and is an option of `holdwater quick` or a line to change.\n\n",
               meal.path);
}

Exit quick(const QuickMeal& meal) {
    const auto text = layout_file("trips/quick.toml");
    if (!text) {
        tell(text.problems());
        return Exit::our_fault;
    }
    if (const auto is_free = not_there_yet(meal.path); !is_free) {
        tell(is_free.problems());
        return Exit::bad_input;
    }
    trip::Form form(*text);
    fill_in(form, meal, clock_now());
    const auto read = trip_of(form.text(), meal.path);
    if (!read) {
        problem::Problems faults = read.problems();
        for (problem::Problem& one : faults) {
            one.place.reset();  // nothing is written, so that there is no such line
        }
        tell(faults);
        return exit_for(faults);
    }
    if (const auto written = write_file(meal.path, form.text(), false); !written) {
        tell(written.problems());
        return Exit::bad_input;
    }
    list_defaults(form, meal);
    fmt::print("{}\n", meal.path);
    return print_trip_deck(meal.path, meal.printing);
}

Act read_quick(Options& options) {
    return [meal = read_meal(options)] { return quick(meal); };
}

}  // namespace

Command quick_command() {
    using namespace quick_rows;
    Command command{
        .name = "quick",
        .group = headings::trip,
        .summary = "one meal from one line: its trip file and the one card; what is not said is taken cautiously",
        .rows = {file,     kind,           thickness,         pieces,   water, serve, from,    name,
                 people,   nobody_at_risk, with_rules(rules), altitude, cut,   shape, contact, mass,
                 start,    target,         thermometer,       loss,     air,   wind,  pots,    pot,
                 boils_in, cold_water,     quick_rows::units},
        .examples =
            {"quick --kind pork-loin --thickness \"60 mm\" --pieces 4 --water \"30 L\" --serve 18:30",
             "quick --kind cod --thickness \"1 in\" --pieces 6 --water \"20 L\" --serve 19:00 --loss \"0.9 W/K\""},
        .refuses = "it does not hold so: no card; the trip file is there, with what would mend it said",
        .checks = "printed, but something should be checked, such as that the box was never tested",
        .read = read_quick};
    const auto printing = printing_rows_of_one();
    command.rows.insert(command.rows.end(), printing.begin(), printing.end());
    return command;
}

}  // namespace holdwater::cli
