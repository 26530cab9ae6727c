// SPDX-License-Identifier: MIT
#include "cli/json/hold_json.hpp"

#include "cli/json/json.hpp"
#include "cli/text/hold_text.hpp"
#include "cli/text/wrap.hpp"

#include <nlohmann/json.hpp>

namespace holdwater::cli {
namespace {

Json celsius_or_null(const std::optional<units::Temperature>& t) {
    return t ? Json(t->celsius()) : Json(nullptr);
}

Json reading_json(const std::optional<answer::ReadingOfPiece>& reading) {
    if (!reading) {
        return nullptr;
    }
    const answer::PieceTimes& times = reading->times;
    return {{"reach_min", minutes_or_null(times.reach)},
            {"come_up_h", hours_or_null(times.come_up)},
            {"kill_min", minutes_or_null(times.kill)},
            {"kill_7_log_min", minutes_or_null(times.kill_7)},
            {"core_c", celsius_or_null(times.core)},
            {"surface_c", celsius_or_null(times.surface)},
            {"mean_c", celsius_or_null(times.mean)},
            {"diffusivity_m2_per_s", reading->diffusivity.si()},
            {"conductivity_w_per_m_k", reading->conductivity.si()},
            {"film_w_per_m2_k", reading->film.si()}};
}

}  // namespace

std::string hold_json(const answer::OnePieceQuestion& question, const answer::OnePieceAnswer& answer,
                      const problem::Problems& warnings) {
    Json json{{"likely", reading_json(answer.likely)}, {"cautious", reading_json(answer.cautious)}};
    if (answer.given) {
        json["given"] = reading_json(answer.given);
    }
    json["use"] = answer.eat() ? "eat" : "physics only";
    json["verdict"] = plain_spaces(hold_verdict(question, answer));
    json["target_c"] = answer.target.celsius();
    json["safe_min"] = answer.eat() ? minutes_or_null(answer.safe) : Json(nullptr);
    json["read_safe_min"] = answer.as_read ? minutes_or_null(answer.as_read->allowed) : Json(nullptr);
    json["contact"] = facts::to_name(question.body.contact);
    json["nearest"] = nullptr;
    if (answer.nearest) {
        json["nearest"] = {{"target_c", answer.nearest->target.celsius()},
                           {"bath_c", answer.nearest->bath.celsius()},
                           {"safe_min", minutes_or_null(answer.nearest->safe)}};
    }
    json["safe_if_free_min"] = minutes_or_null(answer.safe_if_free);
    const auto thickest = [](const std::optional<units::Length>& l) {
        return l ? Json(units::in_millimetres(*l)) : Json(nullptr);
    };
    json["thickest_mm"] = {{"slab", thickest(answer.thickest_slab)}, {"round", thickest(answer.thickest_round)}};
    return plain_spaces(answer_text(json, warnings));
}

}  // namespace holdwater::cli
