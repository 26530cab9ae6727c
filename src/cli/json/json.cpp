// SPDX-License-Identifier: MIT
#include "cli/json/json.hpp"

#include <nlohmann/json.hpp>

namespace holdwater::cli {

Json problems_json(const problem::Problems& problems) {
    Json list = Json::array();
    for (const problem::Problem& p : problems) {
        Json one{{"code", p.code.text()}, {"text", p.message}};
        if (!p.hint.empty()) {
            one["hint"] = p.hint;
        }
        if (p.place) {
            one["place"] = {{"file", p.place->file}, {"line", p.place->line}, {"column", p.place->column}};
        }
        list.push_back(one);
    }
    return list;
}

Json minutes_or_null(const std::optional<units::Duration>& duration) {
    return duration ? Json(units::in_minutes(*duration)) : Json(nullptr);
}

Json hours_or_null(const std::optional<units::Duration>& duration) {
    return duration ? Json(units::in_hours(*duration)) : Json(nullptr);
}

Json seconds_or_null(const std::optional<units::Duration>& duration) {
    return duration ? Json(duration->si()) : Json(nullptr);
}

std::string answer_text(const Json& answer, const problem::Problems& warnings) {
    Json root{{"schema", 1}};
    root.update(answer);
    root["warnings"] = problems_json(warnings);
    return root.dump(2) + "\n";
}

}  // namespace holdwater::cli
