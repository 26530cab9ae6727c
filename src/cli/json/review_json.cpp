// SPDX-License-Identifier: MIT
#include "cli/json/review_json.hpp"

#include "cli/json/json.hpp"
#include "cli/text/review_text.hpp"

#include <nlohmann/json.hpp>

namespace holdwater::cli {
namespace {

using answer::FoodReview;

std::string_view word(safety::ComeUpVerdict verdict) {
    switch (verdict) {
        case safety::ComeUpVerdict::fine:
            return "fine";
        case safety::ComeUpVerdict::slow:
            return "slow";
        case safety::ComeUpVerdict::refused:
            return "refused";
    }
    return "refused";
}

Json growth_json(const answer::Growth& growth) {
    return {{"with_lag", growth.bound}, {"likely", growth.likely}, {"without_lag", growth.without_lag}};
}

Json food_json(const trip::Log& log, const FoodReview& food) {
    Json one{{"name", food.food->name},
             {"kind", food.food->kind},
             {"verdict", verdict_word(food.verdict)},
             {"rule", {{"rule", food.reason.rule}, {"figure", food.reason.figure}, {"source", food.reason.source}}},
             {"stay_known", food.stay_known},
             {"out_written", food.out_written},
             {"in_h", units::in_hours(food.in)},
             {"out_h", units::in_hours(food.out)},
             {"in_at", answer::watch(log, food.in)},
             {"out_at", answer::watch(log, food.out)},
             {"ready_likely_h", hours_or_null(food.ready_likely)},
             {"ready_late_h", hours_or_null(food.ready_late)},
             {"missing_h", food.ready_late ? Json(0.0) : hours_or_null(food.missing)},
             {"core_peak_c", food.core_peak.celsius()},
             {"core_end_c", food.core_end.celsius()},
             {"consumer_advice_met", food.consumer_met},
             {"come_up_h", hours_or_null(food.come_up)},
             {"come_up", word(food.come_up_verdict)},
             {"kill_standard", food.standard.kill->key},
             {"kill", food.kill},
             {"kill_likely", food.kill_likely},
             {"adaptation", food.adaptation},
             {"margin", food.margin},
             {"cook_floor_c", food.standard.cook_floor.celsius()},
             {"hold_floor_c", food.standard.hold_floor.celsius()},
             {"below_floor_h", units::in_hours(food.fall.below_floor)},
             {"below_cook_floor_h", units::in_hours(food.below_cook_floor)},
             {"below_hold_floor_h", units::in_hours(food.below_hold_floor)},
             {"below_floor_likely_h", units::in_hours(food.below_likely)},
             {"below_50_h", units::in_hours(food.fall.below_50)},
             {"falls", food.fall.times},
             {"growth_log10", growth_json(food.growth)},
             {"come_up_growth_log10", growth_json(food.come_up_growth)},
             {"growth_less_kill_log10", food.growth_left},
             {"waits_for_growth", food.waits_for_growth}};
    one["finish"] = food.standard.finish ? Json{{"core_c", food.standard.finish->core.celsius()},
                                                {"hold_s", food.standard.finish->hold.si()},
                                                {"why", food.standard.finish->why}}
                                         : Json(nullptr);
    Json cores = Json::array();
    for (const answer::CoreReading& reading : food.core_readings) {
        cores.push_back({{"at_h", units::in_hours(reading.at)},
                         {"read_c", reading.read.celsius()},
                         {"likely_c", reading.likely.celsius()},
                         {"cautious_c", reading.cautious.celsius()}});
    }
    one["core_readings"] = cores;
    return one;
}

}  // namespace

std::string review_json(const trip::Trip& trip, const trip::Log& log, const answer::Review& review,
                        const std::string& stamp) {
    Json foods = Json::array();
    for (const FoodReview& food : review.foods) {
        foods.push_back(food_json(log, food));
    }
    Json timeline = Json::array();
    for (const answer::Noticed& one : review.timeline) {
        timeline.push_back({{"at_h", units::in_hours(one.at)}, {"at", answer::watch(log, one.at)}, {"text", one.text}});
    }
    const answer::Reason& reason = review.foods[review.worst].reason;
    Json answer{{"verdict", verdict_word(review.verdict)},
                {"trip", trip.name},
                {"stamp", stamp},
                {"worst_food", review.foods[review.worst].food->name},
                {"foods", foods},
                {"below_floor_h", units::in_hours(review.below_floor)},
                {"growth_log10", review.growth},
                {"rule", reason.rule + " " + reason.figure},
                {"rule_source", reason.source},
                {"reading_error_k", review.error.si()},
                {"timeline", timeline},
                {"problems", Json::array()}};
    answer["without_doubtful"] = review.without_doubtful
                                     ? Json{{"verdict", verdict_word(review.without_doubtful->verdict)},
                                            {"below_floor_h", units::in_hours(review.without_doubtful->below_floor)}}
                                     : Json(nullptr);
    answer["if_nothing_poured"] = Json(nullptr);
    if (review.if_unpoured) {
        Json at = Json::array();
        for (const std::size_t row : review.if_unpoured->rows) {
            at.push_back(answer::watch(log, log.rows[row].at));
        }
        answer["if_nothing_poured"] = {{"verdict", verdict_word(review.if_unpoured->verdict)},
                                       {"below_floor_h", units::in_hours(review.if_unpoured->below_floor)},
                                       {"rows_at", at}};
    }
    return answer_text(answer, review.remarks);
}

std::string no_review_json(bool refused, const problem::Problems& problems, const problem::Problems& warnings) {
    return answer_text({{"verdict", refused ? Json("refused") : Json(nullptr)},
                        {"foods", Json::array()},
                        {"problems", problems_json(problems)}},
                       warnings);
}

}  // namespace holdwater::cli
