#include "write/outlines_json.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "outline/pick.h"

namespace gownsheaf {
namespace {

using Json = nlohmann::ordered_json;

double four_places(double value) { return std::round(value * 1e4) / 1e4; }

Json box_json(const Box& box) {
  return {four_places(box.x.in_mm()), four_places(box.y.in_mm()), four_places(box.right().in_mm()),
          four_places(box.bottom().in_mm())};
}

Json drawn(const DrawnAt& at) {
  Json json{{"id", at.id}};
  if (!at.within.empty()) json["within"] = at.within;
  return json;
}

}  // namespace

std::string outlines_json(const SvgDrawing& drawing, const Diagnostics& diag) {
  Json outlines = Json::array(), marks = Json::array(), open = Json::array(), warnings = Json::array();
  for (std::size_t i = 0; i < drawing.outlines.size(); ++i) {
    const DrawnOutline& outline = drawing.outlines[i];
    Json json = drawn(outline.drawn);
    json["title"] = outline.title;
    json["bbox_mm"] = box_json(outline.box);
    json["area_mm2"] = four_places(outline.area_mm2);
    json["rings"] = outline.lines.size();
    json["pick"] = pick_words(drawing, i);
    json["line"] = outline.drawn.at.line;
    outlines.push_back(std::move(json));
  }
  for (const DrawnMark& mark : drawing.marks) {
    Json json = drawn(mark.drawn);
    json["kind"] = std::string(word_for(mark.kind));
    if (!mark.words.empty()) json["words"] = mark.words;
    json["bbox_mm"] = box_json(bounds(mark.points));
    marks.push_back(std::move(json));
  }
  for (const OpenLine& line : drawing.open_lines) {
    Json json = drawn(line.drawn);
    json["bbox_mm"] = box_json(bounds(line.points));
    json["line"] = line.drawn.at.line;
    open.push_back(std::move(json));
  }
  for (const Diagnostic& d : diag.sorted()) warnings.push_back({{"code", d.code}, {"line", d.at.line}, {"sentence", d.sentence}});
  const Json all{{"outlines", outlines}, {"marks", marks}, {"open_lines", open}, {"warnings", warnings}};
  return all.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace gownsheaf
