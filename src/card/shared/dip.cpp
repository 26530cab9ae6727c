// SPDX-License-Identifier: MIT
#include "card/shared/dip.hpp"

#include "safety/burn.hpp"

#include <utility>

namespace holdwater::card {

using safety::DipRow;

std::vector<Dip> dips() {
    constexpr std::pair<DipRow, const char*> rows[] = {{DipRow::at_once, "at-once"},
                                                       {DipRow::by_one, "by-one"},
                                                       {DipRow::by_two, "by-two"},
                                                       {DipRow::not_by_two, "not"}};
    std::vector<Dip> made;
    for (const auto& [row, key] : rows) {
        if (const auto band = safety::bath_band(row, safety::HandState::warm, safety::Stirring::stirred)) {
            made.push_back({key, *band, safety::burn_times(band->p95).second});
        }
    }
    return made;
}

}  // namespace holdwater::card
