#include "fonts/sfnt.h"

#include <algorithm>
#include <array>

namespace gownsheaf {
namespace {

constexpr std::size_t kDirectory = 12, kRecord = 16;                        // bytes: file header, one table record
constexpr std::uint32_t kTrueType = 0x00010000, kOldTrueType = 0x74727565;  // "true"

std::uint32_t unsigned16(std::string_view bytes, std::size_t at) {
  if (at + 2 > bytes.size()) return 0;
  const auto byte = [&](std::size_t i) { return static_cast<std::uint32_t>(static_cast<unsigned char>(bytes[at + i])); };
  return byte(0) << 8 | byte(1);
}

std::uint32_t unsigned32(std::string_view bytes, std::size_t at) {
  return unsigned16(bytes, at) << 16 | unsigned16(bytes, at + 2);
}

bool is_composite(std::string_view glyph) {  // numberOfContours is negative
  return glyph.size() >= 10 && (unsigned16(glyph, 0) & 0x8000u) != 0;
}

}  // namespace

std::string_view Sfnt::table(std::string_view tag) const {
  const std::size_t tables = unsigned16(file_, 4);
  for (std::size_t i = 0; i < tables; ++i) {
    const std::size_t record = kDirectory + i * kRecord;
    if (record + kRecord > file_.size()) break;
    if (file_.substr(record, 4) != tag) continue;
    const std::size_t at = unsigned32(file_, record + 8), length = unsigned32(file_, record + 12);
    if (at > file_.size() || length > file_.size() - at) return {};
    return file_.substr(at, length);
  }
  return {};
}

std::string Sfnt::fault() const {
  const std::uint32_t version = unsigned32(file_, 0);
  if (file_.size() < kDirectory || (version != kTrueType && version != kOldTrueType)) {
    return "it is not a font with TrueType outlines";
  }
  const std::size_t tables = unsigned16(file_, 4);
  if (kDirectory + tables * kRecord > file_.size()) return "it ends too early";
  for (std::size_t i = 0; i < tables; ++i) {
    const std::size_t record = kDirectory + i * kRecord;
    const std::size_t at = unsigned32(file_, record + 8), length = unsigned32(file_, record + 12);
    if (at > file_.size() || length > file_.size() - at) return "it ends too early";
  }
  static constexpr std::array<std::string_view, 10> kNeeded{"OS/2", "cmap", "glyf", "head", "hhea",
                                                            "hmtx", "loca", "maxp", "name", "post"};
  for (const std::string_view tag : kNeeded) {
    if (table(tag).empty()) return "its table " + std::string(tag) + " is missing";
  }
  return "";
}

std::string_view Sfnt::glyph(std::uint32_t id) const {
  const std::string_view loca = table("loca"), glyf = table("glyf");
  const bool long_offsets = unsigned16(table("head"), 50) != 0;
  const std::size_t entry = long_offsets ? 4 : 2;
  if ((static_cast<std::size_t>(id) + 2) * entry > loca.size()) return {};
  const auto offset = [&](std::size_t i) -> std::size_t {
    return long_offsets ? unsigned32(loca, i * 4) : std::size_t{2} * unsigned16(loca, i * 2);
  };
  const std::size_t from = offset(id), to = offset(std::size_t{id} + 1);
  if (from >= to || to > glyf.size()) return {};  // equal offsets: an empty glyph, such as a space
  return glyf.substr(from, to - from);
}

std::vector<std::uint32_t> Sfnt::components(std::uint32_t id) const {
  constexpr std::uint32_t kWords = 0x0001, kScale = 0x0008, kMore = 0x0020, kTwoScales = 0x0040, kMatrix = 0x0080;
  std::vector<std::uint32_t> parts;
  const std::string_view bytes = glyph(id);
  if (!is_composite(bytes)) return parts;
  for (std::size_t at = 10; at + 4 <= bytes.size();) {  // after the contour count and the bounding box
    const std::uint32_t flags = unsigned16(bytes, at);
    parts.push_back(unsigned16(bytes, at + 2));
    at += 4 + ((flags & kWords) != 0 ? 4u : 2u);
    if ((flags & kScale) != 0) at += 2;
    else if ((flags & kTwoScales) != 0) at += 4;
    else if ((flags & kMatrix) != 0) at += 8;
    if ((flags & kMore) == 0) break;
  }
  return parts;
}

bool Sfnt::composite_of_composites(std::uint32_t id) const {
  const std::vector<std::uint32_t> parts = components(id);
  return std::any_of(parts.begin(), parts.end(), [this](std::uint32_t part) { return is_composite(glyph(part)); });
}

}  // namespace gownsheaf
