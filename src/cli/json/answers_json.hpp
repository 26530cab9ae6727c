// SPDX-License-Identifier: MIT
// The short answers as JSON: boiling point, mixing, a gauged box, a fingertip.
#pragma once

#include "answer/gauge/gauge.hpp"
#include "answer/water/mix.hpp"
#include "cli/text/fingertip_text.hpp"
#include "problem/problem.hpp"
#include "units/quantity.hpp"

#include <string>

namespace holdwater::cli {

std::string boil_json(units::Temperature boiling, units::Pressure pressure);
std::string mix_json(const answer::MixQuestion& question, const answer::MixAnswer& answer);
std::string gauge_json(const answer::Gauge& gauge, const problem::Problems& warnings);
std::string to_json(const BathSting& answer);
std::string to_json(const StingBaths& answer);

}  // namespace holdwater::cli
