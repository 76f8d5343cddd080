#!/usr/bin/env bash
# Builds bindings/wasm/src/ferment.wasm with emscripten, and copies the licence that the npm package carries.
#   bindings/wasm/build.sh [BUILD_FOLDER]      default: build/wasm
#   FERMENT_EIGEN, FERMENT_BOOST, FERMENT_JSON  folders that hold Eigen/, boost/ and nlohmann/; default: those of
#                                               Debian's packages
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
project=$(cd "$here/../.." && pwd)
build=${1:-$project/build/wasm}
eigen=${FERMENT_EIGEN:-/usr/include/eigen3}
boost=${FERMENT_BOOST:-/usr/include}
json=${FERMENT_JSON:-/usr/include}

command -v emcmake >/dev/null || {
  echo "build.sh: emscripten is missing; on Debian: apt-get install emscripten" >&2
  exit 1
}
[ -d "$eigen/Eigen" ] || { echo "build.sh: no Eigen/ in $eigen; set FERMENT_EIGEN" >&2; exit 1; }
[ -d "$boost/boost" ] || { echo "build.sh: no boost/ in $boost; set FERMENT_BOOST" >&2; exit 1; }
[ -d "$json/nlohmann" ] || { echo "build.sh: no nlohmann/ in $json; set FERMENT_JSON" >&2; exit 1; }

# Debian's emscripten finds the JavaScript modules of its tools here.
if [ -d /usr/share/nodejs ]; then export NODE_PATH=${NODE_PATH:-/usr/share/nodejs}; fi

mkdir -p "$build/links"
build=$(cd "$build" && pwd)
ln -sfn "$eigen/Eigen" "$build/links/Eigen"
ln -sfn "$boost/boost" "$build/links/boost"
ln -sfn "$json/nlohmann" "$build/links/nlohmann"
emcmake cmake -S "$here" -B "$build" -DCMAKE_BUILD_TYPE=Release \
  -DFERMENT_Eigen_INCLUDE="$build/links" -DFERMENT_Boost_INCLUDE="$build/links" -DFERMENT_Json_INCLUDE="$build/links"
cmake --build "$build" -j 2
cp "$build/ferment.wasm" "$here/src/ferment.wasm"
cp "$project/LICENSE" "$project/THIRD_PARTY_NOTICES.md" "$here/"
echo "built $here/src/ferment.wasm: $(wc -c <"$here/src/ferment.wasm") bytes"
