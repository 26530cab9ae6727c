// SPDX-License-Identifier: MIT
// Compiled once for each kind of processor; the best that is there is taken when the program runs. Nothing is added in
// another order for another width, and products are never fused with sums (see CMakeLists.txt).
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "heat/lane_step.cpp"  // the program's own includes look for it there
#define HWY_COMPILE_ALL_ATTAINABLE
#include "heat/lane_step.hpp"

#include <hwy/foreach_target.h>
#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace holdwater::heat::HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

using Tag = hn::CappedTag<double, lanes>;
using Numbers = hn::Vec<Tag>;

inline Numbers at(const LaneRow& row, std::size_t from) {
    return hn::Load(Tag(), row.of.data() + from);
}
inline void put(Numbers numbers, LaneRow& row, std::size_t from) {
    hn::Store(numbers, Tag(), row.of.data() + from);
}
inline Numbers same(double number) {
    return hn::Set(Tag(), number);
}

/// 1 - e^-x for x >= 0, to 1e-15 of its value: the power series at x / 2^8, then eight times e(2x) = e(x) (2 + e(x)).
inline Numbers lost_by(Numbers x) {
    constexpr double inverse[] = {1.0 / 11, 1.0 / 10, 1.0 / 9, 1.0 / 8, 1.0 / 7, 1.0 / 6,
                                  1.0 / 5,  1.0 / 4,  1.0 / 3, 1.0 / 2, 1.0};
    constexpr double gone = 50.0;  // from there nothing but rounding is left
    const Numbers one = same(1.0);
    const Numbers small = hn::Mul(hn::Min(x, same(gone)), same(-1.0 / 256.0));
    Numbers sum = one;
    for (std::size_t i = 0; i + 1 < std::size(inverse); ++i) {
        sum = hn::Add(one, hn::Mul(hn::Mul(small, same(inverse[i])), sum));
    }
    Numbers grown = hn::Mul(small, sum);
    for (int doubling = 0; doubling < 8; ++doubling) {
        grown = hn::Mul(grown, hn::Add(same(2.0), grown));
    }
    return hn::Neg(grown);
}

void make_other(PieceInLanes& piece, const LaneRow& dt, std::size_t from) {
    const LaneModes& modes = *piece.modes;
    const Numbers length = at(dt, from);
    Numbers lag = same(0.0);
    for (std::size_t n = 0; n < modes.modes(); ++n) {
        const Numbers rate = at(modes.rate()[n], from);
        const Numbers lost = lost_by(hn::Mul(rate, length));
        const Numbers gain = hn::Div(lost, rate);
        put(hn::Sub(same(1.0), lost), piece.other.decay[n], from);
        put(gain, piece.other.gain[n], from);
        lag = hn::Add(lag, hn::Mul(at(modes.mean()[n], from), gain));
    }
    put(lag, piece.other.lag, from);
}

/// How much the mean excess of a food falls in the step if the bath keeps its temperature.
inline Numbers fall_of(const PieceInLanes& piece, const LaneRow* gain, std::size_t from) {
    const LaneRow* flow = piece.modes->flow();
    Numbers even = same(0.0);
    Numbers odd = even;
    for (std::size_t n = 0; n < piece.excess.size(); n += 2) {
        even = hn::Add(even, hn::Mul(hn::Mul(at(flow[n], from), at(gain[n], from)), at(piece.excess[n], from)));
        odd =
            hn::Add(odd, hn::Mul(hn::Mul(at(flow[n + 1], from), at(gain[n + 1], from)), at(piece.excess[n + 1], from)));
    }
    return hn::Add(even, odd);
}

/// x_n(dt) = x_n e^(-rate dt) + slope (1 - e^(-rate dt)) / rate, exact for a bath that is linear within the step.
/// Returns the core excess after it, and keeps the fall of another step of the same length, as fall_of() has it.
inline Numbers pass_modes(PieceInLanes& piece, const LaneRow* decay, const LaneRow* gain, Numbers slope,
                          hn::Mask<Tag> moving, std::size_t from) {
    const LaneRow* core = piece.modes->core();
    const LaneRow* flow = piece.modes->flow();
    const auto pass = [&](std::size_t n, Numbers& excess, Numbers& fall) {
        const Numbers before = at(piece.excess[n], from);
        const Numbers by_slope = at(gain[n], from);
        const Numbers moved = hn::Add(hn::Mul(before, at(decay[n], from)), hn::Mul(slope, by_slope));
        const Numbers after = hn::IfThenElse(moving, moved, before);
        put(after, piece.excess[n], from);
        excess = hn::Add(excess, hn::Mul(at(core[n], from), after));
        fall = hn::Add(fall, hn::Mul(hn::Mul(at(flow[n], from), by_slope), after));
    };
    Numbers even = same(0.0);
    Numbers odd = even;
    Numbers even_fall = even;
    Numbers odd_fall = even;
    for (std::size_t n = 0; n < piece.excess.size(); n += 2) {
        pass(n, even, even_fall);
        pass(n + 1, odd, odd_fall);
    }
    put(hn::Add(even_fall, odd_fall), piece.fall, from);
    return hn::Add(even, odd);
}

/// How far an unstirred box has gone by then towards its colder layer, 0 to 1.
inline Numbers settled(const BathsInLanes& baths, Numbers moment, std::size_t from) {
    const Numbers share = hn::Div(hn::Sub(moment, at(baths.stirred, from)), same(baths.ramp));
    return hn::Max(same(0.0), hn::Min(share, same(1.0)));
}

/// The slope s [K/s] of the bath follows from the energy balance of the step, linear in s because every x_n is:
///   C s dt + sum C_f ((s - c') (dt - lag) + fall) + UA dt (T + s dt / 2 - mean outside) = 0,
/// with c' the slope of the food's colder layer. Source: heat.md e.1 and the modes of body.hpp. Any dt > 0.
void step_from(BathsInLanes& baths, const LaneRow& lengths, const LaneRow& outsides, std::size_t rung,
               std::size_t from) {
    const Numbers zero = same(0.0);
    const auto moving = hn::Gt(at(lengths, from), zero);
    const Numbers dt = hn::IfThenElse(moving, at(lengths, from), same(1.0));
    const Numbers now = at(baths.now, from);
    const Numbers bath = at(baths.bath, from);
    const Numbers outside = at(outsides, from);
    const Numbers settled_after = settled(baths, hn::Add(now, dt), from);
    const bool other = rung == step_lengths;
    const auto decay_of = [&](const PieceInLanes& piece) {
        return other ? piece.other.decay.data() : piece.modes->decay(rung);
    };
    const auto gain_of = [&](const PieceInLanes& piece) {
        return other ? piece.other.gain.data() : piece.modes->gain(rung);
    };
    const auto answer_of = [&](const PieceInLanes& piece) {  // s in which it gives way to a slope
        return hn::Sub(dt, at(other ? piece.other.lag : piece.modes->lag(rung), from));
    };
    Numbers capacity = hn::Mul(at(baths.capacity, from), dt);
    Numbers heat = zero;  // that foods take at s = 0
    for (PieceInLanes& piece : baths.pieces) {
        if (other) {
            make_other(piece, lengths, from);
        }
        const Numbers own = at(piece.capacity, from);
        const Numbers weight = hn::Mul(own, answer_of(piece));
        const Numbers layer = hn::Mul(at(piece.colder, from), settled_after);
        const Numbers colder_slope = hn::Div(hn::Sub(layer, hn::Sub(bath, at(piece.seen, from))), dt);
        capacity = hn::Add(capacity, weight);
        if (other || rung != baths.fall_for) {
            put(fall_of(piece, gain_of(piece), from), piece.fall, from);
        }
        heat = hn::Add(heat, hn::Sub(hn::Mul(own, at(piece.fall, from)), hn::Mul(colder_slope, weight)));
    }
    const Numbers loss = hn::Mul(at(baths.loss, from), dt);
    const Numbers whole = hn::Add(capacity, hn::Mul(hn::Mul(same(0.5), loss), dt));
    const auto any_heat = hn::And(moving, hn::Gt(whole, zero));
    const Numbers pull = hn::Neg(hn::Add(heat, hn::Mul(loss, hn::Sub(bath, outside))));
    const Numbers slope = hn::IfThenElseZero(any_heat, hn::Div(pull, whole));
    const Numbers next = hn::Add(bath, hn::Mul(slope, dt));
    const Numbers lost = hn::Mul(loss, hn::Sub(hn::Mul(same(0.5), hn::Add(bath, next)), outside));
    put(hn::Add(at(baths.lost, from), hn::IfThenElseZero(any_heat, lost)), baths.lost, from);
    for (PieceInLanes& piece : baths.pieces) {
        const Numbers before = at(piece.seen, from);
        const Numbers seen = hn::Sub(next, hn::Mul(at(piece.colder, from), settled_after));
        const Numbers seen_slope = hn::Div(hn::Sub(seen, before), dt);
        const Numbers given =
            hn::Mul(at(piece.capacity, from), hn::Add(hn::Mul(seen_slope, answer_of(piece)), at(piece.fall, from)));
        put(hn::Add(at(piece.given, from), hn::IfThenElseZero(moving, given)), piece.given, from);
        const Numbers excess = pass_modes(piece, decay_of(piece), gain_of(piece), seen_slope, moving, from);
        put(hn::IfThenElse(moving, seen, before), piece.seen, from);
        put(hn::IfThenElse(moving, hn::Sub(seen, excess), at(piece.core, from)), piece.core, from);
    }
    put(hn::IfThenElse(moving, next, bath), baths.bath, from);
}

void step(BathsInLanes& baths, const LaneRow& dt, const LaneRow& outside, std::size_t rung) {
    for (std::size_t from = 0; from < lanes; from += hn::Lanes(Tag())) {
        step_from(baths, dt, outside, rung, from);
    }
    baths.fall_for = rung;
}

}  // namespace holdwater::heat::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace holdwater::heat {

HWY_EXPORT(step);

void step_lanes(BathsInLanes& baths, const LaneRow& dt, const LaneRow& outside, std::size_t rung) {
    HWY_DYNAMIC_DISPATCH(step)(baths, dt, outside, rung);
}

}  // namespace holdwater::heat
#endif
