# SPDX-License-Identifier: MIT
# cmake -C src/package/developer.cmake -G Ninja -S . -B build
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(HOLDWATER_TESTS ON CACHE BOOL "")
set(HOLDWATER_WARNINGS_AS_ERRORS ON CACHE BOOL "")
set(CMAKE_EXPORT_COMPILE_COMMANDS ON CACHE BOOL "")
