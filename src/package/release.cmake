# SPDX-License-Identifier: MIT
# cmake -C src/package/release.cmake -G Ninja -S . -B build/release; then cmake --build build/release and cpack in it.
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_INSTALL_PREFIX /usr CACHE PATH "")
set(HOLDWATER_TESTS OFF CACHE BOOL "")
set(HOLDWATER_UNITY ON CACHE BOOL "")
