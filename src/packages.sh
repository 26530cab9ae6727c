# SPDX-License-Identifier: MIT
# Sourced in the top folder by src/demo.sh and tests/run.sh: installs the Debian packages that are missing, saying which;
# configures and builds.

build_packages="g++ cmake ninja-build pkg-config libhpdf-dev libcairo2-dev libfreetype-dev libtomlplusplus-dev
  libcli11-dev libfmt-dev libboost-dev libhwy-dev libsvgpp-dev libpugixml-dev nlohmann-json3-dev python3
  python3-fonttools
  $(sed -n 's/^set(typeface_package \([^)]*\)).*/\1/p' fonts/CMakeLists.txt)"
test_packages="doctest-dev qpdf mupdf-tools poppler-utils ghostscript default-jre-headless libpdfbox2-java
  libactivation-java libjaxb-api-java libcommons-io-java libcommons-logging-java libsundials-dev libbenchmark-dev
  clang-format strace man-db bsdextrautils mandoc"
# shellcheck disable=SC2034 # used by tests/hard.sh
hard_packages="clang valgrind"

install_missing() {
    missing=""
    for package in "$@"; do
        if [ "$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null)" != installed ]; then
            missing="$missing $package"
        fi
    done
    [ -n "$missing" ] || return 0
    as_root=""
    [ "$(id -u)" = 0 ] || as_root=sudo
    echo "Installing from Debian:$missing"
    # shellcheck disable=SC2086 # a list of words
    $as_root apt-get update -qq
    # shellcheck disable=SC2086
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
}

# One of so many steps of a script: step 2 3 "building".
step() {
    printf '== %s of %s: %s\n' "$1" "$2" "$3"
}

# Configures build/, a new one for the fastest build from nothing. One that is there keeps its other switches, so that
# demo and tests use the same tree, and so does whoever works on the program.
configure() {
    if [ -f build/CMakeCache.txt ]; then
        cmake -S . -B build "$@" >/dev/null
    else
        cmake -S . -B build -G Ninja -DHOLDWATER_UNITY=ON "$@" >/dev/null
    fi
}

# Builds the targets named, or everything, saying after each part how many of how many are done and for how long.
build() {
    NINJA_STATUS='[%f of %t, %e s] ' cmake --build build ${1:+--target "$@"}
}
