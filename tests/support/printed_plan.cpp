// SPDX-License-Identifier: MIT
#include "support/printed_plan.hpp"

#include "support/printed.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <utility>
#include <variant>

namespace holdwater::support {
namespace {

using units::LocalTime;

constexpr double coldest_reading = -273.15;  // C

class Reader {
  public:
    Reader(const card::Deck& deck, const words::Words& words, const trip::Trip& trip)
        : deck_(deck), words_(words), trip_(trip) {}

    PrintedPlan read() {
        plan_.fire = trip_.from;
        read_plan();
        read_fill();
        read_reading();
        read_night();
        return plan_;
    }

  private:
    std::optional<Filled> by(std::string_view key, std::string_view text,
                             const std::map<std::string, std::string>& with = {}) const {
        // A language has the one way to say a thing or the other; a line that none of them fits is not understood.
        return words_.has(key) ? filled_by(words_, key, text, with) : std::nullopt;
    }
    /// A wording, to be put into a place of another.
    std::string form(const std::string& key, const std::string& from = "", const std::string& to = "") const {
        std::string text = words_.find(key).value();
        if (const auto at = text.find("{" + from + "}"); !from.empty() && at != std::string::npos) {
            text.replace(at, from.size() + 2, "{" + to + "}");
        }
        return text;
    }
    LocalTime moment(std::string_view text) const { return moment_in(words_, text, trip_.from); }

    [[noreturn]] static void lost(const char* card, const std::string& line) {
        throw std::runtime_error("card " + std::string(card) + ": \"" + line + "\" is not understood");
    }

    template <class Block, class Visit>
    void each(const char* card, Visit visit) const {
        for (const card::Block& block : card_named(deck_, card).blocks) {
            if (const auto* one = std::get_if<Block>(&block)) {
                visit(*one);
            }
        }
    }

    PrintedFood& food(const std::string& name) {
        const auto quoted = [this](const std::string& plain) {  // a star in a name is a star
            std::string text = words_.find("deck.quoted").value();
            const std::string place = "{name}";
            return text.replace(text.find(place), place.size(), plain);
        };
        for (PrintedFood& one : plan_.foods) {
            if (one.name == name || quoted(one.name) == name) {
                return one;
            }
        }
        lost("plan", name);
    }

    void read_plan() {
        for (const trip::Food& one : trip_.foods) {
            plan_.foods.push_back({});
            plan_.foods.back().name = as_read(card::plain(one.name));
        }
        plan_.serve = trip_.serve;
        std::size_t next_food = 0;
        each<card::Note>("packing", [&](const card::Note& note) {
            // Behind the food and its size, before what else must be known of it.
            const auto line = [&](const char* key) { return filled_within(key, note.text); };
            if (const auto core = line("plan.core-line")) {
                plan_.foods.at(next_food++).peak = celsius_in(core->at("peak"));
            } else if (line("plan.keep-hot-line")) {
                ++next_food;
            } else if (line("plan.core-line-finish")) {
                ++next_food;
            }
        });
        if (next_food != plan_.foods.size()) {
            lost("packing", "core line of each food");
        }
        each<card::Steps>("plan", [&](const card::Steps& steps) {
            for (const card::Step& step : steps.steps) {
                read_step(step);
            }
        });
        if (plan_.waits_until < plan_.serve) {
            plan_.waits_until = plan_.serve;
        }
    }

    /// A wording somewhere in a text: with whatever stands before and behind it.
    std::optional<Filled> filled_within(const char* key, const std::string& text) const {
        const std::string form = words_.find(key).value();
        for (const char* const around : {"{before} \x01 {behind}", "{before} \x01", "\x01 {behind}", "\x01"}) {
            std::string whole = around;
            whole.replace(whole.find('\x01'), 1, form);
            if (auto found = filled(as_read(whole), as_read(text))) {
                return found;
            }
        }
        return std::nullopt;
    }

    /// "12.8 L, 21:15 12.8 L, 21:45 11.0 L": each round of the fill but the first with its time.
    void read_rounds(LocalTime first, const std::string& rounds, std::optional<double> until) {
        const std::string between = ", ";
        std::size_t from = 0;
        for (LocalTime at = first;;) {
            const std::size_t end = rounds.find(between, from);
            std::string one = as_read(rounds.substr(from, end == std::string::npos ? end : end - from));
            if (from > 0) {
                // The last two words are litres, what stands before them a time.
                const std::size_t last = one.rfind(' ');
                const std::size_t cut = last == std::string::npos ? last : one.rfind(' ', last - 1);
                if (cut == std::string::npos) {
                    lost("plan", one);
                }
                at = moment_in(words_, one.substr(0, cut), at);
                one = one.substr(cut + 1);
            }
            plan_.pours.push_back({at, litres_in(one), until});
            if (end == std::string::npos) {
                return;
            }
            from = end + between.size();
        }
    }

    void read_step(const card::Step& step) {
        const LocalTime at = moment(step.when);
        if (const auto in = by("plan.light-fire", step.text)) {
            plan_.cold = litres_in(in->at("cold"));
        } else if (by("plan.light-fire-warm", step.text)) {
        } else if (const auto warm = by("plan.warm-box", step.text)) {
            plan_.cold = litres_in(warm->at("cold"));
        } else if (const auto measured = by("plan.pours-measured", step.text)) {
            read_rounds(at, measured->at("rounds"), std::nullopt);
        } else if (const auto pours = by("plan.pours", step.text)) {
            read_rounds(at, pours->at("rounds"), celsius_in(pours->at("reading")));
        } else if (by("plan.food-in", step.text) || by("plan.this-food-in", step.text)) {
            plan_.food_in = at;
        } else if (by("plan.light-fire-hot", step.text)) {
            plan_.cold = 0.0;
        } else if (const auto settled =
                       by(words_.has("plan.settled-least") && by("plan.settled-least", step.text) ? "plan.settled-least"
                                                                                                  : "plan.settled",
                          step.text)) {
            plan_.after_food_at = at;
            plan_.after_food = std::pair(celsius_in(settled->at("low")), celsius_in(settled->at("high")));
        } else if (by("plan.wake-fire", step.text)) {
            wakes_ = at;
        } else if (by("plan.fire", step.text)) {
            wakes_.reset();
        } else if (!read_top_up_step(at, step.text) && !read_end(at, step.text)) {
            lost("plan", step.text);
        }
    }

    bool read_top_up_step(LocalTime at, const std::string& text) {
        PrintedTopUp one{at, 0.0, 0.0, false, std::nullopt, std::nullopt, std::nullopt};
        if (const auto by_reading = by("plan.top-up", text)) {
            one.reads = celsius_in(by_reading->at("reads"));
        } else {  // by the clock the line itself says how much goes in, else Reading
            const std::map<std::string, std::string> nothing{{"out", ""}};
            const std::map<std::string, std::string> first{{"out", form("plan.out-first", "litres", "first")}};
            auto found = by("plan.top-up-fixed", text, first);
            found = found ? found : by("plan.top-up-fixed", text, nothing);
            if (!found) {
                return false;
            }
            one.litres = litres_in(found->at("litres"));
            if (found->contains("below")) {
                one.below = millimetres_in(found->at("below"));
            }
        }
        one.wake = std::exchange(wakes_, std::nullopt);
        plan_.top_ups.push_back(one);
        return true;
    }

    bool read_end(LocalTime at, const std::string& text) {
        // What follows on the condition tells of readings below it.
        const std::map<std::string, std::string> later{{"else", form("plan.ready-later", "least", "bath")}};
        const std::map<std::string, std::string> longer{{"else", form("plan.ready-else-later")}};
        const std::map<std::string, std::string> other{{"else", form("plan.ready-else")}};
        for (const auto& with : {later, longer, other}) {
            if (const auto ready = by("plan.ready", text, with)) {
                PrintedFood& one = food(ready->at("food"));
                one.ready = at;
                one.ready_if = celsius_in(ready->at("least"));
                return true;
            }
        }
        if (const auto ready = by("plan.ready-clock", text)) {
            food(ready->at("food")).ready = at;
            return true;
        }
        for (const char* key : {"plan.finish-pan", "plan.finish"}) {
            for (const std::string& more : {" " + form("plan.finish-lots"), std::string()}) {
                const auto finish = filled(as_read(form(key) + more), as_read(text));
                if (finish && finish->contains("takes")) {
                    food(finish->at("food")).out = at;
                    return true;
                }
            }
        }
        for (const char* key :
             {"plan.sear", "plan.sear-of", "plan.sear-steak", "plan.sear-steak-of", "plan.hot-water", "plan.sitting",
              "plan.take-out", "plan.pan", "plan.pan-apart", "plan.boil-finish", "plan.side", "plan.clash"}) {
            if (by(key, text)) {
                return true;
            }
        }
        return read_meal(text);
    }

    /// The meal, and before it what is done where the guests are late.
    bool read_meal(const std::string& text) {
        for (const char* key : {"plan.wait", "plan.wait-clock", "plan.wait-shut"}) {
            if (const auto wait = by(key, text)) {
                plan_.waits_until = moment_in(words_, wait->at("until"), plan_.serve);
                plan_.waits_if = wait->contains("least") ? std::optional(celsius_in(wait->at("least"))) : std::nullopt;
                return true;
            }
        }
        return by("plan.late", text) || by("plan.late-clock", text) || filled_within("plan.serve", text);
    }

    void read_fill() {
        each<card::KeyNumber>("fill", [&](const card::KeyNumber& key) {
            if (by("fill.key-label", key.label)) {
                plan_.fill_to = celsius_in(key.value + " " + key.unit);
            }
        });
        each<card::Steps>("fill", [&](const card::Steps& steps) {
            for (const card::Step& step : steps.steps) {
                if (const auto level = by("fill.step-level", step.text)) {
                    plan_.food_in_below = millimetres_in(level->at("below"));
                }
            }
        });
        plan_.pours_bounded = words_.has("fill.step-level");
        plan_.reads = plan_.fill_to.has_value();
    }

    /// "68 or more: read again in 1 h 15", "over 57: read again in 15 min".
    void read_look(const card::Thermometer::Row& row) {
        std::optional<Filled> again;
        for (const char* key : {"reading.leave-asleep", "reading.leave-plan", "reading.leave"}) {
            if (!again && row.cells.size() == 1) {
                again = by(key, row.cells.front());
            }
        }
        if (!again) {
            return;
        }
        const double wait = seconds_in(again->at("time"));
        if (by("reading.or-more", row.reading)) {
            plan_.mark = celsius_in(as_read(row.reading));
            plan_.looks.push_back({*plan_.mark, wait});
        } else if (const auto over = by("reading.over", row.reading)) {
            plan_.looks.push_back({celsius_in(over->at("action")), wait});
        }
    }

    /// The good part of the thermometer: fill, mark, then a line for each reading that asks for a pour.
    void read_reading() {
        if (!plan_.reads) {
            return;
        }
        each<card::Thermometer>("reading", [&](const card::Thermometer& scale) {
            for (const card::Thermometer::Section& section : scale.sections) {
                for (const char* key : {"reading.floor-since", "reading.floor"}) {
                    if (const auto floor = by(key, section.bar)) {
                        plan_.read_floor = celsius_in(floor->at("floor"));
                        break;
                    }
                }
                if (const auto line = by("reading.act", section.bar)) {
                    plan_.action = celsius_in(line->at("action"));
                }
                for (const card::Thermometer::Row& row : section.rows) {
                    read_look(row);
                }
            }
        });
        each<card::Table>("reading", [&](const card::Table& table) {
            for (const auto& row : table.rows) {
                PrintedRung line;
                // The last row is for whatever is colder than the others.
                const bool last = by("reading.row-last", row.at(0)) || by("reading.row-only", row.at(0));
                line.reading = last ? coldest_reading : celsius_in(as_read(row.at(0)));
                line.below = millimetres_in(as_read(row.at(1)));
                line.pour = litres_in(as_read(row.at(2)));
                plan_.ladder.push_back(line);
            }
        });
        std::sort(plan_.ladder.begin(), plan_.ladder.end(),
                  [](const PrintedRung& a, const PrintedRung& b) { return a.reading > b.reading; });
        each<card::Note>("reading", [&](const card::Note& note) {
            for (const char* key : {"reading.boils-one", "reading.boils-two", "reading.boils-more"}) {
                if (const auto pots = filled_within(key, note.text)) {
                    plan_.at_once = litres_in(pots->at("litres"));
                    plan_.boils_in = seconds_in(pots->at("minutes"));
                }
            }
        });
        if (!plan_.mark || plan_.looks.size() != 2 || plan_.ladder.empty() || plan_.at_once <= 0.0 ||
            !plan_.read_floor) {
            lost("reading", "mark, floor, readings and what the pots give");
        }
    }

    void leave(const card::KeyNumber& key) {
        if (!by("night.key-label", key.label)) {
            return;
        }
        const double longest = seconds_in(as_read(key.value));
        // The fixed ones first: "after {mark}" may take anything.
        if (by("night.key-aside-clock", key.aside) || by("night.key-aside-shut", key.aside)) {
            plan_.leave_by_clock = longest;
        } else if (const auto after = by("night.key-aside", key.aside)) {
            plan_.leave.push_back({celsius_in(after->at("mark")), longest});
            if (after->contains("from")) {
                plan_.leave_from = moment(after->at("from"));
            }
        } else {
            lost("night", key.aside);
        }
    }

    /// Of an overnight trip; a day's deck promises no time that the box may be left alone.
    void read_night() {
        if (std::none_of(deck_.cards.begin(), deck_.cards.end(),
                         [](const card::Card& one) { return one.key == "night"; })) {
            return;
        }
        each<card::KeyNumber>("night", [&](const card::KeyNumber& key) { leave(key); });
        each<card::KeyRow>("night", [&](const card::KeyRow& row) {
            for (const card::KeyNumber& key : row.numbers) {
                leave(key);
            }
        });
        each<card::Table>("night", [&](const card::Table& table) {
            if (table.columns.size() != 2 || !by("night.table-alone", table.columns.back().head)) {
                return;
            }
            for (const auto& row : table.rows) {
                plan_.leave.push_back({celsius_in(as_read(row.front())), seconds_in(as_read(row.back()))});
            }
        });
        if (plan_.leave.empty() && !plan_.leave_by_clock) {
            lost("night", "how long it may be left");
        }
    }

    const card::Deck& deck_;
    const words::Words& words_;
    const trip::Trip& trip_;
    PrintedPlan plan_;
    std::optional<LocalTime> wakes_;  // for the next top-up
};

}  // namespace

const card::Card& card_named(const card::Deck& deck, const std::string& key) {
    for (const card::Card& card : deck.cards) {
        if (card.key == key) {
            return card;
        }
    }
    throw std::runtime_error("the deck has no card " + key);
}

PrintedPlan read_deck(const card::Deck& deck, const words::Words& words, const trip::Trip& trip) {
    return Reader(deck, words, trip).read();
}

}  // namespace holdwater::support
