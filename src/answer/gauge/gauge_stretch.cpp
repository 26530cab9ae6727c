// SPDX-License-Identifier: MIT
#include "answer/gauge/gauge_stretch.hpp"

#include "answer/gauge/gauge_fit.hpp"
#include "facts/facts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace holdwater::answer {
namespace {

std::string moment(const GaugeReading& reading) {
    return fmt::format("{:.1f} C at {:.4g} h", reading.bath.celsius(), units::in_hours(reading.at));
}

/// Middle rate [1/s] at which the bath comes nearer to the air, over steps of an eighth of the test or one reading,
/// whichever is longer: noise averages out in them, and few of them hold a jump.
double usual_rate(const GaugeQuestion& question) {
    const std::vector<GaugeReading>& readings = question.readings;
    const units::Duration least = (readings.back().at - readings.front().at) / 8.0;
    std::vector<double> rates;
    std::size_t last = 0;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        last = std::max(last, i + 1);
        while (last < readings.size() && readings[last].at - readings[i].at < least) {
            ++last;
        }
        if (last == readings.size()) {
            break;
        }
        const units::Duration step = readings[last].at - readings[i].at;
        const units::Temperature air = mean_of(question.outside, readings[i].at, readings[last].at);
        const double above = (readings[i].bath - air).si();
        const double after = (readings[last].bath - air).si();
        if (step > units::Duration{0} && above > 0.0 && after > 0.0) {
            rates.push_back(std::log(above / after) / step.si());
        }
    }
    if (rates.empty()) {
        return 0.0;
    }
    const auto middle = rates.begin() + static_cast<std::ptrdiff_t>((rates.size() - 1) / 2);
    std::nth_element(rates.begin(), middle, rates.end());
    return std::max(*middle, 0.0);
}

class StretchFinder {
  public:
    explicit StretchFinder(const GaugeQuestion& question)
        : question_(question), rate_(usual_rate(question)), cut_(question.readings.size(), false) {
        const facts::Facts& facts = facts::facts();
        jump_ = facts.value("gauge.jump") * question.reading_error.si();
        fall_rate_ = facts.value("gauge.fall-rate");
        settle_ = facts.duration("gauge.settle");
        liner_most_ = facts.value("gauge.liner-most");
    }

    problem::Result<Stretch> find() {
        for (std::size_t i = 1; i < question_.readings.size(); ++i) {
            look_at(i);
        }
        const std::vector<bool> without_lids = cut_;
        look_for_lids();
        Stretch best = longest();
        if (best.count() < 2) {  // a lid that was opened at each reading: better than no answer, and it is said
            cut_ = without_lids;
            best = longest();
        }
        best.problems = problems_;
        if (best.count() < 2) {
            problems_.push_back(problem::error("no-clean-stretch",
                                               "no two readings are left between which the bath was left alone",
                                               "fill the box, close the lid and read it twice, hours apart"));
            return problems_;
        }
        if (!best.whole) {
            const GaugeReading& a = question_.readings[best.first];
            const GaugeReading& b = question_.readings[best.last];
            best.problems.push_back(
                placed(problem::warning("stretch-cut",
                                        fmt::format("the fit rests on the longest clean stretch only: {} readings, {} "
                                                    "to {}",
                                                    best.count(), moment(a), moment(b)),
                                        "a test without disturbance tells more"),
                       a.place));
        }
        return best;
    }

  private:
    /// The first fall, while the liner takes up heat.
    bool settles(const GaugeReading& a, const GaugeReading& b) const {
        const GaugeReading& first = question_.readings.front();
        if (b.at - first.at > settle_) {
            return false;
        }
        const units::Temperature liner = question_.liner_start.value_or(question_.outside.at(first.at));
        // C_liner / C_water = (poured - settled) / (settled - liner), see gauge.cpp.
        return (a.bath - b.bath).si() < liner_most_ * (b.bath - liner).si();
    }

    void look_at(std::size_t i) {
        const GaugeReading& a = question_.readings[i - 1];
        const GaugeReading& b = question_.readings[i];
        const double above = (a.bath - mean_of(question_.outside, a.at, b.at)).si();
        const double expected = above * -std::expm1(-rate_ * (b.at - a.at).si());
        const double fall = (a.bath - b.bath).si();
        if (b.at == a.at || -fall > jump_) {
            cut_[i] = true;
            problems_.push_back(
                placed(problem::warning("log-jump", fmt::format("the bath jumps from {} to {}", moment(a), moment(b)),
                                        "was hot water added, or the thermometer moved?"),
                       b.place));
        } else if (fall - expected > jump_ && fall > fall_rate_ * expected && !settles(a, b)) {
            cut_[i] = true;
            problems_.push_back(
                placed(problem::warning(
                           "log-fall",
                           fmt::format("the bath falls from {} to {}, far faster than the rest", moment(a), moment(b)),
                           "was the lid open, cold water added, or does the box leak?"),
                       b.place));
        }
    }

    void look_for_lids() {
        const std::vector<GaugeReading>& readings = question_.readings;
        for (std::size_t i = 1; i < readings.size(); ++i) {
            if (tells_of_touching(readings[i].note)) {
                // Whether before or after the reading, nobody knows: neither step is trusted.
                cut_[i] = true;
                if (i + 1 < readings.size()) {
                    cut_[i + 1] = true;
                }
                problems_.push_back(placed(lid(readings[i].note), readings[i].place));
            }
        }
        for (const GaugeTouch& touch : question_.touches) {
            if (touch.at < readings.front().at || touch.at > readings.back().at) {
                continue;
            }
            for (std::size_t i = 1; i < readings.size(); ++i) {
                if (touch.at >= readings[i - 1].at && touch.at <= readings[i].at) {
                    cut_[i] = true;
                }
            }
            problems_.push_back(placed(lid(touch.note), touch.place));
        }
    }

    static problem::Problem lid(const std::string& note) {
        return problem::warning("lid-opened", fmt::format("\"{}\": the box was not left alone here", note),
                                "heat that went out by the lid or came in with water is no loss of the box");
    }

    Stretch longest() const {
        const std::vector<GaugeReading>& readings = question_.readings;
        Stretch best{0, 0, readings.size() == 1, {}};
        units::Duration best_time{-1.0};
        std::size_t first = 0;
        for (std::size_t i = 0; i < readings.size(); ++i) {
            if (cut_[i]) {
                first = i;
            }
            const bool ends = i + 1 == readings.size() || cut_[i + 1];
            if (ends && i > first && readings[i].at - readings[first].at > best_time) {
                best = {first, i, first == 0 && i + 1 == readings.size(), {}};
                best_time = readings[i].at - readings[first].at;
            }
        }
        return best;
    }

    const GaugeQuestion& question_;
    double rate_;
    std::vector<bool> cut_;  // between reading i - 1 and i
    double jump_ = 0.0;
    double fall_rate_ = 0.0;
    units::Duration settle_;
    double liner_most_ = 0.0;
    problem::Problems problems_;
};

}  // namespace

bool tells_of_touching(const std::string& note) {
    // Words that people write beside a reading; a lid that stays closed is as it should be.
    constexpr std::array<std::string_view, 11> touching{"lid",    "open",  "added", "topped", "top up",  "top-up",
                                                        "refill", "spill", "leak",  "moved",  "took out"};
    constexpr std::array<std::string_view, 4> closed{"closed", "shut", "lid on", "lid stays"};
    std::string small = note;
    std::transform(small.begin(), small.end(), small.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    const auto holds = [&](std::string_view word) { return small.find(word) != std::string::npos; };
    if (holds("not open") || holds("never open")) {
        return false;
    }
    const bool stays_closed = !holds("open") && std::any_of(closed.begin(), closed.end(), holds);
    return std::any_of(touching.begin(), touching.end(), holds) && !stays_closed;
}

problem::Result<Stretch> clean_stretch(const GaugeQuestion& question) {
    return StretchFinder(question).find();
}

}  // namespace holdwater::answer
