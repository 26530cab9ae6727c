// SPDX-License-Identifier: MIT
// What `fingertip` answers, in words: what the hand cannot tell comes first.
#pragma once

#include "safety/burn.hpp"
#include "safety/sting.hpp"

#include <optional>
#include <string>

namespace holdwater::cli {

/// How soon a bath stings a fingertip, and how soon it burns.
struct BathSting {
    units::Temperature bath;
    safety::Stirring stirring = safety::Stirring::stirred;
    safety::StingBand warm;
    safety::StingBand cold;
    safety::BurnTimes burn;
};
BathSting fingertip_bath(units::Temperature bath, safety::Stirring stirring);

/// Which baths a first sting speaks for; nothing: no hand is stung then.
struct StingBaths {
    units::Duration sting;
    safety::Stirring stirring = safety::Stirring::stirred;
    std::optional<safety::BathBand> warm;
    std::optional<safety::BathBand> cold;
};
StingBaths fingertip_sting(units::Duration sting, safety::Stirring stirring);

std::string to_text(const BathSting& answer);
std::string to_text(const StingBaths& answer);

}  // namespace holdwater::cli
