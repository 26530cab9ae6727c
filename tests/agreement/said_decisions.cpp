// SPDX-License-Identifier: MIT
// What to do, in every place that says so: what if, rows of the morning, people at risk; rows after a fall and floors
// of the class deck.
#include "agreement/said.hpp"
#include "card/class/class_deck.hpp"
#include "card/figures/numbers.hpp"
#include "card/figures/rounding.hpp"
#include "card/trip/deck.hpp"
#include "cli/json/plan_json.hpp"
#include "cli/text/what_if_text.hpp"
#include "safety/after_fall.hpp"
#include "support/printed.hpp"
#include "support/printed_plan.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <optional>
#include <sstream>
#include <string>
#include <variant>
#include <vector>

namespace holdwater::support {
namespace {

bool any_text(const card::Card& card, const words::Words& words, const char* key) {
    // Whole, or behind what else such a line says.
    const auto is = [&](const std::string& text) {
        return filled_by(words, key, text).has_value() ||
               filled("{before} " + as_read(words.find(key).value()), as_read(text)).has_value() ||
               filled("{before} " + as_read(words.find(key).value()) + " {behind}", as_read(text)).has_value();
    };
    for (const card::Block& block : card.blocks) {
        if (const auto* note = std::get_if<card::Note>(&block); note != nullptr && is(note->text)) {
            return true;
        }
        if (const auto* steps = std::get_if<card::Steps>(&block)) {
            for (const card::Step& step : steps->steps) {
                if (is(step.text)) {
                    return true;
                }
            }
        }
        if (const auto* drawings = std::get_if<card::Drawings>(&block)) {
            if (std::any_of(drawings->shown.begin(), drawings->shown.end(),
                            [&](const card::Drawings::Shown& one) { return is(one.label); })) {
                return true;
            }
        }
        if (const auto* table = std::get_if<card::Table>(&block)) {
            for (const auto& row : table->rows) {
                for (const card::Text& cell : row) {
                    if (is(cell)) {
                        return true;
                    }
                }
            }
        }
    }
    return false;
}

/// The decisions behind the lines about one [[what_if]] on a card, in their order.
std::vector<std::string> what_if_on(const card::Card& card, const words::Words& words, const std::string& name) {
    static const std::pair<const char*, const char*> keys[] = {
        {"what-if.broken", "does not hold"}, {"what-if.leave", "holds"},    {"what-if.holds", "holds"},
        {"what-if.before", "below"},         {"what-if.partly", "below"},   {"what-if.next", "eat next"},
        {"what-if.now", "eat now"},          {"what-if.away", "throw away"}};
    std::vector<std::string> decisions;
    for (const card::Block& block : card.blocks) {
        const auto* note = std::get_if<card::Note>(&block);
        for (const auto& [key, decision] : keys) {
            const auto found = note != nullptr ? filled_by(words, key, note->text) : std::nullopt;
            if (found && found->at("name") == name) {
                decisions.emplace_back(decision);
                break;
            }
        }
    }
    return decisions;
}

std::string terminal_decision(const std::string& answer) {
    if (answer.starts_with("does not hold")) {
        return "does not hold";
    }
    if (answer.starts_with("holds")) {
        return "holds";
    }
    if (answer.find("throw it away") != std::string::npos) {
        return "throw away";
    }
    return answer.find("eat now") != std::string::npos ? "eat now" : "eat next";
}

std::string word_of(const std::string& action) {
    return action == "none"                  ? "holds"
           : action == "throw-away"          ? "throw away"
           : action == "finish-and-eat-now"  ? "eat now"
           : action == "finish-and-eat-next" ? "eat next"
                                             : action;
}

nlohmann::json json_of(const Case& one) {
    const card::SafeSide writer{one.plan, one.words};
    return nlohmann::json::parse(cli::plan_json(one.plan, card::card_numbers(writer), "TEST-TEST").dump());
}

void say_what_ifs(const Case& one, const card::Deck& deck, const nlohmann::json& json, AllSaid& all) {
    std::istringstream lines(as_read(cli::what_if_text(one.plan)));
    std::vector<std::string> terminal;
    for (std::string line; std::getline(lines, line);) {
        if (const auto asked = filled("What if: {what}): {answer}", line)) {
            terminal.push_back(terminal_decision(asked->at("answer")));
        }
    }
    const bool reads = one.trip.boxes.front().thermometer.has_value();
    for (std::size_t i = 0; i < one.trip.what_ifs.size(); ++i) {
        const std::string what = fmt::format("what if {}", i + 1);
        const std::string name = one.trip.what_ifs[i].name;
        const nlohmann::json& answer = json.at("what_if").at(i);
        const bool broken = !answer.at("broken").is_null();
        all.push_back(
            said_word(what, "json", broken ? "does not hold" : word_of(answer.at("action").get<std::string>())));
        all.push_back(said_word(what, "terminal", i < terminal.size() ? terminal[i] : "nothing"));
        if (reads) {
            // What it means if nothing was done comes last.
            const auto told = what_if_on(card_named(deck, "trouble"), one.words, name);
            all.push_back(said_word(what, "card trouble", told.empty() ? "nothing" : told.back()));
        }
    }
}

/// The rows below the floor, looked up as a reader of the card does.
void say_fallen(const Case& one, const card::Deck& deck, const nlohmann::json& json, AllSaid& all) {
    const words::Words& w = one.words;
    if (!one.trip.boxes.front().thermometer) {
        return;
    }
    const card::Thermometer::Section* section = nullptr;
    for (const card::Block& block : card_named(deck, "reading").blocks) {
        const auto* scale = std::get_if<card::Thermometer>(&block);
        if (scale != nullptr && !scale->sections.back().bar.empty()) {
            section = &scale->sections.back();
        }
    }
    if (section == nullptr) {
        all.push_back(said_word("rows below the floor", "card reading", "nothing"));
        all.push_back(said_word("rows below the floor", "json", "rows"));
        return;
    }
    const auto action_of = [&](const std::string& cell) -> std::string {
        for (const auto& [key, word] : {std::pair{"reading.action-none", "holds"},
                                        {"reading.action-next", "eat next"},
                                        {"reading.action-now", "eat now"},
                                        {"reading.action-away", "throw away"}}) {
            if (filled_by(w, key, cell)) {
                return word;
            }
        }
        return "not understood: " + cell;
    };
    // The readings are whole degrees C; a card in degrees F names the next one up.
    const double up = units::first_of(one.trip.units) == units::System::us ? 1.0 / 1.8 : 0.0;
    for (const nlohmann::json& cell : json.at("night").at("morning")) {
        const double reading = cell.at("reading_c");
        const double since = cell.at("since_h");
        const card::Thermometer::Row* found = nullptr;
        for (const card::Thermometer::Row& row : section->rows) {
            const bool last = filled_by(w, "reading.below", row.reading).has_value();
            if (last || celsius_in(as_read(row.reading)) <= reading + up + 1e-6) {
                found = &row;
                break;
            }
        }
        std::size_t column = found->cells.size() - 1;
        for (std::size_t c = 0; c < section->heads.size(); ++c) {
            const double hours = filled_by(w, "reading.since-2", section->heads[c])   ? 2.0
                                 : filled_by(w, "reading.since-4", section->heads[c]) ? 4.0
                                                                                      : 1e9;
            if (since <= hours) {
                column = c;
                break;
            }
        }
        const std::string what = fmt::format("below the floor at {:.0f} C, last good {:.0f} h ago", reading, since);
        all.push_back(said_word(what, "json", word_of(cell.at("action").get<std::string>())));
        all.push_back(said_word(what, "card reading", action_of(found->cells.at(column))));
    }
}

/// Does who is at risk need more than this plan gives?
void say_at_risk(const Case& one, const card::Deck& deck, AllSaid& all) {
    if (!one.trip.boxes.front().thermometer) {
        return;
    }
    const auto yes = [](bool more) { return std::string(more ? "more than the plan gives" : "what the plan gives"); };
    const card::Card& first = card_named(deck, "one");
    all.push_back(said_word("people at risk need", "card plan",
                            yes(any_text(card_named(deck, "plan"), one.words, "plan.serve-risk"))));
    all.push_back(
        said_word("people at risk need", "card one",
                  yes(any_text(first, one.words, "one.risk") || any_text(first, one.words, "one.risk-none"))));
    all.push_back(said_word("people at risk need", "card reading",
                            yes(any_text(card_named(deck, "reading"), one.words, "reading.risk"))));
}

/// What a class card says below the floor; nothing where it has no such scale.
const card::Thermometer::Section* fall_section(const card::Card& card, const words::Words& words) {
    for (const card::Block& block : card.blocks) {
        const auto* scale = std::get_if<card::Thermometer>(&block);
        if (scale != nullptr && filled_by(words, "class-reading.floor", scale->sections.front().bar)) {
            return &scale->sections.front();
        }
    }
    return nullptr;
}

}  // namespace

void say_decisions(const Case& one, AllSaid& all) {
    const card::Deck deck = card::trip_deck(one.plan, one.words, "TEST-TEST");
    const nlohmann::json json = json_of(one);
    say_what_ifs(one, deck, json, all);
    say_fallen(one, deck, json, all);
    say_at_risk(one, deck, all);
}

void say_class(const Case& one, AllSaid& all) {
    const auto& thermometer = one.trip.boxes.front().thermometer;
    if (one.trip.foods.size() != 1 || one.trip.at_risk || !thermometer) {
        return;
    }
    const trip::Food& food = one.trip.foods.front();
    card::ClassWish wish;
    wish.rules = one.trip.rules;
    wish.altitude = one.trip.altitude;
    wish.units = one.trip.units;
    wish.language = one.trip.language;
    wish.kind = food.kind;
    wish.shapes = {facts::Shape::slab};
    wish.thermometer = *thermometer;
    const auto frame = card::ClassFrame::made(wish, "class");
    if (!frame || food.cut != facts::Cut::intact) {
        return;
    }
    const card::Deck class_deck = card::class_deck(**frame, one.words, "TEST-TEST", {"reading"});
    const card::Card& class_reading = card_named(class_deck, "reading");
    const card::Thermometer::Section* const fall = fall_section(class_reading, one.words);
    if (fall != nullptr) {
        const std::string floor = filled_by(one.words, "class-reading.floor", fall->bar)->at("floor");
        all.push_back(said_figure("read floor", "class reading", celsius_in(floor), "C"));
    }
    if (one.plan.foods.front().standard.finish) {
        return;  // a class deck is for whole food
    }
    // The trip's cards have one table by reading and time; the class deck teaches the times, of the same rules.
    const auto decided = safety::rows(safety::fall_rules(one.trip.rules, one.trip.at_risk));
    for (std::size_t i = 0; i < decided.size(); ++i) {
        const std::string what = fmt::format("rows after a fall, {}", i + 1);
        const auto action = [&]() -> std::string {
            if (fall == nullptr || i >= fall->rows.front().cells.size()) {
                return "nothing";
            }
            const std::string& cell = fall->rows.front().cells[i];
            return filled_by(one.words, "class-reading.action-next", cell)  ? "eat next"
                   : filled_by(one.words, "class-reading.action-now", cell) ? "eat now"
                   : filled_by(one.words, "reading.action-away", cell)      ? "throw away"
                                                                            : "not understood: " + cell;
        };
        all.push_back(said_word(what, "class reading", action()));
        all.push_back(said_word(what, "the decision", word_of(std::string(safety::to_word(decided[i].action)))));
    }
}

}  // namespace holdwater::support
