#include "outline/svg_tree.h"

#include <algorithm>

#include "diagnostics/shown.h"
#include "outline/numbers.h"
#include "outline/outline.h"
#include "unicode/utf8.h"

namespace gownsheaf {
namespace {

// Next element in document order, below `root`; depth goes along.
pugi::xml_node next_element(pugi::xml_node node, pugi::xml_node root, int& depth) {
  for (pugi::xml_node child = node.first_child(); child; child = child.next_sibling()) {
    if (child.type() == pugi::node_element) {
      ++depth;
      return child;
    }
  }
  while (node != root) {
    for (pugi::xml_node next = node.next_sibling(); next; next = next.next_sibling())
      if (next.type() == pugi::node_element) return next;
    node = node.parent();
    --depth;
  }
  return {};
}

}  // namespace

std::string printable(std::string_view text) {
  std::string out;
  std::size_t count = 0;
  for (const char32_t c : decode_utf8(trimmed(text))) {
    if (++count > 200) break;
    const bool blank = c == U' ' || c == U'\n' || c == U'\r' || c == U'\t';
    if (blank && (out.empty() || out.back() == ' ')) continue;
    append_utf8(out, blank ? U' ' : shown::as_shown(c));
  }
  return out;
}

SourceText drawing_lines(const std::string& bytes, const std::string& file_name) {
  SourceText text{file_name, {}};
  for (std::size_t from = 0; from < bytes.size();) {
    const std::size_t end = std::min(bytes.find('\n', from), bytes.size());
    text.lines.push_back(bytes.substr(from, end - from));
    from = end + 1;
  }
  return text;
}

std::string all_text(pugi::xml_node node) {
  std::string out;
  int depth = 0;
  for (pugi::xml_node at = node; at; at = next_element(at, node, depth))
    for (pugi::xml_node child = at.first_child(); child; child = child.next_sibling())
      if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata) out += child.value();
  return out;
}

SourceSpan SvgTree::place_at(std::ptrdiff_t offset) const {
  if (offset < 0 || static_cast<std::size_t>(offset) > bytes_->size()) return {file_};
  const auto at = static_cast<std::size_t>(offset);
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), at);
  const std::size_t start = *std::prev(after);
  int column = 1;
  column += count_characters(std::string_view(*bytes_).substr(start, at - start));
  return {file_, static_cast<int>(after - line_starts_.begin()), column, 1};
}

std::string_view SvgTree::name(pugi::xml_node node) const {
  std::string_view whole = node.name();
  if (!prefix_.empty()) {
    if (whole.substr(0, prefix_.size()) != prefix_) return {};
    whole.remove_prefix(prefix_.size());
  }
  return whole.find(':') == std::string_view::npos ? whole : std::string_view{};
}

pugi::xml_node SvgTree::by_id(std::string_view id) const {
  const auto found = ids_.find(id);
  return found == ids_.end() ? pugi::xml_node() : found->second;
}

bool SvgTree::note_elements(Diagnostics& diag) {
  int depth = 1;
  for (pugi::xml_node at = root_; at; at = next_element(at, root_, depth)) {
    if (depth > kDeepestDrawing) {
      diag.error("drawing-deep", place(at), "Groups stand more than 200 deep here.", "ungroup the pieces in the drawing program");
      return false;
    }
    if (const pugi::xml_attribute id = at.attribute("id")) ids_.emplace(id.value(), at);
    if (name(at) == "style") style_.add(all_text(at));
  }
  return true;
}

std::optional<SvgTree> SvgTree::read(const std::string& bytes, const std::string& file_name, Diagnostics& diag) {
  SvgTree tree;
  tree.file_ = file_name;
  tree.bytes_ = std::make_shared<const std::string>(bytes);
  tree.line_starts_ = {0};
  for (std::size_t i = 0; i < bytes.size(); ++i)
    if (bytes[i] == '\n') tree.line_starts_.push_back(i + 1);
  if (trimmed(bytes).empty()) {
    diag.error("drawing-empty", {file_name}, "The file is empty.", "save the drawing again, as SVG");
    return {};
  }
  if (bytes.compare(0, 2, "\x1f\x8b") == 0) {
    diag.error("drawing-packed", {file_name}, "The file is compressed (svgz).", "save it as plain SVG, or unpack it with gunzip");
    return {};
  }
  if (bytes.compare(0, 2, "\xff\xfe") == 0 || bytes.compare(0, 2, "\xfe\xff") == 0) {
    diag.error("utf16", {file_name}, "The file is saved as UTF-16, two bytes a letter; UTF-8 is read.", "save the file as UTF-8");
    return {};
  }
  tree.document_ = std::make_unique<pugi::xml_document>();
  const pugi::xml_parse_result parsed = tree.document_->load_buffer(
      bytes.data(), bytes.size(), pugi::parse_cdata | pugi::parse_escapes | pugi::parse_eol, pugi::encoding_utf8);
  if (!parsed) {
    diag.error("not-xml", tree.place_at(std::min(parsed.offset, static_cast<std::ptrdiff_t>(bytes.size()))),
               "The drawing breaks off or is no SVG here.", "was it saved or copied whole? save it again as SVG");
    return {};
  }
  tree.root_ = tree.document_->document_element();
  const std::string_view root_name = tree.root_.name();
  const std::size_t colon = root_name.find(':');
  if (colon != std::string_view::npos) tree.prefix_ = root_name.substr(0, colon + 1);
  if (tree.name(tree.root_) != "svg") {
    diag.error("not-svg", tree.place(tree.root_), "The file holds `" + printable(root_name) + "`, no SVG drawing.",
               "save the drawing as SVG");
    return {};
  }
  if (!tree.note_elements(diag)) return {};
  if (tree.style_.too_many()) {
    diag.error("drawing-heavy", {file_name}, "The drawing's style sheet has more than 5,000 rules.", "save it as plain SVG");
    return {};
  }
  return tree;
}

}  // namespace gownsheaf
