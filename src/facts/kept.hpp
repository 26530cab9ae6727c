// SPDX-License-Identifier: MIT
// What inner loops make of the facts, made once and kept as long as these facts are in force.
#pragma once

#include "facts/facts.hpp"

#include <cstdint>
#include <optional>
#include <type_traits>

namespace holdwater::facts {

/// Rises whenever other facts come into force (FactsInForce).
std::uint64_t facts_generation();

/// What `make` makes of the facts in force: once a thread and place in the code, and again after other facts came into
/// force, so that a figure that is kept never outlives its facts. The reference holds until then.
template <class Make>
const auto& kept(Make make) {
    using Value = std::invoke_result_t<Make, const Facts&>;
    thread_local std::optional<Value> value;
    thread_local std::uint64_t made_in = 0;
    if (!value || made_in != facts_generation()) {
        value.emplace(make(facts()));
        made_in = facts_generation();
    }
    return *value;
}

}  // namespace holdwater::facts
