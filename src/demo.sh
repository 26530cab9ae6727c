#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Installs what is missing, builds, and prints the demo deck into out/.
set -euo pipefail
cd "$(dirname "$0")/.."
. src/packages.sh
# shellcheck disable=SC2086
install_missing $build_packages
# The demo needs no test libraries; a tree that tests have configured stays as it is.
configure -DHOLDWATER_TESTS=OFF >/dev/null
cmake --build build --target holdwater
build/holdwater cards layouts/trips/trail-crew.toml --out out --preview || [ $? = 3 ]
