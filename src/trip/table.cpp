// SPDX-License-Identifier: MIT
#include "trip/table.hpp"

#include "trip/moment.hpp"
#include "units/nearest.hpp"
#include "units/parse.hpp"
#include "units/plain_number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace holdwater::trip {
namespace {

std::string how_to_write_a_moment(std::string_view key) {
    return fmt::format("write it like {} = 2027-10-15T16:00:00, without quotes", key);
}

std::string shown(const toml::node& node) {
    if (const auto* text = node.as_string()) {
        return fmt::format("\"{}\"", quoted(text->get()));
    }
    if (const auto* whole = node.as_integer()) {
        return fmt::format("{}", whole->get());
    }
    if (const auto* number = node.as_floating_point()) {
        return fmt::format("{}", number->get());
    }
    if (const auto* truth = node.as_boolean()) {
        return truth->get() ? "true" : "false";
    }
    return std::string(kind_of(node));
}

}  // namespace

problem::Place place_of(const toml::source_region& source, const Report& report) {
    problem::Place place = report.place(static_cast<int>(source.begin.line), static_cast<int>(source.begin.column));
    if (source.path) {
        place.file = *source.path;
    }
    return place;
}

std::string_view kind_of(const toml::node& node) {
    switch (node.type()) {
        case toml::node_type::table:
            return "a table";
        case toml::node_type::array:
            return "a list";
        case toml::node_type::string:
            return "text in quotes";
        case toml::node_type::integer:
            return "a whole number";
        case toml::node_type::floating_point:
            return "a number with a point";
        case toml::node_type::boolean:
            return "true or false";
        case toml::node_type::date:
            return "a date without a time";
        case toml::node_type::time:
            return "a time without a date";
        case toml::node_type::date_time:
            return "a date with a time";
        case toml::node_type::none:
            break;
    }
    return "nothing";
}

std::string listed(const std::vector<std::string_view>& words) {
    return fmt::format("{}", fmt::join(words, ", "));
}

Table::Table(Report& report, const toml::table& table, std::string what)
    : report_(report), table_(table), what_(std::move(what)) {}

problem::Place Table::place() const {
    return place(table_);
}

problem::Place Table::place(const toml::node& node) const {
    return place_of(node.source(), report_);
}

problem::Place Table::place(std::string_view key) const {
    const toml::node* const found = table_.get(key);
    return found != nullptr ? place(*found) : place();
}

void Table::error(std::string_view key, problem::Code code, std::string_view message, std::string_view hint) {
    report_.error(place(key), code, message, hint);
}

void Table::warning(std::string_view key, problem::Code code, std::string_view message, std::string_view hint) {
    report_.warning(place(key), code, message, hint);
}

void Table::missing(std::string_view key, std::string_view hint) {
    report_.error(place(), "key-missing", fmt::format("{} is missing in {}", key, what_), hint);
}

const toml::node* Table::node(std::string_view key) {
    asked_.push_back(key);
    return table_.get(key);
}

bool Table::has(std::string_view key) {
    return node(key) != nullptr;
}

const toml::node* Table::find(std::string_view key, Need need, std::string_view hint) {
    const toml::node* const found = node(key);
    if (found == nullptr && need == Need::required) {
        missing(key, hint);
    }
    return found;
}

void Table::wrong_type(std::string_view key, const toml::node& node, std::string_view due, std::string_view hint) {
    report_.error(place(node), "type-wrong", fmt::format("{}: {} is due, not {}", key, due, kind_of(node)), hint);
}

bool Table::text(std::string_view key, std::string& into, Need need, int most) {
    const std::string hint = fmt::format("write it like {} = \"...\"", key);
    const toml::node* const found = find(key, need, hint);
    if (found == nullptr) {
        return false;
    }
    const auto* const text = found->as_string();
    if (text == nullptr) {
        wrong_type(key, *found, "text in quotes", hint);
        return false;
    }
    const std::string& written = text->get();
    if (without_space_around(written).empty()) {
        error(key, "text-empty", fmt::format("{} is empty", key), hint);
        return false;
    }
    if (has_unprintable(written)) {
        error(key, "text-unprintable", fmt::format("{} has a character that cannot be printed", key),
              "one line of plain letters");
        return false;
    }
    if (letters_in(written) > static_cast<std::size_t>(most)) {
        error(key, "text-long", fmt::format("{} has {} letters", key, letters_in(written)),
              fmt::format("at most {}", most));
        return false;
    }
    into = without_space_around(written);
    return true;
}

bool Table::name(std::string_view key, std::string& into, Need need) {
    if (!text(key, into, need)) {
        return false;
    }
    const auto fault = report_.name_fault(into);
    if (fault) {
        report_.add(*fault, place(key), fmt::format("{} \"{}\": ", key, quoted(into)));
    }
    return !fault;
}

bool Table::truth(std::string_view key, bool& into, Need need) {
    const std::string hint = fmt::format("write {0} = true or {0} = false, without quotes", key);
    const toml::node* const found = find(key, need, hint);
    if (found == nullptr) {
        return false;
    }
    const auto* const truth = found->as_boolean();
    if (truth == nullptr) {
        wrong_type(key, *found, "true or false", hint);
        return false;
    }
    into = truth->get();
    return true;
}

bool Table::count(std::string_view key, int& into, Count range, Need need) {
    const std::string hint = fmt::format("a whole number from {} to {}, without quotes", range.low, range.high);
    const toml::node* const found = find(key, need, hint);
    if (found == nullptr) {
        return false;
    }
    const auto* const whole = found->as_integer();
    if (whole == nullptr) {
        wrong_type(key, *found, "a whole number", hint);
        return false;
    }
    if (whole->get() < range.low || whole->get() > range.high) {
        error(key, "out-of-range",
              fmt::format("{}: {} is too {}", key, whole->get(), whole->get() < range.low ? "few" : "many"), hint);
        return false;
    }
    into = static_cast<int>(whole->get());
    return true;
}

bool Table::number(std::string_view key, double& into, double low, double high, Need need) {
    const std::string hint = fmt::format("a number from {} to {}, without quotes", low, high);
    const toml::node* const found = find(key, need, hint);
    if (found == nullptr) {
        return false;
    }
    if (!found->is_number()) {
        wrong_type(key, *found, "a number", hint);
        return false;
    }
    const double value = found->value<double>().value();
    if (!units::is_sound(value) || value < low || value > high) {
        error(key, "out-of-range", fmt::format("{}: {} is out of range", key, shown(*found)), hint);
        return false;
    }
    into = value;
    return true;
}

bool Table::share(std::string_view key, double& into, const Range& range, Need need) {
    const toml::node* const found = find(key, need, fmt::format("write it like {} = \"{}\"", key, range.example));
    if (found == nullptr) {
        return false;
    }
    std::optional<units::Fraction> value;
    if (found->is_number()) {
        const double written = found->value<double>().value();
        if (!units::is_sound(written) || written < 0 || written > 1) {
            error(key, "out-of-range", fmt::format("{}: {} is not a share from 0 to 1", key, shown(*found)),
                  fmt::format("write it like {} = \"{}\"", key, range.example));
            return false;
        }
        value = quantity_in<units::Fraction>(fmt::format("{} %", written * 100), key, range, place(*found), report_);
    } else {
        value = read_quantity<units::Fraction>(*found, key, range, report_);
    }
    if (value) {
        into = value->si();
    }
    return value.has_value();
}

bool Table::moment(std::string_view key, units::LocalTime& into) {
    const toml::node* const found = find(key, Need::required, how_to_write_a_moment(key));
    const auto value = found != nullptr ? moment(key, *found) : std::nullopt;
    if (value) {
        into = *value;
    }
    return value.has_value();
}

std::optional<units::LocalTime> Table::moment(std::string_view key, const toml::node& item) {
    const auto* const written = item.as_date_time();
    if (written == nullptr) {
        wrong_type(key, item, "a date with a time", how_to_write_a_moment(key));
        return std::nullopt;
    }
    return moment_of(written->get(), key, place(item), report_);
}

bool Table::clock(std::string_view key, units::ClockTime& into) {
    const std::string hint = fmt::format("write it like {} = \"22:30\"", key);
    const toml::node* const found = find(key, Need::required, hint);
    if (found == nullptr) {
        return false;
    }
    if (const auto* const time = found->as_time()) {
        into = {time->get().hour * 3600 + time->get().minute * 60 + time->get().second};
        return true;
    }
    const auto* const text = found->as_string();
    if (text == nullptr) {
        wrong_type(key, *found, "a time of day in quotes", hint);
        return false;
    }
    const auto value = units::parse_clock(quoted(text->get()));
    if (!value) {
        report_.add(value.problems().front(), place(*found), fmt::format("{}: ", key));
        return false;
    }
    into = *value;
    return true;
}

bool Table::word(std::string_view key, std::string& into, const std::vector<std::string_view>& known,
                 std::string_view list_hint, Need need) {
    const toml::node* const found = find(key, need, list_hint);
    if (found == nullptr) {
        return false;
    }
    const auto* const text = found->as_string();
    if (text == nullptr) {
        wrong_type(key, *found, "text in quotes", list_hint);
        return false;
    }
    if (std::find(known.begin(), known.end(), text->get()) != known.end()) {
        into = text->get();
        return true;
    }
    const auto now = facts::renamed(text->get());
    if (now && std::find(known.begin(), known.end(), *now) != known.end()) {
        report_.note(place(key), "word-renamed", fmt::format("{}: \"{}\" is called \"{}\" now", key, text->get(), *now),
                     "both are read");
        into = *now;
        return true;
    }
    const std::string written = quoted(text->get());
    const auto like = units::containing(written, known);
    const auto near = units::nearest(written, known);
    error(key, "word-unknown", fmt::format("{}: {} is not known", key, shown(*found)),
          like.size() > 1 ? fmt::format("is it one of {}? {}", listed(like), list_hint)
          : near          ? fmt::format("did you mean \"{}\"? {}", like.empty() ? *near : like.front(), list_hint)
                          : std::string(list_hint));
    return false;
}

const toml::array* Table::array(std::string_view key, std::string_view due, Need need) {
    const toml::node* const found = find(key, need, due);
    if (found != nullptr && !found->is_array()) {
        wrong_type(key, *found, "a list in square brackets", due);
    }
    return found != nullptr ? found->as_array() : nullptr;
}

const toml::table* Table::inner(std::string_view key, std::string_view due, Need need) {
    const toml::node* const found = find(key, need, due);
    if (found != nullptr && !found->is_table()) {
        wrong_type(key, *found, "a table in braces", due);
    }
    return found != nullptr ? found->as_table() : nullptr;
}

void Table::finish() {
    std::vector<std::string_view> known;
    for (const std::string_view key : asked_) {
        if (std::find(known.begin(), known.end(), key) == known.end()) {
            known.push_back(key);
        }
    }
    for (const auto& [key, value] : table_) {
        const std::string_view name = key.str();
        if (std::find(known.begin(), known.end(), name) != known.end()) {
            continue;
        }
        const auto near = units::nearest(quoted(name), known);
        report_.error(place_of(key.source(), report_), "key-unknown",
                      fmt::format("{} has no key \"{}\"", what_, quoted(name)),
                      near ? fmt::format("did you mean \"{}\"?", *near) : fmt::format("it has: {}", listed(known)));
    }
}

}  // namespace holdwater::trip
