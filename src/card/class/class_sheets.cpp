// SPDX-License-Identifier: MIT
#include "card/class/class_sheets.hpp"

#include "card/class/class_exercises.hpp"
#include "card/class/class_gauge.hpp"
#include "card/class/loss_finder.hpp"
#include "card/figures/exercise_figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>

namespace holdwater::card {
namespace {

class ClassSheetsMaker {
  public:
    ClassSheetsMaker(const ClassFrame& frame, const words::Words& words)
        : frame_(frame),
          words_(words),
          figures_(sheet_figures()),
          on_(figures_.of("sheets")),
          exercises_(class_exercises(frame, finder_, words)) {}

    SheetBlocks all() {
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
    using Places = std::initializer_list<words::Place>;

    FigureList sheet_figures() const {
        FigureList list({frame_.plan(), words_});
        add_sheet_figures(list, frame_, finder_);
        return list;
    }
    std::string away() const { return Telling{frame_.plan(), words_}.children_away(); }
    Text word(const std::string& key, Places places = {}) const { return words_.text("class-sheets." + key, places); }
    template <class One>
    void put(One block) {
        blocks_.add(std::move(block));
    }
    void heading(const std::string& key) { put(Heading{word(key)}); }
    void note(const std::string& key, Places places = {}) { put(Note{word(key, places)}); }
    void warn(const std::string& key, Places places = {}) { put(Caution{SignalWord::warning, word(key, places)}); }

    /// KEY-1, KEY-2 and so on, as many as there are words for.
    void steps(const std::string& key, Places places = {}) {
        Steps list;
        for (int i = 1; words_.has(fmt::format("class-sheets.{}-{}", key, i)); ++i) {
            list.add(word(fmt::format("{}-{}", key, i), places));
        }
        put(std::move(list));
    }

    void box_test() {
        heading("test-heading");
        const Text& start = on_("start");
        steps("test", {{"start", start}, {"last", on_("last")}, {"least", on_("least")}});
        note("finder-after");
        warn("test-caution", {{"away", away()}});
        WriteIn grid;
        grid.heads = {word("grid-what"), word("grid-box", {{"number", 1}}), word("grid-box", {{"number", 2}}),
                      word("grid-box", {{"number", 3}})};
        for (const char* row : {"grid-litres", "grid-air", "grid-clock", "grid-reading", "grid-later", "grid-hours",
                                "grid-fall", "grid-loss"}) {
            grid.first_column.push_back(word(row, {{"start", start}}));
        }
        put(std::move(grid));
    }

    /// One page: table and scales, with the exercise as an example in them.
    void finder() {
        put(Turn{});
        heading("finder-heading");
        steps("finder", {{"percent", on_("percent")}});
        const Exercise& box =
            *std::find_if(exercises_.begin(), exercises_.end(), [](const Exercise& one) { return one.key == "box"; });
        put(Note{word("finder-example", {{"answer", box.answer}})});
        put(finder_table(finder_, on_, words_));
        put(LossScales(finder_).drawn(class_box(), frame_.wish().units, words_));
    }

    void exercises() {
        heading("ask-heading");
        note("ask-note", {{"food", frame_.kind().name}});
        Steps asked;
        WriteIn grid;
        grid.heads = {word("ask-number"), word("ask-answer"), word("ask-card")};
        for (std::size_t i = 0; i < exercises_.size(); ++i) {
            asked.add(exercises_[i].question);
            grid.first_column.push_back(fmt::format("{}", i + 1));
        }
        put(std::move(asked));
        put(std::move(grid));
    }

    void answers() {
        heading("answer-heading");
        note("answer-note");
        Steps all;
        for (const Exercise& one : exercises_) {
            all.add(one.answer);
        }
        put(std::move(all));
    }

    void notes() {
        heading("notes-heading");
        warn("notes-scald",
             {{"bath", on_("mark")}, {"away", away()}, {"burn", on_.has("burn") ? on_("burn") : word("notes-soon")}});
        warn("notes-hand", {{"times", on_("cold-hand")}});
        heading("show-heading");
        steps("show");
        heading("warn-heading");
        steps("warn");
        heading("time-heading");
        note("time-note");
        Steps plan;
        plan.numbered = false;
        for (int i = 1; words_.has(fmt::format("class-sheets.time-{}", i)); ++i) {
            plan.add(word(fmt::format("time-{}-at", i)), word(fmt::format("time-{}", i)));
        }
        put(std::move(plan));
    }

    void made() {
        heading("made-heading");
        note("made", {{"rules", std::string(facts::to_name(frame_.wish().rules))},
                      {"food", frame_.kind().name},
                      {"start", on_("food-start")},
                      {"error", on_("error")},
                      {"boiling", on_("boiling")}});
    }

    const ClassFrame& frame_;
    const words::Words& words_;
    LossFinder finder_;
    FigureList figures_;
    CardFigures on_;
    std::vector<Exercise> exercises_;
    SheetBlocks blocks_;
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
