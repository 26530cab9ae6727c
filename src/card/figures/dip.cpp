// SPDX-License-Identifier: MIT
#include "card/figures/dip.hpp"

#include "facts/facts.hpp"
#include "safety/burn.hpp"
#include "units/print.hpp"

#include <cmath>
#include <utility>

namespace holdwater::card {

using safety::DipRow;

std::vector<Dip> dips() {
    constexpr std::pair<DipRow, const char*> rows[] = {{DipRow::at_once, "at-once"},
                                                       {DipRow::by_one, "by-one"},
                                                       {DipRow::by_two, "by-two"},
                                                       {DipRow::not_by_two, "not"}};
    std::vector<Dip> made;
    int nth = 0;
    for (const auto& [row, key] : rows) {
        const safety::BathBand band = safety::dip_band(row);
        made.push_back({++nth, key, band, safety::burn_times(band.p95).second});
    }
    return made;
}

std::string span_of(const safety::BathBand& band, bool fahrenheit) {
    const auto in_unit = [&](units::Temperature t) { return fahrenheit ? t.fahrenheit() : t.celsius(); };
    return units::written(units::figure(in_unit(band.p5), 1.0, units::Toward::down)) + "–" +
           units::written(units::figure(in_unit(band.p95), 1.0, units::Toward::up));
}

int cold_hand_later() {
    return static_cast<int>(std::lround(facts::facts().value("touch.cold-hand")));
}

}  // namespace holdwater::card
