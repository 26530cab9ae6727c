// SPDX-License-Identifier: MIT
#include "trip/amend.hpp"

#include "trip/edits.hpp"
#include "trip/read_trip.hpp"
#include "units/toml_bounds.hpp"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <stdexcept>
#include <utility>
#include <vector>

namespace holdwater::trip {
namespace {

/// One line of the file, and what becomes of it.
struct Line {
    std::string text;
    std::string remark;              // behind it
    bool out = false;                // becomes a remark as a whole
    std::vector<std::string> after;  // new lines behind it
};

std::vector<Line> lines_of(std::string_view text) {
    std::vector<Line> lines;
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        Line line;
        line.text = text.substr(from, end - from);
        lines.push_back(std::move(line));
        from = end + 1;
    }
    return lines;
}

/// Byte of the nth letter of a UTF-8 line, from 1.
std::size_t byte_of(const std::string& line, std::size_t column) {
    std::size_t byte = 0;
    for (std::size_t letter = 1; letter < column && byte < line.size(); ++letter) {
        ++byte;
        while (byte < line.size() && (static_cast<unsigned char>(line[byte]) & 0xC0U) == 0x80U) {
            ++byte;
        }
    }
    return byte;
}

/// Behind the value that begins there; nothing for one that may be of several lines.
std::optional<std::size_t> end_of_value(const std::string& line, std::size_t from) {
    if (from >= line.size() || line[from] == '[' || line[from] == '{' || line.compare(from, 3, "\"\"\"") == 0 ||
        line.compare(from, 3, "'''") == 0) {
        return std::nullopt;
    }
    const char quote = line[from];
    if (quote == '"' || quote == '\'') {
        for (std::size_t i = from + 1; i < line.size(); ++i) {
            if (line[i] == '\\' && quote == '"') {
                ++i;
            } else if (line[i] == quote) {
                return i + 1;
            }
        }
        return std::nullopt;
    }
    constexpr std::size_t date = 10;  // letters; a time may stand behind it after a blank
    std::size_t end = line.find_first_of(" \t,]}#\r", from);
    const bool dated = end != std::string::npos && end - from == date && line[from + 4] == '-' && line[end] == ' ' &&
                       end + 1 < line.size() && line[end + 1] >= '0' && line[end + 1] <= '9';
    end = dated ? line.find_first_of(" \t,]}#\r", end + 1) : end;
    return std::min(end, line.size());
}

std::string_view without_blanks(std::string_view text) {
    const auto from = text.find_first_not_of(" \t");
    return from == std::string_view::npos ? std::string_view{} : text.substr(from);
}

/// True if the line begins with this key.
bool begins_with_key(const std::string& line, std::string_view key) {
    const std::string_view text = without_blanks(line);
    return text.starts_with(key) && without_blanks(text.substr(key.size())).starts_with('=');
}

std::size_t last_line_of(const toml::node& node) {
    std::size_t last = std::max(node.source().begin.line, node.source().end.line);
    if (const auto* const table = node.as_table()) {
        for (const auto& [key, value] : *table) {
            last = std::max(last, last_line_of(value));
        }
    }
    return last;
}

class Amendment {
  public:
    Amendment(std::string_view text, const toml::table& file) : lines_(lines_of(text)), file_(&file) {}

    bool apply(const Edit& edit) {
        const toml::table* const table = table_of(edit.table, edit.index);
        if (table == nullptr) {
            return false;
        }
        const toml::node* const own = table->get(edit.key);
        if (own == nullptr) {
            return edit.value.empty() || add(*table, edit);
        }
        return edit.value.empty() ? leave_out(*own, edit.key) : replace(*own, edit);
    }
    /// The whole table becomes a remark.
    bool leave_out_table(const std::string& list, std::size_t index) {
        const toml::table* const table = table_of(list, index);
        if (table == nullptr || table->is_inline()) {
            return false;
        }
        const std::size_t first = table->source().begin.line;
        if (!without_blanks(line(first).text).starts_with("[[" + list)) {
            return false;
        }
        for (std::size_t n = first; n <= last_line_of(*table); ++n) {
            line(n).out = true;
        }
        line(first).remark = "left out";
        return true;
    }
    void append(const std::string& text) { end_ += text; }

    std::string take() && {
        std::string out;
        for (Line& one : lines_) {
            std::string text = std::move(one.text);
            const bool carriage = !text.empty() && text.back() == '\r';
            if (carriage) {
                text.pop_back();
            }
            if (one.out) {
                text = "# " + text;
            }
            if (!one.remark.empty()) {
                text += "  # " + one.remark;
            }
            out += text + (carriage ? "\r\n" : "\n");
            for (const std::string& more : one.after) {
                out += more + (carriage ? "\r\n" : "\n");
            }
        }
        // The text behind the last end of line was a line as well.
        out.pop_back();
        if (!end_.empty()) {
            out += (out.empty() || out.back() == '\n' ? "\n" : "\n\n") + end_;
        }
        return out;
    }

  private:
    Line& line(std::size_t number) { return lines_.at(number - 1); }

    const toml::table* table_of(const std::string& name, std::size_t index) const {
        const toml::node* const found = file_->get(name);
        if (found == nullptr) {
            return nullptr;
        }
        if (const auto* const list = found->as_array()) {
            const toml::node* const one = list->get(index);
            return one != nullptr ? one->as_table() : nullptr;
        }
        return found->as_table();
    }

    bool replace(const toml::node& own, const Edit& edit) {
        Line& here = line(own.source().begin.line);
        const std::size_t from = byte_of(here.text, own.source().begin.column);
        const auto end = end_of_value(here.text, from);
        if (!end || !here.remark.empty()) {
            return false;
        }
        const std::string old = here.text.substr(from, *end - from);
        // The remark that stands behind it stays where it was, if there is room.
        const std::size_t gap = here.text.find_first_not_of(' ', *end);
        const bool remarked = gap != std::string::npos && here.text[gap] == '#';
        std::string rest = here.text.substr(*end);
        if (remarked) {
            const std::size_t used = from + edit.value.size();
            rest = std::string(gap > used + 1 ? gap - used : 2, ' ') + here.text.substr(gap);
        }
        here.text = here.text.substr(0, from) + edit.value + rest;
        here.remark = fmt::format("was: {}", old);
        return true;
    }

    bool leave_out(const toml::node& own, const std::string& key) {
        const std::size_t first = own.source().begin.line;
        if (!begins_with_key(line(first).text, key)) {
            return false;
        }
        for (std::size_t n = first; n <= last_line_of(own); ++n) {
            line(n).out = true;
        }
        return true;
    }

    bool add(const toml::table& table, const Edit& edit) {
        if (table.is_inline()) {
            return false;
        }
        const toml::node* const behind = table.get(edit.behind);
        const std::size_t place = behind != nullptr ? last_line_of(*behind) : table.source().begin.line;
        const bool own_line = behind == nullptr ? without_blanks(line(place).text).starts_with('[')
                                                : begins_with_key(line(behind->source().begin.line).text, edit.behind);
        if (!own_line) {
            return false;
        }
        line(place).after.push_back(fmt::format("{} = {}  # added", edit.key, edit.value));
        return true;
    }

    std::vector<Line> lines_;
    const toml::table* file_;
    std::string end_;
};

}  // namespace

std::optional<std::string> amended(std::string_view text, const Trip& before, const Trip& after) {
    if (units::beyond_toml_bounds(text, {})) {
        return std::nullopt;
    }
    std::optional<toml::table> file;
    try {
        file = toml::parse(text);
    } catch (const toml::parse_error&) {
        return std::nullopt;
    }
    Amendment amendment(text, *file);
    for (const Edit& edit : edits_between(before, after)) {
        if (!amendment.apply(edit)) {
            return std::nullopt;
        }
    }
    for (const std::size_t food : foods_gone(before, after)) {
        if (!amendment.leave_out_table("food", food)) {
            return std::nullopt;
        }
    }
    for (std::size_t i = before.boxes.size(); i < after.boxes.size(); ++i) {
        amendment.append(canonical(after.boxes[i]));
    }
    return std::move(amendment).take();
}

std::string mended_text(std::string_view text, const Trip& before, const Trip& after,
                        const std::function<problem::Result<Trip>(const std::string&)>& read_back) {
    const std::string wanted = canonical(after);
    const auto reads_so = [&](const std::string& mended) {
        const auto read = read_back(mended);
        return read && canonical(*read) == wanted;
    };
    if (auto same_layout = amended(text, before, after); same_layout && reads_so(*same_layout)) {
        return *std::move(same_layout);
    }
    std::string anew = "# Written anew: the changes do not fit into the layout of the file before.\n\n" + wanted;
    if (!reads_so(anew)) {
        throw std::logic_error("a mended trip does not read back as it was planned");
    }
    return anew;
}

}  // namespace holdwater::trip
