// SPDX-License-Identifier: MIT
#include "cli/text/provisions_text.hpp"

#include "card/shared/figures.hpp"
#include "card/shared/provision_figures.hpp"
#include "cli/text/wrap.hpp"
#include "facts/facts.hpp"
#include "facts/published.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

using units::System;
using units::Toward;

class ProvisionsText {
  public:
    ProvisionsText(const plan::Provisions& around, const trip::Trip& trip) : around_(around), trip_(trip) {}

    std::string all() {
        for (const plan::Meal& meal : around_.earlier) {
            portions(meal.portions, of_meal(meal.serve));
        }
        portions(around_.portions, around_.earlier.empty() ? "" : of_meal(trip_.serve));
        water();
        fuel();
        ice();
        frost();
        sides();
        for (const plan::Meal& meal : around_.earlier) {
            sear(meal.sear, of_meal(meal.serve));
        }
        sear(around_.sear, "");
        leftovers();
        return std::move(out_);
    }

  private:
    template <class... Values>
    void head(fmt::format_string<Values...> form, Values&&... values) {
        out_ += wrap(fmt::format(form, std::forward<Values>(values)...));
    }
    template <class... Values>
    void line(fmt::format_string<Values...> form, Values&&... values) {
        out_ += wrap(fmt::format(form, std::forward<Values>(values)...), 2);
    }

    std::string mass(units::Mass m, double step, Toward toward) const {
        return units::print(m, trip_.units, {step, toward});
    }
    std::string grams(units::Mass m, Toward toward) const {
        return units::written(card::small_mass(m, trip_.units, toward));
    }
    std::string litres(units::Volume v, Toward toward = Toward::up) const {
        return units::print(v, trip_.units, {1.0, toward});
    }
    std::string degrees(units::Temperature t, Toward toward = Toward::nearest) const {
        return units::print(t, trip_.units, {1.0, toward});
    }
    std::string level(const char* key) const {
        return units::written(facts::published(facts::facts().temperature(key), trip_.units, Toward::down));
    }
    static std::string day_time(units::LocalTime t) {
        constexpr const char* days[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
        return fmt::format("{}\u00A0{}", days[t.weekday()], t.clock_24());
    }

    static std::string of_meal(units::LocalTime serve) { return fmt::format(" for the meal at {}", day_time(serve)); }

    void portions(const plan::Portions& p, const std::string& meal) {
        using Verdict = plan::Portions::Verdict;
        const char* verdict = p.verdict == Verdict::hearty   ? "enough, even for hungry people"
                              : p.verdict == Verdict::enough ? "enough"
                              : p.verdict == Verdict::scarce ? "just enough"
                                                             : "too little";
        // The portions of a meal count what comes from every box.
        head("Food for {}{}{}: {}", trip_.people, trip_.elsewhere.empty() ? "" : " from all boxes", meal, verdict);
        line("{} raw; cooked about {} each, at least {}", mass(p.raw, 0.1, Toward::nearest),
             grams(p.each.likely, Toward::down), grams(p.each.low, Toward::down));
        line("serves {} at {}, or {} hungry people at {}", p.serves_ordinary,
             grams(units::Mass{facts::facts().value("portion.ordinary")}, Toward::nearest), p.serves_hearty,
             grams(units::Mass{facts::facts().value("portion.hearty")}, Toward::nearest));
        if (p.verdict == Verdict::scarce || p.verdict == Verdict::too_little) {
            line("to be sure take {} more, raw and without bone", mass(p.missing, 0.1, Toward::up));
        }
    }

    void water() {
        const plan::WaterNeed& w = around_.water;
        head("Water to fetch: {}", units::written(card::water_to_fetch(w, trip_.units)));
        line("{} to boil in all, at the most {}; {} cold into the box", litres(w.boil_likely),
             units::written(card::most_to_boil(w, trip_.units)),
             units::written(card::half_litres(w.cold, trip_.units)));
        line("drinking, side dishes and washing-up come on top");
    }

    void fuel() {
        if (!around_.fuel) {
            head("Fuel: none to carry");
            return;
        }
        const plan::FuelNeed& f = *around_.fuel;
        const bool wood = f.fuel == facts::Fuel::wood;
        const auto amount = [&](units::Mass m) { return units::written(card::fuel_mass(m, f.fuel, trip_.units)); };
        const std::string name(wood ? "Wood" : f.fuel == facts::Fuel::propane ? "Propane" : "Butane");
        head("{} for the bath: {}", name, amount(f.card));
        line("about {} if it burns well, {} as a rule", amount(f.mass.low), amount(f.mass.likely));
        if (wood) {
            line("{:.0f} % moisture{}; open fire", *f.moisture * 100.0,
                 f.moisture_given ? "" : " taken, up to a third");
        }
        line("a fire kept for cooking, warmth or searing comes on top");
    }

    void ice() {
        if (!around_.ice) {
            return;
        }
        const plan::Ice& i = *around_.ice;
        if (!(i.card.si() > 0)) {
            head("Ice for the way and until the food goes in: none; keep the box shut and out of the sun");
            return;
        }
        head("Ice for the way and until the food goes in: {}", units::written(card::ice_to_carry(i, trip_.units)));
        line("reckoned in {}, up to {}{}", ice_box(i), units::written(card::ice_box_loss(i)),
             i.waits_elsewhere
                 ? "; that box is a bath then, so until it goes in the food waits in another, taken as poor"
                 : "");
        line("keeps the raw food at {} or below for {}, in air of {} on the way", level("raw.cold"),
             units::print(i.takes, Toward::up), degrees(trip_.journey->air));
        line("{} if all goes as expected; {} on a bad day if the meltwater stays in",
             mass(i.drained.likely, 0.1, Toward::up), mass(i.undrained, 0.1, Toward::up));
        if (i.room) {
            line("ice takes {}, food {}, of the {} in the box{}", litres(i.takes_up), litres(i.food),
                 litres(*i.room, Toward::down), i.fits ? "" : ": it does not fit");
        } else {
            line("ice takes {}, food {}: see that the box holds both", litres(i.takes_up), litres(i.food));
        }
        line("food chilled first, in tight bags; box in the shade, opened little");
    }

    static std::string ice_box(const plan::Ice& i) {
        switch (i.box) {
            case plan::IceBox::named:
                return "the box \"" + i.name + "\"";
            case plan::IceBox::given:
                return "the box whose loss the trip gives";
            case plan::IceBox::planning:
                break;
        }
        return "a poor box, since [journey] names none";
    }

    void frost() {
        if (around_.frost) {
            head("Frost, {} or colder: keep raw food from freezing until it goes in",
                 degrees(*around_.frost, Toward::up));
            line("in its cold box with the lid shut, off snow and ice; a frozen start is not worked out");
        }
    }

    void sides() {
        if (around_.sides.list.empty()) {
            return;
        }
        head("Side dishes, ready at {}", day_time(trip_.serve));
        for (const plan::SideStart& side : around_.sides.list) {
            line("{} begin {} ({})", day_time(side.begin), side.name, units::print(side.takes));
        }
        for (const plan::PotClash& clash : around_.sides.clashes) {
            line("pots: {} needed, {} there, from {} to {}; bath water goes first", clash.needed, clash.there,
                 day_time(clash.from), day_time(clash.until));
        }
    }

    void sear(const plan::Sear& s, const std::string& meal) {
        for (const std::string& name : s.finished) {
            head("{}: finishing it over the fire is its sear", name);
        }
        if (s.foods.empty()) {
            return;
        }
        head("Sear for the crust{}: first piece out of the bath {}", meal, day_time(s.own_out()));
        for (const plan::SearedFood& food : s.foods) {
            line("{}{}: {} {}, {} in a pan, {} sides of {:.0f} s, in all {}", food.name,
                 food.elsewhere ? " (other box)" : "", food.pieces, food.pieces == 1 ? "piece" : "pieces", food.at_once,
                 food.sides, s.side.si(), units::print(food.takes, Toward::up));
        }
        line("{}, very hot; then {} to slice and hand out", s.pans == 1 ? "one pan" : fmt::format("{} pans", s.pans),
             units::print(facts::facts().duration("sear.carve")));
        line("take out only what goes into the pan next; eat within {}{}",
             units::print(facts::facts().duration("sear.longest-out")),
             s.in_time ? "" : ": too many pieces for that, serve in two sittings");
    }

    void leftovers() {
        const plan::Leftovers& l = around_.leftovers;
        head("Leftovers: {} within {} of leaving the bath, {} within {} in all; thickest slice",
             level("cooling.middle"), units::print(l.first), level("cooling.to"), units::print(l.all));
        for (const answer::ThickestSlice& slice : l.slices) {
            if (slice.contact != facts::Contact::free) {
                continue;
            }
            const char* where = slice.medium == answer::Medium::slush ? "in an open thin bag in stirred ice slush"
                                : slice.medium == answer::Medium::loose_snow ? "in loose snow"
                                                                             : "on a rack in still air";
            const std::string air = slice.medium == answer::Medium::still_air
                                        ? fmt::format(" under {}", units::written(card::air_under(l, trip_.units)))
                                        : "";
            line("{}{}: {}", where, air, thickness(slice.thickest));
        }
        line("flat on a tray or one upon another: {} in slush, {} in snow", lying(answer::Medium::slush),
             lying(answer::Medium::loose_snow));
        line(
            "into the cold within {} of leaving the bath, the time at table counted; never in closed bags, and loosely "
            "covered once cold",
            units::print(l.begin, Toward::down));
        line("eat within {} days at {} or below; reheat once, to {}{}", card::days_to_keep(l), level("cooling.to"),
             units::written(facts::published(l.reheat, trip_.units)),
             l.reheat_hold.si() > 0 ? " for " + card::hold_time(l.reheat_hold) : "");
    }

    std::string thickness(const std::optional<units::Length>& t) const {
        return t ? units::written(card::slice_at_most(*t, trip_.units)) : "too warm, do not keep it";
    }
    std::string lying(answer::Medium medium) const {
        for (const answer::ThickestSlice& slice : around_.leftovers.slices) {
            if (slice.medium == medium && slice.contact == facts::Contact::bottom) {
                return thickness(slice.thickest);
            }
        }
        return thickness(std::nullopt);
    }

    const plan::Provisions& around_;
    const trip::Trip& trip_;
    std::string out_;
};

}  // namespace

std::string around_text(const plan::Provisions& around, const trip::Trip& trip) {
    return ProvisionsText(around, trip).all();
}

}  // namespace holdwater::cli
