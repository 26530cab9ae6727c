// SPDX-License-Identifier: MIT
// TOML that cannot be read: the reader stops at the first such place, so the hint has to be a good guess.
#include "trip/parts.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::trip {
namespace {

std::string_view line_of(std::string_view text, unsigned number) {
    for (unsigned line = 1; line < number; ++line) {
        const auto end = text.find('\n');
        if (end == std::string_view::npos) {
            return {};
        }
        text.remove_prefix(end + 1);
    }
    return text.substr(0, std::min(text.find('\n'), text.size()));
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// What stands behind the last "=" before the fault, without blanks in front.
std::string_view value_at(std::string_view line, std::size_t column) {
    const auto equals = line.substr(0, std::min(column, line.size())).rfind('=');
    if (equals == std::string_view::npos) {
        return {};
    }
    line.remove_prefix(equals + 1);
    const auto first = line.find_first_not_of(" \t\r");
    return first == std::string_view::npos ? std::string_view{} : line.substr(first);
}

bool looks_like(std::string_view value, std::string_view shape) {
    if (value.size() < shape.size()) {
        return false;
    }
    for (std::size_t i = 0; i < shape.size(); ++i) {
        if (shape[i] == 'd' ? !is_digit(value[i]) : value[i] != shape[i]) {
            return false;
        }
    }
    return true;
}

/// The reader gives the place of the last good character, so the first bad byte lies on its line or begins the next.
bool bad_bytes_at(std::string_view text, unsigned line) {
    const auto bad = first_not_utf8(text);
    if (!bad) {
        return false;
    }
    const std::string_view before = text.substr(0, *bad);
    const auto bad_line = 1 + std::count(before.begin(), before.end(), '\n');
    return bad_line == line || (bad_line == line + 1 && before.ends_with('\n'));
}

std::string hint_for(std::string_view line, std::size_t column, std::string_view description, bool bad_bytes) {
    // The reader has no codes, and a key that came before is nothing that its line shows: its wording is asked. Another
    // wording in a later version would cost this hint, no more; tests/trip/bad holds it.
    if (description.find("redefine") != std::string_view::npos) {
        return "each key once in its table; several foods are each headed [[food]], in double brackets";
    }
    const std::string_view value = value_at(line, column);
    if (description.find("escape sequence") != std::string_view::npos) {
        return "a backslash in quotes is written twice";
    }
    if (looks_like(value, "dddd-d")) {
        return "a date with a time is written 2027-10-15T16:00:00, with seconds";
    }
    if (looks_like(value, "dd:dd") || looks_like(value, "d:dd")) {
        return "a time of day stands in quotes, \"08:00\"";
    }
    const bool sign = !value.empty() && (value.front() == '-' || value.front() == '+');
    if (value.size() > (sign ? 1U : 0U) && is_digit(value[sign ? 1 : 0])) {
        return "a number with its unit stands in quotes, such as \"85 mm\"; a plain number has a point, no comma";
    }
    if (bad_bytes) {
        return "save the file as UTF-8 text";
    }
    if (!value.empty() && (value.front() == '"' || value.front() == '\'')) {
        return "is a quotation mark missing at the end?";
    }
    if (!value.empty() &&
        ((value.front() >= 'a' && value.front() <= 'z') || (value.front() >= 'A' && value.front() <= 'Z'))) {
        return "words stand in quotes, except true and false";
    }
    return "a line is key = value, [table] or [[table]]; the rest of the file is read when this line is right";
}

}  // namespace

void report_syntax(const toml::parse_error& fault, std::string_view text, Report& report) {
    const auto begin = fault.source().begin;
    const std::string_view line = line_of(text, begin.line);
    std::string_view description = fault.description();
    // "Error while parsing key: ..." helps nobody; without that beginning the message is quoted whole.
    if (description.starts_with("Error while parsing ")) {
        description.remove_prefix(std::min(description.find(": ") + 2, description.size()));
    }
    report.error(report.place(static_cast<int>(begin.line), static_cast<int>(begin.column)), "toml-unreadable",
                 fmt::format("this cannot be read: {}", quoted(description, 120)),
                 hint_for(line, begin.column, description, bad_bytes_at(text, begin.line)));
}

}  // namespace holdwater::trip
