// The elements of a drawing, with the places where they are written. Internal to outline.
#pragma once
#include <map>
#include <memory>
#include <optional>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "diagnostics/diagnostics.h"
#include "outline/style.h"

namespace gownsheaf {

class SvgTree {
 public:
  // Refuses what is no drawing: nothing, compressed, no XML, another root, too deep.
  static std::optional<SvgTree> read(const std::string& bytes, const std::string& file_name, Diagnostics& diag);

  pugi::xml_node root() const { return root_; }
  // Name without the prefix that the root has; "" for elements of other vocabularies.
  std::string_view name(pugi::xml_node node) const;
  SourceSpan place(pugi::xml_node node) const { return place_at(node.offset_debug()); }
  pugi::xml_node by_id(std::string_view id) const;  // the first, or none
  const StyleSheet& style() const { return style_; }
  const std::string& file() const { return file_; }

 private:
  SourceSpan place_at(std::ptrdiff_t offset) const;
  bool note_elements(Diagnostics& diag);
  std::unique_ptr<pugi::xml_document> document_;
  pugi::xml_node root_;
  std::string file_, prefix_;
  std::shared_ptr<const std::string> bytes_;
  std::vector<std::size_t> line_starts_;
  std::map<std::string_view, pugi::xml_node> ids_;
  StyleSheet style_;
};

// All text below an element, its children's too.
std::string all_text(pugi::xml_node node);
// Safe to print: bytes that are no UTF-8 or steer a terminal become U+FFFD, blanks are one each, at most 200 characters.
std::string printable(std::string_view text);

}  // namespace gownsheaf
