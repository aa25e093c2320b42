// What of CSS decides whether and how a shape counts. Internal to outline.
#pragma once
#include <array>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf {

enum class Property { display, visibility, fill_rule, clip_path, mask, transform };
constexpr std::size_t kProperties = 6;

// The value that wins for one element; "" where nothing is said.
using Properties = std::array<std::string, kProperties>;

constexpr std::size_t kMostStyleRules = 5'000;

// Rules of <style> elements: selectors of a tag, classes and an id, alone or joined, in lists.
class StyleSheet {
 public:
  void add(std::string_view css);
  // Attributes first, then rules by weight and order, then the style attribute; `!important` before all.
  Properties properties(std::string_view tag, std::string_view id, std::string_view classes, const Properties& attributes,
                        std::string_view style) const;
  bool imports() const { return imports_; }  // @import was seen, and not followed
  bool unread() const { return unread_; }    // a rule that could matter has a selector of another form
  bool too_many() const { return count_ > kMostStyleRules; }

 private:
  struct Declaration {
    Property property;
    std::string value;
    bool important = false;
  };
  struct Rule {
    std::string tag, id;
    std::vector<std::string> classes;
    int weight = 0;
    std::size_t order = 0;
    std::vector<Declaration> declarations;
  };
  static std::vector<Declaration> declarations(std::string_view text);
  void add_rule(std::string_view selectors, std::string_view body);
  std::map<std::string, std::vector<Rule>, std::less<>> by_key_;  // "#id", ".class", "tag" or "*": the narrowest of the selector
  std::size_t count_ = 0;
  bool imports_ = false, unread_ = false;
};

// Class names of an attribute.
std::vector<std::string_view> words_of(std::string_view text);

}  // namespace gownsheaf
