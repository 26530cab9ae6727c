// SPDX-License-Identifier: MIT
#include "card/class/class_exercises.hpp"

#include "card/figures/exercise_figures.hpp"
#include "card/shared/shared_parts.hpp"

#include <initializer_list>
#include <utility>

namespace holdwater::card {
namespace {

class ExerciseWriter {
  public:
    ExerciseWriter(const ClassFrame& frame, const CardFigures& on, const ExerciseDecisions& decided,
                   const words::Words& words)
        : frame_(frame), on_(on), decided_(decided), words_(words) {}

    std::vector<Exercise> all() {
        put("boil", {{"altitude", on_("height")}}, {{"boiling", on_("boil-boiling")}, {"altitude", on_("height")}});
        put("mix", {{"altitude", on_("height")}, {"cold", on_("mix-cold")}, {"bath", on_("mix-bath")}},
            {{"parts", on_("mix-parts")}, {"likely", on_("mix-likely")}, {"low", on_("mix-low")}});
        put("hold",
            {{"food", frame_.kind().name},
             {"shape", shape(frame_.plan().foods.front())},
             {"thickness", on_("hold-thickness")},
             {"bath", on_("middle")}},
            {{"time", or_never("hold-time")}, {"tick", on_("hold-row")}});
        put("thick",
            {{"shape", shape(frame_.plan().foods.back())},
             {"thickness", on_("thick-thickness")},
             {"bath", on_("middle")}},
            {{"most", on_("thick-most")}});
        come_up();
        put("ladder", {{"litres", on_("pour-litres")}, {"reading", on_("pour-reading")}, {"mark", on_("mark")}},
            {{"rung", on_("pour-rung")}, {"add", on_("pour-add")}, {"swap", on_("pour-full")}});
        put("box",
            {{"start", on_("box-start")},
             {"litres", on_("box-litres")},
             {"air", on_("box-air")},
             {"reading", on_("box-reading")},
             {"hours", on_("box-hours")}},
            {{"air", on_.brief("box-column")},
             {"row", on_.brief("box-row")},
             {"number", on_("box-number")},
             {"hours", on_("box-hours")},
             {"litres", on_("box-litres-short")},
             {"loss", on_("box-loss")},
             {"exact", on_("box-exact")}});
        put("alone", {{"mark", on_("mark")}, {"air", on_("alone-air")}, {"floor", on_("floor")}},
            {{"time", on_("alone-time")}});
        morning();
        put("sting", {}, {{"low", on_("sting-low")}, {"high", on_("sting-high")}});
        put("leftovers", {{"food", frame_.kind().name}, {"air", on_("left-air")}},
            {{"slush", or_never("left-slush")}, {"air", or_never("left-still")}});
        return std::move(exercises_);
    }

  private:
    using Places = std::initializer_list<words::Place>;

    void put(const std::string& key, Places question, Places answer) { put(key, question, answer, "answer-" + key); }
    void put(const std::string& key, Places question, Places answer, const std::string& answer_key) {
        exercises_.push_back({key, words_.text("class-exercises.ask-" + key, question),
                              words_.text("class-exercises." + answer_key, answer)});
    }
    std::string shape(const plan::FoodPlan& food) const {
        return words_.text("hold.shape-" + std::string(facts::to_name(food.food->shape)));
    }
    Text or_never(std::string_view key) const { return on_.has(key) ? on_(key) : words_.text("hold.never"); }

    void come_up() {
        using safety::ComeUpVerdict;
        const char* key = decided_.come_up == ComeUpVerdict::fine   ? "answer-come-up-fine"
                          : decided_.come_up == ComeUpVerdict::slow ? "answer-come-up-slow"
                                                                    : "answer-come-up-refused";
        put("come-up",
            {{"shape", shape(frame_.plan().foods.back())},
             {"thickness", on_("come-up-thickness")},
             {"start", on_("come-up-start")},
             {"bath", on_("come-up-bath")},
             {"from", on_("come-up-from")},
             {"to", on_("come-up-to")}},
            {{"time", or_never("come-up-time")}, {"warn", on_("come-up-warn")}, {"refuse", on_("come-up")}}, key);
    }

    void morning() {
        using safety::FallAction;
        const char* key = decided_.morning == FallAction::finish_and_eat_next  ? "answer-morning-next"
                          : decided_.morning == FallAction::finish_and_eat_now ? "answer-morning-now"
                                                                               : "answer-morning-away";
        put("morning", {{"reading", on_("morning-reading")}, {"air", on_("morning-air")}, {"floor", on_("floor")}},
            {{"time", on_("morning-time")}, {"full", full({frame_.plan(), words_}, on_)}}, key);
    }

    const ClassFrame& frame_;
    const CardFigures& on_;
    const ExerciseDecisions& decided_;
    const words::Words& words_;
    std::vector<Exercise> exercises_;
};

}  // namespace

std::vector<Exercise> class_exercises(const ClassFrame& frame, const LossFinder& finder, const words::Words& words) {
    FigureList list({frame.plan(), words});
    const ExerciseDecisions decided = add_exercise_figures(list, frame, finder);
    const CardFigures on = list.of("exercises");
    return ExerciseWriter(frame, on, decided, words).all();
}

}  // namespace holdwater::card
