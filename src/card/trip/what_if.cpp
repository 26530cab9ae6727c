// SPDX-License-Identifier: MIT
#include "card/trip/what_if.hpp"

#include "plan/result/late_pour.hpp"

namespace holdwater::card {
namespace {

using safety::FallAction;

Text line(const CardWriter& writer, const char* key, const plan::WhatIfAnswer& answer) {
    return writer.words.text(
        std::string("what-if.") + key,
        {{"name", answer.what->name}, {"longest", writer.may_leave(answer.longest)}, {"full", writer.full()}});
}

const char* key_of_night(const CardWriter& writer, const plan::WhatIfAnswer& answer) {
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

Blocks what_ifs_of_night(const CardWriter& writer) {
    std::vector<Text> lines;
    for (const plan::WhatIfAnswer& answer : writer.plan.what_ifs) {
        if (writer.reads()) {
            lines.push_back(line(writer, key_of_night(writer, answer), answer));
        }
    }
    return under_heading(writer, lines);
}

Blocks what_ifs_of_limits(const CardWriter& writer) {
    std::vector<Text> lines;
    for (const plan::WhatIfAnswer& answer : writer.plan.what_ifs) {
        if (!writer.reads()) {
            const plan::LateStep late = plan::late_step(writer.plan, answer);
            if (late == plan::LateStep::boil_and_eat) {
                lines.push_back(writer.words.text(
                    "what-if.boil",
                    {{"name", answer.what->name}, {"boil", writer.must_hold(writer.plan.late_pour->boil)}}));
            } else if (late == plan::LateStep::throw_away) {
                lines.push_back(line(writer, "away", answer));
            }
            continue;
        }
        if (answer.action == FallAction::none) {
            continue;
        }
        lines.push_back(line(writer,
                             answer.action == FallAction::finish_and_eat_next  ? "next"
                             : answer.action == FallAction::finish_and_eat_now ? "now"
                                                                               : "away",
                             answer));
    }
    return under_heading(writer, lines);
}

}  // namespace holdwater::card
