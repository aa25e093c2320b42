// An entry is: one byte of its kind and whether it was quoted; both places; key; text; how many children, and these.
// Numbers stand in groups of seven bits, the lowest first, with the eighth bit set in all but the last.
#include "read/kept_entry.h"

namespace gownsheaf {
namespace {

constexpr unsigned kQuoted = 4;  // above the four kinds

void put_number(std::string& out, std::size_t n) {
  for (; n >= 0x80; n >>= 7) out += static_cast<char>((n & 0x7F) | 0x80);
  out += static_cast<char>(n);
}

void put_text(std::string& out, const std::string& text) {
  put_number(out, text.size());
  out += text;
}

void put_place(std::string& out, const SourceSpan& at) {
  for (const int n : {at.line, at.column, at.length}) put_number(out, static_cast<std::size_t>(n));
}

void put_entry(std::string& out, const Entry& e) {
  out += static_cast<char>(static_cast<unsigned>(e.kind) | (e.quoted ? kQuoted : 0u));
  put_place(out, e.key_at);
  put_place(out, e.at);
  put_text(out, e.key);
  put_text(out, e.text);
  put_number(out, e.children.size());
  for (const Entry& child : e.children) put_entry(out, child);
}

class Taker {
 public:
  Taker(std::string_view kept, const FileName& file) : rest_(kept), file_(file) {}
  bool short_of_bytes() const { return short_; }

  void entry(Entry& e) {
    const unsigned first = byte();
    e.kind = static_cast<Entry::Kind>(first & 3u);
    e.quoted = (first & kQuoted) != 0;
    place(e.key_at);
    place(e.at);
    text(e.key);
    text(e.text);
    const std::size_t children = number();
    if (children > rest_.size()) short_ = true;  // each takes more than a byte
    if (short_) return;
    e.children.resize(children);
    for (Entry& child : e.children) entry(child);
  }

 private:
  unsigned byte() {
    if (rest_.empty()) {
      short_ = true;
      return 0;
    }
    const auto b = static_cast<unsigned char>(rest_.front());
    rest_.remove_prefix(1);
    return b;
  }

  std::size_t number() {
    std::size_t n = 0;
    for (unsigned shift = 0; shift < 63; shift += 7) {
      const unsigned b = byte();
      n |= static_cast<std::size_t>(b & 0x7Fu) << shift;
      if ((b & 0x80u) == 0) break;
    }
    return n;
  }

  void text(std::string& t) {
    const std::size_t size = number();
    if (size > rest_.size()) {
      short_ = true;
      return;
    }
    t.assign(rest_.substr(0, size));
    rest_.remove_prefix(size);
  }

  // A place that was never set (the key of a list's item) names no file.
  void place(SourceSpan& at) {
    at.line = static_cast<int>(number());
    at.column = static_cast<int>(number());
    at.length = static_cast<int>(number());
    if (at.line > 0) at.file = file_;
  }

  std::string_view rest_;
  const FileName& file_;
  bool short_ = false;
};

}  // namespace

std::string keep_entry(const Entry& root) {
  std::string out;
  put_entry(out, root);
  return out;
}

Entry kept_entry(std::string_view kept, const std::string& file_name) {
  Entry root;
  const FileName file(file_name);
  Taker taker(kept, file);
  taker.entry(root);
  if (taker.short_of_bytes()) return {};
  return root;
}

}  // namespace gownsheaf
