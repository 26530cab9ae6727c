// SPDX-License-Identifier: MIT
#include "answer/review_notes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string>

namespace holdwater::answer {
namespace {

using units::Duration;

std::string_view trimmed(std::string_view text) {
    const auto from = text.find_first_not_of(" \t");
    return from == std::string_view::npos ? std::string_view{}
                                          : text.substr(from, text.find_last_not_of(" \t") - from + 1);
}

/// Small letters, so that "Food In" is understood; letters outside ASCII stay as they are.
std::string small(std::string_view text) {
    std::string result(trimmed(text));
    for (char& c : result) {
        if (c >= 'A' && c <= 'Z') {
            c = static_cast<char>(c - 'A' + 'a');
        }
    }
    return result;
}

/// The notes of a row, one by one.
std::vector<std::string> parts_of(std::string_view note) {
    std::vector<std::string> parts;
    while (!note.empty()) {
        const auto end = note.find(';');
        parts.push_back(small(note.substr(0, end)));
        note = end == std::string_view::npos ? std::string_view{} : note.substr(end + 1);
    }
    return parts;
}

/// The name behind one of these words: "" for the bare word; nothing if the note says something else.
template <std::size_t Count>
std::optional<std::string> name_after(const std::string& note, const std::array<std::string_view, Count>& words) {
    for (const std::string_view word : words) {
        if (note == word) {
            return "";
        }
        if (note.starts_with(word) && trimmed(std::string_view(note).substr(word.size())).starts_with(':')) {
            return std::string(trimmed(std::string_view(note).substr(note.find(':') + 1)));
        }
    }
    return std::nullopt;
}

constexpr std::array<std::string_view, 6> in_words{"food in",      "in",      "food goes in",
                                                   "food went in", "meat in", "all food in"};
constexpr std::array<std::string_view, 5> out_words{"food out", "out", "served", "meat out", "all food out"};

/// A note that names the food counts before one for all.
struct Mark {
    std::optional<Duration> named;
    std::optional<Duration> general;
    std::optional<Duration> moment() const { return named ? named : general; }
    std::optional<Duration>& of(bool is_named) { return is_named ? named : general; }
};

struct Marks {
    Mark in;
    Mark out;
};

class Reader {
  public:
    explicit Reader(const trip::Trip& trip) : trip_(trip), marks_(trip.foods.size()) {}

    void read(const trip::LogRow& row) {
        for (const std::string& part : parts_of(row.note)) {
            if (const auto name = name_after(part, in_words)) {
                mark(*name, row, [&](Marks& m, const trip::Food& food) {
                    std::optional<Duration>& in = m.in.of(!name->empty());
                    if (in) {
                        twice(row, food);
                    }
                    in = row.at;
                });
            } else if (const auto gone = name_after(part, out_words)) {
                mark(*gone, row, [&](Marks& m, const trip::Food&) { m.out.of(!gone->empty()) = row.at; });
            }
        }
    }

    const std::vector<Marks>& marks() const { return marks_; }
    problem::Problems take() { return std::move(remarks_); }

  private:
    template <class Set>
    void mark(const std::string& name, const trip::LogRow& row, Set set) {
        bool found = false;
        for (std::size_t i = 0; i < marks_.size(); ++i) {
            if (name.empty() || small(trip_.foods[i].name) == name) {
                set(marks_[i], trip_.foods[i]);
                found = true;
            }
        }
        if (!found) {
            std::string known;
            for (const trip::Food& food : trip_.foods) {
                known += (known.empty() ? "" : ", ") + food.name;
            }
            problem::Problem unknown = problem::warning(
                "note-food-unknown", fmt::format("the trip has no food \"{}\"; the note is left out", name),
                "it has: " + known);
            unknown.place = row.place;
            remarks_.push_back(unknown);
        }
    }

    /// Neither moment is the strict one: the earlier asks for less time to the kill, the later hides time below.
    void twice(const trip::LogRow& row, const trip::Food& food) {
        problem::Problem fault = problem::error("food-in-twice", fmt::format("{} goes in a second time", food.name),
                                                "leave \"food in\" in the row of its one moment");
        fault.place = row.place;
        remarks_.push_back(fault);
    }

    const trip::Trip& trip_;
    std::vector<Marks> marks_;
    problem::Problems remarks_;
};

}  // namespace

bool says_poured(std::string_view note) {
    constexpr std::array<std::string_view, 8> words{"top-up",    "top up", "topup",     "topped up",
                                                    "topped-up", "swap",   "hot water", "poured"};
    const std::vector<std::string> parts = parts_of(note);
    return std::any_of(parts.begin(), parts.end(), [&](const std::string& part) {
        return std::any_of(words.begin(), words.end(), [&](std::string_view word) { return part.starts_with(word); });
    });
}

Notes read_notes(const trip::Trip& trip, const trip::Log& log) {
    Reader reader(trip);
    for (const trip::LogRow& row : log.rows) {
        reader.read(row);
    }
    Notes notes;
    notes.remarks = reader.take();
    for (std::size_t i = 0; i < trip.foods.size(); ++i) {
        const Marks& marks = reader.marks()[i];
        const trip::LogRow& first = log.rows.front();
        Stay stay{marks.in.moment().value_or(first.at), marks.out.moment().value_or(log.rows.back().at)};
        if (!marks.in.moment()) {
            problem::Problem assumed = problem::warning(
                "no-food-in", fmt::format("no row says when {} went in; the first row is taken", trip.foods[i].name),
                "write \"food in\" into the note of its row");
            assumed.place = first.place;
            notes.remarks.push_back(assumed);
        }
        if (stay.out < stay.in) {
            // Out before in is a slip of the pen; the longer stay is looked at.
            problem::Problem swapped = problem::warning(
                "out-before-in",
                fmt::format("{} comes out before it goes in; its \"out\" is left out", trip.foods[i].name),
                "check the notes");
            swapped.place = first.place;
            notes.remarks.push_back(swapped);
            stay.out = log.rows.back().at;
        }
        notes.stays.push_back(stay);
    }
    return notes;
}

}  // namespace holdwater::answer
