// The SHA instructions of x86 processors: Intel 64 and IA-32 Architectures Software Developer's Manual, volume 2, SHA256RNDS2,
// SHA256MSG1 and SHA256MSG2. Each SHA256RNDS2 does two rounds.
#include "files/sha256_blocks.h"

#if defined(__x86_64__) && defined(__GNUC__)
#include <cpuid.h>
#include <immintrin.h>

namespace gownsheaf {
namespace {

__attribute__((target("sha,sse4.1"))) void take_blocks_x86(Sha256State& state, const unsigned char* data, std::size_t blocks) {
  const auto load = [](const void* from) __attribute__((target("sse4.1"))) {
    return _mm_loadu_si128(static_cast<const __m128i*>(from));
  };
  const __m128i turn_bytes = _mm_set_epi64x(0x0c0d0e0f08090a0b, 0x0405060700010203);  // the words stand big end first
  // The instructions want the eight letters of the standard as abef and cdgh, the first highest.
  const __m128i abcd = _mm_shuffle_epi32(load(state.data()), 0xB1), efgh = _mm_shuffle_epi32(load(state.data() + 4), 0x1B);
  __m128i abef = _mm_alignr_epi8(abcd, efgh, 8), cdgh = _mm_blend_epi16(efgh, abcd, 0xF0);
  for (; blocks > 0; --blocks, data += 64) {
    const __m128i abef_before = abef, cdgh_before = cdgh;
    __m128i w[4];  // the last sixteen words of the schedule, four by four
    for (unsigned i = 0; i < 16; ++i) {
      __m128i& now = w[i % 4];
      if (i < 4) {
        now = _mm_shuffle_epi8(load(data + 16 * i), turn_bytes);
      } else {
        const __m128i last = w[(i + 3) % 4], seven_back = _mm_alignr_epi8(last, w[(i + 2) % 4], 4);
        now = _mm_sha256msg2_epu32(_mm_add_epi32(_mm_sha256msg1_epu32(now, w[(i + 1) % 4]), seven_back), last);
      }
      const __m128i with_constants = _mm_add_epi32(now, load(kSha256Rounds.data() + 4 * i));
      cdgh = _mm_sha256rnds2_epu32(cdgh, abef, with_constants);
      abef = _mm_sha256rnds2_epu32(abef, cdgh, _mm_shuffle_epi32(with_constants, 0x0E));
    }
    abef = _mm_add_epi32(abef, abef_before);
    cdgh = _mm_add_epi32(cdgh, cdgh_before);
  }
  const __m128i feba = _mm_shuffle_epi32(abef, 0x1B), dchg = _mm_shuffle_epi32(cdgh, 0xB1);
  _mm_storeu_si128(reinterpret_cast<__m128i*>(state.data()), _mm_blend_epi16(feba, dchg, 0xF0));
  _mm_storeu_si128(reinterpret_cast<__m128i*>(state.data() + 4), _mm_alignr_epi8(dchg, feba, 8));
}

bool has_instructions() {
  unsigned a = 0, b = 0, c = 0, d = 0;
  if (__get_cpuid(1, &a, &b, &c, &d) == 0 || (c & bit_SSE4_1) == 0) return false;
  return __get_cpuid_count(7, 0, &a, &b, &c, &d) != 0 && (b & bit_SHA) != 0;
}

}  // namespace

TakeBlocks take_blocks_of_processor() {
  static const TakeBlocks way = has_instructions() ? take_blocks_x86 : nullptr;
  return way;
}

}  // namespace gownsheaf

#else

namespace gownsheaf {
TakeBlocks take_blocks_of_processor() { return nullptr; }
}  // namespace gownsheaf

#endif
