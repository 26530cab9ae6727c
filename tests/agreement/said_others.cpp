// SPDX-License-Identifier: MIT
// Hold times on the card, worked out afresh and by `hold`; logs of the plan's own histories under `review`.
#include "agreement/said.hpp"
#include "answer/hold/hold_time.hpp"
#include "answer/hold/hold_verdict.hpp"
#include "answer/review/review.hpp"
#include "card/trip/deck.hpp"
#include "cli/json/hold_json.hpp"
#include "cli/text/hold_text.hpp"
#include "facts/facts.hpp"
#include "support/printed.hpp"
#include "support/printed_plan.hpp"
#include "trip/read_log.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <variant>

namespace holdwater::support {
namespace {

constexpr double never = 1e9;       // s
constexpr double rounded_by = 300;  // s, to which cards round a time that must be held

double seconds_or_never(const std::optional<units::Duration>& hold) {
    return hold ? hold->si() : never;
}

std::string hours(double seconds) {
    return seconds >= never ? "never" : fmt::format("{:.2f} h", seconds / 3600.0);
}

void hold_row(AllSaid& all, const std::string& what, const std::string& where, double seconds, double step) {
    all.push_back({what, where, hours(seconds), seconds + 1.0, step});
}

/// By a reading that the plan's ready time holds for, never sooner than that: the plan allows for food that goes in
/// late.
double as_planned(const Case& one, std::size_t food, units::Temperature bath,
                  const std::optional<units::Duration>& hold) {
    const plan::FoodPlan& planned = one.plan.foods.at(food);
    const bool holds = planned.ready_late && bath <= planned.ready_if + units::kelvins(1);
    return hold && holds ? std::max(hold->si(), planned.ready_late->since(planned.in).si()) : seconds_or_never(hold);
}

/// The card's row of the trip's own piece, and its big number.
void say_hold_card(const Case& one, const card::Card& card, AllSaid& all) {
    std::size_t keys = 0;
    std::vector<std::size_t> with_table;  // by food: neither what is finished over the fire nor what was cooked before
    for (std::size_t i = 0; i < one.plan.foods.size(); ++i) {
        if (!one.plan.foods[i].standard.finish && !one.plan.foods[i].standard.kept_hot) {
            with_table.push_back(i);
        }
    }
    std::size_t tables = 0;
    for (const card::Block& block : card.blocks) {
        const auto times = [&](std::size_t food) {
            const trip::Food& which = one.trip.foods.at(food);
            const auto standard = answer::standard_of(which, one.trip, one.trip.boxes.front()).value();
            answer::Piece piece = answer::piece_of(which);
            // One piece, one figure: what prints as so many millimetres has the time of those, if it is longer.
            piece.body.thickness = std::max(
                piece.body.thickness, units::millimetres(std::round(units::in_millimetres(piece.body.thickness))));
            return answer::HoldTimes::of(piece, standard,
                                         one.trip.boxes.front().thermometer.value_or(units::kelvins(0)))
                .value();
        };
        if (const auto* key = std::get_if<card::KeyNumber>(&block)) {
            const std::size_t food = keys++;
            const auto aside = filled_by(one.words, "hold.key-aside", key->aside);
            if (aside && food < one.trip.foods.size()) {
                const double bath = celsius_in(aside->at("bath"));
                const std::string what = fmt::format("hold, food {}, big number", keys);
                hold_row(all, what, "card hold", seconds_in(as_read(key->value)), 0.0);
                hold_row(all, what, "hold engine", seconds_or_never(times(food).at(units::celsius(bath)).allowed),
                         rounded_by);
            }
        }
        const auto* const stairs = std::get_if<card::Staircase>(&block);
        const card::Table* table = stairs != nullptr ? &stairs->table : std::get_if<card::Table>(&block);
        if (table == nullptr || !table->marked_row || tables >= with_table.size()) {
            continue;
        }
        const answer::HoldTimes engine = times(with_table[tables++]);
        const auto& row = table->rows.at(*table->marked_row);
        const std::string no = as_read(one.words.text("hold.never"));
        for (std::size_t c = 0; c < table->columns.size(); ++c) {
            const std::string head = as_read(table->columns[c].head);
            if (head.find("°") == std::string::npos) {
                continue;  // thicknesses
            }
            const std::string cell = as_read(row.at(c));
            const std::string what = fmt::format("hold, food {}, bath {}", tables, head);
            hold_row(all, what, "card hold", cell == no ? never : seconds_in(cell), 0.0);
            const units::Temperature bath = units::celsius(celsius_in(head));
            hold_row(all, what, "hold engine", as_planned(one, with_table[tables - 1], bath, engine.at(bath).allowed),
                     rounded_by);
        }
    }
}

/// `hold` for the first food, on a thermometer as good as it takes.
void say_hold_command(const Case& one, AllSaid& all) {
    const trip::Food& food = one.trip.foods.front();
    answer::OnePieceQuestion question;
    question.body = answer::piece_of(food).body;
    question.start = food.start;
    question.target = food.target;
    question.bath = units::celsius(std::ceil(food.target.celsius()) + 2.0);
    if (const auto* bag = std::get_if<facts::Bag>(&food.bag)) {
        question.bag = *bag;
        question.bag_given = true;
    }
    question.kind = facts::facts().find_food(food.kind);
    question.cut = food.cut;
    question.rules = one.trip.rules;
    question.at_risk = one.trip.at_risk;
    const auto answer = answer::answer_one_piece(question);
    if (!answer || !answer->standard || !answer->as_read) {
        return;
    }
    const nlohmann::json json = nlohmann::json::parse(cli::hold_json(question, *answer, {}));
    const nlohmann::json& minutes = json.at("read_safe_min");
    hold_row(all, "hold, as read", "hold json", minutes.is_null() ? never : 60.0 * minutes.get<double>(), 0.0);
    const auto times =
        answer::HoldTimes::of(answer::piece_of(food), *answer->standard, facts::facts().difference("class.thermometer"))
            .value();
    hold_row(all, "hold, as read", "hold engine", seconds_or_never(times.at(question.bath).allowed), 60.0);
}

enum class Course { likely, cautious, lost };

units::Temperature bath_of(const units::Interval<units::Temperature>& bath, Course course) {
    return course == Course::cautious ? bath.low : bath.likely;
}

/// True if no food has a reading under the one that its ready time is said to hold from.
bool keeps_the_condition(const plan::Plan& plan, Course course) {
    return std::all_of(plan.foods.begin(), plan.foods.end(), [&](const plan::FoodPlan& food) {
        bool kept = true;
        const auto look = [&](units::LocalTime at, const units::Interval<units::Temperature>& bath) {
            kept = kept && (at <= food.in || at >= food.ready() || bath_of(bath, course) >= food.ready_if);
        };
        for (std::size_t k = 0; k < plan.curve_at.size(); ++k) {
            look(plan.trip->from.after(plan.curve_at[k]), plan.bath_curve[k]);
        }
        for (const plan::TopUp& top_up : plan.top_ups) {
            look(top_up.at, top_up.reading);
        }
        return kept || food.standard.finish;
    });
}

/// The log that a careful cook would have written: before and after each top-up, and between them now and then.
std::string log_of(const Case& one, Course course) {
    const plan::Plan& plan = one.plan;
    const auto minute = [&](units::LocalTime at) { return at.since(plan.fill.food_in).si() / 60.0; };
    const auto of = [&](const units::Interval<units::Temperature>& bath) { return bath_of(bath, course).celsius(); };
    std::string text = "time_min,bath_c,note\n";
    text += fmt::format("0,{:.2f},food in\n", plan.fill.reading.celsius());
    std::size_t next = 0;
    double last = 0.0;
    for (std::size_t k = 0; k < plan.curve_at.size(); ++k) {
        const units::LocalTime at = one.trip.from.after(plan.curve_at[k]);
        for (; next < plan.top_ups.size() && plan.top_ups[next].at <= at; ++next) {
            const plan::TopUp& top_up = plan.top_ups[next];
            last = minute(top_up.at);
            text += fmt::format("{:.2f},{:.2f},before\n{:.2f},{:.2f},after\n", last, of(top_up.reading), last,
                                plan.levels.mark.celsius());
        }
        const bool apart = minute(at) >= last + 60.0 &&
                           (next == plan.top_ups.size() || minute(plan.top_ups[next].at) >= minute(at) + 30.0);
        if (apart && minute(at) > 0.0 && at < one.trip.serve) {
            last = minute(at);
            // In the box that the Log card names for a reading without a top-up.
            text += fmt::format("{:.2f},{:.2f},before\n", last, of(plan.bath_curve[k]));
        }
    }
    last = std::max(last + 1.0, minute(one.trip.serve));
    if (course == Course::lost) {
        // Nobody tops up, and at 46 C it stands for three hours: over any rule, and under 50 C for over two hours.
        text += fmt::format("{:.2f},49,\n{:.2f},46,\n{:.2f},46,food out\n", last + 240.0, last + 270.0, last + 450.0);
    } else {
        text += fmt::format("{:.2f},{:.2f},food out\n", last, of(plan.bath_curve.back()));
    }
    return text;
}

/// Every reading is the one that the condition of a food's ready time names, to the moment of it.
std::string log_at_condition(const plan::FoodPlan& food) {
    const double ready = food.ready().since(food.in).si() / 60.0;
    const auto row = [&](double minute, const char* note) {
        return fmt::format("{:.4f},{:.4f},{}\n", minute, food.ready_if.celsius(), note);
    };
    std::string text = "time_min,bath_c,note\n" + row(0.0, "food in");
    // A bath that always reads that, and is read: what lies far between two readings may have been colder.
    const double step = std::min(15.0, ready / 4.0);
    for (double minute = step; minute < ready - 1.0; minute += step) {
        text += row(minute, "before") + row(minute, "after");
    }
    return text + row(ready, "food out");
}

std::string verdict_on(const Case& one, const std::string& text) {
    const auto log = trip::read_log(text, "log.csv");
    if (!log) {
        return "unreadable: " + log.problems().front().message;
    }
    const auto review = answer::review(one.trip, *log);
    if (!review) {
        return "refused: " + review.problems().front().message;
    }
    switch (review->verdict) {
        case answer::Verdict::eat:
            return "eat";
        case answer::Verdict::not_done:
            return "not done";
        case answer::Verdict::finish_and_eat_next:
            return "finish";
        case answer::Verdict::finish_and_eat_now:
            return "finish and eat now";
        case answer::Verdict::throw_away:
            return "throw away";
    }
    return "";
}

}  // namespace

void say_hold(const Case& one, AllSaid& all) {
    const card::Deck deck = card::trip_deck(one.plan, one.words, "TEST-TEST");
    for (const card::Card& card : deck.cards) {
        if (card.key == "hold" && one.trip.boxes.front().thermometer) {  // none where all food leaves for the fire
            say_hold_card(one, card, all);
        }
    }
    say_hold_command(one, all);
}

void say_review(const Case& one, AllSaid& all) {
    if (!one.trip.boxes.front().thermometer) {
        return;  // nothing to write
    }
    const bool finish = std::any_of(one.plan.foods.begin(), one.plan.foods.end(),
                                    [](const plan::FoodPlan& food) { return food.standard.finish.has_value(); });
    const std::string planned = finish ? "finish" : "eat";
    for (const auto& [course, what] :
         {std::pair(Course::likely, "likely history"), std::pair(Course::cautious, "cautious history")}) {
        const std::string verdict = verdict_on(one, log_of(one, course));
        // Where a reading broke the condition of ready the cards say "else card Hold": not done is no other answer.
        if (verdict != "not done" || keeps_the_condition(one.plan, course)) {
            all.push_back(said_word(what, "plan", planned));
            all.push_back(said_word(what, "review", verdict));
        }
    }
    const plan::FoodPlan& first = one.plan.foods.front();
    if (one.plan.foods.size() == 1 && !finish) {
        // As late as it is said to be ready, in a bath as cool as that allows.
        all.push_back(said_word("history at the condition of ready", "plan", "eat"));
        all.push_back(
            said_word("history at the condition of ready", "review", verdict_on(one, log_at_condition(first))));
    }
    all.push_back(said_word("lost history", "decisions", "throw away"));
    all.push_back(said_word("lost history", "review", verdict_on(one, log_of(one, Course::lost))));
}

}  // namespace holdwater::support
