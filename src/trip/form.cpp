// SPDX-License-Identifier: MIT
#include "trip/form.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace holdwater::trip {
namespace {

constexpr std::size_t remark_column = 35;
constexpr std::string_view key_letters = "abcdefghijklmnopqrstuvwxyz_";

/// "[trip]" and "# [[food]]" are headings; nothing for any other line.
std::optional<std::string> heading_in(std::string_view line) {
    if (line.starts_with("# ")) {
        line.remove_prefix(2);
    }
    if (!line.starts_with('[')) {
        return std::nullopt;
    }
    const std::size_t begin = line.find_first_of(key_letters);
    const std::size_t end = line.find(']');
    return begin < end && end != std::string_view::npos ? std::optional(std::string(line.substr(begin, end - begin)))
                                                        : std::nullopt;
}

/// Where the remark of a line begins, at its sign; the size of the line without one.
std::size_t remark_of(std::string_view line) {
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (line[i] == '"' && (i == 0 || line[i - 1] != '\\')) {
            quoted = !quoted;
        } else if (line[i] == '#' && !quoted) {
            return i;
        }
    }
    return line.size();
}

std::string_view bare(std::string_view text) {
    const std::size_t begin = std::min(text.find_first_not_of(' '), text.size());
    const std::size_t end = text.find_last_not_of(' ');
    return end == std::string_view::npos ? std::string_view() : text.substr(begin, end + 1 - begin);
}

std::optional<Form::Entry> entry_in(std::string_view line, const std::string& table) {
    const bool chosen = !line.starts_with("# ");
    if (!chosen) {
        line.remove_prefix(2);
    }
    const std::size_t end = line.find_first_not_of(key_letters);
    if (end == 0 || end == std::string_view::npos || line.substr(end, 3) != " = ") {
        return std::nullopt;
    }
    const std::string_view rest = line.substr(end + 3);
    const std::size_t sign = remark_of(rest);
    const std::string_view remark = sign < rest.size() ? rest.substr(sign + 1) : std::string_view();
    return Form::Entry{table, std::string(line.substr(0, end)), std::string(bare(rest.substr(0, sign))),
                       std::string(bare(remark)), chosen};
}

std::string form_line(const Form::Entry& entry) {
    const std::string line = fmt::format("{}{} = {}", entry.chosen ? "" : "# ", entry.key, entry.value);
    if (entry.remark.empty()) {
        return line;
    }
    const std::size_t gap = line.size() + 1 < remark_column ? remark_column - line.size() : 2;
    return line + std::string(gap, ' ') + "# " + entry.remark;
}

}  // namespace

Form::Form(std::string_view text) {
    std::string table;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        Line line{std::string(text.substr(0, end)), std::nullopt};
        text.remove_prefix(std::min(end + 1, text.size()));
        if (const auto heading = heading_in(line.text)) {
            table = *heading;
        } else if (auto entry = entry_in(line.text, table)) {
            line.entry = entries_.size();
            entries_.push_back(std::move(*entry));
        }
        lines_.push_back(std::move(line));
    }
}

const Form::Entry& Form::entry(std::string_view table, std::string_view key) const {
    const auto found = std::find_if(entries_.begin(), entries_.end(),
                                    [&](const Entry& one) { return one.table == table && one.key == key; });
    if (found == entries_.end()) {
        throw std::logic_error(fmt::format("the form has no {} in [{}]", key, table));
    }
    return *found;
}

Form::Entry& Form::to_write(std::string_view table, std::string_view key) {
    const auto place = static_cast<std::size_t>(&entry(table, key) - entries_.data());
    std::find_if(lines_.begin(), lines_.end(), [&](const Line& line) { return line.entry == place; })->written = true;
    return entries_[place];
}

void Form::suggest(std::string_view table, std::string_view key, std::string_view value) {
    Entry& line = to_write(table, key);
    line.value = value;
    line.chosen = true;
}

void Form::put(std::string_view table, std::string_view key, std::string_view value) {
    suggest(table, key, value);
    to_write(table, key).remark.clear();
}

void Form::leave_out(std::string_view table, std::string_view key) {
    to_write(table, key).chosen = false;
}

std::string Form::text() const {
    std::string all;
    for (const Line& line : lines_) {
        all += (line.written ? form_line(entries_[*line.entry]) : line.text) + "\n";
    }
    return all;
}

std::string in_toml(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') {
            out += '\\';
        }
        out += c;
    }
    return out + "\"";
}

}  // namespace holdwater::trip
