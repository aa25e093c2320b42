#include <nettle/base16.h>
#include <nettle/sha2.h>

#include "files/files.h"

namespace gownsheaf {

std::string sha256(std::string_view bytes) {
  sha256_ctx digest;
  sha256_init(&digest);
  sha256_update(&digest, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
  std::uint8_t sum[SHA256_DIGEST_SIZE];
  sha256_digest(&digest, sizeof sum, sum);
  std::string hex(BASE16_ENCODE_LENGTH(sizeof sum), '\0');
  base16_encode_update(hex.data(), sizeof sum, sum);
  return hex;
}

}  // namespace gownsheaf
