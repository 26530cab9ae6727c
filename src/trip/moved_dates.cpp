// SPDX-License-Identifier: MIT
#include "trip/moved_dates.hpp"

#include "trip/moment.hpp"

namespace holdwater::trip {
namespace {

constexpr std::size_t date_letters = 10;    // 2027-10-15
constexpr std::size_t minute_letters = 16;  // with T16:00
constexpr int day_seconds = 86400;

bool is_part_of_a_number(std::string_view text, std::size_t at) {
    return at > 0 && text[at - 1] >= '0' && text[at - 1] <= '9';
}

}  // namespace

std::string moved_dates(std::string_view text, int days) {
    std::string moved;
    bool quoted = false;
    bool remark = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '\n') {
            quoted = remark = false;
        } else if (c == '"' && !remark) {
            quoted = !quoted;
        } else if (c == '#' && !quoted) {
            remark = true;
        }
        if (!remark && !is_part_of_a_number(text, i) && i + minute_letters <= text.size()) {
            if (const auto moment = parse_moment(text.substr(i, minute_letters))) {
                const units::LocalTime later(moment->seconds() + static_cast<std::int64_t>(days) * day_seconds);
                moved += later.date();
                i += date_letters - 1;
                continue;
            }
        }
        moved += c;
    }
    return moved;
}

}  // namespace holdwater::trip
