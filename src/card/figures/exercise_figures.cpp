// SPDX-License-Identifier: MIT
#include "card/figures/exercise_figures.hpp"

#include "answer/hold/hold_verdict.hpp"
#include "answer/leftovers/leftovers.hpp"
#include "answer/water/mix.hpp"
#include "card/class/class_gauge.hpp"
#include "card/figures/class_figures.hpp"
#include "card/figures/dip.hpp"
#include "card/figures/parts.hpp"
#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "plan/result/hold_table.hpp"
#include "safety/burn.hpp"

#include <cmath>
#include <string>

namespace holdwater::card {

using units::Toward;
using How = FigureMaker::How;

namespace {

// What the exercises tell of: made up, as an instructor would.
constexpr units::Length hut = units::metres(1850);
constexpr units::Temperature hut_cold = units::celsius(4);
constexpr units::Temperature hut_bath = units::celsius(60);
constexpr units::Length thin_piece = units::millimetres(17);
constexpr units::Length row_apart = units::millimetres(10);
constexpr units::Length far_too_thick = units::millimetres(20);  // over what may be
constexpr units::Length thick_piece = units::millimetres(90);
constexpr units::Temperature fridge = units::celsius(5);
constexpr units::Temperature frost = units::celsius(0);
constexpr units::Temperature evening_air = units::celsius(2);
constexpr units::Volume class_water = units::litres(30);

/// What is made up is printed as it is, what is worked out by its own rounding.
class ExerciseMaker {
  public:
    ExerciseMaker(FigureList& list, const ClassFrame& frame, const LossFinder& finder)
        : of_(list, "exercises"), frame_(frame), finder_(finder) {}

    ExerciseDecisions all() {
        boil();
        mix();
        hold();
        ExerciseDecisions decided;
        decided.come_up = come_up();
        pours();
        box();
        alone();
        decided.morning = morning();
        sting();
        leftovers();
        add_full(of_);
        return decided;
    }

  private:
    const SafeSide& safe() const { return of_.safe(); }
    const plan::FoodPlan& first() const { return frame_.plan().foods.front(); }
    const plan::FoodPlan& last() const { return frame_.plan().foods.back(); }
    How given() const { return {"chosen", "none", of_.source("trip-file")}; }
    How engine(std::string_view quantile, std::string_view rounding) const {
        return {quantile, rounding, of_.source("heat-engine")};
    }
    void about(std::string_view key, units::Temperature t) const { of_.degrees(key, t, safe().about(t), given()); }
    void bath(std::string_view key, units::Temperature t) const { of_.degrees(key, t, safe().at_least(t), given()); }
    void thickness(std::string_view key, units::Length l) const { of_.length(key, l, safe().thickness(l), given()); }
    void whole(std::string_view key, units::Volume v) const {
        of_.litres(key, v, units::amount(v, safe().system(), {1.0}), given());
    }

    void boil() const {
        const units::Temperature boiling = heat::boiling_point_at(hut).value();
        of_.length("height", hut, units::figure(hut.si(), 1.0, Toward::nearest, "m"), given());
        of_.degrees("boil-boiling", boiling, units::amount(boiling, safe().system(), {0.1, Toward::nearest}),
                    engine("rule", "none"));
    }

    void mix() const {
        const auto mixed =
            answer::mix({hut_bath, heat::boiling_point_at(hut).value(), hut_cold, answer::Measure::volume}).value();
        about("mix-cold", hut_cold);
        about("mix-bath", hut_bath);
        of_.number("mix-parts", mixed.hot_parts, parts_to_mix(mixed.hot_parts), engine("likely-fill", "up-tenth"));
        for (const auto& [key, t] :
             {std::pair{"mix-likely", mixed.mixed.likely}, std::pair{"mix-low", mixed.mixed.low}}) {
            of_.degrees(key, t, safe().at_most(t), engine("pouring-errors", "down-degree"));
        }
    }

    void hold() const {
        const units::Temperature middle = frame_.baths()[1];
        const units::Length row{units::round_to(thin_piece.si(), row_apart.si(), Toward::up)};
        bath("middle", middle);
        thickness("hold-thickness", thin_piece);
        thickness("hold-row", row);
        if (const auto time = plan::safe_hold(frame_.plan(), first(), row, middle)) {
            of_.span("hold-time", *time, safe().must_hold(*time), engine("hold-95", "up-5-min"));
        }
        const units::Length most = plan::thickest(frame_.plan(), last(), middle).value_or(units::Length{0});
        thickness("thick-thickness", most + far_too_thick);
        of_.length("thick-most", most, safe().thickness(most), engine("hold-95", "down-mm-eighths"));
    }

    safety::ComeUpVerdict come_up() const {
        answer::OnePieceQuestion question;
        question.body = last().piece.body;
        question.body.thickness = thick_piece;
        question.bath = frame_.baths().front();
        question.start = fridge;
        question.kind = &frame_.kind();
        question.rules = frame_.wish().rules;
        const auto answer = answer::answer_one_piece(question).value();
        const std::optional<units::Duration> takes = answer.cautious ? answer.cautious->times.come_up : std::nullopt;
        const facts::Facts& facts = facts::facts();
        thickness("come-up-thickness", thick_piece);
        about("come-up-start", fridge);
        bath("come-up-bath", question.bath);
        about("come-up-from", facts.temperature("come-up.from"));
        add_come_up(of_);
        if (takes) {
            of_.span("come-up-time", *takes, units::print(*takes, Toward::up), engine("cautious-ends", "minute"));
        }
        of_.span("come-up-warn", facts.duration("come-up.warn"), units::print(facts.duration("come-up.warn")),
                 {"rule", "none", of_.source("figure", "come-up.warn")});
        return safety::judge_come_up(takes);
    }

    /// Between two readings: the colder one.
    void pours() const {
        const std::vector<units::Temperature> rungs = frame_.rungs();
        const units::Temperature rung = rungs[rungs.size() > 1 ? rungs.size() - 2 : 0];
        const units::Temperature mark = frame_.plan().levels.mark;
        whole("pour-litres", class_water);
        about("pour-reading", rung + units::kelvins(1));
        about("mark", mark);
        about("pour-rung", rung);
        for (const bool full : {false, true}) {
            const units::Volume pour = frame_.pour(class_water, rung, mark, full);
            of_.litres(full ? "pour-full" : "pour-add", pour, safe().litres_short(pour, Toward::up),
                       engine("share-95", "up-half-litre"));
        }
    }

    void box() const {
        const ClassBox box = class_box();
        const FoundLoss found = found_loss(finder_, box);
        const units::HeatLoss exact = gauge_of(box, finder_.start()).loss.likely;
        about("box-start", finder_.start());
        whole("box-litres", box.water);
        of_.litres("box-litres-short", box.water, safe().litres_short(box.water), given());
        about("box-air", box.air);
        about("box-reading", box.reading);
        of_.span("box-hours", box.after, units::print(box.after), given());
        of_.brief().degrees("box-column", finder_.airs()[found.air], safe().about(finder_.airs()[found.air]), given());
        of_.brief().degrees("box-row", finder_.readings()[found.reading],
                            safe().at_least(finder_.readings()[found.reading]), given());
        of_.count("box-number", found.number, engine("cautious-ends", "none"));
        of_.number("box-loss", found.loss.si(), units::decimal(found.loss.si(), 2), engine("cautious-ends", "none"));
        of_.number("box-exact", exact.si(), units::decimal(exact.si(), 2), engine("rule", "none"));
    }

    void alone() const {
        const units::Duration time = time_alone(frame_, class_box(), finder_.start(), frost);
        about("alone-air", frost);
        bath("floor", frame_.plan().levels.read_floor);
        of_.span("alone-time", time, safe().may_leave(time), engine("cautious-ends", "down-15-min"));
    }

    safety::FallAction morning() const {
        const ClassMorning found = class_morning(frame_);
        about("morning-reading", found.reading);
        about("morning-air", found.air);
        of_.span("morning-time", found.below, safe().must_hold(found.below), engine("cautious-ends", "up-5-min"));
        return found.action;
    }

    void sting() const {
        const Dip by_one = dips()[1];
        const std::string skin = of_.source("skin", "hand.*, touch.*");
        // As the card's own table has them, each system rounded by itself.
        const auto end = [&](std::string_view key, units::Temperature t, Toward toward, const How& how) {
            of_.degrees(key, t, units::amount(t, safe().system(), {1.0, toward}), how);
        };
        end("sting-low", by_one.band.p5, Toward::down, {"baths-5", "down-degree", skin});
        end("sting-high", by_one.band.p95, Toward::up, {"baths-95", "up-degree", skin});
    }

    void leftovers() const {
        about("left-air", evening_air);
        const auto slices =
            answer::thickest_slices(frame_.kind().composition, facts::facts().temperature("cooling.from"), evening_air);
        for (const answer::ThickestSlice& slice : slices) {
            const char* key = slice.medium == answer::Medium::slush       ? "left-slush"
                              : slice.medium == answer::Medium::still_air ? "left-still"
                                                                          : nullptr;
            if (key != nullptr && slice.contact == facts::Contact::free && slice.thickest) {
                of_.length(key, *slice.thickest, safe().thickness(*slice.thickest),
                           engine("cautious-ends", "down-mm-eighths"));
            }
        }
    }

    FigureMaker of_;
    const ClassFrame& frame_;
    const LossFinder& finder_;
};

}  // namespace

ExerciseDecisions add_exercise_figures(FigureList& list, const ClassFrame& frame, const LossFinder& finder) {
    return ExerciseMaker(list, frame, finder).all();
}

void add_sheet_figures(FigureList& list, const ClassFrame& frame, const LossFinder& finder) {
    const FigureMaker of(list, "sheets");
    const SafeSide& safe = of.safe();
    const facts::Facts& facts = facts::facts();
    const auto rule = [&](std::string_view figure) { return How{"rule", "none", of.source("figure", figure)}; };
    of.degrees("start", finder.start(), safe.about(finder.start()), rule("finder.start"));
    of.degrees("last", finder.readings().front(), safe.at_least(finder.readings().front()), rule("box-test.weak-fall"));
    of.span("least", LossFinder::shortest(), units::print(LossFinder::shortest()), rule("finder.start"));
    const double percent = facts.value("finder.accuracy") * 100.0;
    of.number("percent", percent, units::decimal(percent, 0), rule("finder.accuracy"));
    int nth = 0;
    for (const units::Temperature air : finder.airs()) {
        // Rounded down, so that one whose air is that in the second system finds no smaller fall.
        of.degrees("air", air, units::amount(air, safe.system(), {1.0, Toward::down}), rule("finder.start"), ++nth);
    }
    nth = 0;
    for (std::size_t row = 0; row < finder.readings().size(); ++row) {
        // Rounded up, for the same.
        of.degrees("reading", finder.readings()[row], safe.at_least(finder.readings()[row]), rule("finder.start"),
                   class_cell(row, 0, 1));
        for (std::size_t column = 0; column < finder.airs().size(); ++column) {
            of.count("fall", finder.fall_number(column, row), {"cautious-ends", "none", of.source("cooling-law")},
                     ++nth);
        }
    }
    const units::Temperature mark = frame.plan().levels.mark;
    of.degrees("mark", mark, safe.about(mark), rule("class.bath-step"));
    if (const auto burn = safety::burn_times(mark).second; burn && *burn >= units::seconds(1)) {
        of.span("burn", *burn, hold_time(units::Duration{std::floor(burn->si())}), rule("burn.*"));
    }
    of.count("cold-hand", cold_hand_later(), rule("touch.cold-hand"));
    of.degrees("food-start", facts.temperature("class.start"), safe.about(facts.temperature("class.start")),
               rule("class.start"));
    of.number("error", frame.wish().thermometer.si(),
              units::amount(frame.wish().thermometer, units::first_of(safe.system()), {0.1}),
              rule("class.thermometer"));
    of.degrees("boiling", frame.boiling(), safe.about(frame.boiling()), rule("class.start"));
}

}  // namespace holdwater::card
