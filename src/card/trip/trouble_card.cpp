// SPDX-License-Identifier: MIT
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/what_if.hpp"

#include <utility>

namespace holdwater::card {
namespace {

/// What went wrong in bold at the left, what to do at the right.
class Troubles {
  public:
    explicit Troubles(const words::Words& words) : words_(words) { rows_.numbered = false; }
    void add(const char* what, Text action) { rows_.add(words_.text(what), std::move(action)); }
    Steps take() { return std::move(rows_); }

  private:
    const words::Words& words_;
    Steps rows_;
};

/// What hurts people, the same with and without a thermometer.
void add_injuries(const CardWriter& writer, Troubles& rows) {
    rows.add("trouble.burn", writer.words.text("trouble.burn-do"));
    rows.add("trouble.headache", writer.words.text("trouble.headache-do"));
}

void add_late_fire(const CardWriter& writer, const CardFigures& on, Troubles& rows) {
    const plan::Fill& fill = writer.plan.fill;
    rows.add("trouble.fire-late", fill.latest_fire > fill.light_fire
                                      ? writer.words.text("trouble.fire-late-do", {{"latest", on("latest-fire")}})
                                      : writer.words.text("trouble.fire-late-none"));
}

/// Nobody can measure bath or core: whatever may have been too cool is thrown away.
Card trouble_by_clock(const CardWriter& writer) {
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("trouble");
    Card card;
    const Text away = w.text("trouble.away");
    Troubles rows(w);
    add_late_fire(writer, on, rows);
    if (!writer.plan.top_ups.empty()) {  // what is late before the food is in harms nothing
        const Text& late = on("late");
        const bool saved = writer.plan.late_pour.has_value();
        const Text& no_pour = saved ? on("boil-until") : late;
        if (saved) {
            rows.add("trouble.clock-boil",
                     w.text("trouble.clock-boil-do", {{"late", late}, {"until", no_pour}, {"boil", on("boil")}}));
        }
        rows.add("trouble.clock-late", w.text("trouble.clock-late-do", {{"late", no_pour}}));
        rows.add("trouble.clock-less", away);
    }
    rows.add("trouble.clock-lid", away);
    if (writer.wax()) {
        rows.add("trouble.clock-wax", away);
    }
    rows.add("trouble.leak", away);
    rows.add("trouble.tipped", away);
    add_injuries(writer, rows);
    card.blocks.add(rows.take());
    // Where no pour was planned there is no gap and no measure to go on with.
    card.blocks.add(Note{w.text(writer.plan.top_ups.empty() ? "trouble.late-shut" : "trouble.late-clock",
                                {{"until", on("waits-until")}})});
    card.blocks.add(Note{w.text("trouble.caution")});
    card.harmless = true;
    card.blocks.append(what_ifs_of(writer));
    return card;
}

}  // namespace

Card trouble_card(const CardWriter& writer) {
    if (!writer.reads()) {
        return trouble_by_clock(writer);
    }
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("trouble");
    Card card;
    Troubles rows(w);
    add_late_fire(writer, on, rows);
    rows.add("trouble.leak", w.text("trouble.leak-do", {{"full", full(writer, on)}}));
    rows.add("trouble.tipped", w.text("trouble.tipped-do", {{"fill", writer.ref("fill")}}));
    rows.add("trouble.lid", w.text("trouble.lid-do"));
    if (!writer.plan.top_ups.empty()) {
        rows.add("trouble.late", w.text("trouble.late-do", {{"late", on("late")}}));
    }
    rows.add("trouble.bare", w.text("trouble.bare-do"));
    rows.add("trouble.slow", w.text("trouble.slow-do", {{"hours", on("come-up")}, {"core", on("come-up-to")}}));
    add_injuries(writer, rows);
    card.blocks.add(rows.take());
    card.blocks.add(Note{w.text("trouble.read", {{"reading", writer.ref("reading")}})});
    card.harmless = true;  // each row says in bold what is thrown away: a box below them would say less
    card.blocks.append(what_ifs_of(writer));
    return card;
}

}  // namespace holdwater::card
