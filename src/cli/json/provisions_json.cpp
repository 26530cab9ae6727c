// SPDX-License-Identifier: MIT
#include "cli/json/provisions_json.hpp"

#include <nlohmann/json.hpp>

namespace holdwater::cli {
namespace {

template <class Quantity>
Json between(const plan::Between<Quantity>& b, double scale = 1.0) {
    return {{"low", b.low.si() * scale}, {"likely", b.likely.si() * scale}, {"high", b.high.si() * scale}};
}

Json portions_of(const plan::Portions& p) {
    constexpr const char* verdicts[] = {"hearty", "enough", "scarce", "too-little"};
    return {{"raw_kg", p.raw.si()},
            {"boneless_kg", p.boneless.si()},
            {"cooked_kg", between(p.cooked)},
            {"each_g", between(p.each, 1e3)},
            {"serves_ordinary", p.serves_ordinary},
            {"serves_hearty", p.serves_hearty},
            {"verdict", verdicts[static_cast<int>(p.verdict)]},
            {"missing_kg", p.missing.si()}};
}

Json water_of(const plan::WaterNeed& w) {
    return {{"cold_l", units::in_litres(w.cold)},
            {"boil_likely_l", units::in_litres(w.boil_likely)},
            {"boil_most_l", units::in_litres(w.boil_most)},
            {"spare_l", units::in_litres(w.spare)},
            {"fetch_l", units::in_litres(w.fetch)}};
}

Json fuel_of(const std::optional<plan::FuelNeed>& f) {
    if (!f) {
        return nullptr;
    }
    return {{"fuel", facts::to_name(f->fuel)},     {"moisture", f->moisture ? Json(*f->moisture) : Json(nullptr)},
            {"moisture_given", f->moisture_given}, {"heat_mj", between(f->heat, 1e-6)},
            {"mass_kg", between(f->mass)},         {"card_kg", f->card.si()}};
}

Json ice_of(const std::optional<plan::Ice>& i) {
    if (!i) {
        return nullptr;
    }
    constexpr const char* boxes[] = {"a-box-of-the-trip", "the-loss-given", "a-poor-box"};
    return {{"drained_kg", between(i->drained)},
            {"undrained_kg", i->undrained.si()},
            {"card_kg", i->card.si()},
            {"takes_up_l", units::in_litres(i->takes_up)},
            {"food_l", units::in_litres(i->food)},
            {"reckoned_in", boxes[static_cast<int>(i->box)]},
            {"box_name", i->name.empty() ? Json(nullptr) : Json(i->name)},
            {"box_loss_w_per_k", between(i->loss)},
            {"waits_in_another", i->waits_elsewhere},
            {"box_l", i->room ? Json(units::in_litres(*i->room)) : Json(nullptr)},
            {"fits", i->fits}};
}

Json sear_of(const plan::Sear& s) {
    Json foods = Json::array();
    for (const plan::SearedFood& food : s.foods) {
        foods.push_back({{"name", food.name},
                         {"pieces", food.pieces},
                         {"at_once", food.at_once},
                         {"sides", food.sides},
                         {"rounds", food.rounds},
                         {"takes_min", units::in_minutes(food.takes)}});
    }
    return {{"take_out", s.foods.empty() ? Json(nullptr) : Json(s.take_out.iso())},
            {"takes_min", units::in_minutes(s.takes)},
            {"side_s", s.side.si()},
            {"pans", s.pans},
            {"in_time", s.in_time},
            {"foods", foods},
            {"finished_over_the_fire", s.finished}};
}

Json leftovers_of(const plan::Leftovers& l) {
    constexpr const char* media[] = {"slush", "still-air", "loose-snow"};
    Json slices = Json::array();
    for (const answer::ThickestSlice& slice : l.slices) {
        slices.push_back(
            {{"medium", media[static_cast<int>(slice.medium)]},
             {"contact", facts::to_name(slice.contact)},
             {"thickest_mm", slice.thickest ? Json(units::in_millimetres(*slice.thickest)) : Json(nullptr)},
             {"to_21_c_h", hours_or_null(slice.to_middle)},
             {"to_5_c_h", hours_or_null(slice.to_end)}});
    }
    return {{"air_c", l.air.celsius()},
            {"slices", slices},
            {"begin_within_h", units::in_hours(l.begin)},
            {"at_21_c_within_h", units::in_hours(l.first)},
            {"at_5_c_within_h", units::in_hours(l.all)},
            {"keep_h", units::in_hours(l.keep)},
            {"reheat_c", l.reheat.celsius()},
            {"reheat_for_s", l.reheat_hold.si()},
            {"closed_bags", false}};
}

}  // namespace

Json around_json(const plan::Provisions& around) {
    Json hot_water = Json::array();
    for (const plan::HotWaterStart& water : around.hot_water.list) {
        hot_water.push_back({{"name", water.name},
                             {"volume_l", units::in_litres(water.volume)},
                             {"pots", water.pots},
                             {"rounds", water.rounds},
                             {"light_fire", water.light_fire.iso()},
                             {"at", water.at.iso()}});
    }
    Json sides = Json::array();
    for (const plan::SideStart& side : around.sides.list) {
        sides.push_back(
            {{"name", side.name}, {"begin", side.begin.iso()}, {"takes_min", units::in_minutes(side.takes)}});
    }
    Json clashes = Json::array();
    for (const plan::PotClash& clash : around.sides.clashes) {
        clashes.push_back({{"from", clash.from.iso()},
                           {"until", clash.until.iso()},
                           {"pots_needed", clash.needed},
                           {"pots", clash.there},
                           {"sides", clash.sides}});
    }
    Json earlier = Json::array();
    for (const plan::Meal& meal : around.earlier) {
        earlier.push_back(
            {{"serve", meal.serve.iso()}, {"portions", portions_of(meal.portions)}, {"sear", sear_of(meal.sear)}});
    }
    return {{"portions", portions_of(around.portions)},
            {"water", water_of(around.water)},
            {"fuel", fuel_of(around.fuel)},
            {"ice", ice_of(around.ice)},
            {"frost_c", around.frost ? Json(around.frost->celsius()) : Json(nullptr)},
            {"hot_water", hot_water},
            {"sides", sides},
            {"clashes", clashes},
            {"sear", sear_of(around.sear)},
            {"earlier_meals", earlier},
            {"leftovers", leftovers_of(around.leftovers)}};
}

}  // namespace holdwater::cli
