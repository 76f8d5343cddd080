// How array functions are compiled: once for the plain machine and, where the compiler can, once for wider vectors,
// chosen when the library is loaded. Nothing of it shows in the interface, and the digits are the same, because
// contraction to fused multiply–add is off.
#pragma once

#if defined(__GNUC__) && !defined(__clang__) && defined(__x86_64__) && defined(__gnu_linux__) && \
    !defined(__SANITIZE_ADDRESS__)
#define FERMENT_WIDE_LOOPS __attribute__((target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")))
#else
#define FERMENT_WIDE_LOOPS
#endif
