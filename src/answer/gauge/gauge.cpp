// SPDX-License-Identifier: MIT
#include "answer/gauge/gauge.hpp"

#include "answer/gauge/gauge_fit.hpp"
#include "answer/gauge/gauge_stretch.hpp"
#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "trip/box_test.hpp"
#include "trip/ranges.hpp"
#include "units/parse.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>

namespace holdwater::answer {
namespace {

problem::Problems faults_of(const GaugeQuestion& question) {
    problem::Problems faults;
    const std::vector<GaugeReading>& readings = question.readings;
    constexpr auto most = static_cast<std::size_t>(trip::ranges::test_readings.high);
    if (readings.size() > most) {
        return {placed(
            problem::error("readings-count", fmt::format("{} readings are too many for a box test", readings.size()),
                           fmt::format("at most {}; one every few minutes will do", most)),
            readings[most].place)};
    }
    if (readings.size() < 2) {
        faults.push_back(
            placed(problem::error("too-few-readings",
                                  fmt::format("a box test needs two readings of the bath or more, here {} {}",
                                              readings.size() == 1 ? "is" : "are", readings.size()),
                                  "read once after the fill and again some hours later"),
                   readings.empty() ? std::nullopt : readings.front().place));
    }
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (i > 0 && readings[i].at < readings[i - 1].at) {
            faults.push_back(
                placed(problem::error("times-not-rising",
                                      fmt::format("the reading at {:.4g} h stands after the one at {:.4g} h",
                                                  units::in_hours(readings[i].at), units::in_hours(readings[i - 1].at)),
                                      "give the readings in the order in which they were taken"),
                       readings[i].place));
        }
        const units::Temperature air = question.outside.at(readings[i].at);
        if (!(readings[i].bath > air)) {
            faults.push_back(placed(problem::error("bath-not-above-outside",
                                                   fmt::format("the bath, {:.1f} C, is not above the {:.1f} C outside",
                                                               readings[i].bath.celsius(), air.celsius()),
                                                   "a box test needs hot water; are Celsius and Fahrenheit mixed up?"),
                                    readings[i].place));
        }
    }
    if (question.fill && !(*question.fill > question.outside.points.front().value)) {
        faults.push_back(problem::error("fill-not-above-outside", "the fill is not above the air outside",
                                        "give the bath that the hours are to be counted from"));
    }
    return faults;
}

/// Planning value of the liner from the inside measures, or from a cube that holds somewhat more than the water.
units::HeatCapacity planned_liner(const GaugeQuestion& question) {
    if (question.inside) {
        return heat::liner_of(*question.inside);
    }
    const double room = question.water.si() * facts::facts().value("gauge.box-over-water");
    const units::Length side{std::cbrt(room)};
    return heat::liner_of({side, side, side});
}

class Gauger {
  public:
    Gauger(const GaugeQuestion& question, const Stretch& stretch)
        : question_(question),
          stretch_(stretch),
          used_(std::span(question.readings).subspan(stretch.first, stretch.count())),
          from_(used_.front().at) {
        if (question.poured && stretch.first == 0) {
            from_ = std::min(from_, units::Duration{0});
        }
    }

    problem::Result<Gauge> run();

  private:
    void leave_out_settling();
    problem::Problems find_liner(const CoolingFit& fit);
    void take_fit(const CoolingFit& fit);
    void find_wait();
    problem::Problems remarks() const;

    const GaugeQuestion& question_;
    const Stretch& stretch_;
    std::span<const GaugeReading> used_;
    units::Duration from_;  // where the line begins
    Gauge made_;
};

/// If the later readings lie on a line that the first one stands above by more than errors explain, the first ones
/// are no part of the slow cooling.
void Gauger::leave_out_settling() {
    const units::Duration settle = facts::facts().duration("gauge.settle");
    const auto later = std::find_if(used_.begin(), used_.end(),
                                    [&](const GaugeReading& r) { return r.at - used_.front().at > settle; });
    const auto left_out = static_cast<std::size_t>(later - used_.begin());
    if (stretch_.first > 0 || used_.size() < left_out + 2) {
        return;
    }
    const auto slow = used_.subspan(left_out);
    const auto fit = fit_cooling(slow, question_, units::HeatCapacity{0}, from_);
    if (!fit) {
        return;  // no line through the later readings alone; the fit of all of them will say what is wrong
    }
    made_.first_fall_known = true;
    const units::Temperature line =
        fit->outside + fit->above * std::exp(-(used_.front().at - from_).si() / fit->loss.time_constant.si());
    made_.first_fall = used_.front().bath - line;
    made_.first_fall_error = units::kelvins(std::hypot(question_.reading_error.si(), fit->start_error.si()));
    if (made_.first_fall > made_.first_fall_error) {
        used_ = slow;
    }
}

/// C_liner = C_water (T_poured - T_settled)/(T_settled - T_liner): the heat that the water gave is what the liner
/// took. Its error from that of the two temperatures. Nothing where the fall is within its error.
problem::Problems Gauger::find_liner(const CoolingFit& fit) {
    if (stretch_.first > 0 || (!question_.poured && !made_.first_fall_known)) {
        return {};
    }
    const units::Temperature settled = fit.outside + fit.above;
    const units::Temperature poured = question_.poured.value_or(question_.readings.front().bath);
    made_.first_fall_known = true;
    made_.first_fall = poured - settled;
    made_.first_fall_error = units::kelvins(std::hypot(question_.reading_error.si(), fit.start_error.si()));
    if (question_.poured && made_.first_fall < -made_.first_fall_error) {
        return {problem::error("poured-below-bath",
                               fmt::format("the water was poured at {:.1f} C, and the bath stands at {:.1f} C after it",
                                           poured.celsius(), settled.celsius()),
                               "the bath cannot be warmer than the water that went in")};
    }
    const units::Temperature liner = question_.liner_start.value_or(question_.outside.at(from_));
    if (!(made_.first_fall > made_.first_fall_error) || !(settled > liner)) {
        return {};
    }
    const double water = question_.water.si() * heat::water_density(poured).si() * heat::water_specific_heat().si();
    const auto capacity = [&](units::TemperatureDifference fall) {
        return units::HeatCapacity{water * (fall / (poured - fall - liner))};
    };
    if (made_.first_fall / (settled - liner) > facts::facts().value("gauge.liner-most")) {
        return {problem::warning(
            "liner-large",
            fmt::format("a first fall of {:.1f} K is more than any liner takes up; no liner is reckoned from it",
                        made_.first_fall.si()),
            "was the water poured as hot as that, and all of it at once?")};
    }
    made_.liner = ShownLiner{capacity(made_.first_fall), capacity(made_.first_fall - made_.first_fall_error),
                             capacity(made_.first_fall + made_.first_fall_error)};
    return {};
}

void Gauger::take_fit(const CoolingFit& fit) {
    made_.loss = fit.loss;
    made_.outside = fit.outside;
    made_.from = fit.from;
    made_.above = fit.above;
    made_.air = question_.outside;
    made_.floor = question_.floor;
    made_.start = question_.fill.value_or(used_.front().bath);
    if (made_.liner) {
        // The liner's own error is part of that of the whole capacity.
        const double whole = fit.loss.likely.si() * fit.loss.time_constant.si();
        const double share = 0.5 * (made_.liner->high - made_.liner->low).si() / whole;
        const double wide = std::hypot(fit.loss.high / fit.loss.likely - 1.0, share);
        made_.loss.high = fit.loss.likely * (1.0 + wide);
        made_.loss.low = std::min(fit.loss.low, fit.loss.likely / (1.0 + wide));
    }
    for (const GaugeReading& reading : question_.readings) {
        const bool used = &reading >= used_.data() && &reading < used_.data() + used_.size();
        made_.readings.push_back({reading.at, reading.bath, made_.fitted_at(std::max(reading.at, from_)), used});
    }
    const double first = (made_.in_mean_air(used_.front().at) - made_.outside).si();
    const double last = (made_.in_mean_air(used_.back().at) - made_.outside).si();
    const double share = made_.loss.high / made_.loss.likely - 1.0;
    const double decay = (used_.back().at - used_.front().at) / made_.loss.time_constant;
    // The inverse of the band of heat::loss_from for two readings.
    const double pair = share * decay / std::hypot(1.0 / first, 1.0 / last) * (1.96 / 1.645);
    made_.pair_error = std::min(question_.reading_error, units::kelvins(pair));
}

/// A good test lasts until even the slow end of the band has let the bath fall far enough.
void Gauger::find_wait() {
    if (!made_.loss.weak) {
        return;
    }
    const units::Temperature first = used_.front().bath;
    const units::Temperature last = first - facts::facts().difference("box-test.weak-fall");
    if (last > made_.outside) {
        const auto fallen =
            time_above(first, last, made_.outside, made_.loss.time_constant * (made_.loss.likely / made_.loss.low));
        // Never a wait that would be called a short test, nor one that nobody can keep.
        const units::Duration least = *units::parse<units::Duration>(trip::ranges::short_test.low);
        if (fallen && *fallen <= *units::parse<units::Duration>(trip::ranges::test_after.high)) {
            made_.good_test = std::max(*fallen, least);
        }
    }
}

problem::Problems Gauger::remarks() const {
    problem::Problems found;
    const double most = facts::facts().value("gauge.residual") * question_.reading_error.si();
    const double weak_fall = facts::facts().value("box-test.weak-fall");
    for (std::size_t i = 0; i < made_.readings.size(); ++i) {
        const GaugedReading& reading = made_.readings[i];
        const double off = (reading.bath - reading.fitted).si();
        if (reading.used && std::abs(off) > most) {
            found.push_back(
                placed(problem::warning(
                           "residual-large",
                           fmt::format("{:.1f} C at {:.4g} h lies {:.1f} K {} the fitted line", reading.bath.celsius(),
                                       units::in_hours(reading.at), std::abs(off), off > 0 ? "above" : "below"),
                           "was it read in stirred water? did wind or air change? is the reading error larger?"),
                       question_.readings[i].place));
        }
    }
    if (made_.loss.weak) {
        found.push_back(problem::warning(
            "weak-test",
            fmt::format("the bath fell by only {:.1f} K between the readings: a weak test",
                        (used_.front().bath - used_.back().bath).si()),
            made_.good_test ? fmt::format("for a fall of {:g} K wait {}, counted from the first reading", weak_fall,
                                          units::print(units::Duration{units::round_to(made_.good_test->si(), 900.0,
                                                                                       units::Toward::up)},
                                                       units::Toward::up))
                            : "begin with much hotter water, or with less of it"));
    }
    if (const auto brief = trip::short_test(used_.back().at - used_.front().at)) {
        found.push_back(placed(*brief, used_.back().place));
    }
    return found;
}

problem::Result<Gauge> Gauger::run() {
    leave_out_settling();
    auto fit = fit_cooling(used_, question_, units::HeatCapacity{0}, from_);
    if (!fit) {
        return fit.problems();
    }
    problem::Problems problems = stretch_.problems;
    for (const problem::Problem& p : find_liner(*fit)) {
        problems.push_back(p);
    }
    if (problem::has_error(problems)) {
        return problems;
    }
    made_.liner_taken = made_.liner ? made_.liner->likely : question_.liner.value_or(planned_liner(question_));
    fit = fit_cooling(used_, question_, made_.liner_taken, from_);
    if (!fit) {
        return fit.problems();
    }
    if (const auto impossible = trip::impossible_loss(fit->loss.likely)) {
        problems.push_back(placed(*impossible, used_.back().place));
        return problems;
    }
    take_fit(*fit);
    made_.first_hour = (made_.start - made_.outside) * -std::expm1(-units::hours(1) / made_.loss.time_constant);
    made_.hours = hours_above(made_, question_.reading_error);
    find_wait();
    for (const problem::Problem& p : remarks()) {
        problems.push_back(p);
    }
    return {made_, problems};
}

}  // namespace

std::size_t Gauge::first_used() const {
    const auto used = std::find_if(readings.begin(), readings.end(), [](const GaugedReading& r) { return r.used; });
    return static_cast<std::size_t>(used - readings.begin());
}

std::size_t Gauge::last_used() const {
    std::size_t i = readings.size() - 1;
    while (!readings[i].used) {
        --i;
    }
    return i;
}

units::Temperature Gauge::fitted_at(units::Duration at, double loss_factor) const {
    const units::Duration tau = loss.time_constant / loss_factor;
    return outside + above * std::exp(-((at - from) / tau)) + added_by_air(air, outside, tau, from, at);
}

units::Temperature Gauge::in_mean_air(units::Duration at) const {
    return outside + above * std::exp(-((at - from) / loss.time_constant));
}

problem::Result<Gauge> gauge(const GaugeQuestion& question) {
    problem::Problems faults = faults_of(question);
    if (!faults.empty()) {
        return faults;
    }
    const auto stretch = clean_stretch(question);
    if (!stretch) {
        return stretch.problems();
    }
    return Gauger(question, *stretch).run();
}

}  // namespace holdwater::answer
