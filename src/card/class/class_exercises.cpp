// SPDX-License-Identifier: MIT
#include "card/class/class_exercises.hpp"

#include "answer/hold/hold_verdict.hpp"
#include "answer/leftovers/leftovers.hpp"
#include "answer/water/mix.hpp"
#include "card/class/class_gauge.hpp"
#include "card/figures/class_figures.hpp"
#include "card/figures/dip.hpp"
#include "card/figures/parts.hpp"
#include "card/shared/shared_parts.hpp"
#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "plan/result/hold_table.hpp"
#include "safety/clocks.hpp"
#include "units/print.hpp"

#include <cmath>
#include <initializer_list>

namespace holdwater::card {
namespace {

using units::Toward;

// What the exercises tell of: made up, as an instructor would.
constexpr units::Length hut = units::metres(1850);
constexpr units::Temperature hut_cold = units::celsius(4);
constexpr units::Temperature hut_bath = units::celsius(60);
constexpr units::Length thin_piece = units::millimetres(17);
constexpr units::Length ruler_label = units::millimetres(10);
constexpr units::Length far_too_thick = units::millimetres(20);  // over what may be
constexpr units::Length thick_piece = units::millimetres(90);
constexpr units::Temperature fridge = units::celsius(5);
constexpr units::Temperature frost = units::celsius(0);
constexpr units::Temperature evening_air = units::celsius(2);
constexpr units::Volume ladder_water = units::litres(30);

class Writer {
  public:
    Writer(const ClassFrame& frame, const LossFinder& finder, const words::Words& words)
        : frame_(frame), finder_(finder), words_(words), safe_{frame.plan(), words} {}

    std::vector<Exercise> all() {
        boil();
        mix();
        hold();
        too_thick();
        come_up();
        ladder();
        box();
        alone();
        morning();
        sting();
        leftovers();
        return std::move(exercises_);
    }

  private:
    using Places = std::initializer_list<words::Place>;

    void put(const std::string& key, Places question, Places answer) { put(key, question, answer, "answer-" + key); }
    void put(const std::string& key, Places question, Places answer, const std::string& answer_key) {
        exercises_.push_back({key, words_.text("class-exercises.ask-" + key, question),
                              words_.text("class-exercises." + answer_key, answer)});
    }
    units::Amount tenth(units::Temperature t, Toward toward) const {
        return units::amount(t, safe_.system(), {0.1, toward});
    }
    units::Amount whole(units::Volume v) const { return units::amount(v, safe_.system(), {1.0}); }
    static units::Amount height() { return units::figure(hut.si(), 1.0, Toward::nearest, "m"); }
    std::string shape(const plan::FoodPlan& food) const {
        return words_.text("hold.shape-" + std::string(facts::to_name(food.food->shape)));
    }
    Text after_a_fall() const {
        FigureList list(safe_);
        add_full(FigureMaker(list, "limits"));
        return full(safe_, list.of("limits"));
    }
    const plan::FoodPlan& first() const { return frame_.plan().foods.front(); }
    const plan::FoodPlan& last() const { return frame_.plan().foods.back(); }
    units::Temperature middle() const { return frame_.baths()[1]; }

    void boil() {
        put("boil", {{"altitude", height()}},
            {{"boiling", tenth(heat::boiling_point_at(hut).value(), Toward::nearest)}, {"altitude", height()}});
    }

    void mix() {
        const auto mixed =
            answer::mix({hut_bath, heat::boiling_point_at(hut).value(), hut_cold, answer::Measure::volume}).value();
        put("mix", {{"altitude", height()}, {"cold", safe_.about(hut_cold)}, {"bath", safe_.about(hut_bath)}},
            {{"parts", parts_to_mix(mixed.hot_parts)},
             {"likely", units::amount(mixed.mixed.likely, safe_.system(), {1.0, Toward::down})},
             {"low", units::amount(mixed.mixed.low, safe_.system(), {1.0, Toward::down})}});
    }

    void hold() {
        const units::Length tick{units::round_to(thin_piece.si(), ruler_label.si(), Toward::up)};
        const auto time = plan::safe_hold(frame_.plan(), first(), tick, middle());
        const Text printed = time ? safe_.must_hold(*time) : words_.text("hold.never");
        put("hold",
            {{"food", frame_.kind().name},
             {"shape", shape(first())},
             {"thickness", safe_.thickness(thin_piece)},
             {"bath", safe_.at_least(middle())}},
            {{"time", printed}, {"tick", safe_.thickness(tick)}});
    }

    void too_thick() {
        const auto most = plan::thickest(frame_.plan(), last(), middle());
        const units::Length limit = most.value_or(units::Length{0});
        put("thick",
            {{"shape", shape(last())},
             {"thickness", safe_.thickness(limit + far_too_thick)},
             {"bath", safe_.at_least(middle())}},
            {{"most", safe_.thickness(limit)}});
    }

    void come_up() {
        answer::OnePieceQuestion question;
        question.body = last().piece.body;
        question.body.thickness = thick_piece;
        question.bath = frame_.baths().front();
        question.start = fridge;
        question.kind = &frame_.kind();
        question.rules = frame_.wish().rules;
        const auto answer = answer::answer_one_piece(question).value();
        const std::optional<units::Duration> takes = answer.cautious ? answer.cautious->times.come_up : std::nullopt;
        const auto verdict = safety::judge_come_up(takes);
        const char* key = verdict == safety::ComeUpVerdict::fine   ? "answer-come-up-fine"
                          : verdict == safety::ComeUpVerdict::slow ? "answer-come-up-slow"
                                                                   : "answer-come-up-refused";
        const facts::Facts& facts = facts::facts();
        put("come-up",
            {{"shape", shape(last())},
             {"thickness", safe_.thickness(thick_piece)},
             {"start", safe_.about(fridge)},
             {"bath", safe_.at_least(question.bath)},
             {"from", safe_.about(facts.temperature("come-up.from"))},
             {"to", safe_.limit(facts.temperature("come-up.to"))}},
            {{"time", takes ? units::print(*takes, Toward::up) : words_.text("hold.never")},
             {"warn", units::print(facts.duration("come-up.warn"))},
             {"refuse", units::print(facts.duration("come-up.refuse"))}},
            key);
    }

    /// Between two rungs: the colder one.
    void ladder() {
        const std::vector<units::Temperature> rungs = frame_.rungs();
        const units::Temperature rung = rungs[rungs.size() > 1 ? rungs.size() - 2 : 0];
        const units::Temperature mark = frame_.plan().levels.mark;
        const auto litres = [&](bool full) {
            return safe_.litres_short(frame_.pour(ladder_water, rung, mark, full), Toward::up);
        };
        put("ladder",
            {{"litres", whole(ladder_water)},
             {"reading", safe_.about(rung + units::kelvins(1))},
             {"mark", safe_.about(mark)}},
            {{"rung", safe_.about(rung)}, {"add", litres(false)}, {"swap", litres(true)}});
    }

    void box() {
        const ClassBox box = class_box();
        const FoundLoss found = found_loss(finder_, box);
        put("box",
            {{"start", safe_.about(finder_.start())},
             {"litres", whole(box.water)},
             {"air", safe_.about(box.air)},
             {"reading", safe_.about(box.reading)},
             {"hours", units::print(box.after)}},
            {{"air", safe_.short_degrees(finder_.airs()[found.air])},
             {"row", safe_.short_degrees(finder_.readings()[found.reading], Toward::up)},
             {"number", found.number},
             {"hours", units::print(box.after)},
             {"litres", safe_.litres_short(box.water)},
             {"loss", loss_figure(found.loss)},
             {"exact", units::decimal(gauge_of(class_box(), finder_.start()).loss.likely.si(), 2)}});
    }

    void alone() {
        const auto time = time_alone(frame_, class_box(), finder_.start(), frost);
        put("alone",
            {{"mark", safe_.about(frame_.plan().levels.mark)},
             {"air", safe_.about(frost)},
             {"floor", safe_.at_least(frame_.plan().levels.read_floor)}},
            {{"time", safe_.may_leave(time)}});
    }

    void morning() {
        const ClassMorning found = class_morning(frame_);
        using safety::FallAction;
        const char* key = found.action == FallAction::finish_and_eat_next  ? "answer-morning-next"
                          : found.action == FallAction::finish_and_eat_now ? "answer-morning-now"
                                                                           : "answer-morning-away";
        put("morning",
            {{"reading", safe_.about(found.reading)},
             {"air", safe_.about(found.air)},
             {"floor", safe_.at_least(frame_.plan().levels.read_floor)}},
            {{"time", safe_.must_hold(found.below)}, {"full", after_a_fall()}}, key);
    }

    void sting() {
        const Dip by_one = dips()[1];
        put("sting", {},
            {{"low", units::amount(by_one.band.p5, safe_.system(), {1.0, Toward::down})},
             {"high", units::amount(by_one.band.p95, safe_.system(), {1.0, Toward::up})}});
    }

    void leftovers() {
        const auto slices =
            answer::thickest_slices(frame_.kind().composition, facts::facts().temperature("cooling.from"), evening_air);
        const auto of = [&](answer::Medium medium) {
            for (const answer::ThickestSlice& slice : slices) {
                if (slice.medium == medium && slice.contact == facts::Contact::free && slice.thickest) {
                    return safe_.written(safe_.thickness(*slice.thickest));
                }
            }
            return words_.text("hold.never");
        };
        put("leftovers", {{"food", frame_.kind().name}, {"air", safe_.about(evening_air)}},
            {{"slush", of(answer::Medium::slush)}, {"air", of(answer::Medium::still_air)}});
    }

    const ClassFrame& frame_;
    const LossFinder& finder_;
    const words::Words& words_;
    SafeSide safe_;
    std::vector<Exercise> exercises_;
};

}  // namespace

std::vector<Exercise> class_exercises(const ClassFrame& frame, const LossFinder& finder, const words::Words& words) {
    return Writer(frame, finder, words).all();
}

}  // namespace holdwater::card
