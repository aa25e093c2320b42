// SHA-256 as set out in FIPS 180-4, "Secure Hash Standard" (NIST, 2015), sections 4.1.2, 4.2.2, 5.1.1, 5.3.3 and 6.2.
#include <array>
#include <bit>
#include <cstring>

#include "files/files.h"
#include "files/sha256_blocks.h"

namespace gownsheaf {
namespace {

void take_block(Sha256State& state, const unsigned char* block) {
  std::array<std::uint32_t, 64> w;
  for (std::size_t i = 0; i < 16; ++i)
    w[i] = std::uint32_t{block[4 * i]} << 24 | std::uint32_t{block[4 * i + 1]} << 16 |
           std::uint32_t{block[4 * i + 2]} << 8 | std::uint32_t{block[4 * i + 3]};
  for (std::size_t i = 16; i < 64; ++i) {
    const std::uint32_t s0 = std::rotr(w[i - 15], 7) ^ std::rotr(w[i - 15], 18) ^ (w[i - 15] >> 3);
    const std::uint32_t s1 = std::rotr(w[i - 2], 17) ^ std::rotr(w[i - 2], 19) ^ (w[i - 2] >> 10);
    w[i] = w[i - 16] + s0 + w[i - 7] + s1;
  }
  auto [a, b, c, d, e, f, g, h] = state;
  for (std::size_t i = 0; i < 64; ++i) {
    const std::uint32_t s1 = std::rotr(e, 6) ^ std::rotr(e, 11) ^ std::rotr(e, 25);
    const std::uint32_t t1 = h + s1 + ((e & f) ^ (~e & g)) + kSha256Rounds[i] + w[i];
    const std::uint32_t s0 = std::rotr(a, 2) ^ std::rotr(a, 13) ^ std::rotr(a, 22);
    const std::uint32_t t2 = s0 + ((a & b) ^ (a & c) ^ (b & c));
    h = g;
    g = f;
    f = e;
    e = d + t1;
    d = c;
    c = b;
    b = a;
    a = t1 + t2;
  }
  const Sha256State mixed{a, b, c, d, e, f, g, h};
  for (std::size_t i = 0; i < 8; ++i) state[i] += mixed[i];
}

}  // namespace

void take_blocks(Sha256State& state, const unsigned char* data, std::size_t blocks) {
  for (std::size_t i = 0; i < blocks; ++i) take_block(state, data + 64 * i);
}

std::string sha256(std::string_view bytes) {
  const auto take = take_blocks_of_processor() != nullptr ? take_blocks_of_processor() : take_blocks;
  Sha256State state{0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
  const auto* data = reinterpret_cast<const unsigned char*>(bytes.data());
  const std::size_t whole = bytes.size() / 64 * 64;
  take(state, data, whole / 64);
  // 5.1.1: a one bit, zeros, and the length in bits as the last 8 bytes of a block.
  std::array<unsigned char, 128> tail{};
  const std::size_t rest = bytes.size() - whole;
  if (rest > 0) std::memcpy(tail.data(), data + whole, rest);
  tail[rest] = 0x80;
  const std::size_t padded = rest < 56 ? 64 : 128;
  const std::uint64_t bits = std::uint64_t{bytes.size()} * 8;
  for (std::size_t i = 0; i < 8; ++i) tail[padded - 1 - i] = static_cast<unsigned char>(bits >> (8 * i));
  take(state, tail.data(), padded / 64);
  std::string hex;
  hex.reserve(64);
  for (const std::uint32_t word : state)
    for (int shift = 28; shift >= 0; shift -= 4) hex += "0123456789abcdef"[(word >> shift) & 15u];
  return hex;
}

}  // namespace gownsheaf
