// SPDX-License-Identifier: MIT
#include "cli/json/answers_json.hpp"

#include "cli/json/json.hpp"

#include <nlohmann/json.hpp>

namespace holdwater::cli {
namespace {

Json band_json(const safety::StingBand& band) {
    return Json::array({seconds_or_null(band.p5), seconds_or_null(band.p50), seconds_or_null(band.p95)});
}

Json band_json(const std::optional<safety::BathBand>& band) {
    if (!band) {
        return nullptr;
    }
    return Json::array({band->p5.celsius(), band->p50.celsius(), band->p95.celsius()});
}

}  // namespace

std::string boil_json(units::Temperature boiling, units::Pressure pressure) {
    return answer_text({{"boiling_c", boiling.celsius()}, {"pressure_pa", pressure.si()}}, {});
}

std::string mix_json(const answer::MixQuestion& question, const answer::MixAnswer& answer) {
    const answer::SimpleParts& simple = answer.simple;
    const Json simple_parts{{"hot_parts", simple.hot},
                            {"cold_parts", simple.cold},
                            {"result_c", simple.mixed.result.celsius()},
                            {"likely_c", simple.mixed.likely.celsius()},
                            {"low_c", simple.mixed.low.celsius()},
                            {"high_c", simple.mixed.high.celsius()}};
    return answer_text({{"hot_parts", answer.hot_parts},
                        {"cold_parts", 1},
                        {"result_c", answer.mixed.result.celsius()},
                        {"likely_c", answer.mixed.likely.celsius()},
                        {"low_c", answer.mixed.low.celsius()},
                        {"high_c", answer.mixed.high.celsius()},
                        {"boiling_c", question.boiling.celsius()},
                        {"simple", simple_parts}},
                       {});
}

std::string gauge_json(const answer::Gauge& gauge, const problem::Problems& warnings) {
    Json hours = Json::array();
    for (const answer::HoursAbove& row : gauge.hours) {
        hours.push_back({{"outside_c", row.outside.celsius()},
                         {"likely", hours_or_null(row.likely)},
                         {"low", hours_or_null(row.low)},
                         {"low_breezy", hours_or_null(row.low_breezy)},
                         {"low_windy", hours_or_null(row.low_windy)}});
    }
    Json residuals = Json::array();
    Json readings = Json::array();
    for (const answer::GaugedReading& reading : gauge.readings) {
        readings.push_back({{"at_h", units::in_hours(reading.at)},
                            {"bath_c", reading.bath.celsius()},
                            {"fitted_c", reading.fitted.celsius()},
                            {"used", reading.used}});
        if (reading.used) {
            residuals.push_back((reading.bath - reading.fitted).si());
        }
    }
    Json answer{{"loss_w_per_k", gauge.loss.likely.si()},
                {"loss_low", gauge.loss.low.si()},
                {"loss_high", gauge.loss.high.si()},
                {"tau_h", units::in_hours(gauge.loss.time_constant)},
                {"liner_j_per_k", gauge.liner ? Json(gauge.liner->likely.si()) : Json(nullptr)},
                {"liner_low", gauge.liner ? Json(gauge.liner->low.si()) : Json(nullptr)},
                {"liner_high", gauge.liner ? Json(gauge.liner->high.si()) : Json(nullptr)},
                {"liner_taken_j_per_k", gauge.liner_taken.si()},
                {"outside_c", gauge.outside.celsius()},
                {"start_c", gauge.start.celsius()},
                {"floor_c", gauge.floor.celsius()},
                {"first_hour_fall_k", gauge.first_hour.si()},
                {"hours_above_floor", hours},
                {"weak", gauge.loss.weak},
                {"good_test_h", hours_or_null(gauge.good_test)},
                {"residuals_k", residuals},
                {"readings", readings}};
    return answer_text(answer, warnings);
}

std::string to_json(const BathSting& answer) {
    return answer_text({{"sting_s", {{"warm", band_json(answer.warm)}, {"cold", band_json(answer.cold)}}},
                        {"burn_s",
                         {{"second", seconds_or_null(answer.burn.second)},
                          {"third", seconds_or_null(answer.burn.third)},
                          {"infant", seconds_or_null(answer.burn.infant)}}}},
                       {});
}

std::string to_json(const StingBaths& answer) {
    // In two steps: an object of one pair in braces would be read as a list.
    const Json hands{{"warm", band_json(answer.warm)}, {"cold", band_json(answer.cold)}};
    Json whole = Json::object();
    whole["bath_c"] = hands;
    return answer_text(whole, {});
}

}  // namespace holdwater::cli
