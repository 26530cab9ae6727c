#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# clang-tidy with the checks of .clang-tidy over the files of src/ that differ from a commit, or over folders:
#   bash tests/rules/tidy.sh              what differs from origin/main
#   bash tests/rules/tidy.sh HEAD~3       what differs from that commit
#   bash tests/rules/tidy.sh src/units    everything in there
# Run by hand before handing work over: the whole of src/ takes half an hour, too long for tests/run.sh. Needs the
# package clang-tidy (version 14); a build folder of its own, build-tidy, says how each file is compiled.
set -euo pipefail
cd "$(dirname "$0")/../.."
files=()
if [ -d "${1:-}" ]; then
    mapfile -t files < <(find "$@" -name '*.cpp' | sort)
else
    base="${1:-origin/main}"
    mapfile -t files < <({ git diff --name-only --diff-filter=d "$base" -- 'src/*.cpp'
                           git ls-files --others --exclude-standard -- 'src/*.cpp'; } | sort -u)
fi
if [ "${#files[@]}" = 0 ]; then
    echo "no file of src/ differs"
    exit 0
fi
cmake -S . -B build-tidy -G Ninja -DHOLDWATER_TESTS=OFF -DHOLDWATER_UNITY=OFF \
    -DCMAKE_EXPORT_COMPILE_COMMANDS=ON -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON >/dev/null
printf '%s\0' "${files[@]}" | xargs -0 -n 1 -P "$(nproc)" clang-tidy -p build-tidy --quiet
echo "clean: ${#files[@]} files"
