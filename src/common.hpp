// SPDX-License-Identifier: MIT
// Compiled once and put before every file of src/ and tests/ by the build. No file counts on it: each includes what it
// uses, so that it also compiles alone.
#pragma once

#include "problem/problem.hpp"
#include "units/quantity.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>
