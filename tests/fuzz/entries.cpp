// SPDX-License-Identifier: MIT
#include "fuzz/entries.hpp"

#include "answer/gauge/gauge_log.hpp"
#include "cli/commands/commands.hpp"
#include "cli/line/options.hpp"
#include "facts/facts.hpp"
#include "layout/drawing/drawing.hpp"
#include "layout/layout.hpp"
#include "problem/bounds.hpp"
#include "trip/moment.hpp"
#include "trip/read_log.hpp"
#include "trip/read_trip.hpp"
#include "units/parse.hpp"
#include "units/plain_number.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace holdwater::fuzz {
namespace {

void must(bool so, const char* what) {
    if (!so) {
        std::fprintf(stderr, "not so: %s\n", what);
        std::abort();
    }
}

void check_problems(const problem::Problems& problems, bool ok, std::size_t most) {
    must(problems.size() <= most, "the number of problems is bounded");
    must(ok != problem::has_error(problems), "there is a value, or an error");
    for (const problem::Problem& one : problems) {
        must(!one.message.empty(), "a problem says what is wrong");
        const std::string line = problem::to_line(one);
        must(line.find('\n') == std::string::npos && line.find('\x1b') == std::string::npos, "a problem is one line");
        must(line.size() < 20'000, "a problem is short");
        must(!one.place || (one.place->line >= 0 && one.place->column >= 0), "a place is in the file");
    }
}

trip::Known known() {
    trip::Known made;
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        made.kinds.push_back(kind.key);
    }
    made.languages = {"en", "es", "fr"};
    return made;
}

problem::Result<std::string> read_beside(const std::string& name) {
    if (name == "box.csv") {
        return std::string("time_min,bath_c,outside_c\n0,64,8\n240,60,8\n480,57,8\n");
    }
    return problem::error("file-unreadable", "no such file");
}

template <class Q>
void try_quantity(std::string_view text) {
    const auto value = units::parse<Q>(text);
    check_problems(value.problems(), value.ok(), 1);
    if (value) {
        if constexpr (requires { value->celsius(); }) {
            must(units::is_sound(value->celsius()) || value->celsius() != value->celsius() + 1, "a sound temperature");
        } else {
            must(units::is_sound(value->si()), "a quantity is sound");
        }
    }
}

}  // namespace

void try_trip(std::string_view text) {
    static const trip::Known kinds = known();
    const auto read = trip::read_trip(text, "t.toml", read_beside, kinds);
    check_problems(read.problems(), read.ok(), bounds::listed_problems + 1);
    if (read) {
        const std::string once = trip::canonical(*read);
        const auto again = trip::read_trip(once, "t.toml", read_beside, kinds);
        must(again.ok(), "a trip that was read can be written and read again");
        must(trip::canonical(*again) == once, "and means the same");
    }
}

void try_log(std::string_view text) {
    const auto log = trip::read_log(text, "l.csv");
    check_problems(log.problems(), log.ok(), bounds::listed_problems + 1);
    if (log) {
        must(!log->rows.empty() && log->rows.size() <= bounds::log_rows, "a log has rows");
        for (std::size_t i = 1; i < log->rows.size(); ++i) {
            must(log->rows[i - 1].at <= log->rows[i].at, "rows are in the order of their times");
        }
        static_cast<void>(log->mean_outside());
    }
    const auto gauge = answer::read_gauge_log(text, "l.csv");
    must(gauge.ok() != problem::has_error(gauge.problems()), "there is a log of a box test, or an error");
}

void try_unit(std::string_view text) {
    try_quantity<units::Length>(text);
    try_quantity<units::Mass>(text);
    try_quantity<units::Volume>(text);
    try_quantity<units::Temperature>(text);
    try_quantity<units::TemperatureDifference>(text);
    try_quantity<units::Duration>(text);
    try_quantity<units::Fraction>(text);
    try_quantity<units::Pressure>(text);
    try_quantity<units::HeatLoss>(text);
    try_quantity<units::Diffusivity>(text);
    try_quantity<units::Conductivity>(text);
    try_quantity<units::FilmCoefficient>(text);
    try_quantity<units::ThermalResistance>(text);
    const auto clock = units::parse_clock(text);
    check_problems(clock.problems(), clock.ok(), 1);
    must(!clock || (clock->second_of_day >= 0 && clock->second_of_day < 24 * 60 * 60), "a clock time is of one day");
    if (const auto moment = trip::parse_moment(text)) {
        must(moment->iso().starts_with("2"), "a moment is of these centuries");
    }
    const auto number = units::plain_number(text);
    must(!number || units::is_sound(*number), "a plain number is sound");
}

void try_layout(std::string_view text) {
    const auto format = layout::read_format(text, "f.toml");
    check_problems(format.problems(), format.ok(), bounds::listed_problems + 1);
    must(!format || (format->width.value() > 0 && format->key_max_pt >= format->key_pt), "a format has a size");
    const auto sheet = layout::read_sheet(text, "s.toml");
    check_problems(sheet.problems(), sheet.ok(), bounds::listed_problems + 1);
    must(!sheet || sheet->width.value() > 0, "a sheet has a size");
}

void try_drawing(std::string_view text) {
    const auto drawing = layout::read_drawing(text, "d.svg");
    check_problems(drawing.problems(), drawing.ok(), bounds::listed_problems + 1);
    if (!drawing) {
        return;
    }
    for (const auto& shape : drawing->shapes) {
        for (const auto& part : shape.parts) {
            if (part.kind == layout::PlacedDrawing::Part::Kind::close) {
                continue;
            }
            const auto end = part.points[part.kind == layout::PlacedDrawing::Part::Kind::curve ? 2 : 0];
            must(end.x.value() >= -0.01 && end.x <= drawing->width + layout::Millimetres{0.01} &&
                     end.y.value() >= -0.01 && end.y <= drawing->height + layout::Millimetres{0.01},
                 "no point is off the sheet");
        }
    }
}

void try_wording(std::string_view text) {
    const auto words = words::Words::read(text, "w.toml");
    check_problems(words.problems(), words.ok(), bounds::listed_problems + 1);
    if (words) {
        must(words->faults_against(words::Words::model(), {}).size() <= bounds::kept_problems, "faults are bounded");
    }
}

void try_line(std::string_view text) {
    static const std::vector<cli::Command> commands = cli::all_commands();
    std::vector<std::string> words;
    for (std::string_view rest = text; !rest.empty();) {
        const auto end = std::min(rest.find('\n'), rest.size());
        words.emplace_back(rest.substr(0, end));
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    if (words.empty()) {
        return;
    }
    const auto command = cli::command_named(commands, words.front());
    if (!command) {
        check_problems(command.problems(), false, 1);
        return;
    }
    const auto line = cli::read_words(**command, {words.begin() + 1, words.end()});
    check_problems(line.problems(), line.ok(), bounds::listed_problems);
    if (line && !line->help) {
        cli::Options options(**command, *line);
        static_cast<void>((**command).read(options));  // read, not acted upon
        for (const problem::Problem& one : options.faults()) {
            must(!one.message.empty(), "a fault says what is wrong");
        }
    }
}

}  // namespace holdwater::fuzz
