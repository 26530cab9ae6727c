// SPDX-License-Identifier: MIT
#include "answer/review/review_notes.hpp"

#include "answer/review/review_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>

namespace holdwater::answer {
namespace {

using units::Duration;

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
    std::vector<std::pair<Duration, problem::Place>> unclear;
};

class Reader {
  public:
    explicit Reader(const trip::Trip& trip) : trip_(trip), marks_(trip.foods.size()) {}

    void read(const trip::LogRow& row) {
        for (const std::string& part : parts_of(row.note)) {
            for (const Said& said : said_in(part, trip_.foods)) {
                for (const std::size_t food : said.foods) {
                    mark(marks_[food], said, row, trip_.foods[food]);
                }
                if (!said.unknown.empty()) {
                    unknown(said.unknown, row);
                }
            }
        }
    }

    const std::vector<Marks>& marks() const { return marks_; }
    problem::Problems take() { return std::move(remarks_); }

  private:
    void mark(Marks& marks, const Said& said, const trip::LogRow& row, const trip::Food& food) {
        switch (said.what) {
            case Said::What::nothing:
                return;
            case Said::What::unclear:
                marks.unclear.emplace_back(row.at, row.place);
                return;
            case Said::What::in: {
                std::optional<Duration>& in = marks.in.of(said.named);
                if (in) {
                    twice("food-in-twice", "goes in", "food in", row, food);
                }
                in = row.at;
                return;
            }
            case Said::What::out:
            case Said::What::eaten: {
                std::optional<Duration>& out = marks.out.of(said.named);
                // What came out may be served later, or bit by bit: the first moment counts.
                if (out && said.what == Said::What::out) {
                    twice("food-out-twice", "comes out", "food out", row, food);
                }
                out = out.value_or(row.at);
                return;
            }
        }
    }

    void unknown(const std::string& name, const trip::LogRow& row) {
        std::string known;
        for (const trip::Food& food : trip_.foods) {
            known += (known.empty() ? "" : ", ") + food.name;
        }
        remarks_.push_back(placed(
            problem::warning("note-food-unknown", fmt::format("the trip has no food \"{}\"", name), "it has: " + known),
            row.place));
    }

    /// Neither moment is the strict one: one asks for less time to the kill, the other hides time below.
    void twice(problem::Code code, std::string_view what, std::string_view note, const trip::LogRow& row,
               const trip::Food& food) {
        remarks_.push_back(placed(problem::error(code, fmt::format("{} {} a second time", food.name, what),
                                                 fmt::format("leave \"{}\" in the row of its one moment", note)),
                                  row.place));
    }

    const trip::Trip& trip_;
    std::vector<Marks> marks_;
    problem::Problems remarks_;
};

/// The stay of one food, and what is not known about it. Where a moment is not known, the longest stay is looked at for
/// the clock, and no kill of it is trusted.
Stay stay_of(const trip::Food& food, const Marks& marks, const trip::Log& log, problem::Problems& remarks) {
    const trip::LogRow& first = log.rows.front();
    const auto doubt = [&](problem::Code code, std::string text, std::string hint, const problem::Place& place) {
        remarks.push_back(placed(problem::warning(code, std::move(text), std::move(hint)), place));
    };
    Stay stay{marks.in.moment().value_or(first.at), marks.out.moment().value_or(log.rows.back().at)};
    stay.out_written = marks.out.moment().has_value();
    if (!marks.in.moment()) {
        stay.known = false;
        doubt("no-food-in",
              fmt::format("no row says when {} went in; the clock counts from the first row, and no kill is trusted",
                          food.name),
              "write \"food in\" into the note of its row", first.place);
    }
    if (stay.out < stay.in) {
        // Out before in is a slip of the pen.
        stay.known = false;
        doubt("out-before-in", fmt::format("{} comes out before it goes in; no kill is trusted", food.name),
              "check the notes", first.place);
        stay.out = log.rows.back().at;
        stay.out_written = false;
    }
    for (const auto& [at, place] : marks.unclear) {
        // Once the food is out, a note that may say so again changes nothing.
        if (stay.out_written && at > stay.out) {
            continue;
        }
        stay.known = false;
        doubt("note-unclear",
              fmt::format("this note may mean that {} went in or came out; no kill of it is trusted", food.name),
              "write \"food in\" or \"food out\", with \": NAME\" for one food, and anything else after a semicolon",
              place);
    }
    return stay;
}

}  // namespace

bool says_poured(std::string_view note) {
    const std::vector<std::string> parts = parts_of(note);
    return std::any_of(parts.begin(), parts.end(), [](const std::string& part) { return says_poured_first(part); });
}

bool says_before(std::string_view note) {
    const std::vector<std::string> parts = parts_of(note);
    return std::any_of(parts.begin(), parts.end(), [](const std::string& part) { return says_before_pour(part); });
}

bool says_unpoured(std::string_view note) {
    const std::vector<std::string> parts = parts_of(note);
    return std::any_of(parts.begin(), parts.end(),
                       [](const std::string& part) { return says_before_pour(part) || says_none_poured(part); });
}

Notes read_notes(const trip::Trip& trip, const trip::Log& log) {
    Reader reader(trip);
    for (const trip::LogRow& row : log.rows) {
        reader.read(row);
    }
    Notes notes;
    notes.remarks = reader.take();
    for (std::size_t i = 0; i < trip.foods.size(); ++i) {
        notes.stays.push_back(stay_of(trip.foods[i], reader.marks()[i], log, notes.remarks));
    }
    return notes;
}

}  // namespace holdwater::answer
