#include "memory.h"

#include <cstdlib>  // tells which C library this is
#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace strandline::server {

void keep_memory_small() {
#ifdef __GLIBC__
  // One arena: each thread's own would keep the most that any plan on it ever took.
  mallopt(M_ARENA_MAX, 1);
  constexpr int kept_bytes = 8 << 20;
  mallopt(M_TRIM_THRESHOLD, kept_bytes);
  // Set, or glibc lets it grow, and large tables would come out of the heap and hold it open.
  constexpr int mapped_bytes = 256 << 10;
  mallopt(M_MMAP_THRESHOLD, mapped_bytes);
#endif
}

void give_memory_back() {
#ifdef __GLIBC__
  malloc_trim(0);
#endif
}

}  // namespace strandline::server
