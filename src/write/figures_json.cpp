// figures.json: every figure of a packet with its exact value, its printed text and how it came about, then the plans.
#include <algorithm>
#include <type_traits>

#include "figures/privacy.h"
#include "write/plans_json.h"
#include "write/write.h"

namespace gownsheaf {
namespace {

std::string digits(Int128 n) {  // 128 bits do not fit a JSON number, so areas are written as text
  if (n == 0) return "0";
  const bool negative = n < 0;
  std::string text;
  for (; n != 0; n /= 10) {
    const int digit = static_cast<int>(n % 10);
    text += static_cast<char>('0' + (digit < 0 ? -digit : digit));
  }
  if (negative) text += '-';
  std::reverse(text.begin(), text.end());
  return text;
}

// The exact value, so that a reader of the file never has to take a printed fraction apart.
struct ExactValue {
  static Json measured(const char* type, double value, const char* unit) {
    return {{"type", type}, {"value", value}, {"unit", unit}};
  }
  static Json fraction(const char* type, const Ratio& ratio) {
    return {{"type", type}, {"numerator", ratio.n}, {"denominator", ratio.d}};
  }
  Json operator()(std::monostate) const { return {{"type", "none"}}; }
  Json operator()(Length l) const { return {{"type", "length"}, {"ticks", l.in_ticks()}}; }
  Json operator()(Area a) const { return {{"type", "area"}, {"square ticks", digits(a.in_square_ticks())}}; }
  Json operator()(Mass m) const { return measured("mass", m.value, "g"); }
  Json operator()(MassPerArea m) const { return measured("mass per area", m.value, "g/m²"); }
  Json operator()(Force f) const { return measured("force", f.value, "N"); }
  Json operator()(Pressure p) const { return measured("pressure", p.value, "Pa"); }
  Json operator()(LoadPerLength l) const { return measured("load per length", l.value, "N/m"); }
  Json operator()(Angle a) const { return measured("angle", a.value, "deg"); }
  Json operator()(const Ratio& r) const { return fraction("ratio", r); }
  Json operator()(const Percent& p) const { return fraction("part of one", p.of_one); }
  Json operator()(const Money& m) const { return {{"type", "money"}, {"hundredths", m.hundredths}, {"per", m.per}}; }
  Json operator()(Day d) const { return {{"type", "day"}, {"date", iso_day(d)}}; }
  Json operator()(Span s) const { return {{"type", "time"}, {"milliseconds", s.milliseconds}}; }
  Json operator()(const Rate& r) const {
    Json json = fraction("rate", r.amount);
    json["of"] = r.of;
    json["per"] = r.per;
    return json;
  }
  Json operator()(std::int64_t n) const { return {{"type", "count"}, {"value", n}}; }
  Json operator()(const std::string& s) const { return {{"type", "words"}, {"value", s}}; }
  Json operator()(bool b) const { return {{"type", "yes or no"}, {"value", b}}; }
};

// The names it was worked from, less those that tell of the body or of people.
Json inputs_of(const Figure& figure, const JsonScope& scope) {
  Json names = Json::array();
  for (const std::string& input : figure.inputs) {
    const Figure* from = scope.figures.find(input);
    const bool hidden = scope.hide_private && (from != nullptr ? from->is_private : is_private_name(input));
    if (!hidden) names.push_back(input);
  }
  return names;
}

// Where something stands in a project file that others never see says how long its private parts are.
void leave_out_lines(Json& json) {
  if (json.is_object()) json.erase("line");
  if (json.is_structured())
    for (Json& child : json) leave_out_lines(child);
}

Json figure_json(const Figure& figure, const JsonScope& scope) {
  const bool numbers_hidden = scope.hide_private && sum_is_private(figure, scope.figures);
  Json json{{"key", figure.key},
            {"value", std::visit(ExactValue{}, figure.value)},
            {"printed", plain_text(figure, scope.shown_in)},
            {"formula", figure.formula},
            {"inputs", inputs_of(figure, scope)},
            {"source", figure.source},
            {"label", std::string(1, figure.label)},
            {"guessed", figure.guessed}};
  if (!figure.guessed_from.empty() && !numbers_hidden) json["guessed from"] = figure.guessed_from;
  json["rests on a default"] = figure.standing;
  json["action"] = word_for(figure.action);
  if (figure.is_private) json["private"] = true;
  if (figure.working && !numbers_hidden) {
    const Working& working = *figure.working;
    json["working"] = {
        {"what", working.what}, {"formula", working.formula}, {"numbers", working.numbers}, {"result", working.result}};
  }
  if (figure.origin.line > 0) json["line"] = figure.origin.line;
  return json;
}

}  // namespace

std::string made_with(const FontSet& fonts) {
  std::string text = pdf_library();
  for (const Face face : {Face::regular, Face::bold, Face::condensed, Face::condensed_bold, Face::fallback}) {
    const std::string path = fonts.file(face);
    text += "; " + path.substr(path.find_last_of('/') + 1) + " sha256 " + fonts.hash(face);  // npos + 1 = 0
  }
  return text;
}

std::string figures_json(const Figures& figures, const Plans& plans, ShownIn shown_in, const FigureFile& about) {
  const JsonScope scope{figures, shown_in, about.hide_private};
  Json list = Json::array();
  for (const Figure& figure : figures.all()) {
    if (!(about.hide_private && figure.is_private)) list.push_back(figure_json(figure, scope));
  }
  Json file{{"format", "gownsheaf figures 1"},
            {"fingerprint",
             {{"project", about.project_fingerprint}, {"templates", about.templates_fingerprint}, {"options", about.options}}},
            {"made with", about.made_with},
            {"shown in", shown_in == ShownIn::inches ? "inches" : "centimetres"},
            {"ticks to the inch", Length::kPerInch},
            {"figures", std::move(list)},
            {"may I cut", may_cut_json(plans, scope)},
            {"lays", lays_json(plans, scope)},
            {"pleats", pleats_json(plans, scope)},
            {"work", work_json(plans, scope)}};
  if (about.shared) leave_out_lines(file);
  return file.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace gownsheaf
