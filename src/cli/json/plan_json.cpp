// SPDX-License-Identifier: MIT
#include "cli/json/plan_json.hpp"

#include "cli/exit.hpp"
#include "cli/json/provisions_json.hpp"
#include "plan/result/late_pour.hpp"

#include <nlohmann/json.hpp>

namespace holdwater::cli {
namespace {

double number(double v) {
    return v;
}
double number(units::Temperature t) {
    return t.celsius();
}
double number(units::TemperatureDifference d) {
    return d.si();
}
double number(units::HeatLoss loss) {
    return loss.si();
}

template <class Q>
Json interval(const units::Interval<Q>& i) {
    return {{"low", number(i.low)}, {"likely", number(i.likely)}, {"high", number(i.high)}, {"error", number(i.error)}};
}

/// A moment that never comes within the trip is null.
Json hours_interval(const units::Interval<std::optional<units::Duration>>& i) {
    const auto hours = [](const std::optional<units::Duration>& d) {
        return d ? Json(units::in_hours(*d)) : Json(nullptr);
    };
    return {{"low", hours(i.low)}, {"likely", hours(i.likely)}, {"high", hours(i.high)}};
}

Json fill_of(const plan::Plan& plan) {
    const plan::Fill& fill = plan.fill;
    Json pours = Json::array();
    for (const plan::Pour& pour : fill.pours) {
        pours.push_back({{"at", pour.at.iso()},
                         {"boiling_l", units::in_litres(pour.boiling)},
                         {"boiling_most_l", units::in_litres(pour.most)},
                         {"pots", pour.pots},
                         {"whole_pots", pour.whole}});
    }
    return {{"light_fire", fill.light_fire.iso()},
            {"boiling_c", plan.levels.boiling.celsius()},
            {"cold_l", units::in_litres(fill.cold)},
            {"boiled_l", units::in_litres(fill.boiled)},
            {"boiled_most_l", units::in_litres(fill.boiled_most)},
            {"warming_l", units::in_litres(fill.warming)},
            {"pours", pours},
            {"reading_c", fill.reading.celsius()},
            {"after_food_c", interval(fill.after_food)},
            {"food_in", fill.food_in.iso()},
            {"latest_food_in", fill.latest_food_in.iso()},
            {"latest_fire", fill.latest_fire.iso()}};
}

Json food_of(const plan::FoodPlan& food) {
    Json one{{"name", food.food->name},
             {"kind", food.food->kind},
             {"in", food.in.iso()},
             {"use", facts::to_name(food.food->use)},
             {"eaten", food.eaten.iso()},
             {"due", food.due.iso()},
             {"held_h", food.held() ? Json(units::in_hours(*food.held())) : Json(nullptr)},
             {"texture_h", food.longest_for_texture ? Json(units::in_hours(*food.longest_for_texture)) : Json(nullptr)},
             {"ready_likely", food.ready_likely.value().iso()},
             {"ready_late", food.ready().iso()},
             {"ready_if_c", food.ready_if.celsius()},
             {"core_peak_c", interval(food.core_peak)},
             {"kill", interval(food.kill)},
             {"come_up_h", hours_interval(food.come_up)},
             {"growth_with_lag_log10", interval(food.growth_with_lag)},
             {"growth_without_lag_log10", interval(food.growth_without_lag)},
             {"growth_less_kill_log10", {{"when_done", interval(food.growth_left)}, {"when_ready", food.net_growth()}}},
             {"growth_decides", food.waits_for_growth() || food.finished_for_growth},
             {"done_late", food.done_late.value().iso()},
             {"leaves_bath", food.leaves().iso()},
             {"below_consumer_advice", food.standard.below_consumer_advice}};
    one["thickest_mm"] = food.thickest ? Json(units::in_millimetres(*food.thickest)) : Json(nullptr);
    one["steak"] = food.standard.sear ? Json{{"surface_c", food.standard.sear->surface.celsius()}} : Json(nullptr);
    if (food.standard.finish) {
        const plan::Finishing& finishing = food.finishing.value();  // of a good plan
        one["finish"] = {{"core_c", food.standard.finish->core.celsius()},
                         {"hold_s", food.standard.finish->hold.si()},
                         {"why", food.standard.finish->why},
                         {"for_growth", food.finished_for_growth},
                         {"light_fire", finishing.light_fire.iso()},
                         {"out", finishing.out.iso()},
                         {"simmer_min", units::in_minutes(finishing.one.simmering)},
                         {"hard_boil", finishing.one.hard_boil},
                         {"pan_min", finishing.one.pan ? Json(units::in_minutes(*finishing.one.pan)) : Json(nullptr)},
                         {"lots", finishing.lots},
                         {"takes_min", units::in_minutes(finishing.takes)}};
    }
    return one;
}

Json night_of(const plan::Night& night) {
    Json unattended = Json::array();
    for (const plan::Unattended& row : night.unattended) {
        unattended.push_back({{"reading_c", row.reading.celsius()}, {"longest_h", units::in_hours(row.longest)}});
    }
    Json morning = Json::array();
    for (const plan::MorningRow& row : night.morning) {
        for (const plan::MorningRow::Cell& cell : row.cells) {
            morning.push_back({{"reading_c", row.reading.celsius()},
                               {"since_h", units::in_hours(cell.since)},
                               {"below_h", units::in_hours(cell.below)},
                               {"action", safety::to_word(cell.action)}});
        }
    }
    return {{"reading_c", night.reading.celsius()},
            {"longest_h", units::in_hours(night.longest)},
            {"wake", night.wake ? Json(night.wake->iso()) : Json(nullptr)},
            {"unattended", unattended},
            {"morning", morning}};
}

/// Without a thermometer, where boiling through saves a late pour.
Json late_pour_of(const plan::Plan& plan) {
    if (!plan.late_pour) {
        return nullptr;
    }
    return {{"until_min", units::in_minutes(plan.late_pour->until)},
            {"boil_min", units::in_minutes(plan.late_pour->boil)}};
}

/// What a pour that comes so late means where nobody can measure.
Json late_step_of(const plan::WhatIfAnswer& answer, const plan::Plan& plan) {
    if (plan.trip->boxes.front().thermometer) {
        return nullptr;
    }
    constexpr const char* steps[] = {"none", "boil-and-eat", "throw-away"};
    return steps[static_cast<int>(plan::late_step(plan, answer))];
}

Json what_ifs_json(const plan::Plan& plan) {
    Json list = Json::array();
    for (const plan::WhatIfAnswer& answer : plan.what_ifs) {
        list.push_back({{"name", answer.what->name},
                        {"holds", answer.holds},
                        {"broken", answer.broken.empty() ? Json(nullptr) : Json(answer.broken)},
                        {"top_ups", answer.top_ups},
                        {"wakes", answer.wakes},
                        {"longest_alone_h", units::in_hours(answer.longest)},
                        {"below_floor_h", units::in_hours(answer.below)},
                        {"action", safety::to_word(answer.action)},
                        {"late_pour", late_step_of(answer, plan)}});
    }
    return list;
}

Json ways_of(const plan::Plan& plan) {
    constexpr const char* names[] = {"planned", "nobody-woken", "at-once", "pieces-halved", "better-box"};
    Json ways = Json::array();
    for (const plan::Way& way : plan.ways) {
        ways.push_back({{"way", names[static_cast<int>(way.kind)]},
                        {"lines", way.lines},
                        {"light_fire", way.light_fire.iso()},
                        {"ready", way.ready.iso()},
                        {"wakings", way.burden.wakings},
                        {"top_ups", way.top_ups},
                        {"boiled_l", units::in_litres(way.burden.boiled)},
                        {"fuel_kg", way.burden.fuel.si()},
                        {"held_h", units::in_hours(way.burden.held)},
                        {"weight_min", way.burden.weight().si() / 60.0},
                        {"share_that_holds", way.share}});
    }
    return ways;
}

}  // namespace

Json plan_json(const plan::Plan& plan, const std::vector<card::CardNumber>& numbers, const std::string& stamp) {
    Json figures = Json::array();
    for (const card::CardNumber& n : numbers) {
        if (!n.stands) {
            continue;
        }
        figures.push_back({{"id", n.card + "." + n.name},
                           {"card", n.card},
                           {"value", n.value},
                           {"unit", n.unit},
                           {"text", n.printed},
                           {"side", n.side},
                           {"step", n.rounding},
                           {"quantile", n.quantile},
                           {"source", n.source},
                           {"error", n.error ? Json(*n.error) : Json(nullptr)}});
    }
    Json events = Json::array();
    for (const plan::Event& event : plan.events) {
        constexpr const char* kinds[] = {"light-fire",  "warm-box", "pour",     "food-in",   "top-up",  "ready",
                                         "boil-finish", "finish",   "take-out", "hot-water", "sitting", "serve"};
        events.push_back(
            {{"at", event.at.iso()}, {"what", kinds[static_cast<int>(event.kind)]}, {"index", event.index}});
    }
    Json top_ups = Json::array();
    for (const plan::TopUp& t : plan.top_ups) {
        top_ups.push_back({{"at", t.at.iso()},
                           {"light_fire", t.light_fire.iso()},
                           {"reading_c", interval(t.reading)},
                           {"boiling_l", units::in_litres(t.boiling)},
                           {"boiling_most_l", units::in_litres(t.boiling_most)},
                           {"out_l", units::in_litres(t.out)},
                           {"wakes", t.wakes}});
    }
    Json foods = Json::array();
    for (const plan::FoodPlan& food : plan.foods) {
        foods.push_back(food_of(food));
    }
    Json bent = Json::array();
    for (const plan::BentWish& wish : plan.bent) {
        bent.push_back({{"food", wish.food},
                        {"asked_c", number(wish.asked)},
                        {"asked_within_k", number(wish.asked_within)},
                        {"target_c", number(wish.target)},
                        {"within_k", number(wish.within)}});
    }
    Json around = around_json(plan.around);
    Json root{{"schema", 1},
              {"verdict", "holds"},
              {"trip", plan.trip->name},
              {"wishes_bent", std::move(bent)},
              {"at_risk", plan.trip->at_risk},
              {"stamp", stamp},
              {"share_that_holds", plan.promise.share},
              {"share_error", plan.promise.error},
              {"scenarios", plan.promise.scenarios},
              {"fill", fill_of(plan)},
              {"floor_c", plan.levels.floor.celsius()},
              {"read_floor_c", plan.levels.read_floor.celsius()},
              {"action_line_c", plan.levels.action_line.celsius()},
              {"top_up_mark_c", plan.levels.mark.celsius()},
              {"top_ups", top_ups},
              {"events", events},
              {"foods", foods},
              {"night", night_of(plan.night)},
              {"late_pour", late_pour_of(plan)},
              {"waits_until", plan.waits_until.iso()},
              {"waits_if_c", plan.trip->boxes.front().thermometer ? Json(plan.waits_if.celsius()) : Json()},
              {"loss_w_per_k", interval(plan.loss)},
              {"fuel", around["fuel"]},
              {"ice", around["ice"]},
              {"around", around},
              {"what_if", what_ifs_json(plan)},
              {"ways", ways_of(plan)},
              {"figures", figures},
              {"problems", Json::array()},
              {"warnings", problems_json(plan.notes)}};
    return root;
}

Json refusal_json(const trip::Trip& trip, const problem::Problems& problems) {
    problem::Problems broken, rest;
    for (const problem::Problem& p : problems) {
        (p.severity == problem::Severity::error ? broken : rest).push_back(p);
    }
    Json root{{"schema", 1},
              {"verdict", exit_for(problems) == Exit::refused ? Json("refused") : Json(nullptr)},
              {"trip", trip.name},
              {"problems", problems_json(broken)},
              {"warnings", problems_json(rest)}};
    return root;
}

std::string boxes_json(const trip::Trip& trip, const std::vector<BoxResult>& boxes, const std::string& stamp) {
    Json list = Json::array();
    for (const BoxResult& box : boxes) {
        list.push_back(box.plan != nullptr ? plan_json(*box.plan, box.numbers, stamp)
                                           : refusal_json(*box.trip, box.problems));
    }
    if (list.size() == 1) {
        return list.front().dump(2) + "\n";
    }
    Exit exit = Exit::done;
    for (const BoxResult& box : boxes) {
        exit = worse(exit, exit_for(box.plan != nullptr ? box.plan->notes : box.problems));
    }
    const Json both{{"schema", 1},
                    {"verdict", exit == Exit::refused     ? Json("refused")
                                : exit == Exit::bad_input ? Json(nullptr)
                                                          : Json("holds")},
                    {"trip", trip.name},
                    {"boxes", std::move(list)}};
    return both.dump(2) + "\n";
}

std::string replan_json(const plan::Replanned& replanned, const BoxResult& box, const std::string& stamp) {
    Json json = plan_json(replanned.plan, box.numbers, stamp);
    const plan::Found& found = replanned.found;
    Json here{{"now", found.now.iso()},
              {"reading_c", found.reading.celsius()},
              {"later_min", units::in_minutes(replanned.later)},
              {"meal", replanned.plan.trip->serve.iso()}};
    if (found.food_in) {
        here["food_in"] = found.food_in->iso();
    }
    if (found.below_rim) {
        here["below_rim_mm"] = units::in_millimetres(*found.below_rim);
    }
    if (found.core) {
        here["core_c"] = found.core->celsius();
    }
    json["from_here"] = std::move(here);
    return json.dump(2) + "\n";
}

}  // namespace holdwater::cli
