// SPDX-License-Identifier: MIT
#include "cli/commands/new_asking.hpp"

#include "answer/gauge/box_loss.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/quick_meal.hpp"
#include "cli/commands/quick_rows.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"
#include "cli/files/local_clock.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/line/help.hpp"
#include "cli/line/interview.hpp"
#include "cli/text/wrap.hpp"
#include "facts/facts.hpp"
#include "plan/result/boxes.hpp"
#include "plan/result/effort.hpp"
#include "trip/moment.hpp"
#include "trip/moved_dates.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

namespace holdwater::cli {
namespace {

// --- What both ways of asking have ---

/// Whether a trip holds, without advice: for whoever wants to know while still asking.
problem::Problems against(const trip::Trip& trip) {
    plan::Effort effort;
    effort.advise = effort.what_ifs = effort.ways = effort.for_cards = false;
    effort.schedule_only = effort.whether = true;
    problem::Problems faults;
    for (const trip::Trip& part : plan::one_trip_a_box(trip)) {
        if (const auto made = plan::make_plan(part, effort); !made) {
            faults.insert(faults.end(), made.problems().begin(), made.problems().end());
        }
    }
    return faults;
}

void tell_verdict(std::string_view when, const problem::Problems& faults) {
    constexpr std::size_t verdict_column = 4;
    if (faults.empty()) {
        fmt::print("{}", wrap(fmt::format("{}: a plan holds.", when), verdict_column));
        return;
    }
    const auto first = std::find_if(faults.begin(), faults.end(), [](const problem::Problem& one) {
        return one.severity == problem::Severity::error;
    });
    const problem::Problem& fault = first != faults.end() ? *first : faults.front();
    fmt::print("{}", wrap(fmt::format("{}: no plan holds: {}", when, fault.message), verdict_column));
}

/// Writes the file, and says what it is worth and what to do next.
Exit written_and_told(const std::string& text, const std::string& path, bool whole) {
    const auto read = trip_of(text, path);
    if (!read) {
        problem::Problems faults = read.problems();
        for (problem::Problem& one : faults) {
            one.place.reset();  // of a file that is not there
        }
        tell(faults);
        return exit_for(faults);
    }
    const auto written = write_file(path, text, false);
    if (!written) {
        tell(written.problems());
        return Exit::bad_input;
    }
    fmt::print("{}\n", path);
    if (!whole) {
        fmt::print("Broken off: what was said stands there, the rest is taken cautiously.\n");
        return Exit::check;
    }
    const problem::Problems faults = against(*read);
    tell_verdict("As it stands", faults);
    fmt::print("Then: holdwater {} {}\n", faults.empty() ? "cards" : "mend", path);
    return Exit::done;
}

/// "--thickness has no unit (write it like --thickness "35 mm")" without the name of the option.
std::string without_option(std::string text, std::string_view option) {
    for (auto at = text.find(option); at != std::string::npos; at = text.find(option)) {
        const std::size_t rest = text.find_first_not_of(": ", at + option.size());
        text.erase(at, (rest == std::string::npos ? text.size() : rest) - at);
    }
    return text;
}

std::string unquoted(const std::string& value) {
    return value.size() >= 2 && value.front() == '"' ? value.substr(1, value.size() - 2) : value;
}

// --- A new trip ---

/// Collects answers as the line of `quick` that would say the same, and asks that command whether each is right.
class NewTrip {
  public:
    NewTrip(const std::string& form, std::string path, Interview& interview)
        : form_(form),
          path_(std::move(path)),
          interview_(interview),
          quick_(quick_command()),
          usual_{{quick_rows::kind.name, in_form("food", "kind")},
                 {quick_rows::thickness.name, in_form("food", "thickness")},
                 {quick_rows::pieces.name, in_form("food", "pieces")},
                 {quick_rows::water.name, in_form("box", "water")},
                 {quick_rows::serve.name, usual_meal}} {}

    void ask_all() {
        using namespace quick_rows;
        about("What is cooked?", kind, in_form("food", "kind"), kinds_in_words());
        about("How thick is a piece, at its thickest place?", thickness, in_form("food", "thickness"));
        about("What does a piece look like most: slab, round (a roll) or ball?", shape, in_form("food", "shape"));
        about("How many such pieces?", pieces, in_form("food", "pieces"));
        about("What was done to the meat: intact, tied, tenderised, injected, rolled, stuffed or minced?", cut,
              "intact");
        about("Whose food-safety rules, of which country?", rules, in_form("trip", "rules"));
        ask_risk();
        about("When is the meal?", serve, usual_meal);
        tell_so_far();
        about("How much hot water goes into the box?", water, in_form("box", "water"));
        about("How much heat does the box lose, by a test?", loss, "not tested", {}, [this] { return untested(); });
        about("How far may the thermometer be off?", thermometer, in_form("box", "thermometer"));
        about("How high above the sea is the fire?", altitude, in_form("trip", "altitude"));
        about("How cold may the air get?", air, "5 C");
        about("How many pots fit on the fire together?", pots, in_form("fire", "pots"));
        about("How much does one pot hold, to the brim?", pot, in_form("fire", "pot"));
    }

    /// The file, as far as it is known.
    trip::Form form_now() const {
        CommandLine line = line_;
        for (const auto& [row, usual] : usual_) {
            line.given.try_emplace(std::string(row), std::vector{usual});
        }
        Options options(quick_, line);
        QuickMeal meal = read_meal(options);
        std::erase_if(meal.said, [&](const SaidValue& one) { return !line_.given.contains(one.row->name); });
        if (at_risk_) {
            meal.said.push_back({&quick_rows::nobody_at_risk, "trip", "at_risk", *at_risk_ ? "true" : "false"});
        }
        trip::Form form = form_;
        fill_in(form, meal, clock_now());
        return form;
    }

  private:
    std::string in_form(std::string_view table, std::string_view key) const {
        return unquoted(form_.entry(table, key).value);
    }

    static std::string kinds_in_words() {
        std::string all = "One of:";
        for (const facts::FoodKind& food : facts::facts().foods()) {
            all += fmt::format("{} {}", &food == facts::facts().foods().data() ? "" : ",", food.key);
        }
        return all + ". `holdwater sources --foods` tells more.";
    }

    void about(const std::string& words, const OptionRow& row, const std::string& usual, const std::string& more = {},
               std::function<std::string()> unsaid = {}) {
        Question question;
        question.words = words;
        question.by_default = usual;
        question.more = more.empty() ? meaning(quick_, row) : more;
        question.take = [this, &row](const std::string& answer) { return take(row, answer); };
        question.unsaid = unsaid ? std::move(unsaid) : [usual] { return fmt::format("Taken: {}.", usual); };
        interview_.ask(question);
    }

    Taken take(const OptionRow& row, std::string answer) {
        if (row.holds == Holds::food_kind) {  // "Pork loin" is the key pork-loin
            std::replace(answer.begin(), answer.end(), ' ', '-');
            std::transform(answer.begin(), answer.end(), answer.begin(),
                           [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
        }
        CommandLine line = line_;
        line.given[std::string(row.name)] = {answer};
        Options options(quick_, line);
        read_meal(options);
        for (const problem::Problem& fault : options.faults()) {
            if (fault.message.starts_with(row.name)) {
                std::string says = without_option(fault.message, row.name);
                if (!fault.hint.empty()) {
                    says += fmt::format(" ({})", without_option(fault.hint, row.name));
                }
                return {false, says};
            }
        }
        line_ = std::move(line);
        return {};
    }

    void ask_risk() {
        Question question;
        question.words = "Is anyone who eats pregnant, under 5, 65 or over, or of weakened immunity? yes or no";
        question.by_default = "yes";
        question.more =
            "People at risk get meat that is cooked further, to what the rules ask for them; some foods are then "
            "refused.";
        question.take = [this](const std::string& answer) {
            if (answer != "yes" && answer != "no") {
                return Taken{false, "yes or no"};
            }
            at_risk_ = answer == "yes";
            return Taken{};
        };
        question.unsaid = [] { return std::string("Taken: yes, which cooks it further."); };
        interview_.ask(question);
    }

    void tell_so_far() const {
        if (interview_.broken_off()) {
            return;
        }
        if (const auto trip = trip_of(form_now().text(), path_)) {
            tell_verdict("So far, with an ordinary box that nobody has tested", against(*trip));
        }
    }

    std::string untested() const {
        const auto trip = trip_of(form_now().text(), path_);
        const auto loss = trip ? answer::loss_of(trip->boxes.front(), units::HeatCapacity{})
                               : problem::Result<heat::BoxLoss>(trip.problems());
        return loss ? fmt::format(
                          "Not tested: taken as an ordinary box, loss {:.1f} to {:.1f} W/K. A test makes the plan "
                          "easier: `holdwater gauge`.",
                          loss->low.si(), loss->high.si())
                    : std::string("Not tested: taken as an ordinary box.");
    }

    static constexpr const char* usual_meal = "18:30";

    const trip::Form form_;
    const std::string path_;
    Interview& interview_;
    const Command quick_;
    const std::map<std::string_view, std::string> usual_;  // of rows that must be there, where nobody said them
    CommandLine line_;                                     // what was said
    std::optional<bool> at_risk_;
};

// --- An old trip for another time ---

/// The number of days between two dates.
int days_between(units::LocalTime from, units::LocalTime to) {
    constexpr double day_seconds = 86400.0;
    const auto midnight = [](units::LocalTime t) { return t.after(units::seconds(-t.second_of_day())); };
    return static_cast<int>(std::lround(midnight(to).since(midnight(from)).si() / day_seconds));
}

class OldTrip {
  public:
    OldTrip(std::string text, const trip::Trip& trip, Interview& interview)
        : text_(std::move(text)), form_(text_), trip_(trip), interview_(interview) {}

    void ask_all() {
        line("What is the trip called?", "trip", "name", 0, true);
        ask_day();
        line("How many people eat?", "trip", "people", 0, false);
        for (std::size_t i = 0; i < trip_.foods.size(); ++i) {
            line(fmt::format("How many pieces of {}?", trip_.foods[i].name), "food", "pieces", i, false);
            line("How thick is one?", "food", "thickness", i, true);
        }
        line("How high above the sea is the fire?", "trip", "altitude", 0, true);
    }

    std::string text() const { return trip::moved_dates(form_.text(), days_); }

  private:
    /// Asks about a value that has a line of its own; where it has none, it is as it was.
    void line(const std::string& words, std::string_view table, std::string_view key, std::size_t index,
              bool in_quotes) {
        const trip::Form::Entry* const entry = form_.find(table, key, index);
        if (entry == nullptr || !entry->chosen) {
            return;
        }
        Question question;
        question.words = words;
        question.by_default = unquoted(entry->value);
        question.more = "Enter leaves it as it was. The whole is read and checked at the end.";
        question.take = [=, this](const std::string& answer) {
            trip::Form tried = form_;
            tried.put(table, key, in_quotes ? trip::in_toml(answer) : answer, index);
            const auto read = trip_of(tried.text(), "");
            for (const problem::Problem& one : read.problems()) {
                if (!read && one.severity == problem::Severity::error) {
                    return Taken{false, one.hint.empty() ? one.message : fmt::format("{} ({})", one.message, one.hint)};
                }
            }
            form_ = tried;
            return Taken{};
        };
        interview_.ask(question);
    }

    void ask_day() {
        Question question;
        question.words = "On which day is the meal?";
        question.by_default = trip_.serve.date();
        question.more = "As 2027-10-16. All dates of the trip move with it; the clocks stay.";
        question.take = [this](const std::string& answer) {
            const auto moment = trip::parse_moment(answer + "T00:00");
            if (!moment) {
                return Taken{false, "no such day; write it like 2027-10-16"};
            }
            days_ = days_between(trip_.serve, *moment);
            return Taken{true, days_ == 0 ? "" : fmt::format("All dates move by {} days.", days_)};
        };
        interview_.ask(question);
    }

    std::string text_;
    trip::Form form_;
    const trip::Trip& trip_;
    Interview& interview_;
    int days_ = 0;
};

void tell_how() {
    fmt::print("{}\n",
               wrap("Enter takes what stands in brackets, and so does \"I don't know\". ? tells more. Sizes and "
                    "temperatures in any unit: 60 mm, 2 1/2 in, 63 C, 145 F. Ctrl-C keeps what was said."));
}

}  // namespace

Exit ask_for_trip(const std::string& path) {
    const auto form = layout_file("trips/quick.toml");
    if (!form) {
        tell(form.problems());
        return Exit::our_fault;
    }
    if (const auto is_free = not_there_yet(path); !is_free) {
        tell(is_free.problems());
        return Exit::bad_input;
    }
    Interview interview;
    NewTrip trip(*form, path, interview);
    tell_how();
    trip.ask_all();
    return written_and_told(trip.form_now().text(), path, !interview.broken_off());
}

Exit ask_what_changes(const std::string& old_path, const std::string& path) {
    if (const auto is_free = not_there_yet(path); !is_free) {
        tell(is_free.problems());
        return Exit::bad_input;
    }
    const auto text = read_file(old_path);
    const auto trip = text ? trip_of(*text, old_path) : problem::Result<trip::Trip>(text.problems());
    if (!trip) {
        tell(trip.problems());
        return exit_for(trip.problems());
    }
    Interview interview;
    OldTrip again(*text, *trip, interview);
    tell_how();
    again.ask_all();
    return written_and_told(again.text(), path, !interview.broken_off());
}

}  // namespace holdwater::cli
