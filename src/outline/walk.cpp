#include "outline/walk.h"

#include <algorithm>
#include <cmath>

#include "diagnostics/message.h"
#include "outline/marks.h"
#include "outline/numbers.h"
#include "outline/path_data.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kMostText = 32u << 20;  // bytes of attributes gone through, uses repeating them
constexpr double kMmPerPx = 25.4 / 96;

bool one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string_view reference(pugi::xml_node node) {
  const pugi::xml_attribute plain = node.attribute("href");
  return trimmed(plain ? plain.value() : node.attribute("xlink:href").value());
}

}  // namespace

void Walker::fail(const char* code, pugi::xml_node node, std::string sentence, std::string hint) {
  if (!failed_) diag_.error(code, tree_.place(node), std::move(sentence), std::move(hint));
  failed_ = true;
}

void Walker::warn(const char* code, pugi::xml_node node, std::string sentence, std::string hint) {
  Warned& warned = warned_[code];
  if (warned.times++ == 0)
    warned.said = message({}, Severity::warning, code, tree_.place(node), std::move(sentence), std::move(hint));
}

std::string Walker::called(pugi::xml_node node) const {
  const pugi::xml_attribute id = node.attribute("id");
  return id ? "`" + printable(id.value()) + "`" : "This " + std::string(tree_.name(node));
}

DrawnAt Walker::drawn_at(pugi::xml_node node) {
  for (const std::string& id : within_) text_ += id.size() + sizeof(std::string);  // kept once more for each shape
  return {printable(node.attribute("id").value()), within_, tree_.place(node)};
}

double Walker::length(pugi::xml_node node, const char* attribute, double base, double missing) {
  const pugi::xml_attribute written = node.attribute(attribute);
  if (!written) return missing;
  if (trimmed(written.value()) == "auto") return missing;
  const std::optional<SvgLength> read = read_svg_length(written.value());
  if (!read) {
    fail("drawing-number", node, called(node) + ": `" + attribute + "=\"" + printable(written.value()) + "\"` is no length.",
         "mm, cm, in, pt, px or a plain number");
    return missing;
  }
  return read->unit == SvgLength::Unit::percent ? base * read->value / 100 : read->value;
}

// display, visibility, fill rule, mark; false when nothing of it is shown.
bool Walker::restyle(pugi::xml_node node, std::string_view name, Context& context) {
  Properties attributes;
  attributes[0] = node.attribute("display").value();
  attributes[1] = node.attribute("visibility").value();
  attributes[2] = node.attribute("fill-rule").value();
  attributes[3] = node.attribute("clip-path").value();
  attributes[4] = node.attribute("mask").value();
  const Properties won = tree_.style().properties(name, node.attribute("id").value(), node.attribute("class").value(), attributes,
                                                  node.attribute("style").value());
  const auto said = [&](Property p) { return trimmed(won[static_cast<std::size_t>(p)]); };
  if (said(Property::display) == "none") return false;
  const std::string_view visibility = said(Property::visibility), rule = said(Property::fill_rule);
  if (one_of(visibility, {"hidden", "collapse"})) context.visible = false;
  if (visibility == "visible") context.visible = true;
  if (rule == "nonzero") context.rule = FillRule::nonzero;
  if (rule == "evenodd") context.rule = FillRule::even_odd;
  for (const Property p : {Property::clip_path, Property::mask}) {
    if (!said(p).empty() && said(p) != "none")
      warn("clip-ignored", node, "Part of the drawing is clipped; outlines are read whole.",
           "look at the sheet: `gownsheaf outlines FILE.svg --sheet sheet.pdf`");
  }
  if (!said(Property::transform).empty() && said(Property::transform) != "none")
    fail("style-transform", node, called(node) + " is moved by `transform` in a style, which is not read.",
         "save as plain SVG; `transform` as an attribute is read");
  const std::optional<MarkKind> mark = mark_kind(node.attribute("id").value(), node.attribute("class").value());
  if (mark) context.mark = mark;
  return true;
}

void Walker::children(pugi::xml_node node, const Context& context) {
  const bool named = node.attribute("id") && node != tree_.root();
  if (named) within_.push_back(printable(node.attribute("id").value()));
  for (pugi::xml_node child = node.first_child(); child && !failed_; child = child.next_sibling())
    if (child.type() == pugi::node_element) element(child, context);
  if (named) within_.pop_back();
}

void Walker::element(pugi::xml_node node, Context context) {
  const std::string_view name = tree_.name(node);
  if (one_of(name, {"", "defs", "symbol", "clipPath", "mask", "marker", "pattern", "style", "title", "desc", "metadata", "filter",
                    "linearGradient", "radialGradient", "script", "foreignObject"}))
    return;
  for (const pugi::xml_attribute a : node.attributes()) text_ += std::string_view(a.value()).size();
  if (++elements_ > kMostDrawn || text_ > kMostText)
    return fail("drawing-heavy", node, "Far too much is drawn: uses repeat what is used over and over.",
                "save as plain SVG with uses unlinked, or remove patterns and backgrounds");
  if (++context.depth > kDeepestDrawing)
    return fail("drawing-deep", node, "Groups and uses stand more than 200 deep here.",
                "ungroup the pieces in the drawing program");
  if (!restyle(node, name, context)) return;
  if (const pugi::xml_attribute written = node.attribute("transform"); written && name != "svg") {
    const std::optional<Affine> map = read_transform(written.value());
    if (!map)
      return fail("drawing-number", node, called(node) + ": `transform=\"" + printable(written.value()) + "\"` cannot be read.",
                  "save as plain SVG");
    context.to_mm = context.to_mm * *map;
  }
  if (one_of(name, {"g", "a"})) return children(node, context);
  if (name == "svg") return inner_view(node, context, {});
  if (name == "use") return used(node, context);
  if (name == "switch") {
    for (pugi::xml_node child = node.first_child(); child; child = child.next_sibling()) {
      if (child.type() != pugi::node_element || tree_.name(child) == "foreignObject" || tree_.name(child).empty()) continue;
      if (child.attribute("requiredExtensions") || child.attribute("requiredFeatures")) continue;
      return element(child, context);
    }
    return;
  }
  if (name == "image")
    return warn("image-ignored", node, "A picture in the drawing was passed over: it holds no lines.",
                "trace it to paths, if it is the outline");
  if (name == "text") return words(node, context);
  if (one_of(name, {"path", "rect", "circle", "ellipse", "polygon", "polyline", "line"}) && context.visible)
    shape(node, name, context);
}

void Walker::used(pugi::xml_node node, Context context) {
  const std::string_view target = reference(node);
  if (target.empty()) return;
  if (target[0] != '#')
    return warn("external-reference", node, "`" + printable(target) + "` is another file; nothing was fetched.",
                "embed it in the drawing");
  const pugi::xml_node found = tree_.by_id(target.substr(1));
  if (!found)
    return warn("missing-reference", node, "Nothing in the drawing is called `" + printable(target.substr(1)) + "`.", "");
  if (std::find(uses_open_.begin(), uses_open_.end(), found) != uses_open_.end())
    return fail("drawing-ring", node, "`" + printable(target.substr(1)) + "` uses itself.",
                "unlink the copy in the drawing program");
  if (++uses_ > kMostUses)
    return fail("drawing-heavy", node, "The drawing uses its parts more than 10,000 times.",
                "unlink the copies, or remove patterns and backgrounds");
  context.to_mm = context.to_mm * moved_by(length(node, "x", context.width), length(node, "y", context.height));
  if (failed_) return;
  uses_open_.push_back(found);
  const bool named = static_cast<bool>(node.attribute("id"));
  if (named) within_.push_back(printable(node.attribute("id").value()));
  const std::string_view name = tree_.name(found);
  if (name == "symbol") {
    if (restyle(found, name, context)) inner_view(found, context, node);
  } else if (name == "svg") {
    if (restyle(found, name, context)) inner_view(found, context, node);
  } else {
    element(found, context);
  }
  if (named) within_.pop_back();
  uses_open_.pop_back();
}

// A nested svg, or a symbol that a use shows. sized_by: the use, whose width and height count first.
void Walker::inner_view(pugi::xml_node node, Context context, pugi::xml_node sized_by) {
  if (++context.depth > kDeepestDrawing)
    return fail("drawing-deep", node, "Groups and uses stand more than 200 deep here.",
                "ungroup the pieces in the drawing program");
  const bool is_symbol = tree_.name(node) == "symbol";
  double width = is_symbol ? context.width : length(node, "width", context.width, context.width);
  double height = is_symbol ? context.height : length(node, "height", context.height, context.height);
  if (sized_by) {
    width = length(sized_by, "width", context.width, width);
    height = length(sized_by, "height", context.height, height);
  }
  if (!is_symbol) context.to_mm = context.to_mm * moved_by(length(node, "x", context.width), length(node, "y", context.height));
  if (failed_ || !(width > 0) || !(height > 0)) return;
  context.width = width;
  context.height = height;
  if (const pugi::xml_attribute written = node.attribute("viewBox")) {
    const std::optional<ViewBox> box = read_view_box(written.value());
    if (!box)
      return fail("drawing-number", node, called(node) + ": `viewBox=\"" + printable(written.value()) + "\"` cannot be read.",
                  "four numbers, the last two above 0");
    const Affine fit = fit_view_box(*box, width, height, node.attribute("preserveAspectRatio").value());
    if (std::fabs(fit.a - fit.d) > 1e-9 * std::max(fit.a, fit.d))
      warn("stretched", node, "Part of the drawing is stretched more one way than the other.",
           "is it meant? measure a piece both ways on the sheet");
    context.to_mm = context.to_mm * fit;
    context.width = box->width;
    context.height = box->height;
  }
  children(node, context);
}

// The root's size and view box: user units to mm of the page.
bool Walker::page(Context& context) {
  const pugi::xml_node root = tree_.root();
  std::optional<ViewBox> box;
  if (const pugi::xml_attribute written = root.attribute("viewBox")) {
    box = read_view_box(written.value());
    if (!box)
      fail("drawing-number", root, "`viewBox=\"" + printable(written.value()) + "\"` cannot be read.",
           "four numbers, the last two above 0");
  }
  bool real = false;
  const auto side = [&](const char* attribute) -> double {
    const pugi::xml_attribute written = root.attribute(attribute);
    if (!written) return 0;
    const double px = length(root, attribute, 0);
    if (const auto read = read_svg_length(written.value())) real = real || read->real;
    return std::max(px, 0.0);
  };
  double width = side("width"), height = side("height");
  if (failed_) return false;
  if (box) {
    if (width == 0 && height == 0) width = box->width, height = box->height;
    if (width == 0) width = height * box->width / box->height;
    if (height == 0) height = width * box->height / box->width;
  }
  if (!real)
    warn("guessed-scale", root, "The drawing gives no size in mm, cm, in or pt: 96 px to the inch were taken.",
         "measure something of known size on it; `square measures` corrects the scale");
  context.to_mm = scaled_by(kMmPerPx, kMmPerPx);
  context.width = width;
  context.height = height;
  if (!box) return true;
  const Affine fit = fit_view_box(*box, width, height, root.attribute("preserveAspectRatio").value());
  if (std::fabs(fit.a - fit.d) > 1e-9 * std::max(fit.a, fit.d))
    warn("stretched", root, "The drawing is stretched more one way than the other.",
         "is it meant? measure a piece both ways on the sheet");
  context.to_mm = context.to_mm * fit;
  context.width = box->width;
  context.height = box->height;
  return true;
}

std::optional<SvgDrawing> Walker::walk() {
  Context context;
  const pugi::xml_node root = tree_.root();
  if (tree_.style().imports())
    warn("external-reference", root, "The style sheet imports another file; nothing was fetched.", "embed it in the drawing");
  if (tree_.style().unread())
    warn("style-unread", root, "A rule of the style sheet could not be read; it may hide or show parts.",
         "compare the sheet with the drawing, or save as plain SVG");
  if (page(context) && restyle(root, "svg", context)) children(root, context);
  for (auto& [code, warned] : warned_) {
    std::string& sentence = warned.said.sentence;
    if (warned.times > 1) sentence.replace(sentence.size() - 1, 1, " (first of " + std::to_string(warned.times) + ").");
    diag_.add(warned.said);
  }
  if (failed_) return {};
  return std::move(drawing_);
}

std::optional<SvgDrawing> read_svg(const std::string& bytes, const std::string& file_name, Diagnostics& diag) {
  const std::optional<SvgTree> tree = SvgTree::read(bytes, file_name, diag);
  if (!tree) return {};
  return Walker(*tree, diag).walk();
}

}  // namespace gownsheaf
