// SPDX-License-Identifier: MIT
// How much boiling water to how much cold, and how warm the mixture may really come out.
#pragma once

#include "problem/problem.hpp"
#include "units/quantity.hpp"

#include <variant>

namespace holdwater::answer {

/// Water dipped from ice water, the ice held back; or melting snow or ice itself.
enum class Frozen { slush, snow };
enum class Measure { volume, mass };

struct MixQuestion {
    units::Temperature target;
    units::Temperature boiling;  // at this altitude
    std::variant<units::Temperature, Frozen> cold;
    Measure by = Measure::volume;
};

/// What comes out: as meant, with nothing lost; with the usual cooling on the way, in a vessel warmed before; and the
/// ends that the usual errors reach, in a vessel warmed or not. All between 0 C and the boiling point.
struct Mixed {
    units::Temperature result;
    units::Temperature likely;
    units::Temperature low;
    units::Temperature high;
};

/// Parts that a cook can measure: so many cups of boiling to so many of cold.
struct SimpleParts {
    int hot = 1;
    int cold = 1;
    Mixed mixed;
};

struct MixAnswer {
    double hot_parts = 0.0;  // to one part cold
    Mixed mixed;
    SimpleParts simple;
};

/// Errors: mix-snow-by-volume (a litre of snow says nothing about its mass), mix-out-of-reach (target not between the
/// cold and the boiling water; the hint says the range).
problem::Result<MixAnswer> mix(const MixQuestion& question);

/// Temperature of a mixture of `hot_parts` boiling to one part cold, no errors [C].
units::Temperature mixed_temperature(const MixQuestion& question, double hot_parts);

}  // namespace holdwater::answer
