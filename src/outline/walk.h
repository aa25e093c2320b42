// Goes through a drawing's elements as they are shown. Internal to outline.
#pragma once
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "outline/flatten.h"
#include "outline/outline.h"
#include "outline/svg_tree.h"

namespace gownsheaf {

// Letters of a page of text count too when they come as outlines.
constexpr std::size_t kMostOutlines = 10'000;

class Walker {
 public:
  Walker(const SvgTree& tree, Diagnostics& diag) : tree_(tree), diag_(diag) { drawing_.file = tree.file(); }
  std::optional<SvgDrawing> walk();

 private:
  struct Context {
    Affine to_mm;
    double width = 0, height = 0;  // of the view in user units, for %
    bool visible = true;
    FillRule rule = FillRule::nonzero;
    std::optional<MarkKind> mark;
    int depth = 0;
  };
  void element(pugi::xml_node node, Context context);
  void children(pugi::xml_node node, const Context& context);
  void used(pugi::xml_node node, Context context);
  void inner_view(pugi::xml_node node, Context context, pugi::xml_node sized_by);
  void shape(pugi::xml_node node, std::string_view name, const Context& context);
  void words(pugi::xml_node node, const Context& context);
  bool draw(pugi::xml_node node, std::string_view name, const Context& context, FlatPath& path);
  void keep(pugi::xml_node node, const FlatPath& path, const Context& context);
  bool page(Context& context);
  bool restyle(pugi::xml_node node, std::string_view name, Context& context);
  double length(pugi::xml_node node, const char* attribute, double base, double missing = 0);
  DrawnAt drawn_at(pugi::xml_node node);
  void fail(const char* code, pugi::xml_node node, std::string sentence, std::string hint);
  void warn(const char* code, pugi::xml_node node, std::string sentence, std::string hint);
  std::string called(pugi::xml_node node) const;  // "`front`" or "this path"

  struct Warned {
    Diagnostic said;
    int times = 0;
  };
  const SvgTree& tree_;
  Diagnostics& diag_;
  SvgDrawing drawing_;
  std::vector<std::string> within_;
  std::vector<pugi::xml_node> uses_open_;
  std::map<std::string, Warned> warned_;
  std::size_t uses_ = 0, elements_ = 0, points_ = 0, text_ = 0;
  bool failed_ = false;
};

}  // namespace gownsheaf
