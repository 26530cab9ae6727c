// SPDX-License-Identifier: MIT
#include "answer/hold/hold_verdict.hpp"

#include "answer/hold/hold.hpp"
#include "answer/hold/piece.hpp"
#include "safety/clocks.hpp"
#include "safety/refusals.hpp"
#include "trip/ranges.hpp"
#include "units/parse.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::answer {
namespace {

using heat::Bound;
using units::Duration;
using units::Temperature;

units::TemperatureDifference short_of_bath() {
    return facts::facts().difference("hold.short-of-bath");
}

Temperature target_of(const OnePieceQuestion& q) {
    return q.target.value_or(q.bath < q.start ? q.bath + short_of_bath() : q.bath - short_of_bath());
}

units::ThermalResistance resistance_of(const OnePieceQuestion& q) {
    if (const auto* given = std::get_if<units::ThermalResistance>(&q.bag)) {
        return *given;
    }
    const bool thick = std::get<facts::Bag>(q.bag) == facts::Bag::thick;
    return units::ThermalResistance{facts::facts().value(thick ? "bag.thick" : "bag.thin")};
}

Piece piece_for(const OnePieceQuestion& q, Temperature target) {
    Piece piece;
    piece.body = q.body;
    piece.composition = q.kind->composition;
    piece.bag = resistance_of(q);
    piece.start = q.start;
    piece.target = target;
    return piece;
}

ReadingOfPiece reading_of(const OnePieceQuestion& q, Temperature target, Bound reading) {
    const Piece piece = piece_for(q, target);
    const heat::FoodProperties properties = properties_of(piece, reading);
    return {{}, properties.diffusivity, properties.conductivity, film_of(piece, reading)};
}

/// What was given, and for the rest this reading of the kind.
ReadingOfPiece given_reading(const OnePieceQuestion& q, Temperature target, Bound reading) {
    ReadingOfPiece given;
    if (q.kind != nullptr) {
        const Piece piece = piece_for(q, target);
        heat::FoodProperties properties = properties_of(piece, reading);
        if (q.diffusivity) {
            properties = heat::with_diffusivity(properties, *q.diffusivity);
        }
        given = {{}, properties.diffusivity, q.conductivity.value_or(properties.conductivity), film_of(piece, reading)};
    } else {
        given.diffusivity = *q.diffusivity;
        given.conductivity = *q.conductivity;
    }
    if (q.film) {
        given.film = q.bag_given ? heat::with_bag(*q.film, resistance_of(q)) : *q.film;
    }
    return given;
}

/// Density times specific heat follows from conductivity and diffusivity; the series needs only these two.
heat::FoodProperties properties_of(const ReadingOfPiece& reading) {
    heat::FoodProperties properties;
    properties.conductivity = reading.conductivity;
    properties.diffusivity = reading.diffusivity;
    return properties;
}

units::Length thicker_by(units::Length thickness) {
    const facts::Facts& facts = facts::facts();
    return std::max(thickness * (facts.spread("thickness").high - 1.0),
                    units::millimetres(facts.spread("thickness.least").high));
}

/// The same piece as badly measured as the spreads allow: thicker, and further from the bath. The thickest size that
/// can be worked out stays as it is; such pieces are refused for their come-up long before.
PieceQuestion badly_measured(PieceQuestion question) {
    constexpr units::Length most = units::millimetres(400.0);
    const facts::Spread& start = facts::facts().spread("start");
    units::Length& thickness = question.body.thickness;
    thickness = std::max(thickness, std::min(most, thickness + thicker_by(thickness)));
    question.start = question.start + units::kelvins(question.bath < question.start ? start.high : start.low);
    return question;
}

problem::Result<ReadingOfPiece> worked_out(ReadingOfPiece reading, const PieceQuestion& question,
                                           const KillRule& rule) {
    const auto times = times_of(question, properties_of(reading), reading.film, rule);
    if (!times) {
        return times.problems();
    }
    reading.times = *times;
    return reading;
}

safety::Request request_of(const OnePieceQuestion& q) {
    safety::Request request = safety::request_for(*q.kind);
    request.cut = q.cut;
    request.ruleset = q.rules;
    request.at_risk = q.at_risk;
    // Without a target, and with one beyond the bath, the bath is all that the food can aim at.
    request.target = q.target ? std::min(*q.target, q.bath) : q.bath;
    return request;
}

bool too_slow(const std::optional<Duration>& come_up) {
    return safety::judge_come_up(come_up) == safety::ComeUpVerdict::refused;
}

std::optional<Duration> later(const std::optional<Duration>& a, const std::optional<Duration>& b) {
    return a && b ? std::optional{std::max(*a, *b)} : std::nullopt;
}

std::optional<units::Length> thickest_at(const OnePieceQuestion& q, Temperature bath, Temperature target) {
    const ReadingOfPiece slow = reading_of(q, target, Bound::slow);
    const PieceQuestion worst = badly_measured({q.body, bath, q.start, target, std::nullopt});
    const auto truly = thickest_piece({q.body, properties_of(slow), slow.film, bath, worst.start, target});
    if (!truly) {
        return std::nullopt;
    }
    // What is measured has to leave room for its error; whole millimetres.
    double stated = std::floor(units::in_millimetres(*truly));
    while (stated > 0.0 && units::millimetres(stated) + thicker_by(units::millimetres(stated)) > *truly) {
        stated -= 1.0;
    }
    return stated > 0.0 ? std::optional{units::millimetres(stated)} : std::nullopt;
}

/// The same for another shape, endless and free in the water.
std::optional<units::Length> thickest_of(facts::Shape shape, OnePieceQuestion q, Temperature target) {
    heat::Body body;
    body.shape = shape;
    body.thickness = q.body.thickness;  // any: it is what is looked for
    q.body = body;
    return thickest_at(q, q.bath, target);
}

/// When this piece is safe and at its target by the cautious reading; nothing if never or if it comes up too slowly.
std::optional<Duration> cautious_safe(const OnePieceQuestion& q, Temperature bath, Temperature target,
                                      const safety::Standard& standard) {
    const PieceQuestion question = badly_measured({q.body, bath, q.start, target, std::nullopt});
    const auto slow = worked_out(reading_of(q, target, Bound::slow), question, standard);
    return slow && !too_slow(slow->times.come_up) ? later(slow->times.safe, slow->times.reach) : std::nullopt;
}

NearestPlan nearest_plan(const OnePieceQuestion& q, const safety::Standard& standard, Temperature lowest) {
    NearestPlan plan;
    plan.target = std::max(lowest, standard.core_at_least);
    // Whole degrees, so that what is printed is what was worked out.
    plan.bath =
        units::celsius(std::ceil(std::max(standard.action_line, plan.target + short_of_bath()).celsius() - 1e-9));
    plan.finish = standard.finish;
    plan.safe = cautious_safe(q, plan.bath, plan.target, standard);
    if (!plan.safe) {
        plan.thickest = thickest_at(q, plan.bath, plan.target);
    }
    return plan;
}

/// The rules for this kind: the standard, or the refusal and the standard of the lowest aim allowed.
struct Rules {
    std::optional<problem::Problem> refusal;
    bool kind_refused = false;
    std::optional<safety::Standard> standard;
    Temperature lowest;
};

Rules rules_for(const OnePieceQuestion& q) {
    Rules rules;
    safety::Request request = request_of(q);
    if (const facts::Rule* rule = facts::facts().find_rule(q.rules, request.category)) {
        rules.lowest = safety::lowest_target(request, *rule);
    }
    auto standard = safety::standard_for(request);
    if (!standard) {
        rules.refusal = standard.problems().front();
        request.target = std::max(request.target, rules.lowest);
        standard = safety::standard_for(request);
        rules.kind_refused = !standard;
    }
    if (standard) {
        rules.standard = *standard;
    }
    return rules;
}

bool start_too_warm(const OnePieceQuestion& q) {
    return q.start > *units::parse<Temperature>(trip::ranges::start.high);
}

bool start_frozen(const OnePieceQuestion& q) {
    return q.start < *units::parse<Temperature>(trip::ranges::start.low);
}

/// `safe` and `come_up`: cautious.
Why why_of(const OnePieceQuestion& q, const Rules& rules, const OnePieceAnswer& answer) {
    if (rules.kind_refused) {
        return Why::kind_refused;
    }
    if (q.bath < q.start) {
        return Why::cools;
    }
    if (start_too_warm(q)) {
        return Why::start_warm;
    }
    if (start_frozen(q)) {
        return Why::start_frozen;
    }
    if (q.bath < rules.standard->cook_floor || q.bath < rules.standard->kill->rows.front().core) {
        return Why::bath_too_cool;
    }
    if (rules.refusal) {
        return q.target && *q.target < q.bath ? Why::target_refused : Why::bath_too_cool;
    }
    if (!answer.safe) {
        return q.bath - short_of_bath() < rules.standard->core_at_least ? Why::bath_too_cool : Why::never_safe;
    }
    if (too_slow(answer.come_up)) {
        return Why::too_slow;
    }
    return rules.standard->finish ? Why::needs_finish : Why::safe;
}

/// Whether given kill figures may stand in for rules that credit nothing here: they never lift what people at risk
/// need, nor a refusal of the kind or of a target, nor the need of a finish, nor the limit of the come-up.
bool own_figures_count(const OnePieceQuestion& q, const OnePieceAnswer& answer, const PieceTimes& own) {
    const Why why = answer.why;
    const bool aim_refused = answer.refusal && q.target && *q.target < q.bath;
    return !q.at_risk && !aim_refused && (why == Why::no_kind || why == Why::bath_too_cool || why == Why::never_safe) &&
           !(answer.standard && answer.standard->finish) && own.kill && !too_slow(own.come_up);
}

void judge_with_kind(const OnePieceQuestion& q, const Rules& rules, OnePieceAnswer& answer, const PieceTimes* own) {
    const PieceTimes& cautious = answer.cautious->times;
    answer.safe = cautious.safe;
    answer.come_up = cautious.come_up;
    if (own != nullptr) {
        answer.safe = later(answer.safe, own->safe);
        answer.come_up = later(answer.come_up, own->come_up);
    }
    answer.why = why_of(q, rules, answer);
}

/// `own`: with the figures given, and all that was not given cautious; nothing if none were given.
void judge(const OnePieceQuestion& q, const Rules& rules, OnePieceAnswer& answer, const PieceTimes* own) {
    if (q.kind != nullptr) {
        judge_with_kind(q, rules, answer, own);
    }
    if (q.kill && own_figures_count(q, answer, *own)) {
        answer.why = start_too_warm(q) ? Why::start_warm : start_frozen(q) ? Why::start_frozen : Why::own_figures;
        answer.safe = own->kill;
        answer.come_up = own->come_up;
    }
    if (answer.why == Why::too_slow) {
        answer.thickest = thickest_at(q, q.bath, answer.target);
    }
    if (answer.why == Why::target_refused || answer.why == Why::bath_too_cool || answer.why == Why::never_safe) {
        answer.nearest = nearest_plan(q, *rules.standard, rules.lowest);
    }
    const bool too_thick = answer.why == Why::too_slow || (answer.nearest && !answer.nearest->safe);
    if (too_thick && q.body.contact != facts::Contact::free) {
        OnePieceQuestion freed = q;
        freed.body.contact = facts::Contact::free;
        answer.safe_if_free =
            answer.nearest
                ? cautious_safe(freed, answer.nearest->bath, answer.nearest->target, *rules.standard)
                : cautious_safe(freed, q.bath, std::min(answer.target, q.bath - short_of_bath()), *rules.standard);
    }
}

}  // namespace

problem::Result<OnePieceAnswer> answer_one_piece(const OnePieceQuestion& q) {
    if (q.kind == nullptr && !(q.diffusivity && q.conductivity && q.film)) {
        return problem::error("properties-missing",
                              "without a kind of food its diffusivity, conductivity and film must all be given");
    }
    OnePieceAnswer answer;
    answer.target = target_of(q);
    const PieceQuestion question{q.body, q.bath, q.start, answer.target, q.at};
    const PieceQuestion worst = badly_measured(question);
    Rules rules;
    KillRule rule;
    if (q.kind != nullptr) {
        rules = rules_for(q);
        answer.refusal = rules.refusal;
        answer.standard = rules.standard;
        if (rules.standard) {
            rule = *rules.standard;
        }
        const auto likely = worked_out(reading_of(q, answer.target, Bound::likely), question, rule);
        const auto cautious = worked_out(reading_of(q, answer.target, Bound::slow), worst, rule);
        if (!likely || !cautious) {
            return likely ? cautious.problems() : likely.problems();
        }
        answer.likely = *likely;
        answer.cautious = *cautious;
    }
    std::optional<ReadingOfPiece> own;
    if (q.has_given()) {
        const KillRule by = q.kill ? KillRule{*q.kill} : rule;
        const auto given = worked_out(given_reading(q, answer.target, Bound::likely), question, by);
        const auto decides = worked_out(given_reading(q, answer.target, Bound::slow), worst, by);
        if (!given || !decides) {
            return given ? decides.problems() : given.problems();
        }
        answer.given = *given;
        // Without a kind there is nothing but the figures given, sizes and start too.
        own = q.kind != nullptr ? *decides : *given;
    }
    judge(q, rules, answer, own ? &own->times : nullptr);
    if (answer.why == Why::safe || answer.why == Why::needs_finish) {
        const auto times = HoldTimes::of(piece_for(q, answer.target), *answer.standard,
                                         facts::facts().difference("class.thermometer"));
        if (!times) {
            return times.problems();
        }
        answer.as_read = times->at(q.bath);
    }
    if (q.kind != nullptr) {
        answer.thickest_slab = thickest_of(facts::Shape::slab, q, answer.target);
        answer.thickest_round = thickest_of(facts::Shape::round, q, answer.target);
    }
    return answer;
}

}  // namespace holdwater::answer
