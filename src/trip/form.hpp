// SPDX-License-Identifier: MIT
// A trip file of our own layout, a key a line, into which values are put: how `quick` and `new` fill in theirs.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::trip {

/// Knows lines such as `altitude = "300 m"   # of the fire` under a heading such as [trip] or [[food]], and the same as
/// a remark, `# loss = "0.9 W/K"`, which is a choice that nobody has made. Everything else stays as it is.
class Form {
  public:
    explicit Form(std::string_view text);

    /// One line with a value.
    struct Entry {
        std::string table;      // "trip", "food"
        std::size_t index = 0;  // of several tables of that name
        std::string key;
        std::string value;   // as it is written, with its quotes
        std::string remark;  // behind it, without its sign; may be empty
        bool chosen = true;  // false: the line is a remark
    };
    const std::vector<Entry>& entries() const { return entries_; }

    /// As it stands now. Throws std::logic_error where the form has no such line, as all of these do: our own fault.
    const Entry& entry(std::string_view table, std::string_view key, std::size_t index = 0) const;
    /// The same; null where there is no such line.
    const Entry* find(std::string_view table, std::string_view key, std::size_t index = 0) const;
    /// Writes what somebody said in the place of the form's own value, whose remark goes. A choice that nobody had made
    /// is made.
    void put(std::string_view table, std::string_view key, std::string_view value, std::size_t index = 0);
    /// Writes another value of our own; its remark stays.
    void suggest(std::string_view table, std::string_view key, std::string_view value, std::size_t index = 0);
    /// The line becomes a remark: the choice is not made.
    void leave_out(std::string_view table, std::string_view key);

    std::string text() const;

  private:
    struct Line {
        std::string text;  // as it stood in the form; still so, unless its entry was written into
        std::optional<std::size_t> entry;
        bool written = false;
    };
    Entry& to_write(std::string_view table, std::string_view key, std::size_t index);

    std::vector<Line> lines_;
    std::vector<Entry> entries_;
};

/// A text as TOML has it, in quotes.
std::string in_toml(std::string_view text);

}  // namespace holdwater::trip
