#include "commands/commands.h"

#if __has_include(<malloc.h>)
#include <malloc.h>
#endif

int main(int argc, char** argv) {
#ifdef M_TOP_PAD  // a short process: memory is taken in large steps and never given back before the end
  mallopt(M_TOP_PAD, 4 << 20);
  mallopt(M_TRIM_THRESHOLD, 256 << 20);
  mallopt(M_MMAP_THRESHOLD, 32 << 20);
#endif
  return gownsheaf::run_program(argc, argv);
}
