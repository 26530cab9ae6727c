// SPDX-License-Identifier: MIT
// Clock times, litres, readings and floors as the cards print them.
#include "agreement/said.hpp"
#include "card/trip/deck.hpp"
#include "support/printed.hpp"
#include "support/printed_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <stdexcept>
#include <string>
#include <variant>

namespace holdwater::support {
namespace {

class Cards {
  public:
    Cards(const Case& one, AllSaid& all)
        : case_(one), all_(all), deck_(card::trip_deck(one.plan, one.words, "TEST-TEST")) {}

    void say() {
        printed_ = read_deck(deck_, case_.words, case_.trip);
        say_plan();
        say_fill();
        if (printed_.reads) {
            say_reading();
        }
        say_one();
        say_night();
        say_trouble();
        say_log();
    }

  private:
    using Places = std::function<void(const Filled&)>;

    void at(const std::string& what, const char* card, units::LocalTime when) {
        all_.push_back(said_at(what, fmt::format("card {}", card), case_.trip.from, when));
    }
    void clock(const std::string& what, const char* card, const std::string& text) {
        at(what, card, moment_in(case_.words, text, case_.trip.from));
    }
    void litres(const std::string& what, const char* card, double value) {
        all_.push_back(said_figure(what, fmt::format("card {}", card), value, "L"));
    }
    void millimetres(const std::string& what, const char* card, double value) {
        all_.push_back(said_figure(what, fmt::format("card {}", card), value, "mm"));
    }
    void degrees(const std::string& what, const char* card, const std::string& text) {
        all_.push_back(said_figure(what, fmt::format("card {}", card), celsius_in(text), "C"));
    }

    /// Every text of a card with the key it may have been written by.
    void each(const char* card, const char* key, const Places& visit) {
        if (!case_.words.has(key)) {
            return;  // said another way, or nowhere
        }
        const auto look = [&](const std::string& text) {
            if (const auto places = filled_by(case_.words, key, text)) {
                visit(*places);
            }
        };
        const card::Card& whole = card_named(deck_, card);
        for (const card::Caution& caution : whole.cautions) {
            look(caution.text);
            // Behind its signal word.
            for (std::size_t i = caution.text.find(' '); i != std::string::npos; i = caution.text.find(' ', i + 1)) {
                look(caution.text.substr(i + 1));
            }
        }
        for (const card::Block& block : whole.blocks) {
            if (const auto* note = std::get_if<card::Note>(&block)) {
                look(note->text);
            } else if (const auto* heading = std::get_if<card::Heading>(&block)) {
                look(heading->text);
            } else if (const auto* steps = std::get_if<card::Steps>(&block)) {
                for (const card::Step& step : steps->steps) {
                    look(step.text);
                }
            } else if (const auto* table = std::get_if<card::Table>(&block)) {
                for (const card::Column& column : table->columns) {
                    look(column.head);
                }
                for (const auto& row : table->rows) {
                    for (const card::Text& cell : row) {
                        look(cell);
                    }
                }
            } else if (const auto* key_number = std::get_if<card::KeyNumber>(&block)) {
                look(key_number->aside);
            } else if (const auto* row = std::get_if<card::KeyRow>(&block)) {
                for (const card::KeyNumber& number : row->numbers) {
                    look(number.aside);
                }
            } else if (const auto* curve = std::get_if<card::Curve>(&block)) {
                look(curve->title);
                look(curve->floor_label);
            }
        }
    }

    /// Big numbers by their labels.
    void keys(const char* card, const char* label, const std::function<void(const card::KeyNumber&)>& visit) {
        const auto look = [&](const card::KeyNumber& key) {
            if (filled_by(case_.words, label, key.label)) {
                visit(key);
            }
        };
        for (const card::Block& block : card_named(deck_, card).blocks) {
            if (const auto* key = std::get_if<card::KeyNumber>(&block)) {
                look(*key);
            } else if (const auto* row = std::get_if<card::KeyRow>(&block)) {
                for (const card::KeyNumber& number : row->numbers) {
                    look(number);
                }
            }
        }
    }

    /// Where the fire has no time to spare its act says so, and names no second time.
    void latest_fire(const char* card, const Filled& lit) {
        const std::string& told = lit.at("latest");
        if (const auto latest = filled_by(case_.words, "plan.latest", told)) {
            clock("latest fire", card, latest->at("at"));
        } else if (!filled_by(case_.words, "plan.latest-now", told)) {
            throw std::runtime_error("no latest fire in \"" + told + "\"");
        }
    }

    void say_plan() {
        each("trouble", "trouble.fire-late-do",
             [&](const Filled& f) { clock("latest fire", "trouble", f.at("latest")); });
        each("one", "one.light-fire", [&](const Filled& f) { latest_fire("one", f); });
        at("food in", "plan", printed_.food_in);
        litres("cold water", "plan", printed_.cold);
        // The shorter of the two reads into the longer one.
        for (const char* key : {case_.plan.fill.warming.si() > 0.0 ? "plan.light-fire-warm" : "plan.light-fire"}) {
            each("plan", key, [&](const Filled& f) {
                litres("boil for the fill", "plan", litres_in(f.at("litres")));
                latest_fire("plan", f);
            });
        }
        for (std::size_t i = 0; i < printed_.pours.size(); ++i) {
            const PrintedPour& pour = printed_.pours[i];
            at(fmt::format("pour {}", i + 1), "plan", pour.at);
            litres(fmt::format("pour {} litres", i + 1), "plan", pour.litres);
            if (pour.until) {
                all_.push_back(said_figure("fill to", "card plan", *pour.until, "C"));
                if (i + 1 == printed_.pours.size()) {
                    litres("last pour", "plan", pour.litres);
                }
            }
        }
        for (std::size_t i = 0; i < printed_.top_ups.size(); ++i) {
            const PrintedTopUp& one = printed_.top_ups[i];
            at(fmt::format("top-up {}", i + 1), "plan", one.at);
            if (printed_.reads) {
                // Reading says how much.
            } else if (litres(fmt::format("top-up {} in", i + 1), "plan", one.litres); one.below) {
                millimetres(fmt::format("top-up {} line", i + 1), "plan", *one.below);
            } else if (!one.swap && !by_line_) {
                litres(fmt::format("top-up {} out", i + 1), "plan", one.out);
            }
            if (one.wake) {
                at(fmt::format("wake for top-up {}", i + 1), "plan", *one.wake);
            }
        }
        for (const PrintedFood& food : printed_.foods) {
            if (food.ready) {
                at("ready: " + food.name, "plan", *food.ready);
            }
            if (food.ready_if) {
                all_.push_back(said_figure("ready if: " + food.name, "card plan", *food.ready_if, "C"));
            }
            if (food.out) {
                at("to the fire: " + food.name, "plan", *food.out);
            }
        }
        at("may wait until", "plan", printed_.waits_until);
        each("plan", "plan.caution", [&](const Filled& f) { degrees("read floor", "plan, caution", f.at("floor")); });
    }

    void say_fill() {
        if (printed_.fill_to) {
            all_.push_back(said_figure("fill to", "card fill", *printed_.fill_to, "C"));
        }
        each("fill", "fill.step-cold",
             [&](const Filled& f) { litres("cold water", "fill", litres_in(f.at("litres"))); });
        each("fill", "fill.key-aside-measured",
             [&](const Filled& f) { litres("cold water", "fill, key", litres_in(f.at("cold"))); });
        each("fill", "fill.step-read", [&](const Filled& f) { degrees("fill to", "fill, step", f.at("reading")); });
    }

    void say_reading() {
        if (printed_.mark) {
            all_.push_back(said_figure("mark", "card reading", *printed_.mark, "C"));
        }
        if (printed_.action) {
            all_.push_back(said_figure("action line", "card reading", *printed_.action, "C"));
        }
        if (printed_.read_floor) {
            all_.push_back(said_figure("read floor", "card reading", *printed_.read_floor, "C"));
        }
        for (const card::Card& one : deck_.cards) {
            for (const card::Block& block : one.blocks) {
                const auto* note = std::get_if<card::Note>(&block);
                if (one.key == "reading" && note != nullptr) {
                    say_ready_fallen(note->text);
                }
            }
        }
    }

    /// What was ready stays so down to the floor, and is brought back to the mark where it fell not long ago.
    void say_ready_fallen(const std::string& text) {
        const std::string stays = case_.words.find("reading.ready-stays").value();
        for (const char* key : {"", "reading.ready-fell", "reading.ready-fell-since"}) {
            const std::string form = *key == '\0' ? stays : stays + " " + case_.words.find(key).value();
            if (const auto found = filled(as_read(form), as_read(text))) {
                degrees("read floor", "reading, ready food", found->at("floor"));
                if (found->contains("mark")) {
                    degrees("mark", "reading, note", found->at("mark"));
                }
                if (found->contains("away")) {
                    degrees("away", "reading, note", found->at("away"));
                }
                if (found->contains("action")) {
                    degrees("action line", "reading, note", found->at("action"));
                }
                return;
            }
        }
    }

    /// The one card's times, litres and readings, by the words of its lines.
    void say_one() {
        std::size_t top_ups = 0;
        for (const card::Block& block : card_named(deck_, "one").blocks) {
            const auto* steps = std::get_if<card::Steps>(&block);
            for (std::size_t i = 0; steps != nullptr && i < steps->steps.size(); ++i) {
                const card::Step& step = steps->steps[i];
                if (filled_by(case_.words, "one.light-fire", step.text)) {
                    clock("fire lit", "one", step.when);
                } else if (filled_by(case_.words, "one.food-in", step.text)) {
                    clock("food in", "one", step.when);
                } else if (const auto lit = filled_by(case_.words, "one.top-up", step.text)) {
                    clock(fmt::format("top-up {}", ++top_ups), "one", step.when);
                    clock(fmt::format("fire for top-up {}", top_ups), "one", lit->at("fire"));
                } else if (const auto top_up = filled_by(case_.words, "one.top-up-fixed", step.text)) {
                    clock(fmt::format("top-up {}", ++top_ups), "one", step.when);
                    litres(fmt::format("top-up {} in", top_ups), "one", litres_in(top_up->at("litres")));
                } else if (const auto ready = filled_by(case_.words, "plan.ready", step.text)) {
                    clock("ready: " + ready->at("food"), "one", step.when);
                    degrees("ready if: " + ready->at("food"), "one", ready->at("least"));
                } else if (const auto by_clock = filled_by(case_.words, "plan.ready-clock", step.text)) {
                    clock("ready: " + by_clock->at("food"), "one", step.when);
                }
            }
            if (const auto* row = std::get_if<card::KeyRow>(&block)) {
                for (const card::KeyNumber& key : row->numbers) {
                    const std::string value = as_read(key.value) + " " + key.unit;
                    if (filled_by(case_.words, "one.fill", key.label)) {
                        degrees("fill to", "one", value);
                    } else if (filled_by(case_.words, "one.cold", key.label)) {
                        litres("cold water", "one", litres_in(value));
                    }
                }
            }
            if (const auto* scale = std::get_if<card::Thermometer>(&block)) {
                for (const card::Thermometer::Section& section : scale->sections) {
                    if (const auto below = filled_by(case_.words, "one.below", section.bar)) {
                        degrees("read floor", "one", below->at("floor"));
                    }
                    for (const char* key : {"one.over", "reading.act"}) {
                        if (const auto line = filled_by(case_.words, key, section.bar)) {
                            degrees("action line", "one", line->at("action"));
                        }
                    }
                }
            }
        }
        if (top_ups != printed_.top_ups.size()) {
            all_.push_back(said_figure("top-ups", "card one", static_cast<double>(top_ups), ""));
            all_.push_back(said_figure("top-ups", "card plan", static_cast<double>(printed_.top_ups.size()), ""));
        }
    }

    bool has_card(const char* key) const {
        return std::any_of(deck_.cards.begin(), deck_.cards.end(),
                           [key](const card::Card& card) { return card.key == key; });
    }

    void say_night() {
        if (!has_card("night")) {
            return;
        }
        keys("night", "night.key-label", [&](const card::KeyNumber& key) {
            all_.push_back(said_figure("leave it", "card night", seconds_in(as_read(key.value)) / 3600.0, "h"));
        });
        each("night", "night.key-aside", [&](const Filled& f) {
            if (printed_.mark) {
                degrees("night's reading", "night, key", f.at("mark"));
            }
        });
        each("night", "night.table-less", [&](const Filled& f) { degrees("mark", "night, note", f.at("mark")); });
        keys("night", "night.wake-label", [&](const card::KeyNumber& key) {
            for (std::size_t i = 0; i < printed_.top_ups.size(); ++i) {
                if (printed_.top_ups[i].wake) {
                    clock(fmt::format("wake for top-up {}", i + 1), "night, key", as_read(key.value));
                    break;
                }
            }
        });
    }

    void say_trouble() {
        if (printed_.waits_if) {
            all_.push_back(said_figure("may wait if", "card plan", *printed_.waits_if, "C"));
        }
        each("trouble", "trouble.late-clock",
             [&](const Filled& f) { clock("may wait until", "trouble", f.at("until")); });
        each("trouble", "trouble.late-shut",
             [&](const Filled& f) { clock("may wait until", "trouble", f.at("until")); });
    }

    void say_ready_row(const std::string& row) {
        const std::string& food = printed_.foods.front().name;
        for (const char* key : {"log.ready", "log.ready-clock"}) {
            const auto ready =
                filled("{when} " + as_read(case_.words.text(key, {{"least", std::string("{least}")}})), row);
            if (ready) {
                clock("ready: " + food, "log", ready->at("when"));
                if (ready->contains("least")) {
                    degrees("ready if: " + food, "log", ready->at("least"));
                }
            }
        }
    }

    void say_log() {
        std::size_t top_ups = 0;
        for (const card::Block& block : card_named(deck_, "log").blocks) {
            const auto* grid = std::get_if<card::WriteIn>(&block);
            for (std::size_t i = 0; grid != nullptr && i < grid->first_column.size(); ++i) {
                const std::string row = as_read(grid->first_column[i]);
                const auto named = [&](const char* key) {
                    const std::string word = as_read(case_.words.text(key));
                    const auto place = row.rfind(" " + word);
                    const bool ends = place != std::string::npos &&
                                      (place + 1 + word.size() == row.size() || row[place + 1 + word.size()] == ',');
                    return ends ? std::optional(row.substr(0, place)) : std::nullopt;
                };
                if (const auto when = named("log.fire")) {
                    clock("fire lit", "log", *when);
                } else if (const auto in = named("log.food-in")) {
                    clock("food in", "log", *in);
                } else if (auto top_up = named("log.top-up")) {
                    clock(fmt::format("top-up {}", ++top_ups), "log", *top_up);
                } else if (case_.trip.foods.size() == 1) {
                    say_ready_row(row);
                }
            }
        }
    }

    const Case& case_;
    AllSaid& all_;
    card::Deck deck_;
    bool by_line_ = says_lines(case_.words);
    PrintedPlan printed_;
};

}  // namespace

void say_cards(const Case& one, AllSaid& all) {
    Cards(one, all).say();
}

}  // namespace holdwater::support
