// SPDX-License-Identifier: MIT
#include "trip/form.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <stdexcept>

namespace holdwater::trip {
namespace {

constexpr std::size_t remark_column = 35;
constexpr std::string_view key_letters = "abcdefghijklmnopqrstuvwxyz_";

/// "[trip]" or "[[food]]", or one of these as a remark; nothing for any other line.
struct Heading {
    std::string table;
    bool chosen = true;
};

std::optional<Heading> heading_in(std::string_view line) {
    const bool chosen = !line.starts_with("# ");
    if (!chosen) {
        line.remove_prefix(2);
    }
    const std::size_t begin = line.find_first_not_of('[');
    if (begin == 0 || begin > 2 || begin == std::string_view::npos) {
        return std::nullopt;
    }
    const std::size_t end = line.find_first_not_of(key_letters, begin);
    const bool closed =
        end != begin && end != std::string_view::npos && line.substr(end, begin) == std::string(begin, ']');
    return closed ? std::optional(Heading{std::string(line.substr(begin, end - begin)), chosen}) : std::nullopt;
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

std::optional<Form::Entry> entry_in(std::string_view line) {
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
    Form::Entry entry;
    entry.key = line.substr(0, end);
    entry.value = bare(rest.substr(0, sign));
    entry.remark = bare(remark);
    entry.chosen = chosen;
    return entry;
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
    Heading real;  // what stands under it belongs to it; remarks to the last heading of either sort
    Heading last;
    std::map<std::string, std::size_t> seen;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        Line line{std::string(text.substr(0, end)), std::nullopt};
        text.remove_prefix(std::min(end + 1, text.size()));
        if (const auto heading = heading_in(line.text)) {
            last = *heading;
            if (heading->chosen) {
                real = *heading;
                ++seen[real.table];
            }
        } else if (auto entry = entry_in(line.text)) {
            entry->table = entry->chosen ? real.table : last.table;
            const std::size_t number = seen[entry->table];
            entry->index = number > 0 ? number - 1 : 0;
            line.entry = entries_.size();
            entries_.push_back(std::move(*entry));
        }
        lines_.push_back(std::move(line));
    }
}

const Form::Entry* Form::find(std::string_view table, std::string_view key, std::size_t index) const {
    const auto found = std::find_if(entries_.begin(), entries_.end(), [&](const Entry& one) {
        return one.table == table && one.key == key && one.index == index;
    });
    return found != entries_.end() ? &*found : nullptr;
}

const Form::Entry& Form::entry(std::string_view table, std::string_view key, std::size_t index) const {
    const Entry* const found = find(table, key, index);
    if (found == nullptr) {
        throw std::logic_error(fmt::format("the form has no {} in [{}]", key, table));
    }
    return *found;
}

Form::Entry& Form::to_write(std::string_view table, std::string_view key, std::size_t index) {
    const auto place = static_cast<std::size_t>(&entry(table, key, index) - entries_.data());
    std::find_if(lines_.begin(), lines_.end(), [&](const Line& line) { return line.entry == place; })->written = true;
    return entries_[place];
}

void Form::suggest(std::string_view table, std::string_view key, std::string_view value, std::size_t index) {
    Entry& line = to_write(table, key, index);
    line.value = value;
    line.chosen = true;
}

void Form::put(std::string_view table, std::string_view key, std::string_view value, std::size_t index) {
    suggest(table, key, value, index);
    to_write(table, key, index).remark.clear();
}

void Form::leave_out(std::string_view table, std::string_view key) {
    to_write(table, key, 0).chosen = false;
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
