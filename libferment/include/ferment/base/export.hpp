// What every header of the C++ interface begins with: the mark of what is exported, and the language it is written in.
#pragma once

#include <ferment/export.h>

#if __cplusplus < 202002L && !(defined(_MSVC_LANG) && _MSVC_LANG >= 202002L)
#error "libferment's C++ interface needs C++20: compile with -std=c++20, or use its C interface, <ferment/ferment.h>"
#endif
