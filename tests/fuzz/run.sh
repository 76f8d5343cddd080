#!/usr/bin/env bash
# Throws damaged and invented questions at ferment_ask, under sanitizers: tests/fuzz/run.sh SECONDS
# What it finds stays in build/fuzz: inputs that reach new code in corpus, inputs that fail as finding-*. To see one
# again: build/fuzz/tests/fuzz/fuzz_ask build/fuzz/finding-...
set -euo pipefail
cd "$(dirname "$0")/../.."

seconds=${1:?how many seconds? tests/fuzz/run.sh 600}
cmake -S . -B build/fuzz -G Ninja -DCMAKE_CXX_COMPILER=clang++-14 -DCMAKE_C_COMPILER=clang-14 \
  -DCMAKE_BUILD_TYPE=RelWithDebInfo -DCMAKE_CXX_FLAGS_RELWITHDEBINFO="-g1 -O1" -DBUILD_SHARED_LIBS=OFF \
  -DFERMENT_TESTS=OFF -DFERMENT_INSTALL=OFF -DFERMENT_FUZZ=ON >build/fuzz-configure.log ||
  { cat build/fuzz-configure.log; exit 1; }
cmake --build build/fuzz --target fuzz_ask
mkdir -p build/fuzz/corpus
build/fuzz/tests/fuzz/fuzz_ask build/fuzz/corpus tests/fuzz/seeds -dict=tests/fuzz/keys.dict -max_len=4096 \
  -timeout=30 -rss_limit_mb=2048 -max_total_time="$seconds" -artifact_prefix=build/fuzz/finding- -print_final_stats=1
