// SPDX-License-Identifier: MIT
#include "card/trip/what_if.hpp"

namespace holdwater::card {
namespace {

using safety::FallAction;

Text line(const CardWriter& hand, const char* key, const plan::WhatIfAnswer& answer) {
    return hand.words.text(std::string("what-if.") + key,
                           {{"name", answer.what->name}, {"longest", hand.may_leave(answer.longest)}, {"full", hand.full()}});
}

const char* key_of_night(const CardWriter& hand, const plan::WhatIfAnswer& answer) {
    if (!answer.broken.empty()) {
        return "broken";
    }
    if (!answer.what->fire_out) {
        return "leave";
    }
    if (answer.holds) {
        return "holds";
    }
    const bool long_enough = *answer.what->fire_out + hand.plan.round <= answer.longest;
    return long_enough ? "before" : "partly";
}

std::vector<Block> under_heading(const CardWriter& hand, const std::vector<Text>& lines) {
    std::vector<Block> blocks;
    if (!lines.empty()) {
        blocks.emplace_back(Heading{hand.words.text("what-if.heading")});
    }
    for (const Text& text : lines) {
        blocks.emplace_back(Note{text});
    }
    return blocks;
}

}  // namespace

std::vector<Block> what_ifs_of_night(const CardWriter& hand) {
    std::vector<Text> lines;
    for (const plan::WhatIfAnswer& answer : hand.plan.what_ifs) {
        if (hand.reads()) {
            lines.push_back(line(hand, key_of_night(hand, answer), answer));
        }
    }
    return under_heading(hand, lines);
}

std::vector<Block> what_ifs_of_limits(const CardWriter& hand) {
    std::vector<Text> lines;
    for (const plan::WhatIfAnswer& answer : hand.plan.what_ifs) {
        if (!hand.reads() || answer.action == FallAction::none) {
            continue;
        }
        lines.push_back(line(hand,
                             answer.action == FallAction::finish_and_eat_next  ? "next"
                             : answer.action == FallAction::finish_and_eat_now ? "now"
                                                                               : "away",
                             answer));
    }
    return under_heading(hand, lines);
}

}  // namespace holdwater::card
