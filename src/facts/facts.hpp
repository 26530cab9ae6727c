// SPDX-License-Identifier: MIT
// Every figure that the program uses: the TOML files of this folder, compiled in, read once, checked and typed.
// A figure knows its source and how far that source was seen; `holdwater sources` prints them all.
#pragma once

#include "facts/names.hpp"
#include "problem/problem.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::facts {

/// How far a figure's source was seen.
enum class Provenance { read, memory, computed, measured, judgement };

struct Source {
    std::string key;
    std::string citation;
};

/// A single number with its unit, range and origin.
struct Figure {
    std::string key;     // "film.cautious"
    double value = 0.0;  // in `unit`
    std::string unit;    // as written in the facts: "W/m2/K"
    double low = 0.0;    // the range in which the truth is thought to lie
    double high = 0.0;
    std::string source;  // key of a Source
    Provenance provenance = Provenance::judgement;
    std::string meaning;  // one line
};

/// g per 100 g as printed; normalised to a sum of 100 where they are used. Carbohydrate is without the fibre.
struct Composition {
    double water = 0.0;
    double protein = 0.0;
    double fat = 0.0;
    double carbohydrate = 0.0;
    double fibre = 0.0;
    double ash = 0.0;
};

/// Decides which rules apply to a kind of food.
enum class Category {
    red_meat,
    poultry,
    fish,
    farmed_game,
    wild_game,
    boar_or_bear,
    liver,
    bivalve,
    egg,
    vegetable,
    cooked_dish
};

/// The names in the facts files: "red-meat", "boar-or-bear".
template <>
std::span<const Name<Category>> names();

struct FoodKind {
    std::string key;   // "pork-loin"
    std::string name;  // "pork loin, lean"
    Category category = Category::red_meat;
    bool pork = false;   // of the pig: some countries ask more of it than of other red meat
    bool beef = false;   // whole cuts of it may be eaten as steaks where the rules have that
    std::string growth;  // key of the growth model that fits: beef, pork, chicken
    /// Key of the figure that says how long it is held, once ready, before it goes soft or dry: a matter of taste, not
    /// of safety; empty: no figure is known. See Facts::longest_for_texture.
    std::string texture;
    /// Key of the figure within which cold leftovers of it are eaten, where that is sooner than the rules say; empty:
    /// as they say.
    std::string keeps;
    Composition composition;
    std::string source;
    Provenance provenance = Provenance::read;
};

/// One row of a published table of hold times: at this core temperature, this long.
struct KillRow {
    units::Temperature core;
    units::Duration hold;
};

/// A published kill standard. Rows rise in temperature. Below the first row nothing is credited; between two rows the
/// lower row's time counts; above the last row its time counts.
struct KillStandard {
    std::string key;    // "us-red-meat-6.5"
    std::string claim;  // "6.5 log Salmonella"
    std::string germ;   // for which the times were worked out; empty if the publisher names none
    std::vector<KillRow> rows;
    bool none_asked = false;  // of what is made safe otherwise (seared, or cooked before): rows only say "that warm"
    std::string source;
    Provenance provenance = Provenance::read;
};

/// Whole-muscle, intact beef that is eaten as a steak: nothing is asked of its core, since germs are on its faces
/// alone, and these are seared. Figures and a kill standard by their keys.
struct SteakRule {
    std::string surface;        // both faces reach this
    std::string thickest;       // no thicker piece is a steak
    std::string kill_standard;  // one that asks for none
};

/// Food that was cooked through before and is only kept hot.
struct KeepHotRule {
    std::string floor;          // never colder, from the fire to the plate
    std::string reheat;         // what has cooled is brought to this first, over the fire, for "<key>.hold"
    std::string kill_standard;  // one that asks for none
};

/// What a set of rules says whatever the food. Figures are named by their keys, so that a decision can name the figure
/// that made it; the time of a finish is the figure "<key>.hold".
struct GeneralRules {
    std::string key;           // "au-nz", as written in a trip file
    std::string adviser;       // "the US": whose advice to consumers a target is set against
    std::string adviser_note;  // what has to be said about that; may be empty
    std::string finish_full;   // game, and whatever people at risk eat besides whole red meat and fish
    std::string finish_cut;    // minced, tenderised, injected or rolled
    std::string finish_cut_poultry;
    std::string finish_stuffed;
    std::string finish_liver;
    std::string finish_bivalve;
    std::string at_risk_red_meat;  // the core of a whole piece reaches this, for "<key>.hold"
    std::string at_risk_fish;
    std::string hold_floor_other_red_meat;  // hold floor of red meat that is no whole roast, or for people at risk
    std::string eat_next;                   // below the hold floor for up to this long: finish and eat next
    std::string eat_now;                    // up to this long: finish and eat now; longer: throw away
    std::string fall_at_risk;               // people at risk: longer than this is thrown away
    std::string leftovers_keep;             // cold leftovers are eaten within this time
    std::string leftovers_reheat;           // and heated once, to this core
    std::optional<std::string> fall_once;   // below the floor one time only, and for under this long
    std::optional<SteakRule> steak;         // nothing: the rules have none
    std::optional<KeepHotRule> keep_hot;    // nothing: the rules have none
};

/// What one set of rules asks of one category (facts/rules.toml).
struct Rule {
    Ruleset ruleset{};
    Category category = Category::red_meat;
    units::Temperature cook_floor;                 // the bath is never below this while the food cooks
    units::Temperature action_line;                // a reading at or below this asks for a top-up now
    units::Temperature cook_floor_no_thermometer;  // instead of cook_floor
    std::string kill_standard;                     // key
    units::Temperature core_at_least;              // the core must reach this at some time, besides the kill
    units::Duration core_at_least_for;
    units::Temperature hold_floor;     // after done: the bath not below this
    units::Temperature consumer_core;  // the country's consumer advice for this category
    units::Duration consumer_hold;
    units::Temperature lowest_target;             // a lower target is refused
    std::optional<units::Temperature> pork_core;  // pork: instead of core_at_least, consumer_core and lowest_target
    std::string source;
    Provenance provenance = Provenance::read;
    std::string note;
};

enum class SpreadShape { uniform, normal, lognormal, triangular };

/// What is not known exactly, and how far it may be off.
struct Spread {
    std::string key;  // "thickness"
    SpreadShape shape = SpreadShape::uniform;
    double low = 0.0;  // 5 % or lower end, see `meaning`; factors where unit is "1"
    double high = 0.0;
    std::string unit;
    std::string source;
    Provenance provenance = Provenance::judgement;
    std::string meaning;
};

struct BurnRow {
    units::Temperature water;
    std::optional<units::Duration> second_degree;
    std::optional<units::Duration> third_degree;
    std::optional<units::Duration> infant;
    std::string source;
    Provenance provenance = Provenance::read;
};

/// A limit as its publishers print it in both systems: "63 °C (145 °F)", though 63 °C is 145.4 °F.
struct PrintedPair {
    double celsius = 0.0;     // whole, or with the one decimal that is printed
    double fahrenheit = 0.0;  // whole
    std::string source;
    Provenance provenance = Provenance::read;
};

/// Which faces of a box a lever covers.
enum class Faces { bottom, lid, walls, over, all };  // over: lid and walls

template <>
std::span<const Name<Faces>> names();

/// A way to make a box lose less, by the thermal resistance that it adds to some of its faces. What it does to one's
/// own box is measured with `gauge`, never taken from here into a plan.
struct Lever {
    std::string key;   // "mat-under"
    std::string what;  // "a foam mat of 10 mm under the box"
    Faces faces = Faces::all;
    units::ThermalResistance low;  // the range in which it is thought to lie
    units::ThermalResistance high;
    std::string source;
    Provenance provenance = Provenance::read;
    std::string note;  // how to do it, or what spoils it
};

struct GrowthModel {
    std::string key;  // beef, pork, chicken
    double b = 0.0;   // 1/(K sqrt(h))
    units::Temperature lowest;
    double c = 0.0;  // 1/K
    units::Temperature highest;
    double q0_likely = 0.0;
    double q0_cautious = 0.0;
    std::string source;
    Provenance provenance = Provenance::read;
};

/// All facts. Built once from the compiled-in TOML; a fault in the data is a fault of the program (it throws
/// std::logic_error at first use, and a test reads them all).
const class Facts& facts();

class Facts {
  public:
    // Moved, never copied: the names of the sets of rules point into it.
    Facts(Facts&&) = default;
    Facts& operator=(Facts&&) = default;

    std::span<const Source> sources() const { return sources_; }
    std::span<const Figure> figures() const { return figures_; }
    std::span<const FoodKind> foods() const { return foods_; }
    std::span<const KillStandard> kill_standards() const { return kill_standards_; }
    std::span<const GeneralRules> rulesets() const { return rulesets_; }
    std::span<const Name<Ruleset>> ruleset_names() const { return ruleset_names_; }
    std::span<const Rule> rules() const { return rules_; }
    std::span<const Spread> spreads() const { return spreads_; }
    std::span<const BurnRow> burns() const { return burns_; }
    std::span<const GrowthModel> growth_models() const { return growth_models_; }
    std::span<const PrintedPair> printed_pairs() const { return printed_pairs_; }
    std::span<const Lever> levers() const { return levers_; }

    /// The lookups below throw std::logic_error for a key that is not there (our own fault), except find_food and
    /// find_rule, whose keys come from users.
    const Figure& figure(std::string_view key) const;
    double value(std::string_view key) const { return figure(key).value; }
    /// The same, typed; a figure in another kind of unit throws. C; K; s, min or h.
    units::Temperature temperature(std::string_view key) const;
    units::TemperatureDifference difference(std::string_view key) const;
    units::Duration duration(std::string_view key) const;
    const Spread& spread(std::string_view key) const;
    const KillStandard& kill_standard(std::string_view key) const;
    const GrowthModel& growth(std::string_view key) const;
    const Source& source(std::string_view key) const;
    /// How long food of this kind is held, once it is ready, before it goes soft or dry; nothing: no figure is known.
    std::optional<units::Duration> longest_for_texture(const FoodKind& kind) const;
    const FoodKind* find_food(std::string_view key) const;
    const Rule* find_rule(Ruleset ruleset, Category category) const;
    const GeneralRules& rules_of(Ruleset ruleset) const { return rulesets_.at(static_cast<std::size_t>(ruleset)); }

    /// A checksum over the compiled-in data, part of the stamp on every card.
    std::string_view checksum() const { return checksum_; }

  private:
    friend class FactsReader;
    Facts() = default;

    std::vector<Source> sources_;
    std::vector<Figure> figures_;
    std::vector<FoodKind> foods_;
    std::vector<KillStandard> kill_standards_;
    std::vector<GeneralRules> rulesets_;
    std::vector<Name<Ruleset>> ruleset_names_;
    std::vector<Rule> rules_;
    std::vector<Spread> spreads_;
    std::vector<BurnRow> burns_;
    std::vector<GrowthModel> growth_models_;
    std::vector<PrintedPair> printed_pairs_;
    std::vector<Lever> levers_;
    std::string checksum_;
};

std::string_view to_text(Provenance provenance);  // "read", "from memory", "computed", "measured", "judgement"
std::string_view to_text(Category category);      // "red meat", "wild boar or bear"

}  // namespace holdwater::facts
