// SPDX-License-Identifier: MIT
// Every source that stands behind the numbers, how far it was seen, and what rests on it.
#include "card/basis/basis_parts.hpp"
#include "facts/facts.hpp"

#include <algorithm>

namespace holdwater::card {
namespace {

class Cited {
  public:
    explicit Cited(const words::Words& words) : words_(words) {}

    void add(const std::string& source, facts::Provenance provenance, const Text& what) {
        auto found = std::find_if(entries_.begin(), entries_.end(), [&](const Entry& one) {
            return one.source == source && one.provenance == provenance;
        });
        if (found == entries_.end()) {
            found = entries_.insert(entries_.end(), {source, provenance, {}});
        }
        if (std::find(found->what.begin(), found->what.end(), what) == found->what.end()) {
            found->what.push_back(what);
        }
    }

    /// Published works first, in the order of the bibliography; what the project answers for itself last.
    std::vector<std::vector<Text>> rows() const {
        std::vector<std::vector<Text>> rows;
        for (const bool own : {false, true}) {
            for (const facts::Source& work : facts::facts().sources()) {
                if ((work.key == "judgement" || work.key == "computed") == own) {
                    add_rows(rows, work);
                }
            }
        }
        return rows;
    }

  private:
    struct Entry {
        std::string source;
        facts::Provenance provenance = facts::Provenance::judgement;
        std::vector<Text> what;
    };

    void add_rows(std::vector<std::vector<Text>>& rows, const facts::Source& work) const {
        for (const Entry& entry : entries_) {
            if (entry.source != work.key) {
                continue;
            }
            // A row must find room on a sheet, so many things take several rows; the work is named in the first.
            constexpr std::size_t most = 12;
            for (std::size_t i = 0; i < entry.what.size(); i += most) {
                Text what;
                for (std::size_t k = i; k < std::min(i + most, entry.what.size()); ++k) {
                    what += (what.empty() ? "" : ", ") + entry.what[k];
                }
                rows.push_back({i == 0 ? "*" + work.key + "* " + work.citation : "*" + work.key + "*",
                                provenance_text(entry.provenance, words_), what});
            }
        }
    }

    const words::Words& words_;
    std::vector<Entry> entries_;
};

void add_food(Cited& cited, const trip::Trip& trip, const plan::FoodPlan& plan, const words::Words& w) {
    const facts::Facts& all = facts::facts();
    const trip::Food& food = *plan.food;
    const facts::FoodKind* kind = all.find_food(food.kind);
    if (kind != nullptr) {
        if (!food.composition) {
            cited.add(kind->source, kind->provenance, w.text("basis.sources-food", {{"kind", kind->key}}));
        }
        if (const facts::Rule* rule = all.find_rule(trip.rules, kind->category)) {
            cited.add(rule->source, rule->provenance,
                      w.text("basis.sources-rule",
                             {{"rules", facts::to_name(trip.rules)},
                              {"category", w.text("category." + std::string(facts::to_name(kind->category)))}}));
        }
        const facts::GrowthModel& growth = all.growth(kind->growth);
        cited.add(growth.source, growth.provenance, w.text("basis.sources-growth", {{"key", growth.key}}));
    }
    cited.add(plan.standard.kill->source, plan.standard.kill->provenance,
              w.text("basis.sources-kill", {{"key", plan.standard.kill->key}}));
}

}  // namespace

Table source_table(const trip::Trip& trip, const std::vector<plan::Plan>& plans, const words::Words& words) {
    const facts::Facts& all = facts::facts();
    Cited cited(words);
    for (const plan::Plan& plan : plans) {
        for (const plan::FoodPlan& food : plan.foods) {
            add_food(cited, trip, food, words);
        }
    }
    for (const facts::BurnRow& burn : all.burns()) {
        cited.add(burn.source, burn.provenance, words.text("basis.sources-burns"));
    }
    for (const facts::Spread& spread : all.spreads()) {
        cited.add(spread.source, spread.provenance, words.text("basis.sources-spread", {{"key", spread.key}}));
    }
    for (const facts::Figure& figure : all.figures()) {
        cited.add(figure.source, figure.provenance, figure.key);
    }
    Table table;
    table.column(words.text("basis.sources-source"));
    table.column(words.text("basis.sources-seen"));
    table.column(words.text("basis.sources-what"));
    table.rows = cited.rows();
    return table;
}

}  // namespace holdwater::card
