// SPDX-License-Identifier: MIT
#include "cli/json/mend_json.hpp"

#include "cli/json/json.hpp"

#include <nlohmann/json.hpp>

namespace holdwater::cli {

std::string mend_json(const std::string& trip, const Mended& mended) {
    const char* const verdict = mended.holds_already ? "holds" : mended.file ? "mended" : "refused";
    const Json root{{"schema", 1},
                    {"verdict", verdict},
                    {"trip", trip},
                    {"file", mended.file ? Json(*mended.file) : Json(nullptr)},
                    {"changes", mended.changes},
                    {"problems", problems_json(mended.problems)}};
    return root.dump(2) + "\n";
}

}  // namespace holdwater::cli
