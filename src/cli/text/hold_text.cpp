// SPDX-License-Identifier: MIT
#include "cli/text/hold_text.hpp"

#include "cli/text/wrap.hpp"
#include "facts/names.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <functional>
#include <vector>

namespace holdwater::cli {
namespace {

using answer::OnePieceAnswer;
using answer::OnePieceQuestion;
using answer::ReadingOfPiece;
using units::System;
using units::Toward;

struct Column {
    std::string name;
    const ReadingOfPiece* reading;
};

std::vector<Column> columns_of(const OnePieceAnswer& answer) {
    std::vector<Column> columns;
    if (answer.likely) {
        columns.push_back({"likely", &*answer.likely});
        columns.push_back({"cautious", &*answer.cautious});
    }
    if (answer.given) {
        columns.push_back({"given", &*answer.given});
    }
    return columns;
}

std::string time_or_never(const std::optional<units::Duration>& time) {
    return time ? units::print(*time, Toward::up) : "never";
}

std::string in_both(units::Temperature t) {
    return units::print(t, System::both, {0.1});
}

/// Pads by what is seen, not by bytes.
std::string padded(const std::string& text, std::size_t width) {
    const std::string seen = plain_spaces(text);
    std::size_t columns = 0;
    for (const char c : seen) {
        columns += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1U : 0U;
    }
    return seen + std::string(columns < width ? width - columns : 1, ' ');
}

std::string table(const OnePieceQuestion& question, const OnePieceAnswer& answer) {
    constexpr std::size_t label_width = 36;
    constexpr std::size_t width = 20;
    const std::vector<Column> columns = columns_of(answer);
    std::string out;
    const auto row = [&](const std::string& label, const std::function<std::string(const Column&)>& cell) {
        std::string line = padded(label, label_width);
        for (const Column& column : columns) {
            line += padded(cell(column), width);
        }
        out += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
    };
    row("", [](const Column& c) { return c.name; });
    row("core at " + in_both(answer.target) + " after",
        [](const Column& c) { return time_or_never(c.reading->times.reach); });
    if (question.bath > question.start) {
        const facts::Facts& facts = facts::facts();
        row(fmt::format("core from {:g} to {:g} °C takes", facts.value("come-up.from"), facts.value("come-up.to")),
            [](const Column& c) { return time_or_never(c.reading->times.come_up); });
        row("germs killed after", [](const Column& c) {
            return c.reading->times.kill ? units::print(*c.reading->times.kill, Toward::up) : "not credited";
        });
        if (answer.likely && answer.likely->times.kill_7) {
            row("by the stricter 7-log rows", [](const Column& c) {
                return c.reading->times.kill_7 ? units::print(*c.reading->times.kill_7, Toward::up) : "not shown";
            });
        }
    }
    if (question.at) {
        const std::string when = "after " + units::print(*question.at) + ": ";
        row(when + "core", [](const Column& c) { return in_both(*c.reading->times.core); });
        row(std::string(when.size() - 2, ' ') + "surface",
            [](const Column& c) { return in_both(*c.reading->times.surface); });
        row(std::string(when.size() - 2, ' ') + "mean",
            [](const Column& c) { return in_both(*c.reading->times.mean); });
    }
    if (answer.thickest_slab && answer.thickest_round) {
        const auto thick = [](units::Length l) { return units::print(l, System::metric, {1.0, Toward::down}); };
        out += padded("thickest that warms in time here", label_width) +
               fmt::format("slab {}, round {}\n", plain_spaces(thick(*answer.thickest_slab)),
                           plain_spaces(thick(*answer.thickest_round)));
    }
    row("diffusivity, 1e-7 m2/s",
        [](const Column& c) { return fmt::format("{:.2f}", c.reading->diffusivity.si() * 1e7); });
    row("conductivity, W/m/K", [](const Column& c) { return fmt::format("{:.3g}", c.reading->conductivity.si()); });
    row("film with bag, W/m2/K", [](const Column& c) { return fmt::format("{:.3g}", c.reading->film.si()); });
    return out;
}

std::string contact_words(facts::Contact contact) {
    switch (contact) {
        case facts::Contact::free:
            return "kept apart and off the bottom, water on every face (contact free)";
        case facts::Contact::bottom:
            return "lying on the bottom of the box, that face blocked (contact bottom)";
        case facts::Contact::stacked:
            return "lying on another piece of the same size (contact stacked)";
    }
    return {};
}

std::string bag_words(const OnePieceQuestion& question) {
    if (question.film && !question.bag_given) {
        return "given film taken as it is, without a bag";
    }
    if (const auto* given = std::get_if<units::ThermalResistance>(&question.bag)) {
        return fmt::format("bag of {:g} m2 K/W", given->si());
    }
    return fmt::format("{} bag with the air pressed out", facts::to_name(std::get<facts::Bag>(question.bag)));
}

std::string assumed(const OnePieceQuestion& question) {
    const heat::Body& body = question.body;
    const auto size = [](units::Length l) { return units::print(l, System::both, {1.0}); };
    std::string shape = fmt::format("{}{} {} thick", question.kind != nullptr ? question.kind->name + ", " : "",
                                    facts::to_name(body.shape), size(body.thickness));
    if (body.shape == facts::Shape::block) {
        shape += fmt::format(", {} wide, {} long", size(*body.width), size(*body.length));
    }
    if (body.shape == facts::Shape::round) {
        shape += body.length ? fmt::format(", {} long", size(*body.length)) : ", so long that its ends do not matter";
    }
    if (body.curvature > 0.0) {
        shape += fmt::format(", sides rounded (curvature {:g})", body.curvature);
    }
    return wrap(fmt::format("Taken as: {}; {}; {}; bath {} all the time, food from {}.", shape,
                            contact_words(body.contact), bag_words(question), in_both(question.bath),
                            in_both(question.start)));
}

}  // namespace

std::string hold_text(const OnePieceQuestion& question, const OnePieceAnswer& answer,
                      const problem::Problems& warnings) {
    std::string out = wrap(hold_verdict(question, answer)) + "\n" + table(question, answer) + "\n" + assumed(question);
    for (const problem::Problem& p : warnings) {
        out += wrap("Note: " + p.message + (p.hint.empty() ? "" : " (" + p.hint + ")") + ".");
    }
    out += wrap(
        "A checked thermometer in the core has the last word on the temperature, local food-safety rules and "
        "licensed practice on all else. Times count from when the food goes in and are rounded up. Cautious is a "
        "slow piece in a poor film, and allows for a thickness and a start that were not measured well.");
    return plain_spaces(out);
}

}  // namespace holdwater::cli
