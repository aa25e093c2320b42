#include "commands/commands.h"

#if __has_include(<malloc.h>)
#include <malloc.h>
#endif
#if __has_include(<sys/mman.h>)
#include <sys/mman.h>
#endif

#include <cstdint>
#include <cstdlib>

namespace {

// The program runs for some hundredths of a second: memory is taken in large steps and never given back before the end,
// and the first two megabytes are mapped in one call instead of page by page as they are touched.
void take_memory_at_once() {
#ifdef M_TOP_PAD
  mallopt(M_TOP_PAD, 4 << 20);
  mallopt(M_TRIM_THRESHOLD, 256 << 20);
  mallopt(M_MMAP_THRESHOLD, 32 << 20);
#ifdef MADV_POPULATE_WRITE
  constexpr std::uintptr_t kPage = 4096, kBytes = 2 << 20;
  void* block = std::malloc(kBytes);
  const std::uintptr_t begin = (reinterpret_cast<std::uintptr_t>(block) + kPage - 1) & ~(kPage - 1);
  if (block) madvise(reinterpret_cast<void*>(begin), kBytes - 2 * kPage, MADV_POPULATE_WRITE);  // a refusal costs nothing
  std::free(block);
#endif
#endif
}

}  // namespace

int main(int argc, char** argv) {
  take_memory_at_once();
  return gownsheaf::run_program(argc, argv);
}
