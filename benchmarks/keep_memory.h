#pragma once

#include <malloc.h>

namespace swale::benchmark {

/// As the program does: bands come and go with every Newton step, so their memory is kept.
inline void keep_memory() {
    mallopt(M_MMAP_THRESHOLD, 1 << 30);
    mallopt(M_TRIM_THRESHOLD, 1 << 30);
}

}  // namespace swale::benchmark
