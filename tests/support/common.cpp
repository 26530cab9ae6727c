// SPDX-License-Identifier: MIT
// The common header needs a file of its own to be compiled with.
#include "support/common.hpp"
