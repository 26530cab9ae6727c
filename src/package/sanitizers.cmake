# SPDX-License-Identifier: MIT
# cmake -C src/package/sanitizers.cmake -G Ninja -S . -B build/sanitizers
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(HOLDWATER_TESTS ON CACHE BOOL "")
set(HOLDWATER_SANITIZE address,undefined CACHE STRING "")
set(HOLDWATER_UNITY ON CACHE BOOL "")
