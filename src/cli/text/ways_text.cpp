// SPDX-License-Identifier: MIT
#include "cli/text/ways_text.hpp"

#include "cli/text/told.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::cli {
namespace {

std::string counted(std::size_t count, const char* one, const char* many) {
    return count == 0 ? fmt::format("no {}", one) : fmt::format("{} {}", count, count == 1 ? one : many);
}

const char* name_of(plan::Way::Kind kind) {
    switch (kind) {
        case plan::Way::Kind::planned:
            return "as planned above";
        case plan::Way::Kind::unwoken:
            return "nobody woken";
        case plan::Way::Kind::at_once:
            return "fire at the first moment";
        case plan::Way::Kind::halved:
            return "every piece split in two";
        case plan::Way::Kind::better_box:
            return "a box that loses less (a test tells whether it does)";
    }
    return "";
}

}  // namespace

std::string ways_text(const plan::Plan& plan) {
    if (plan.ways.empty()) {
        return {};
    }
    const Told told(plan);
    std::string out = "\nWays to cook it; the lines below one choose it in the trip file\n";
    int nth = 0;
    for (const plan::Way& way : plan.ways) {
        ++nth;
        const bool burns = way.burden.fuel > units::Mass{0};
        out +=
            fmt::format("  {}: fire {}, {}, {}, boils {} for the bath{}, ready {}, holds in {:.0f} of 100\n",
                        name_of(way.kind), day_time(way.light_fire), counted(way.burden.wakings, "waking", "wakings"),
                        counted(way.top_ups, "top-up", "top-ups"), told("terminal", "way-boils", nth),
                        burns ? ", burns " + told("terminal", "way-burns", nth) : "", day_time(way.ready),
                        std::floor(100.0 * way.share));
        for (const std::string& line : way.lines) {
            out += "      " + line + "\n";
        }
    }
    return out;
}

}  // namespace holdwater::cli
