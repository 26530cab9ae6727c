// SPDX-License-Identifier: MIT
#include "cli/text/provisions_text.hpp"

#include "card/figures/places.hpp"
#include "cli/text/told.hpp"
#include "cli/text/wrap.hpp"
#include "facts/facts.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

class ProvisionsText {
  public:
    explicit ProvisionsText(const plan::Plan& plan)
        : figures_(card::kitchen_figures({plan, words::Words::model()})),
          kitchen_(figures_.of("packing")),
          besides_(figures_.of("terminal")),
          around_(plan.around),
          trip_(*plan.trip) {}

    std::string all() {
        int nth = 0;
        for (const plan::Meal& meal : around_.earlier) {
            portions(meal.portions, ++nth, of_meal(meal.serve));
        }
        portions(around_.portions, ++nth, around_.earlier.empty() ? "" : of_meal(trip_.serve));
        water();
        fuel();
        ice();
        frost();
        sides();
        nth = 0;
        for (const plan::Meal& meal : around_.earlier) {
            sear(meal.sear, ++nth, of_meal(meal.serve));
        }
        sear(around_.sear, ++nth, "");
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

    /// As the Kitchen card has it, and what is said here alone.
    std::string figure(std::string_view key, const card::Which& which = {}) const { return kitchen_.full(key, which); }
    std::string beside(std::string_view key, const card::Which& which = {}) const { return besides_.full(key, which); }

    /// Day and clock are not parted at the end of a line.
    static std::string tight(units::LocalTime t) {
        std::string text = day_time(t);
        return text.replace(text.find(' '), 1, "\u00A0");
    }
    std::string when(std::string_view key, const card::Which& which) const {
        return tight(kitchen_.moment(key, which));
    }
    static std::string of_meal(units::LocalTime serve) { return fmt::format(" for the meal at {}", tight(serve)); }

    void portions(const plan::Portions& p, int nth, const std::string& meal) {
        using Verdict = plan::Portions::Verdict;
        const char* verdict = p.verdict == Verdict::hearty   ? "enough, even for hungry people"
                              : p.verdict == Verdict::enough ? "enough"
                              : p.verdict == Verdict::scarce ? "just enough"
                                                             : "too little";
        // The portions of a meal count what comes from every box.
        head("Food for {}{}{}: {}", trip_.people, trip_.elsewhere.empty() ? "" : " from all boxes", meal, verdict);
        line("{} raw; cooked about {} each, at least {}", beside("raw", nth), beside("portion-likely", nth),
             beside("portion", nth));
        line("serves {} at {}, or {} who {} hungry at {}", p.serves_ordinary, beside("portion-ordinary"),
             p.serves_hearty, p.serves_hearty == 1 ? "is" : "are", beside("portion-hearty"));
        if (p.verdict == Verdict::scarce || p.verdict == Verdict::too_little) {
            line("to be sure take {} more, raw and without bone", beside("missing", nth));
        }
    }

    void water() {
        head("Water to fetch: {}", figure("fetch"));
        line("{} to boil in all, at the most {}; {} cold into the box", beside("boil-likely"), figure("boil-most"),
             beside("cold"));
        if (around_.hot_water.list.empty()) {
            line("drinking, side dishes and washing-up come on top");
            return;
        }
        line("{} of it for drinks and washing-up; side dishes come on top", figure("drinks"));
    }

    void fuel() {
        if (!around_.fuel) {
            head("Fuel: none to carry");
            return;
        }
        const plan::FuelNeed& f = *around_.fuel;
        const bool wood = f.fuel == facts::Fuel::wood;
        const std::string name(wood ? "Wood" : f.fuel == facts::Fuel::propane ? "Propane" : "Butane");
        head("{} for the bath: {}", name, figure("fuel"));
        line("about {} if it burns well, {} as a rule", beside("fuel-low"), beside("fuel-likely"));
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
        head("Ice for the way and until the food goes in: {}", figure("ice"));
        line("reckoned in {}, up to {}{}", ice_box(i), figure("ice-box-loss"),
             i.waits_elsewhere
                 ? "; that box is a bath then, so until it goes in the food waits in another, taken as poor"
                 : "");
        line("keeps the raw food at {} or below for {}, in air of {} on the way", figure("raw-cold"),
             figure("ice-takes"), beside("journey-air"));
        line("{} if all goes as expected; {} on a bad day if the meltwater stays in", beside("ice-likely"),
             beside("ice-undrained"));
        if (i.room) {
            line("ice takes {}, food {}, of the {} in the box{}", beside("ice-takes-up"), beside("ice-food"),
                 beside("ice-room"), i.fits ? "" : ": it does not fit");
        } else {
            line("ice takes {}, food {}: see that the box holds both", beside("ice-takes-up"), beside("ice-food"));
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
            head("Frost, {} or colder: keep raw food from freezing until it goes in", beside("frost"));
            line("in its cold box with the lid shut, off snow and ice; a frozen start is not worked out");
        }
    }

    void sides() {
        if (around_.sides.list.empty()) {
            return;
        }
        head("Side dishes, ready at {}", tight(trip_.serve));
        int nth = 0;
        for (const plan::SideStart& side : around_.sides.list) {
            ++nth;
            line("{} begin {} ({})", when("side", card::side_place(around_.sides, static_cast<std::size_t>(nth) - 1)),
                 side.name, figure("side-takes", nth));
        }
        nth = 0;
        for (const plan::PotClash& clash : around_.sides.clashes) {
            ++nth;
            line("pots: {} needed, {} there, from {} to {}; bath water goes first", clash.needed, clash.there,
                 when("clash-from", nth), when("clash-until", nth));
        }
    }

    void sear(const plan::Sear& s, int nth, const std::string& meal) {
        for (const std::string& name : s.finished) {
            head("{}: finishing it over the fire is its sear", name);
        }
        if (s.foods.empty()) {
            return;
        }
        head("Sear for the crust{}: first piece out of the bath {}", meal, when("first-piece-out", nth));
        for (const plan::SearedFood& food : s.foods) {
            line("{}{}: {} {}, {} in a pan, {} sides of {} s, in all {}", food.name,
                 food.elsewhere ? " (other box)" : "", food.pieces, food.pieces == 1 ? "piece" : "pieces", food.at_once,
                 food.sides, figure("sear-side", nth), beside("sear-takes", ++seared_));
        }
        line("{}, very hot; then {} to slice and hand out", s.pans == 1 ? "one pan" : fmt::format("{} pans", s.pans),
             beside("carve"));
        line("take out only what goes into the pan next; eat within {}{}", beside("longest-out"),
             s.in_time ? "" : ": too many pieces for that, serve in two sittings");
    }

    void leftovers() {
        const plan::Leftovers& l = around_.leftovers;
        if (!plan::may_be_kept(l, trip_)) {
            head("Leftovers: throw them away; nobody can tell that they were hot enough, or are cold in time");
            return;
        }
        head("Leftovers: {} within {} of leaving the bath, {} within {} in all; thickest slice", figure("left-middle"),
             figure("left-first"), figure("left-cold"), figure("left-all"));
        for (const answer::ThickestSlice& slice : l.slices) {
            if (slice.contact != facts::Contact::free) {
                continue;
            }
            const char* where = slice.medium == answer::Medium::slush ? "in an open thin bag in stirred ice slush"
                                : slice.medium == answer::Medium::loose_snow ? "in loose snow"
                                                                             : "on a rack in still air";
            const std::string air = slice.medium == answer::Medium::still_air ? " under " + figure("left-air") : "";
            line("{}{}: {}", where, air, thickness(slice_of(slice.medium)));
        }
        line("flat on a tray or one upon another: {} in slush, {} in snow", lying("slice-slush-lying"),
             lying("slice-snow-lying"));
        line(
            "into the cold within {} of leaving the bath, the time at table counted; never in closed bags, and loosely "
            "covered once cold",
            figure("left-begin"));
        line("eat within {} days at {} or below; reheat once, to {}{}", figure("left-days"), figure("left-cold"),
             figure("left-reheat"), kitchen_.has("left-reheat-hold") ? " for " + figure("left-reheat-hold") : "");
    }

    static std::string_view slice_of(answer::Medium medium) {
        return medium == answer::Medium::slush        ? "slice-slush"
               : medium == answer::Medium::loose_snow ? "slice-snow"
                                                      : "slice-air";
    }
    std::string thickness(std::string_view slice) const { return kitchen_.has(slice) ? figure(slice) : too_warm; }
    std::string lying(std::string_view slice) const { return besides_.has(slice) ? beside(slice) : too_warm; }
    static constexpr const char* too_warm = "too warm, do not keep it";

    card::FigureList figures_;
    card::CardFigures kitchen_;
    card::CardFigures besides_;
    const plan::Provisions& around_;
    const trip::Trip& trip_;
    int seared_ = 0;  // foods so far, through all meals
    std::string out_;
};

}  // namespace

std::string around_text(const plan::Plan& plan) {
    return ProvisionsText(plan).all();
}

}  // namespace holdwater::cli
