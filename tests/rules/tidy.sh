#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# clang-tidy (package clang-tidy, version 14) with the checks of .clang-tidy over src/:
#   bash tests/rules/tidy.sh                everything
#   bash tests/rules/tidy.sh layout draw    these folders of src/
# The folder build-tidy compiles src/ several files as one, and clang-tidy looks at each such unit before it is compiled.
# A unit with a finding stays uncompiled; one that was clean is looked at again only when something that it includes has
# changed, so that a second run takes seconds. HOLDWATER_TIDY_JOBS=2 looks at two units at a time.
set -euo pipefail
cd "$(dirname "$0")/../.."
# Without the common header, which clang cannot read as GCC compiled it. A unit includes .cpp files, as it must.
cmake -S . -B build-tidy -G Ninja -DCMAKE_BUILD_TYPE=Debug -DHOLDWATER_TESTS=OFF -DHOLDWATER_UNITY=ON \
    -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON -DCMAKE_OPTIMIZE_DEPENDENCIES=ON \
    "-DCMAKE_CXX_CLANG_TIDY=clang-tidy;--quiet;--checks=-bugprone-suspicious-include" >/dev/null
# Other checks than those by which they were clean: all are looked at again.
find build-tidy -name '*.o' ! -newer .clang-tidy -delete
targets=()
for folder in "$@"; do
    targets+=("holdwater_$folder")
done
# Every unit, also after one with findings; in the background of whatever else is to be done.
nice -n 15 ninja -C build-tidy -k 0 -j "${HOLDWATER_TIDY_JOBS:-1}" "${targets[@]}"
echo "clean"
