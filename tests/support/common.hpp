// SPDX-License-Identifier: MIT
// Compiled once and put before every test file by the build; each still includes what it uses.
#pragma once

#include "common.hpp"

#include <doctest/doctest.h>
