// SPDX-License-Identifier: MIT
#include "card/trip/what_if.hpp"

#include "card/shared/shared_parts.hpp"
#include "plan/result/late_pour.hpp"

namespace holdwater::card {
namespace {

using safety::FallAction;

/// Of the nth answer, from 1.
Text line(const CardWriter& writer, const CardFigures& on, const char* key, int nth) {
    const plan::WhatIfAnswer& answer = writer.plan.what_ifs[static_cast<std::size_t>(nth) - 1];
    const std::string wording = std::string("what-if.") + key;
    const bool asks_full = words::Words::places_of(writer.words.find(wording).value_or("")).contains("full");
    return writer.words.text(wording, {{"name", answer.what->name},
                                       {"longest", where_asked(writer, wording, "longest", on, "what-if", nth)},
                                       {"full", asks_full ? full(writer, on) : ""}});
}

const char* key_before(const CardWriter& writer, const plan::WhatIfAnswer& answer) {
    if (!answer.broken.empty()) {
        return "broken";
    }
    if (!answer.what->fire_out) {
        return "leave";
    }
    if (answer.holds) {
        return "holds";
    }
    const bool long_enough = *answer.what->fire_out + writer.plan.round <= answer.longest;
    return long_enough ? "before" : "partly";
}

Blocks under_heading(const CardWriter& writer, const std::vector<Text>& lines) {
    Blocks blocks;
    if (!lines.empty()) {
        blocks.add(Heading{writer.words.text("what-if.heading")});
    }
    for (const Text& text : lines) {
        blocks.add(Note{text});
    }
    return blocks;
}

}  // namespace

Blocks what_ifs_of(const CardWriter& writer) {
    const CardFigures on = writer.on("trouble");
    std::vector<Text> lines;
    int nth = 0;
    for (const plan::WhatIfAnswer& answer : writer.plan.what_ifs) {
        ++nth;
        if (!writer.reads()) {
            const plan::LateStep late = plan::late_step(writer.plan, answer);
            if (late == plan::LateStep::boil_and_eat) {
                lines.push_back(writer.words.text("what-if.boil", {{"name", answer.what->name}, {"boil", on("boil")}}));
            } else if (late == plan::LateStep::throw_away) {
                lines.push_back(line(writer, on, "away", nth));
            }
            continue;
        }
        lines.push_back(line(writer, on, key_before(writer, answer), nth));
        if (answer.action != FallAction::none) {
            lines.push_back(line(writer, on,
                                 answer.action == FallAction::finish_and_eat_next  ? "next"
                                 : answer.action == FallAction::finish_and_eat_now ? "now"
                                                                                   : "away",
                                 nth));
        }
    }
    return under_heading(writer, lines);
}

}  // namespace holdwater::card
