// What the YAML file says, with where it says it. No yaml-cpp type leaves src/read/, and no scalar is typed by YAML:
// `text` is exactly what was written.
#pragma once
#include <string>
#include <vector>

#include "diagnostics/diagnostics.h"

namespace gownsheaf {

struct Entry {
  enum class Kind { nothing, text, list, block };
  Kind kind = Kind::nothing;  // nothing: a key followed by no value
  std::string key;            // set when this entry sits in a block, as written
  SourceSpan key_at;          // of the key
  SourceSpan at;              // of the value; for `nothing` the key's place
  std::string text;           // of a text entry
  bool quoted = false;
  std::vector<Entry> children;  // of a list or block, in file order

  const Entry* find(std::string_view wanted) const;  // child of a block by exact key, or null
};

struct ReadLimits {
  int depth = 64;
  std::size_t entries = 100000;
  std::vector<std::string> keys = {};  // words that the reader of the entries knows: a comma missing before one is said
};

// Parses one YAML document. Refuses, in plain sentences with the codes of docs/diagnostics.md: an empty file, tabs used as
// indent, bad UTF-8, NUL and other control characters, UTF-16, duplicate keys, anchors, aliases, tags, merge keys, a
// second document, unclosed quotes, lines without a colon, too deep, too many entries. Returns an Entry of kind block, or
// kind nothing when diag got an error. Where recovery is safe (duplicate keys, an aliased value) reading goes on so that
// one run tells everything; after duplicate keys alone the tree is returned, with the first of each, so that it can be
// checked further.
Entry read_yaml(const std::string& bytes, const std::string& file_name, Diagnostics& diag, const ReadLimits& limits = {});

// The text split into lines for messages (BOM stripped, CRLF made LF).
SourceText lines_of(const std::string& bytes, const std::string& file_name);

}  // namespace gownsheaf
