// SPDX-License-Identifier: MIT
#include "card/class/class_frame.hpp"

#include "facts/facts.hpp"
#include "heat/box.hpp"
#include "heat/water.hpp"
#include "plan/result/hold_table.hpp"
#include "plan/result/summary.hpp"
#include "plan/search/ladder.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::card {
namespace {

constexpr std::size_t three = 3;  // baths, as many as hold cards

/// Thick enough for as many rows as a card shows.
constexpr units::Length ruled = units::millimetres(55);

}  // namespace

std::string canonical(const ClassWish& wish) {
    std::string shapes;
    for (const facts::Shape shape : wish.shapes) {
        shapes += fmt::format("{},", facts::to_name(shape));
    }
    return fmt::format(
        "class\nrules {}\naltitude {:.9g}\nunits {}\nlanguage {}\nkind {}\nshapes {}\nthermometer {:.9g}\n",
        facts::to_name(wish.rules), wish.altitude.si(), units::name_of(wish.units), wish.language, wish.kind, shapes,
        wish.thermometer.si());
}

namespace {

/// Of a table with a row each 5 mm so many rows, evenly, as a card has room for.
plan::HoldTable thinned(const plan::HoldTable& all) {
    constexpr std::size_t most_rows = 5;
    constexpr std::size_t rows_apart[] = {2, 3, 4, 5, 6};  // every 10 mm, 15 mm and so on
    std::size_t apart = 0;
    for (const std::size_t one : rows_apart) {
        apart = one;
        if (all.thicknesses.size() / apart <= most_rows) {
            break;
        }
    }
    plan::HoldTable table;
    table.baths = all.baths;
    for (std::size_t i = apart - 1; i < all.thicknesses.size(); i += apart) {
        table.thicknesses.push_back(all.thicknesses[i]);
        table.cells.push_back(all.cells[i]);
    }
    return table;
}

/// Of a usual box for so much water.
units::Length usual_side(units::Volume water) {
    return units::Length{std::cbrt(water.si() * facts::facts().value("gauge.box-over-water"))};
}

}  // namespace

units::HeatCapacity usual_liner(units::Volume water) {
    const units::Length side = usual_side(water);
    return heat::liner_of({side, side, side});
}

problem::Result<std::unique_ptr<ClassFrame>> ClassFrame::made(const ClassWish& wish, const std::string& title) {
    std::unique_ptr<ClassFrame> frame(new ClassFrame());
    const problem::Problems faults = frame->take(wish, title);
    if (!faults.empty()) {
        return faults;
    }
    return frame;
}

std::unique_ptr<ClassFrame> ClassFrame::printed_in(units::System units, const std::string& language) const {
    std::unique_ptr<ClassFrame> other(new ClassFrame(*this));
    other->wish_.units = other->trip_.units = units;
    other->wish_.language = other->trip_.language = language;
    other->point_at_own_trip();
    return other;
}

void ClassFrame::point_at_own_trip() {
    setup_.trip = &trip_;
    plan_.trip = {std::shared_ptr<void>(), &trip_};  // seen, not owned: both live in this frame
    setup_.box = &trip_.boxes.front();
    for (std::size_t i = 0; i < trip_.foods.size(); ++i) {
        setup_.foods[i].food = plan_.foods[i].food = &trip_.foods[i];
    }
}

problem::Problems ClassFrame::take(const ClassWish& wish, const std::string& title) {
    wish_ = wish;
    trip_.name = title;
    trip_.altitude = wish.altitude;
    trip_.rules = wish.rules;
    trip_.units = wish.units;
    trip_.language = wish.language;
    trip_.boxes.resize(1);
    trip_.boxes.front().thermometer = wish.thermometer;
    point_at_own_trip();
    const auto boiling = heat::boiling_point_at(wish.altitude);
    if (!boiling) {
        return boiling.problems();
    }
    setup_.levels.boiling = *boiling;
    kind_ = facts::facts().find_food(wish.kind);
    if (kind_ == nullptr) {
        return {problem::error("class-kind", fmt::format("\"{}\" is not a known food", wish.kind),
                               "see `holdwater sources --foods`")};
    }
    if (problem::Problems faults = take_foods(); !faults.empty()) {
        return faults;
    }
    take_levels();
    if (!find_baths()) {
        return {problem::error(
            "class-altitude",
            fmt::format("water boils at {} here: too cool to top up a bath for {}",
                        units::print(setup_.levels.boiling, wish.units, {1.0, units::Toward::down}), kind_->name),
            "a lower --altitude")};
    }
    plan_.levels.mark = baths_.back();
    for (plan::FoodPlan& food : plan_.foods) {
        food.hold = thinned(plan::hold_every_5_mm(plan_, food, baths_));
        food.own_hold.bath = baths_.front();
    }
    return {};
}

problem::Problems ClassFrame::take_foods() {
    const facts::Rule* rule = facts::facts().find_rule(wish_.rules, kind_->category);
    for (const facts::Shape shape : wish_.shapes) {
        if (shape == facts::Shape::block) {
            return {problem::error("class-shape", "a ruler measures one way through, and a block has three",
                                   "slab: lay the ruler across its thinnest side")};
        }
        trip::Food food;
        food.name = kind_->name;
        food.kind = kind_->key;
        food.shape = shape;
        food.thickness = ruled;
        food.start = facts::facts().temperature("class.start");
        food.target = rule == nullptr                  ? units::Temperature{}
                      : rule->pork_core && kind_->pork ? std::max(rule->lowest_target, *rule->pork_core)
                                                       : rule->lowest_target;
        // As in a trip file that says nothing: flat pieces end up on the floor of the box.
        food.contact = shape == facts::Shape::slab ? facts::Contact::bottom : facts::Contact::free;
        trip_.foods.push_back(food);
    }
    for (const trip::Food& food : trip_.foods) {
        auto standard = answer::standard_of(food, trip_, trip_.boxes.front());
        const bool fire = standard && standard->finish;
        if (!standard || fire) {
            return {problem::error(
                "class-kind",
                fire ? fmt::format("{}: {}", kind_->name, standard->finish->why) : standard.problems().front().message,
                "a class deck is for whole food that the bath alone makes safe, such as pork-loin")};
        }
        plan::FoodSetup one;
        one.food = &food;
        one.piece = answer::piece_of(food);
        one.standard = *standard;
        setup_.foods.push_back(one);
        plan::FoodPlan planned;
        planned.food = &food;
        planned.piece = one.piece;
        planned.standard = one.standard;
        plan_.foods.push_back(planned);
    }
    return {};
}

void ClassFrame::take_levels() {
    const safety::Standard& standard = setup_.foods.front().standard;  // the same for every shape
    setup_.levels.floor = std::max(standard.cook_floor, standard.hold_floor);
    setup_.levels.read_floor = setup_.levels.floor + wish_.thermometer;
    setup_.levels.action_line = std::max({standard.action_line, standard.hold_action_line, setup_.levels.read_floor});
    plan_.levels = setup_.levels;
    plan_.cold_baths = plan::cold_baths(setup_);
}

/// The coolest is the first whole degree, from the action line up, that makes a thin piece of every shape safe while
/// its core may still come up: just at the target that takes days.
bool ClassFrame::find_baths() {
    const facts::Facts& facts = facts::facts();
    const units::Length thin = units::Length{facts.value("class.thin") * 1e-3};
    const units::Duration soon = facts.duration("come-up.refuse");
    const auto good = [&](units::Temperature bath) {
        return std::all_of(plan_.foods.begin(), plan_.foods.end(), [&](const plan::FoodPlan& food) {
            const auto hold = plan::safe_hold(plan_, food, thin, bath);
            return hold && *hold <= soon;
        });
    };
    // Boiling water that has cooled on its way, and room for it to lift the bath at all.
    const units::Temperature most = setup_.levels.boiling - units::kelvins(facts.spread("boil.cooling").high) -
                                    2.0 * facts.difference("class.bath-step");
    units::Temperature bath = units::celsius(std::ceil(setup_.levels.action_line.celsius() - 1e-9));
    while (!good(bath)) {
        bath = bath + units::kelvins(1.0);
        if (bath > most) {
            return false;
        }
    }
    for (std::size_t i = 0; i < three; ++i) {
        baths_.push_back(bath + static_cast<double>(i) * facts.difference("class.bath-step"));
    }
    return baths_.back() < most;
}

units::Volume ClassFrame::pour(units::Volume water, units::Temperature reading, units::Temperature mark,
                               bool full) const {
    const double side = usual_side(water).si();
    const plan::LadderBox box{water, usual_liner(water), full ? units::Volume{0} : water, units::Area{side * side},
                              facts::facts().temperature("class.air")};
    return plan::ladder_pour(setup_, box, reading, mark);
}

std::vector<units::Temperature> ClassFrame::rungs() const {
    constexpr double most = 4.0;  // that a card has room for, over two lines each
    const double lowest = std::ceil(plan_.levels.read_floor.celsius() - 1e-9);
    const double mark = plan_.levels.mark.celsius();
    const double step = std::max(2.0, std::ceil((mark - lowest) / most));
    std::vector<units::Temperature> readings;
    for (double r = lowest; r < mark - 0.5; r += step) {
        readings.insert(readings.begin(), units::celsius(r));
    }
    return readings;
}

}  // namespace holdwater::card
