// SPDX-License-Identifier: MIT
// What a class deck is made from: no trip, only rules, altitude and one kind of food. Held as a trip and a plan of
// which the parts that hang on no schedule are filled: foods with their standards, floors, marks. So a class sees the
// same numbers, from the same functions, as a trip would.
#pragma once

#include "card/content.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/simulation.hpp"
#include "words/words.hpp"

#include <memory>
#include <string>
#include <vector>

namespace holdwater::card {

struct ClassWish {
    facts::Ruleset rules{};
    units::Length altitude;
    units::System units = units::System::both;
    std::string language = "en";
    std::string kind = "pork-loin";
    std::vector<facts::Shape> shapes = {facts::Shape::slab, facts::Shape::round};
    units::TemperatureDifference thermometer;  // how far a reading may be off
};

/// All of a wish as text, a line each: for the stamp.
std::string canonical(const ClassWish& wish);

class ClassFrame {
  public:
    /// Errors: class-kind (the kind is not made safe by the bath alone, or refused by the rules), class-shape (a block
    /// goes by its smallest way through: a slab), class-altitude (water boils too cool here for the top mark).
    static problem::Result<std::unique_ptr<ClassFrame>> made(const ClassWish& wish, const std::string& title);

    /// The same to be printed in other units and in another language; nothing is worked out anew.
    std::unique_ptr<ClassFrame> printed_in(units::System units, const std::string& language) const;

    ClassFrame& operator=(const ClassFrame&) = delete;

    const ClassWish& wish() const { return wish_; }
    const trip::Trip& trip() const { return trip_; }
    /// trip, foods (one a shape, with hold table and ruler of the coolest bath), floor, read_floor, action_line,
    /// top_up_mark (the hottest bath), cold_baths, fill.boiling. The rest is empty.
    const plan::Plan& plan() const { return plan_; }
    const facts::FoodKind& kind() const { return *kind_; }
    /// Rising; what the hold tables have a column for.
    const std::vector<units::Temperature>& baths() const { return baths_; }
    units::Temperature boiling() const { return setup_.levels.boiling; }

    /// Boiling litres, enough in 95 of 100 scenarios, that lift so much water from a reading to a mark; in a box of a
    /// usual size for that water, which has room for them or is full.
    units::Volume pour(units::Volume water, units::Temperature reading, units::Temperature mark, bool full) const;

    /// Readings of the card Reading, hottest first, from the floor up to below the mark: every second kelvin, or
    /// further apart where those would be too many.
    std::vector<units::Temperature> rungs() const;

  private:
    ClassFrame() = default;
    ClassFrame(const ClassFrame&) = default;  // leaves the plan pointing into the other's trip
    void point_at_own_trip();
    problem::Problems take(const ClassWish& wish, const std::string& title);
    problem::Problems take_foods();
    void take_levels();
    bool find_baths();

    ClassWish wish_;
    trip::Trip trip_;
    plan::Plan plan_;
    plan::Setup setup_;
    const facts::FoodKind* kind_ = nullptr;
    std::vector<units::Temperature> baths_;
};

/// The liner of a usual box for so much water (facts gauge.box-over-water).
units::HeatCapacity usual_liner(units::Volume water);

}  // namespace holdwater::card
