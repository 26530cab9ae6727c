#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Installs what is missing, builds everything and passes all tests.
set -euo pipefail
cd "$(dirname "$0")/.."
. src/packages.sh
step 1 3 "packages"
# shellcheck disable=SC2086
install_missing $build_packages $test_packages
step 2 3 "building the program and its tests (ten minutes, if nothing is built yet)"
configure -DHOLDWATER_TESTS=ON
build
step 3 3 "tests"
ctest --test-dir build --output-on-failure -j "$(nproc)"
