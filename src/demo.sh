#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Installs what is missing, builds the program, and prints the demo deck into out/.
set -euo pipefail
cd "$(dirname "$0")/.."
. src/packages.sh
step 1 3 "packages"
# shellcheck disable=SC2086
install_missing $build_packages
step 2 3 "building the program (some minutes, if nothing is built yet)"
# The demo needs no test libraries; a tree that tests have configured keeps its tests.
tests=
[ -f build/CMakeCache.txt ] || tests=-DHOLDWATER_TESTS=OFF
# shellcheck disable=SC2086 # nothing, or one switch
configure $tests
build holdwater
step 3 3 "planning layouts/trips/trail-crew.toml and printing its cards into out/"
build/holdwater cards layouts/trips/trail-crew.toml --out out --preview || [ $? = 3 ]
