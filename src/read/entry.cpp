#include "read/entry.h"

#include <limits>

#include "read/event_tree.h"
#include "read/findings.h"
#include "read/source_lines.h"

namespace gownsheaf {

const Entry* Entry::find(std::string_view wanted) const {
  if (kind != Kind::block) return nullptr;
  for (const Entry& child : children)
    if (child.key == wanted) return &child;
  return nullptr;
}

Entry read_yaml(const std::string& bytes, const std::string& file_name, Diagnostics& diag, const ReadLimits& limits) {
  const auto lines = clean_text(bytes, file_name, diag);
  if (!lines) return {};
  Findings found(*lines, diag, limits.keys);
  first_look(found);
  const auto first_mistake = found.first_line();
  Gathered gathered =
      gather(found.mended(), *lines, first_mistake.value_or(std::numeric_limits<std::size_t>::max()), limits, diag);
  if (first_mistake || !gathered.whole) return {};
  switch (gathered.root.kind) {
    case Entry::Kind::block: return std::move(gathered.root);
    case Entry::Kind::nothing:
      diag.error("file-empty", {file_name, 1, 1, 1}, "The file is empty.",
                 "`gownsheaf start skirt.yaml --garment skirt` writes one to fill in");
      break;
    case Entry::Kind::list:
      diag.error("map-wanted", gathered.root.at, "The file begins with a list; it must begin with keys.",
                 "`gownsheaf: 1` comes first");
      break;
    case Entry::Kind::text:
      diag.error("no-colon", gathered.root.at, named(gathered.root.text) + " has no colon.", "`gownsheaf: 1` comes first");
      break;
  }
  return {};
}

SourceText lines_of(const std::string& bytes, const std::string& file_name) {
  SourceText source{file_name, {}};
  const std::string text = with_plain_line_ends(bytes);
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    source.lines.push_back(text.substr(from, end - from));
    from = end + 1;
  }
  return source;
}

}  // namespace gownsheaf
