#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Installs what is missing, builds everything and passes all tests.
set -euo pipefail
cd "$(dirname "$0")/.."
. src/packages.sh
# shellcheck disable=SC2086
install_missing $build_packages $test_packages
cmake -S . -B build -G Ninja -DHOLDWATER_TESTS=ON >/dev/null
cmake --build build
ctest --test-dir build --output-on-failure -j "$(nproc)"
