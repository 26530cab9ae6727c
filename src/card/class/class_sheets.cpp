// SPDX-License-Identifier: MIT
#include "card/class/class_sheets.hpp"

#include "card/class/class_exercises.hpp"
#include "card/shared/decimal_mark.hpp"
#include "card/class/loss_finder.hpp"
#include "facts/facts.hpp"
#include "safety/burn.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace holdwater::card {
namespace {

using units::Toward;

class ClassSheetsMaker {
  public:
    ClassSheetsMaker(const ClassFrame& frame, const words::Words& words)
        : frame_(frame),
          words_(words),
          hand_{frame.plan(), words},
          exercises_(class_exercises(frame, finder_, words)) {}

    std::vector<SheetBlock> all() {
        note("intro");
        box_test();
        finder();
        put(Turn{});
        exercises();
        put(Turn{});
        answers();
        made();
        put(Turn{});
        notes();
        return std::move(blocks_);
    }

  private:
    using Places = std::initializer_list<words::Words::Place>;

    Text word(const std::string& key, Places places = {}) const { return words_.text("class-sheets." + key, places); }
    void put(Block block) {
        set_decimal_mark(block, words_.decimal_mark());
        blocks_.emplace_back(std::move(block));
    }
    void heading(const std::string& key) { put(Heading{word(key)}); }
    void note(const std::string& key, Places places = {}) { put(Note{word(key, places)}); }
    void warn(const std::string& key, Places places = {}) { put(Caution{SignalWord::warning, word(key, places)}); }

    /// KEY-1, KEY-2 and so on, as many as there are words for.
    void steps(const std::string& key, Places places = {}) {
        Steps list;
        for (int i = 1; words_.has(fmt::format("class-sheets.{}-{}", key, i)); ++i) {
            list.steps.push_back({"", word(fmt::format("{}-{}", key, i), places)});
        }
        put(std::move(list));
    }

    void box_test() {
        heading("test-heading");
        const Text start = hand_.about(finder_.start());
        steps("test", {{"start", start},
                       {"last", hand_.at_least(finder_.readings().front())},
                       {"least", units::print(finder_.hours().front())}});
        warn("test-caution", {{"away", hand_.children_away()}});
        WriteIn grid;
        grid.heads = {word("grid-what"), word("grid-box", {{"number", "1"}}), word("grid-box", {{"number", "2"}}),
                      word("grid-box", {{"number", "3"}})};
        for (const char* row : {"grid-litres", "grid-air", "grid-clock", "grid-reading", "grid-later", "grid-hours",
                                "grid-line", "grid-loss"}) {
            grid.first_column.push_back(word(row, {{"start", start}}));
        }
        put(std::move(grid));
    }

    void finder() {
        heading("finder-heading");
        const double line = (facts::facts().value("finder.line") - 1.0) * 100.0;
        steps("finder", {{"start", hand_.about(finder_.start())},
                         {"percent", units::number(line, 0)},
                         {"step", loss_text(units::HeatLoss{facts::facts().value("finder.loss-step")})}});
        const Exercise& box =
            *std::find_if(exercises_.begin(), exercises_.end(), [](const Exercise& one) { return one.key == "box"; });
        put(Note{word("finder-example", {{"ask", box.question}, {"answer", box.answer}})});
        for (Table& table : finder_tables(finder_, hand_.system(), words_)) {
            put(std::move(table));
        }
        note("finder-after");
    }

    void exercises() {
        heading("ask-heading");
        note("ask-note", {{"food", frame_.kind().name}});
        Steps asked;
        WriteIn grid;
        grid.heads = {word("ask-number"), word("ask-answer"), word("ask-card")};
        for (std::size_t i = 0; i < exercises_.size(); ++i) {
            asked.steps.push_back({"", exercises_[i].question});
            grid.first_column.push_back(fmt::format("{}", i + 1));
        }
        put(std::move(asked));
        put(std::move(grid));
    }

    void answers() {
        heading("answer-heading");
        note("answer-note");
        Steps told;
        for (const Exercise& one : exercises_) {
            told.steps.push_back({"", one.answer});
        }
        put(std::move(told));
    }

    void notes() {
        heading("notes-heading");
        const units::Temperature mark = frame_.plan().top_up_mark;
        const auto burn = safety::burn_times(mark).second;
        warn("notes-scald", {{"bath", hand_.about(mark)},
                             {"away", hand_.children_away()},
                             {"burn", burn && *burn >= units::seconds(1) ? hand_time(*burn) : word("notes-soon")}});
        warn("notes-hand");
        heading("show-heading");
        steps("show");
        heading("warn-heading");
        steps("warn");
        heading("time-heading");
        note("time-note");
        Steps plan;
        plan.numbered = false;
        for (int i = 1; words_.has(fmt::format("class-sheets.time-{}", i)); ++i) {
            plan.steps.push_back({word(fmt::format("time-{}-at", i)), word(fmt::format("time-{}", i))});
        }
        put(std::move(plan));
    }

    void made() {
        heading("made-heading");
        note("made", {{"rules", std::string(facts::to_name(frame_.wish().rules))},
                      {"food", frame_.kind().name},
                      {"start", hand_.about(facts::facts().temperature("class.start"))},
                      {"error", units::print(frame_.wish().thermometer, units::first_of(hand_.system()), {0.1})},
                      {"boiling", hand_.about(frame_.boiling())}});
    }

    std::string hand_time(units::Duration burn) const { return hold_time(units::Duration{std::floor(burn.si())}); }

    const ClassFrame& frame_;
    const words::Words& words_;
    CardWriter hand_;
    LossFinder finder_;
    std::vector<Exercise> exercises_;
    std::vector<SheetBlock> blocks_;
};

}  // namespace

Sheets class_sheets(const ClassFrame& frame, const words::Words& words, const std::string& stamp) {
    Sheets sheets;
    sheets.name = words.text("class-sheets.name");
    sheets.title = frame.trip().name;
    sheets.stamp = stamp;
    sheets.language = frame.trip().language;
    sheets.footer = words.text("deck.footer");
    sheets.blocks = ClassSheetsMaker(frame, words).all();
    return sheets;
}

}  // namespace holdwater::card
