// A broken promise ends a fuzz target, in every build.
#pragma once

#include <cstdio>
#include <cstdlib>

#define MUST(promise)                                                                              \
    do {                                                                                           \
        if (!(promise)) {                                                                          \
            std::fprintf(stderr, "%s:%d: not kept: %s\n", __FILE__, __LINE__, #promise);           \
            std::abort();                                                                          \
        }                                                                                          \
    } while (false)
