#!/usr/bin/env bash
# Installs libferment and uses it as somebody else would: find_package, add_subdirectory, pkg-config; shared and static.
#   tests/consumer/run.sh BUILD_FOLDER     a configured and built folder, such as build/release
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
project=$(cd "$here/../.." && pwd)
[ $# = 1 ] && [ -f "$1/CMakeCache.txt" ] || {
  echo "usage: tests/consumer/run.sh BUILD_FOLDER (configured and built)" >&2
  exit 2
}
built=$(cd "$1" && pwd)
cached() { sed -n "s/^$1:[A-Z]*=//p" "$built/CMakeCache.txt"; }
compiler=$(cached CMAKE_CXX_COMPILER)
export CXX=$compiler

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

say() { printf '== consumer: %s\n' "$*"; }

# Runs a command quietly; shows what it wrote only if it fails.
quietly() { "$@" >"$work/log" 2>&1 || { cat "$work/log" >&2; echo "run.sh: failed: $*" >&2; exit 1; }; }

# The other kind of library than the one the build folder holds is built here.
here_kind=static other_kind=shared other=ON
[ "$(cached BUILD_SHARED_LIBS)" != ON ] || here_kind=shared other_kind=static other=OFF
quietly cmake -S "$project" -B "$work/$other_kind" -DBUILD_SHARED_LIBS=$other \
  -DFERMENT_TESTS=OFF -DCMAKE_BUILD_TYPE=Release
quietly cmake --build "$work/$other_kind" -j 2
quietly cmake --install "$built" --prefix "$work/prefix-$here_kind"
quietly cmake --install "$work/$other_kind" --prefix "$work/prefix-$other_kind"

for kind in shared static; do
  prefix=$work/prefix-$kind
  library=$(find "$prefix" -name 'libferment.so' -o -name 'libferment.a')
  case $kind:$library in
    shared:*.so | static:*.a) ;;
    *) echo "run.sh: the $kind build installed: $library" >&2; exit 1 ;;
  esac
  library_folder=$(dirname "$library")

  say "$kind, find_package"
  quietly cmake -S "$here/find_package" -B "$work/find_package-$kind" -DCMAKE_PREFIX_PATH="$prefix"
  quietly cmake --build "$work/find_package-$kind"
  "$work/find_package-$kind/consumer"

  say "$kind, pkg-config"
  cp -r "$here" "$work/sources-$kind"
  static=
  [ $kind = shared ] || static=--static
  PKG_CONFIG_PATH=$library_folder/pkgconfig quietly make -C "$work/sources-$kind/pkg_config" CONSUMER_STATIC=$static
  LD_LIBRARY_PATH=$library_folder "$work/sources-$kind/pkg_config/consumer"

  say "$kind, add_subdirectory"
  shared=OFF
  [ $kind = static ] || shared=ON
  quietly cmake -S "$here/add_subdirectory" -B "$work/add_subdirectory-$kind" \
    -DBUILD_SHARED_LIBS=$shared -DCMAKE_BUILD_TYPE=Debug
  quietly cmake --build "$work/add_subdirectory-$kind" -j 2
  "$work/add_subdirectory-$kind/consumer"
done

say "a library that has libferment in it and is itself installed"
mkdir "$work/embedding"
cat >"$work/embedding/CMakeLists.txt" <<END
cmake_minimum_required(VERSION 3.22)
project(embedding LANGUAGES CXX)
include(GNUInstallDirs)
set(FERMENT_INSTALL ON)
add_subdirectory($project ferment)
add_library(app app.cpp)
target_link_libraries(app PUBLIC ferment::ferment)
install(TARGETS app EXPORT app-targets)
install(EXPORT app-targets DESTINATION \${CMAKE_INSTALL_LIBDIR}/cmake/app)
END
cat >"$work/embedding/app.cpp" <<'END'
#include <ferment/ferment.hpp>
double water() { return ferment::water_by_factor_rule(24, 20, 21, 2); }
END
quietly cmake -S "$work/embedding" -B "$work/embedding/build" -DCMAKE_BUILD_TYPE=Debug
quietly cmake --build "$work/embedding/build" -j 2
quietly cmake --install "$work/embedding/build" --prefix "$work/prefix-embedding"
[ -f "$work/prefix-embedding/include/ferment/ferment.hpp" ] || { echo "run.sh: embedded headers are missing" >&2; exit 1; }

say "a newer minor version than there is must not be found"
mkdir "$work/too_new"
cat >"$work/too_new/CMakeLists.txt" <<'END'
cmake_minimum_required(VERSION 3.22)
project(too_new LANGUAGES CXX)
find_package(ferment 99.0 QUIET)
if(ferment_FOUND)
  message(FATAL_ERROR "version 99.0 was found")
endif()
END
quietly cmake -S "$work/too_new" -B "$work/too_new/build" -DCMAKE_PREFIX_PATH="$work/prefix-shared"
say "all of them work"
